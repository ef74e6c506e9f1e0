/**
 * Formulas written as Excel shows them: `[@Held]` or `[@[Held by]]` is the cell of the same row in the column with that
 * header. What stands here is what a person reads in the cell, and the compiler reads it too: a header that no column has
 * does not compile.
 */
import { formula, type FormulaTemplate } from "../columns/formula";
import type { Header } from "./headers";
import { PLAIN, type CaseloadColumn, type OptionalGroup, type Slots } from "./column";

/** The first header of a formula that no column has; `never` where all are columns. */
type Misspelt<Text extends string> = Text extends `${string}[@${infer Rest}`
  ? Rest extends `[${infer Asked}]]${infer After}`
    ? Unless<Asked, After>
    : Rest extends `${infer Asked}]${infer After}`
      ? Unless<Asked, After>
      : Rest
  : never;
type Unless<Asked extends string, After extends string> = Asked extends Header ? Misspelt<After> : Asked;

/** A formula, or a part of one, as Excel shows it. Phrases (phrases.ts) put into it have been read by themselves. */
export type Shown<Text extends string> = Text &
  ([Misspelt<Text>] extends [never] ? unknown : `There is no column ${Misspelt<Text>}`);
export type AllShown<Texts extends readonly string[]> = { readonly [Place in keyof Texts]: Shown<Texts[Place]> };

const CELL = /\[@(?:\[([^\]]+)\]|([^\][]+))\]/g;

export const shown =
  <const Text extends string>(text: Shown<Text>) =>
  (cell: Slots): FormulaTemplate => {
    let template: FormulaTemplate = [];
    let end = 0;
    for (const found of text.matchAll(CELL)) {
      template = formula`${template}${text.slice(end, found.index)}${cell((found[1] ?? found[2]) as Header)}`;
      end = found.index + found[0].length;
    }
    return formula`${template}${text.slice(end)}`;
  };

/**
 * A small column that only formulas read, on the way to what *To do* says: whoever wants to know why a word stands there
 * shows it and reads it.
 */
export const reason = <const Text extends string>(
  header: Header,
  text: Shown<Text>,
  onlyWith?: OptionalGroup,
): CaseloadColumn => ({
  header,
  kind: "computed",
  format: PLAIN,
  width: 4,
  isHidden: true,
  ...(onlyWith && { onlyWith }),
  formula: shown<string>(text),
});

/**
 * A step that only such columns and other steps read. In the workbook it stands by addresses, once for the whole column: a
 * file with names in every step is five times as large, and a large caseload would not open (docs/decisions.md).
 */
export const hidden = <const Text extends string>(
  header: Header,
  text: Shown<Text>,
  onlyWith?: OptionalGroup,
): CaseloadColumn => ({ ...reason<string>(header, text, onlyWith), isByAddress: true });

type Look = Pick<CaseloadColumn, "format" | "width"> & Partial<Pick<CaseloadColumn, "rules" | "onlyWith">>;

/** A column that people read. */
export const computed = <const Text extends string>(header: Header, text: Shown<Text>, look: Look): CaseloadColumn => ({
  header,
  kind: "computed",
  ...look,
  formula: shown<string>(text),
});
