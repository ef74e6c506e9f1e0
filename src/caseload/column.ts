/** A column of the caseload as data: how it looks, what may be entered, and what it works out. */
import type { Header } from "./headers";
import type { FormulaTemplate } from "../columns/formula";
import type { SheetValue } from "../columns/sheet-block";
import type { ColumnRule, Validation } from "./book";

/** Groups of columns that can be left out at set-up; what reads them then reads blanks. */
export type OptionalGroup = "fit" | "plan" | "spare";

/** A cell of the same row, by its column's header; a column that was left out reads as a blank. */
export type Slots = ((header: Header) => FormulaTemplate) & {
  /** Whether the column was not left out. */
  readonly has: (header: Header) => boolean;
};

/** By header: what is typed, and what is worked out from it. */
export type RowCells = Readonly<Record<string, SheetValue>>;

export interface CaseloadColumn {
  readonly header: Header;
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
  /** The formula names the cells of its row by their addresses: a step that only other steps read. */
  readonly isByAddress?: boolean;
  /** Typed, and read by no rule and no page; the hint on its cells says so. */
  readonly isForYouOnly?: boolean;
  readonly formula?: (cell: Slots) => FormulaTemplate;
}

export const DATE = "d mmm yyyy";
export const TEXT = "@";
export const PLAIN = "General";
export const TENTHS = "0.0";
