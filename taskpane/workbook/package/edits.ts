/**
 * What is to be changed, as data. Whatever is not mentioned keeps its bytes. Rows and columns count from 1.
 * The patcher looks after the rest by itself: dimension, spans, shared formula groups, calcChain, metadata.xml, styles.xml,
 * content types, and the table column that has to follow a header cell.
 */
import type { CellValue } from "./contents";

export interface PackageEdits {
  /** Empty ones behind the last; the other edits fill them like any other. */
  readonly newSheets?: readonly NewSheet[];
  /** By sheet name, as in `OpenedPackage.sheets`. */
  readonly sheets?: ReadonlyMap<string, SheetEdits>;
  readonly tables?: readonly TableEdit[];
  readonly definedNames?: readonly DefinedNameEdit[];
}

export interface NewSheet {
  /** Unlike every other in the workbook whatever the case; at most 31 characters. */
  readonly name: string;
  readonly isHidden?: boolean;
  /** How many rows and columns stay in sight. */
  readonly held?: { readonly rows: number; readonly columns: number };
  /** A4, as wide as one page. The footer with its codes ("&LClinic&RPage &P"). */
  readonly print?: { readonly landscape: boolean; readonly footer: string };
  /** Ranges: "A1:C1". */
  readonly merges?: readonly string[];
  readonly charts?: readonly NewChart[];
}

/** Drawn from cells of its sheet, which are named without it: "$A$4:$A$9". */
export interface NewChart {
  readonly kind: "columns" | "bars" | "lines" | "scatter";
  readonly title: string;
  readonly names: string;
  readonly series: readonly { readonly name: string; readonly values: string }[];
  /** The cell of its left upper corner, counted from 0. */
  readonly at: { readonly row: number; readonly column: number };
}

export interface SheetEdits {
  /** By address ("B2", no dollar signs). */
  readonly cells?: ReadonlyMap<string, CellEdit>;
  /** Whole stretches of a column; a cell named in `cells` too takes what `cells` says. */
  readonly fills?: readonly ColumnFill[];
  /** Rows to hide or to show, e.g. as a filter leaves them. */
  readonly hiddenRows?: ReadonlyMap<number, boolean>;
  readonly columnWidths?: readonly ColumnWidth[];
  /** The sheet's own filter. */
  readonly filter?: FilterEdit;
  /** Added behind the rules that are there, which go first. */
  readonly rules?: readonly CellRule[];
}

/** A conditional format of the kind "cell value" (ECMA-376 part 1, 18.3.1.10, cellIs). */
export type CellRule = {
  readonly range: string;
  readonly look: RuleLook;
} & ({ readonly equals: string } | { /** Formulas in file form. */ readonly between: readonly [string, string] });

/** Six hexadecimal digits each. */
export interface RuleLook {
  readonly ink: string;
  readonly ground: string;
  readonly isBold?: boolean;
  readonly isItalic?: boolean;
}

/**
 * One cell. `value` left out: content stays, only the style changes. `formula` left out: `value` is a constant
 * (a text that looks like a formula stays text). Style left out: the cell's own, or for a new cell its row's or column's.
 */
export interface CellEdit {
  readonly value?: CellValue;
  readonly formula?: FormulaEdit;
  readonly style?: StyleEdit;
}

/**
 * - `text`: a new formula in file form, without "=".
 * - `keep`: the file's formula stays and `value` is its renewed result. Also the way to renew the result of a cell that
 *   lies inside an {=old} array or a data table, or in a locked cell of a protected sheet.
 * - `spill`: the range an array now covers ("M2:N4"; its first cell is this one). The results beside the first cell are
 *   given as ordinary constants; cells of the former range that nobody mentions are emptied.
 * - `anew`: `value` stands in for a result that is not known: the next program that calculates has to work it out
 *   (attribute `ca`, ECMA-376 part 1, 18.3.1.40).
 */
export type FormulaEdit =
  | { readonly text: string; readonly spill?: string }
  | { readonly keep: true; readonly spill?: string; readonly anew?: true };

/** A style index, or a style like `from` (default: the cell's present one) with differences. */
export type StyleEdit = number | StyleChange;

