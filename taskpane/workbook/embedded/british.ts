/** The grid's own menus, with British spelling. */
type Texts = { readonly [key: string]: string | Texts | unknown };

const SPELLING: readonly (readonly [RegExp, string])[] = [
  [/\bColor/g, "Colour"],
  [/\bcolor/g, "colour"],
  [/\bCenter/g, "Centre"],
  [/\bcenter/g, "centre"],
  [/\bGray/g, "Grey"],
  [/\bgray/g, "grey"],
];

const respelt = (text: string): string =>
  SPELLING.reduce((spelt, [american, own]) => spelt.replace(american, own), text);

/** Only sentences and labels are respelt; the help of functions names their arguments, so it stays. */
export function british<T extends object>(texts: T): T {
  return Object.fromEntries(
    Object.entries(texts as Texts).map(([key, value]) => [
      key,
      key === "functionList" || key === "formula"
        ? value
        : typeof value === "string"
          ? respelt(value)
          : value !== null && typeof value === "object" && !Array.isArray(value)
            ? british(value)
            : value,
    ]),
  ) as T;
}
