/**
 * A workbook to be made, described as plain data: sheets, tables, rules, names. The writer of new files turns it into
 * an .xlsx (taskpane/workbook/file), which the browser's grid and Excel open.
 *
 * Rows and columns are counted from 0. Formulas are in Excel's own English spelling, without "=", our functions as
 * `TUBE.NAME(...)`; inside a table they are templates whose slots are columns of that table.
 */
import { inRow, inTable, type FormulaTemplate } from "../columns/formula";
import type { Cell } from "../worksheet/cell";
import type { CellError } from "../worksheet/error";
import type { UrgencyClass } from "./urgency";

/** How a cell looks, by what it is; the writer knows fonts and fills. Colour never stands alone: words say it too. */
export type Look =
  | "title"
  | "lead"
  /** The line that says that the people on this sheet are invented. */
  | "invented"
  | "heading"
  /** Header of a column that is typed, chosen from a list, or worked out. */
  | "typedHeader"
  | "computedHeader"
  | "typed"
  | "computed"
  | "text"
  | "caution"
  | "setting";

/** A cell inside a table gives that one cell its own look, format or validation; its value stays that of the table's row. */
export interface CellDescription {
  readonly row: number;
  readonly column: number;
  readonly value?: Cell;
  /** The value is then the result. */
  readonly formula?: string;
  readonly look?: Look;
  /** A number format in Excel's own English codes; "@" keeps a text a text. */
  readonly format?: string;
  readonly wrap?: boolean;
  /** Columns that this cell reaches over, itself included. */
  readonly across?: number;
  readonly validation?: Validation;
}

/** What may be entered; a sentence says what to do when it is something else. */
export type Validation = (
  | { readonly kind: "list"; readonly words: readonly string[] }
  | { readonly kind: "number"; readonly least: number; readonly most: number; readonly isWhole?: boolean }
  /** A text of at most so many characters. */
  | { readonly kind: "length"; readonly most: number }
  /** A day, its time of day left aside; both ends are formulas that hold for all rows: names, numbers. */
  | { readonly kind: "date"; readonly from: string; readonly until: string }
  /** A formula that must be TRUE, written for the first cell of the range in relative A1, or a structured template. */
  | { readonly kind: "formula"; readonly formula: FormulaTemplate }
) & {
  readonly title: string;
  readonly sentence: string;
  /** "stop" refuses, "ask" lets it through after a question. */
  readonly severity: "stop" | "ask";
  /** Shown while the cell is selected. */
  readonly hint?: string;
};

/** A word in the colour of what it asks for (urgency.ts), or a cell greyed because it does not apply. */
export type RuleLook = UrgencyClass | "grey";

export interface ColumnRule {
  readonly look: RuleLook;
  /** Cells that read one of these words (or begin with one that ends in "…"), */
  readonly words?: readonly string[];
  /** or rows where this is TRUE. */
  readonly formula?: FormulaTemplate;
}

export interface TableColumn {
  readonly header: string;
  readonly width: number;
  /** A number format in Excel's own English codes. */
  readonly format: string;
  readonly kind: "typed" | "list" | "computed";
  /** For computed columns: the same on every row. */
  readonly formula?: FormulaTemplate;
  /** The formula names the cells of its row by their addresses ($C7), and the file holds it once for the column. */
  readonly isByAddress?: boolean;
  readonly validation?: Validation;
  readonly rules?: readonly ColumnRule[];
  /** Not shown, because only formulas read it. */
  readonly isHidden?: boolean;
  /** Name of the group of columns it belongs to; shown in a row above the headers. */
  readonly group?: string;
}

export interface TableDescription {
  readonly name: string;
  readonly top: number;
  readonly left: number;
  readonly columns: readonly TableColumn[];
  /** Row by row as typed; in computed columns the result of the formula. At least one row, blank where there is none. */
  readonly rows: readonly (readonly (Cell | CellError)[])[];
}

/** The formula of that column as it stands in the table's first row; one that names its cells stands so in every row. */
export function standing({ name, top, left, columns }: TableDescription, index: number): string {
  const { formula, isByAddress } = columns[index]!;
  return isByAddress ? inRow(formula!, top + 1, left) : inTable(formula!, name);
}

export interface SheetDescription {
  readonly name: string;
  readonly cells: readonly CellDescription[];
  readonly table?: TableDescription;
  /** By column; a table's columns bring their own. */
  readonly widths?: Readonly<Record<number, number>>;
  readonly frozen?: { readonly rows: number; readonly columns: number };
  readonly print?: {
    readonly landscape: boolean;
    /** Header row repeated on every page. */
    readonly titleRow?: number;
    /** So many columns from the left go to paper; left out: all. */
    readonly columns?: number;
    /** Plain text; page numbers are put beside it. */
    readonly footer: string;
  };
}

export interface NameDescription {
  readonly name: string;
  /** Without "=": "TODAY()", "'Clinic settings'!$B$7", "Balloon_checks[ID]". */
  readonly refersTo: string;
}

export interface BookDescription {
  /** What the file says of itself; never a person's name. */
  readonly title?: string;
  /** The sheet that is in sight first; left out: the first one. */
  readonly opensOn?: string;
  readonly sheets: readonly SheetDescription[];
  readonly names: readonly NameDescription[];
}
