/**
 * A workbook told as plain data (it survives JSON, so that a test can hand it to a page in a browser): what the fake
 * holds, and what the contract suite asks every host to open.
 */
import type { Cell } from "../../../src/worksheet/cell";

/** A cell with more than a value. */
export interface CellDescription {
  readonly value?: Cell;
  /** An error value in the cell, for example "#N/A". */
  readonly error?: string;
  /** With "=". The value beside it is the stored result. */
  readonly formula?: string;
  readonly format?: string;
  readonly bold?: boolean;
}

export interface TableDescription {
  readonly name: string;
  /** Header, data and totals row, for example "A3:F20". */
  readonly area: string;
  readonly hasHeader?: boolean;
  readonly hasTotals?: boolean;
  /** Sheet rows (counted from 1, as on screen) that the table's filter hides. */
  readonly filteredRows?: readonly number[];
}

export interface SheetDescription {
  readonly name: string;
  readonly kind?: "worksheet" | "chart sheet";
  readonly hidden?: boolean;
  readonly isProtected?: boolean;
  /** From A1 on, row by row. */
  readonly rows?: readonly (readonly (Cell | CellDescription)[])[];
  /** Cells by address, for what lies far from A1. */
  readonly cells?: Readonly<Record<string, Cell | CellDescription>>;
  /** Counted from 1, as on screen. */
  readonly hiddenRows?: readonly number[];
  readonly merges?: readonly string[];
  /** Areas that an array formula in their first cell fills. */
  readonly spills?: readonly string[];
  readonly tables?: readonly TableDescription[];
}

export interface NameDescription {
  readonly name: string;
  readonly refersTo: string;
  readonly value?: Cell;
}

export interface WorkbookDescription {
  readonly title?: string;
  readonly dateSystem?: 1900 | 1904 | null;
  readonly sheets: readonly SheetDescription[];
  readonly names?: readonly NameDescription[];
  readonly selection?: { readonly sheet: string; readonly area: string };
  /** Results of formulas, for hosts that do not calculate: a value, or a matrix that spills. */
  readonly results?: Readonly<Record<string, Cell | readonly (readonly Cell[])[]>>;
}
