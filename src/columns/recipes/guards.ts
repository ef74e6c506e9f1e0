/** Pieces of formulas that read one cell alike in Excel and in the grid's engine. */
import type { SettingName } from "../../settings/index";
import { formula, quoted, type ColumnSlot, type FormulaTemplate } from "../formula";
import { NO_SETTING } from "../state-words";
import type { Using } from "./recipe";

/** Whether a formula points to the settings sheet for this number. */
export const isOnSheet = (written: string): boolean => !Number.isFinite(Number(written));

/** Blank or only spaces. */
export const isBlank = (cell: ColumnSlot) => formula`LEN(TRIM(${cell}))=0`;

/** Blank, spaces, or the 0 that a link to a blank cell gives: no date, no length, no volume put in. */
export const isBlankOrZero = (cell: ColumnSlot) => formula`${isBlank(cell)},EXACT(TRIM(${cell}),"0")`;

export const noDateIn = (cell: ColumnSlot) => formula`OR(${isBlankOrZero(cell)})`;

/** The cell, or "" where it is blank: a blank handed to a function arrives as 0 in some hosts. */
export const blankKept = (cell: ColumnSlot) => formula`IF(LEN(${cell})=0,"",${cell})`;

/** Looks like an ISO date: 2026-05-14 ... */
export const isIso = (cell: ColumnSlot) => formula`EXACT(MID(TRIM(${cell}),5,1)&MID(TRIM(${cell}),8,1),"--")`;

/** a,b,c as the arguments of a function. */
export const listed = (parts: readonly FormulaTemplate[]): FormulaTemplate =>
  parts.slice(1).reduce((all, part) => formula`${all},${part}`, parts[0] ?? []);

/**
 * `answer`, or a word where a cell of the settings sheet that it stands on has been emptied since: an empty cell counts
 * as 0, and a limit of 0 would call nearly everything well.
 */
export function whereSet(names: readonly SettingName[], using: Using, answer: FormulaTemplate): FormulaTemplate {
  const cells = names.map((name) => using.written(name)).filter(isOnSheet);
  return cells.length === 0
    ? answer
    : formula`IF(COUNT(${cells.join(",")})<${cells.length},${quoted(NO_SETTING)},${answer})`;
}
