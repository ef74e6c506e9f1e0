/** What stands in a workbook, as data. Rows and columns count from 1, as in A1; nothing here can be changed. */

/** A cell's value as the file holds it. Dates are their serial number; `null` is a cell without content. */
export type CellValue = number | string | boolean | null | CellError;

export interface CellError {
  /** Excel's own word: "#N/A", "#VALUE!", ... */
  readonly error: string;
}

export interface PackageSheet {
  readonly name: string;
  readonly sheetId: number;
  readonly relationshipId: string;
  readonly partName: string;
  /** "other": dialog and macro sheets. */
  readonly kind: "worksheet" | "chartsheet" | "other";
  readonly state: "visible" | "hidden" | "veryHidden";
  readonly isProtected: boolean;
  /** Rows may be filtered: always where the sheet is not protected. */
  readonly allowsFiltering: boolean;
  /** As the file states it, which may be wrong or absent. */
  readonly dimension?: string;
  /** The rectangle around the cells that are there; absent when there is none. */
  readonly usedRange?: string;
  /** The sheet's own filter; a table's filter stands with the table. */
  readonly filter?: FilterState;
}

export interface FilterState {
  readonly ref: string;
  /** At least one column has criteria, so rows may be hidden by it. */
  readonly isActive: boolean;
  readonly columns: readonly FilterColumn[];
}

export interface FilterColumn {
  /** Counted from 0 at the left edge of the filter's range, as the file does. */
  readonly offset: number;
  /** The values shown, when the criterion is a plain list; absent for any other kind. */
  readonly values?: readonly string[];
  readonly showsBlanks: boolean;
  /** One or two comparisons ("greater than 5"); absent for any other kind. */
  readonly comparisons?: FilterComparisons;
  /** What it goes by, where it is neither a plain list nor comparisons. */
  readonly by?: OtherFilter;
}

/** A list of days and months, a cell's colour or icon, the top ten, or what moves with the day or the values ("this month"). */
export type OtherFilter = "dates" | "colour" | "icon" | "top" | "moving" | "other";

export interface FilterComparisons {
  /** Both have to hold; else one of them. */
  readonly both: boolean;
  readonly each: readonly FilterComparison[];
}

/** `value` may hold the wildcards ? and * (ECMA-376 part 1, 18.3.2.2). */
export interface FilterComparison {
  readonly operator: string;
  readonly value: string;
}

export interface PackageTable {
  /** The name formulas use (`displayName`). */
  readonly name: string;
  readonly id: number;
  readonly sheetName: string;
  readonly partName: string;
  readonly ref: string;
  readonly headerRowCount: number;
  readonly totalsRowCount: number;
  readonly columns: readonly TableColumn[];
  readonly filter?: FilterState;
}

export interface TableColumn {
  readonly id: number;
  /** As in formulas and in the header cell; a line break is "\n". */
  readonly name: string;
  readonly calculatedColumnFormula?: string;
  readonly totalsRowFunction?: string;
  readonly totalsRowLabel?: string;
}

export interface DefinedName {
  readonly name: string;
  /** The sheet it belongs to; absent for the whole workbook. */
  readonly sheetName?: string;
  readonly text: string;
  readonly isHidden: boolean;
}

export interface PackageCell {
  readonly ref: string;
  readonly row: number;
  readonly column: number;
  readonly styleIndex: number;
  /** "date" is the rare ISO text form (`t="d"`): `value` is then that text. */
  readonly type: "blank" | "number" | "text" | "boolean" | "error" | "date";
  /** With a formula: its stored result. Rich text is flattened. */
  readonly value: CellValue;
  readonly formula?: CellFormula;
}

export interface CellFormula {
  /** In file form without "=", e.g. `_xldudf_TUBE_FRTOMM(B2)`. A shared formula is already written out for this very cell. */
  readonly text: string;
  readonly kind: "normal" | "shared" | "array" | "dataTable";
  /** The shared group's number. */
  readonly group?: number;
  /** Of a shared group's first cell, an array or a data table: the range it covers. */
  readonly ref?: string;
  /** An array that spills by itself (`cm` pointing to dynamic array metadata); false for {=old} arrays. */
  readonly isDynamic: boolean;
}

export interface SheetLayout {
  readonly merges: readonly string[];
  /** Only rows that say something of themselves. */
  readonly rows: ReadonlyMap<number, RowLayout>;
  readonly columns: readonly ColumnLayout[];
}

export interface RowLayout {
  readonly isHidden: boolean;
  /** In points. */
  readonly height?: number;
  /** The style of its empty cells. */
  readonly styleIndex?: number;
}

export interface ColumnLayout {
  readonly first: number;
  readonly last: number;
  /** In characters of the default font. */
  readonly width?: number;
  readonly isHidden: boolean;
  readonly styleIndex?: number;
}
