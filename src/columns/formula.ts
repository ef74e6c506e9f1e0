/**
 * A formula for every row of a list, with slots for that row's cells.
 *
 * One description serves three writers: Excel and the file (structured references in a table), and plain lists and the
 * browser's grid (relative A1 references).
 */

import { cellAddress, columnLetters } from "../formula/addresses";
import { escapedColumn } from "../formula/columns";

/** A column of the list that the formula stands in, known by its header and its place (0 = leftmost). */
export interface ColumnSlot {
  readonly header: string;
  readonly index: number;
  /** The column comes in by the same change: nobody has typed into it, and it holds what our formula gives. */
  readonly isAdded?: boolean;
}

/** Plain formula text and slots, in order; no leading "=". */
export type FormulaTemplate = readonly (string | ColumnSlot)[];

/** Builds a template from a tagged text: formula`TUBE.FRTOMM(${size})`. Plain numbers and texts are put in as they are. */
export function formula(texts: TemplateStringsArray, ...slots: (ColumnSlot | FormulaTemplate | string | number)[]) {
  const parts: (string | ColumnSlot)[] = [];
  const add = (part: string | ColumnSlot) => {
    const last = parts.at(-1);
    if (typeof part === "string" && typeof last === "string") parts[parts.length - 1] = last + part;
    else if (part !== "") parts.push(part);
  };
  texts.forEach((text, i) => {
    add(text);
    const slot = slots[i];
    if (slot === undefined) return;
    if (typeof slot === "number") add(String(slot));
    else if (typeof slot === "string") add(slot);
    else if ("header" in slot) add(slot);
    else slot.forEach(add);
  });
  return parts as FormulaTemplate;
}

/** A text as a formula writes it. */
export const quoted = (text: string): string => `"${text.replaceAll('"', '""')}"`;

export { cellAddress, columnLetters };

/**
 * Relative A1 form for one row of a list.
 * @param row the sheet row, counted from 0
 * @param left the sheet column of the list's leftmost column, counted from 0
 */
export const inA1 = (template: FormulaTemplate, row: number, left: number): string =>
  template.map((part) => (typeof part === "string" ? part : cellAddress(row, left + part.index))).join("");

/**
 * The same with the columns held ($C7), as a table's formula keeps its meaning on every row: a column can share one formula,
 * and sorting, filling down and new rows move it along. Excel writes a column of a table so where nobody used names: shared
 * formulas, and the column's formula as it stands in the first row (a workbook by Excel among the test files of Microsoft's
 * Open XML SDK).
 */
export const inRow = (template: FormulaTemplate, row: number, left: number): string =>
  template.map((part) => (typeof part === "string" ? part : `$${cellAddress(row, left + part.index)}`)).join("");

/** Structured form, the same on every row of a table: `Caseload[[#This Row],[Last change]]`. */
export const inTable = (template: FormulaTemplate, table: string): string =>
  template
    .map((part) => (typeof part === "string" ? part : `${table}[[#This Row],[${escapedColumn(part.header)}]]`))
    .join("");
