/** The grid's own menus, with British spelling, and our words where it has none or says OK. */
type Texts = { readonly [key: string]: string | Texts | unknown };

const SPELLING: readonly (readonly [RegExp, string])[] = [
  [/\bColor/g, "Colour"],
  [/\bcolor/g, "colour"],
  [/\bCenter/g, "Centre"],
  [/\bcenter/g, "centre"],
  [/\bGray/g, "Grey"],
  [/\bgray/g, "grey"],
  [/^OK$/, "Go on"],
];

/** Laid over the grid's own texts. */
export const ownTexts = {
  // a sheet that is worked out shows the names of these texts instead (0.25.1)
  "sheets-formula": {
    progress: {
      analyzing: "Looking at the formulas",
      calculating: "Working the formulas out",
      "array-analysis": "Looking at the formulas that fill several cells",
      "array-calculation": "Working out the formulas that fill several cells",
      done: "Worked out",
    },
  },
  "sheets-data-validation-ui": { alert: { title: "Not taken", ok: "Go back" } },
};

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
