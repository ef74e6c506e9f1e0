import type { SheetFunction } from "./define";

/**
 * Whether a number that a function gives is a day number, so that whoever shows it writes a date.
 *
 * @param column counted from 0 within the result
 * @param choices what the function was given, by the arguments' names
 */
export function givesDate(
  { result }: Pick<SheetFunction, "result">,
  column: number,
  choices: Readonly<Record<string, unknown>>,
): boolean {
  const { kind, columnKinds, dateWith } = result;
  if (kind !== "mixed") return kind === "date";
  if (columnKinds) return columnKinds[column] === "date";
  const word = dateWith && choices[dateWith.choice];
  return typeof word === "string" && dateWith!.words.includes(word.trim().toLowerCase());
}
