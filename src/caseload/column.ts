/** A column of the caseload as data: how it looks, what may be entered, and what it works out. */
import { formula, type FormulaTemplate } from "../columns/formula";
import type { SheetValue } from "../columns/sheet-block";
import type { ColumnRule, Validation } from "./book";
import type { Sight } from "./sight";

/** Groups of columns that can be left out at set-up; what reads them then reads blanks. */
export type OptionalGroup = "fit" | "plan" | "spare";

/** A cell of the same row, by its column's header; a column that was left out reads as a blank. */
export type Slots = ((header: string) => FormulaTemplate) & {
  /** Whether the column was not left out. */
  readonly has: (header: string) => boolean;
};

/** A row while it is worked out: typed cells, and those columns worked out so far. */
export type RowCells = Readonly<Record<string, SheetValue>>;

export interface CaseloadColumn {
  readonly header: string;
  /** Shown above the header, once for neighbours of one group. */
  readonly group?: string;
  /** Left out where this group is left out. */
  readonly onlyWith?: OptionalGroup;
  readonly kind: "typed" | "list" | "computed";
  readonly format: string;
  readonly width: number;
  readonly validation?: (cell: Slots) => Validation;
  readonly rules?: readonly ColumnRule[] | ((cell: Slots) => readonly ColumnRule[]);
  readonly isHidden?: boolean;
  /** Typed, and read by no rule and no page; the hint on its cells says so. */
  readonly isForYouOnly?: boolean;
  readonly formula?: (cell: Slots) => FormulaTemplate;
  /**
   * What the formula gives: the same rule once more, held to it by tests in the grid's engine. Of other rows it may read
   * only those of the same person, which is what working a few rows out anew stands on.
   * @param place the row's own in its table, counted from 0
   */
  readonly answer?: (row: RowCells, sight: Sight, place: number) => SheetValue;
}

export const DATE = "d mmm yyyy";
export const TEXT = "@";
export const PLAIN = "General";
export const TENTHS = "0.0";

/** LET(name,value,...,result): every cell is read once, which is what the grid's speed hangs on. */
export function letting(names: Readonly<Record<string, FormulaTemplate | string>>, result: FormulaTemplate) {
  const bound = Object.entries(names).reduce<FormulaTemplate>(
    (all, [name, value]) => formula`${all}${name},${value},`,
    [],
  );
  return formula`LET(${bound}${result})`;
}
