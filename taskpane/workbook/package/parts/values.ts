/** Attribute values as XML Schema writes them. */
export function isTrue(text: string | undefined, otherwise = false): boolean {
  if (text === undefined) return otherwise;
  return text === "1" || text === "true" || text === "on";
}

export function wholeNumber(text: string | undefined, otherwise: number): number {
  if (text === undefined) return otherwise;
  const value = Number(text);
  return Number.isInteger(value) && value >= 0 ? value : otherwise;
}
