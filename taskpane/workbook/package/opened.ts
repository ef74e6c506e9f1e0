/** What is told of a workbook once opened. Rows and columns count from 1, as in A1. */
import type { DefinedName, PackageCell, PackageSheet, PackageTable, SheetLayout } from "./contents";
import type { WorkbookParts } from "./parts/workbook-parts";
import type { CellStore } from "./sheet/store";

/** What is told of a workbook, wherever its package is held. */
export interface OpenedWorkbook {
  /** Day 0 is 1 January 1904, not 30 December 1899: date columns are refused by the pane. */
  readonly date1904: boolean;
  /** In the order of the tabs. */
  readonly sheets: readonly PackageSheet[];
  /** The name of the sheet in front, whichever kind it is; absent where the file does not say. */
  readonly activeSheet?: string;
  readonly tables: readonly PackageTable[];
  readonly definedNames: readonly DefinedName[];
  /** Kept in the file, never run. */
  readonly hasMacros: boolean;
  readonly hasPivotTables: boolean;
  readonly hasExternalLinks: boolean;
  /** Any change would break the signature, so `patchPackage` refuses. */
  readonly isSigned: boolean;
  /** Sheets may not be added, renamed or moved in Excel without the password; cells may. */
  readonly structureIsLocked: boolean;
  /** How many cell styles there are: a style index is below this. */
  readonly styleCount: number;
  /** The number format code of a style ("General", "dd/mm/yyyy", ...; built-in ids by their en-US code). */
  numberFormat(styleIndex: number): string;
  /** Whether a cell of this style holds a text whatever it looks like (`quotePrefix`). */
  isQuoted(styleIndex: number): boolean;
  /** Whether cells of this style are locked once their sheet is protected (Excel's default: yes). */
  isLocked(styleIndex: number): boolean;
  /** The cells of a worksheet that the file mentions, row by row, read anew each time. Throws for a name that is no worksheet. */
  cells(sheetName: string): Iterable<PackageCell>;
  /** The same cells, for who goes through all of them. */
  store(sheetName: string): CellStore;
  /** Rows, columns and merged ranges of a worksheet. */
  layout(sheetName: string): SheetLayout;
  /** All parts of the package. */
  readonly partNames: readonly string[];
}

export interface OpenedPackage extends OpenedWorkbook {
  /** For `patchPackage` only. */
  readonly parts: WorkbookParts;
}