export interface StyleChange {
  readonly from?: number;
  /** A format code as Excel stores it: "d mmm yyyy", "General". */
  readonly numberFormat?: string;
  readonly bold?: boolean;
  readonly italic?: boolean;
  readonly wrap?: boolean;
  readonly horizontal?: "general" | "left" | "center" | "right" | "fill" | "justify";
  /** Six hexadecimal digits, "C00000". */
  readonly fontColor?: string;
  /** Six hexadecimal digits, or null for no fill. */
  readonly fill?: string | null;
  /** What stands in the cell is a text, whatever it looks like. The patcher sees to it by itself. */
  readonly quoted?: boolean;
}

/** A column of formulas. Plain text on every row: readers differ over shared groups, none over plain text. */
export interface ColumnFill {
  readonly column: number;
  readonly firstRow: number;
  readonly lastRow: number;
  readonly formula?: FillFormula;
  /** The result of the formula in that row, or the constant. */
  valueAt(row: number): CellValue;
  readonly style?: StyleEdit;
}

/**
 * - `same`: the same text on every row (structured references).
 * - `fromFirst`: the text of the first row; the others as if filled down (relative references move).
 * - `of`: row by row; null for no formula.
 */
export type FillFormula =
  { readonly same: string } | { readonly fromFirst: string } | { of(row: number): string | null };

export interface ColumnWidth {
  readonly first: number;
  readonly last: number;
  /** In characters of the default font. */
  readonly width: number;
}

/** Criteria are replaced column by column: columns not mentioned keep theirs, whatever their kind. */
export interface FilterEdit {
  /** A new range; needed for a sheet that had no filter. Tables keep their own. */
  readonly ref?: string;
  /** By offset from the range's left edge, counted from 0; null clears that column's criteria. */
  readonly columns?: ReadonlyMap<number, FilterCriteria | null>;
  /** Takes the filter away altogether. */
  readonly remove?: boolean;
}

export interface FilterCriteria {
  /** The texts shown, as displayed. */
  readonly values: readonly string[];
  readonly showsBlanks?: boolean;
}

/** Renaming a column needs nothing here: edit its header cell, the table and the formulas that name the column follow. */
export interface TableEdit {
  /** `PackageTable.name`. */
  readonly table: string;
  /** At the right end, in this order. */
  readonly addColumns?: readonly NewTableColumn[];
  /**
   * The last data row after rows were appended below, or taken out: what stood in the rows that the table loses is for the
   * sheet's own edits to say (not for a table with a totals row).
   */
  readonly lastRow?: number;
  /** `ref` is not used: the patcher keeps it in step with the table. */
  readonly filter?: FilterEdit;
}

export interface NewTableColumn {
  /** Unique in its table whatever the case; becomes the header cell's text. */
  readonly header: string;
  readonly headerStyle?: StyleEdit;
  /** In file form: `_xldudf_TUBE_CHANGEDUE(Tubes[[#This Row],[Changed]],30)`. Also the formula of every body cell. */
  readonly calculatedColumnFormula?: string;
  /** The stored result (or the constant) on that row. Left out: the body cells are given by the sheet's own edits, or stay empty. */
  valueAt?(row: number): CellValue;
  readonly style?: StyleEdit;
  /** The cell in the totals row, if the table has one; left out: an empty cell in the neighbour's style. */
  readonly totals?: TotalsCell;
  readonly width?: number;
}

export type TotalsCell =
  | { readonly label: string; readonly style?: StyleEdit }
  | { readonly formula: string; readonly value: CellValue; readonly style?: StyleEdit };

/** Added, or changed when the name exists in that scope; text null removes it. */
export interface DefinedNameEdit {
  readonly name: string;
  readonly sheetName?: string;
  readonly text: string | null;
  readonly isHidden?: boolean;
}

export interface Patched {
  readonly bytes: Uint8Array;
  /** Parts whose content differs from the opened package, added and removed ones too. */
  readonly changedParts: readonly string[];
  readonly report: PatchReport;
}

export interface PatchReport {
  readonly cellsWritten: number;
  readonly stylesAdded: number;
  readonly addedParts: readonly string[];
  /** calcChain.xml when the set of formula cells changed: a spreadsheet program rebuilds it. */
  readonly removedParts: readonly string[];
  /** "Tubes: Chnage due is now called Change due", for the save report. */
  readonly renamedColumns: readonly { readonly table: string; readonly from: string; readonly to: string }[];
}
