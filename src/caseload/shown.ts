/**
 * Formulas written as Excel shows them: `[@Held]` or `[@[Held by]]` is the cell of the same row in the column with that
 * header. What stands here is what a person reads in the cell.
 */
import { formula, type FormulaTemplate } from "../columns/formula";
import type { Header } from "./headers";
import { PLAIN, type CaseloadColumn, type OptionalGroup, type Slots } from "./column";

const CELL = /\[@(?:\[([^\]]+)\]|([^\][]+))\]/g;

export const shown =
  (text: string) =>
  (cell: Slots): FormulaTemplate => {
    let template: FormulaTemplate = [];
    let end = 0;
    for (const found of text.matchAll(CELL)) {
      template = formula`${template}${text.slice(end, found.index)}${cell((found[1] ?? found[2]) as Header)}`;
      end = found.index + found[0].length;
    }
    return formula`${template}${text.slice(end)}`;
  };

/** A small column that only formulas read; whoever wants to know why a word stands there shows it and reads it. */
export const hidden = (header: Header, text: string, onlyWith?: OptionalGroup): CaseloadColumn => ({
  header,
  kind: "computed",
  format: PLAIN,
  width: 4,
  isHidden: true,
  ...(onlyWith && { onlyWith }),
  formula: shown(text),
});

type Look = Pick<CaseloadColumn, "format" | "width"> & Partial<Pick<CaseloadColumn, "rules" | "onlyWith">>;

/** A column that people read. */
export const computed = (header: Header, text: string, look: Look): CaseloadColumn => ({
  header,
  kind: "computed",
  ...look,
  formula: shown(text),
});
