/**
 * The port: all that the pane knows of a workbook. Excel and the browser's grid stand behind it (excel/, embedded/), and
 * fake/ in tests. One contract suite holds them to the same behaviour (tests/hosts/contract).
 *
 * Rows and columns are counted from 0. Things are named by identity (table name, sheet id), because addresses move.
 */
import type { Cell } from "../../src/worksheet/cell";
import type { CellError } from "../../src/worksheet/error";
import type { FormulaTemplate } from "../../src/columns/formula";
import type { SheetLook } from "../styles/added-sheets";
import type { states } from "../styles/states";

/** A rectangle of cells on a sheet. */
export interface Area {
  readonly top: number;
  readonly left: number;
  readonly rows: number;
  readonly columns: number;
}

/** A sheet's own identity, which outlives a renaming. */
export type SheetId = string;

/** Cells on a sheet, or a whole table (header, data and totals), wherever it stands now. */
export type Place = { readonly sheet: SheetId; readonly area: Area } | { readonly table: string };

export interface SheetOverview {
  readonly id: SheetId;
  readonly name: string;
  readonly kind: "worksheet" | "chart sheet";
  readonly hidden: boolean;
  readonly isProtected: boolean;
  /** The smallest rectangle that holds every cell with a value or formula; null when there is none. */
  readonly used: Area | null;
}

export interface TableOverview {
  readonly name: string;
  readonly sheet: SheetId;
  /** Header, data and totals row. */
  readonly area: Area;
  readonly columns: readonly string[];
  readonly hasHeader: boolean;
  readonly hasTotals: boolean;
  /** Rows are hidden by a filter of this table now. */
  readonly isFiltered: boolean;
}

export interface NameOverview {
  readonly name: string;
  /** As a formula, with "=". */
  readonly refersTo: string;
  /** What it stands for now, where that is one value. */
  readonly value: Cell;
}

export interface Overview {
  /** Which workbook stands here: another text once another file has been opened in its place. */
  readonly book: string;
  /** The file's name, or what the host calls the workbook. */
  readonly title: string;
  /** Day 1 is 1 January 1900 or 2 January 1904; null where the host does not tell. */
  readonly dateSystem: 1900 | 1904 | null;
  readonly sheets: readonly SheetOverview[];
  readonly tables: readonly TableOverview[];
  readonly names: readonly NameOverview[];
  /** Null where nothing is selected. */
  readonly selection: { readonly sheet: SheetId; readonly area: Area } | null;
}

/** What may be asked of cells. */
export type Facet = "values" | "formulas" | "formats" | "hidden" | "merges";

/** A value as a cell holds it: dates are day numbers, never text that the host made of them. */
export type Value = Cell | CellError;

/** Cells as they stand. A facet that was not asked for is left out. */
export interface Block {
  readonly sheet: SheetId;
  readonly area: Area;
  readonly values?: readonly (readonly Value[])[];
  /** With "="; null where a cell holds no formula. */
  readonly formulas?: readonly (readonly (string | null)[])[];
  readonly formats?: readonly (readonly string[])[];
  /** Row by row: hidden by hand or by a filter. */
  readonly hidden?: readonly boolean[];
  readonly merges?: readonly Area[];
}

/**
 * A colour for cells of a new column by what they show. The host's own kind of rule ("cell value"), so that it works in
 * every program and without the add-in; it comes and goes with the column.
 */
export type StateRule = { readonly state: keyof typeof states } & (
  | { readonly reads: string }
  /** A day before today; how formulas call today: "As_of". */
  | { readonly before: string }
);

interface ColumnHead {
  readonly header: string;
  /** A number format in Excel's own English codes, for example "d mmm yyyy". */
  readonly format: string;
  readonly rules?: readonly StateRule[];
}

export interface FormulaColumn extends ColumnHead {
  /** One formula a row. Its slots count columns of the list as it will be, added ones included. */
  readonly formula: FormulaTemplate;
  /**
   * What each row's formula gives, where it has been worked out already. A host may show it until it has worked the
   * formula out itself, or pass it over; tests hold formulas and results to the same.
   */
  readonly results?: readonly Value[];
}

export interface ValuesColumn extends ColumnHead {
  /** One for each data row, from the top. A text stays a text, whatever it looks like; null leaves a cell empty. */
  readonly values: readonly Cell[];
}

/** A column to be added at the right of a list or table. */
export type NewColumn = FormulaColumn | ValuesColumn;

/** A list without a table around it: one header row, data rows below. */
export interface PlainList {
  readonly sheet: SheetId;
  /** From the header row to the last data row. */
  readonly area: Area;
}

/** Cells of one row by their columns' headers. A text stays a text, whatever it looks like ("03-04", "1E5", "=A1"); null empties a cell (in a new row: as if it were not named). */
export type RowValues = Readonly<Record<string, Cell>>;

/** Which rows of a column a filter lets through: those whose cell holds one of these values; null stands for a blank. */
export interface Criterion {
  /** Counted from 0 within the list. */
  readonly column: number;
  readonly keeps: readonly Value[];
}

/** A cell of a sheet that is added. */
export interface SheetCell {
  /** A text stays a text, whatever it looks like. Beside a formula: its result, where it has been worked out already. */
  readonly value?: Cell;
  /** With "=", in English, A1 references. */
  readonly formula?: string;
  /** A number format in Excel's own English codes. */
  readonly format?: string;
  readonly look?: SheetLook;
}

/**
 * A chart on a sheet that is added, of columns of its cells: what stands along it in one column, a series in each of the
 * others, headers above. Excel draws it itself; a saved file holds it; the browser's grid shows its cells alone.
 */
export interface SheetChart {
  /** Columns stand on one another; bars lie; a scatter's names are numbers. */
  readonly kind: "columns" | "bars" | "lines" | "scatter";
  readonly title: string;
  /** Counted from 0: the row of the headers, how many rows stand below it, and the columns. */
  readonly header: number;
  readonly rows: number;
  readonly names: number;
  readonly series: readonly number[];
  /** The cell of its left upper corner. */
  readonly at: { readonly row: number; readonly column: number };
}

/** A sheet to be added, as data. What is left out is as in any empty sheet. */
export interface NewSheet {
  /** At most 31 characters, none of \ / ? * [ ] : and no apostrophe at either end. */
  readonly name: string;
  readonly isHidden?: boolean;
  /** Row by row from A1; null leaves a cell empty. */
  readonly cells: readonly (readonly (Cell | SheetCell)[])[];
  readonly charts?: readonly SheetChart[];
  /** From column A, in characters. */
  readonly widths?: readonly number[];
  /** Rows and columns that stay in sight. */
  readonly held?: { readonly rows: number; readonly columns: number };
  /** A4, as wide as one page. */
  readonly print?: {
    readonly landscape: boolean;
    /** Counted from 0; stands on every page. */
    readonly titleRow?: number;
    /** Plain text; page numbers are put beside it. */
    readonly footer: string;
  };
}

/** One thing to be done. More kinds come with the jobs that need them. */
export type Step =
  | {
      readonly kind: "addColumns";
      readonly to: { readonly table: string } | { readonly list: PlainList };
      readonly columns: readonly NewColumn[];
    }
  | {
      /**
       * One formula down a column that is there already, in every data row, whatever stands in it now; header, totals
       * and looks stay. Taking back gives every cell its former formula or value.
       */
      readonly kind: "refreshColumn";
      readonly to: { readonly table: string } | { readonly list: PlainList };
      /** Counted from 0 within the list. */
      readonly column: number;
      readonly formula: FormulaTemplate;
      /** As in FormulaColumn. */
      readonly results?: readonly Value[];
    }
  | {
      /**
       * Values into some cells of a column that is there already; a text stays a text. Never a cell with a formula, but
       * where formulas are to give way. Taking back gives those cells their former content and format, as long as the
       * rows stand in their order.
       */
      readonly kind: "changeColumn";
      readonly to: { readonly table: string } | { readonly list: PlainList };
      /** Counted from 0 within the list. */
      readonly column: number;
      /** One for each data row, from the top; undefined leaves a cell as it is. */
      readonly values: readonly (Cell | undefined)[];
      /** Of the cells that are changed; left out: theirs stays. */
      readonly format?: string;
      /** Formulas there give way to the values. */
      readonly overFormulas?: true;
    }
  | {
      /**
       * Formulas into cells that hold formulas now, as if somebody had typed them anew; looks stay. Taking back gives every
       * cell its former formula.
       */
      readonly kind: "reenterFormulas";
      readonly sheet: SheetId;
      /** Sheet column and first row. */
      readonly column: number;
      readonly row: number;
      /** From that row down, with "=", in English, as the host shows formulas; null leaves a cell as it is. */
      readonly formulas: readonly (string | null)[];
    }
  | {
      /** Puts one formula into one cell; a result that spills needs its neighbours empty. */
      readonly kind: "writeFormula";
      readonly sheet: SheetId;
      readonly row: number;
      readonly column: number;
      /** With "=", in English, A1 references. */
      readonly formula: string;
      readonly format?: string;
    }
  | {
      /** Left alone where a name of that spelling stands already. */
      readonly kind: "defineName";
      readonly name: string;
      /** With "=". "=TODAY()" is a plain date in the grid, renewed at opening and at midnight. */
      readonly refersTo: string;
    }
  | {
      /**
       * Rows at the end of a table, which grows by them. A column that is not named takes the column's formula where
       * it has one, and stays empty elsewhere; looks follow the row above. A table whose only row is blank but for
       * formulas is filled from that row on. Refused where the cells below are not empty, or under a totals row.
       */
      readonly kind: "appendRows";
      readonly table: string;
      readonly rows: readonly RowValues[];
    }
  | {
      /** Cells of one row of a table; columns that are not named stay as they are. Never a cell with a formula. */
      readonly kind: "changeRow";
      readonly table: string;
      /** Counted from 0 below the header. */
      readonly row: number;
      readonly values: RowValues;
    }
  | {
      /** Whole rows of a table; those below move up and the table shrinks. The last one left is emptied, not removed. */
      readonly kind: "removeRows";
      readonly table: string;
      /** Counted from 0 below the header. */
      readonly rows: readonly number[];
    }
  | {
      /** A value into the one cell that a name stands for. */
      readonly kind: "writeNamed";
      readonly name: string;
      readonly value: Cell;
    }
  | {
      /**
       * A sheet behind the last one. Nothing else of the workbook changes. Taking back removes it, as long as nobody has
       * changed it or reads it from elsewhere.
       */
      readonly kind: "addSheet";
      readonly sheet: NewSheet;
    }
  | {
      /** The host's own filter, in place of one that is on. No criteria: every row is shown again. */
      readonly kind: "showRows";
      readonly of: { readonly table: string } | { readonly list: PlainList };
      readonly criteria: readonly Criterion[];
    };

export type StepKind = Step["kind"];

/** What must still be true when a change is applied; checked before the first step. */
export type Expectation =
  | { readonly kind: "table"; readonly table: string; readonly columns: readonly string[]; readonly dataRows: number }
  | {
      readonly kind: "texts";
      readonly sheet: SheetId;
      readonly area: Area;
      /** Row by row, as texts; a blank is "". */
      readonly texts: readonly (readonly string[])[];
    }
  | { readonly kind: "empty"; readonly sheet: SheetId; readonly area: Area }
  /** That row of the table still holds these values: the person who was read back still stands there. */
  | { readonly kind: "row"; readonly table: string; readonly row: number; readonly values: RowValues };

/** What is to happen, described before it happens. The preview, Excel, the grid and the writer read the same one. */
export interface Change {
  readonly steps: readonly Step[];
  readonly expects: readonly Expectation[];
}

/** How a long work tells of itself and learns that it should stop. */
export interface Progress {
  report(done: number, of: number): void;
  readonly signal: AbortSignal;
}

/** A step that was carried out, with what takes it back. */
export interface Done {
  readonly step: Step;
  /** Where it stands on a sheet; null for names. */
  readonly place: { readonly sheet: SheetId; readonly area: Area } | null;
  /** False where nothing had to be done (a name that stood already): then nothing is taken back. */
  readonly changed: boolean;
}

/**
 * What became of a change.
 * - "done": all of it.
 * - "refused": nothing was done; the sentence says why and what to do.
 * - "stopped": somebody pressed stop, or a step failed; `done` lists what still stands (empty when all was taken back).
 */
export interface Receipt {
  readonly outcome: "done" | "refused" | "stopped";
  readonly sentence: string;
  readonly done: readonly Done[];
}

/** What became of a taking back. Where cells differ from what was written, nothing is touched until asked again with force. */
export type TakenBack =
  | { readonly outcome: "taken back" }
  | { readonly outcome: "differs"; readonly sentence: string; readonly cells: readonly string[] }
  | { readonly outcome: "failed"; readonly sentence: string };

/** What became of sorting. */
export type Sorted =
  { readonly outcome: "sorted"; readonly rows: number } | { readonly outcome: "refused"; readonly sentence: string };

export type Stop = () => void;

export interface Workbook {
  /** Whether this host can do such a step at all; or a sentence why not. */
  can(kind: StepKind): true | string;
  overview(): Promise<Overview>;
  /** Blocks of any size: a host that has a limit reads in pages by itself. */
  read(place: Place, what: readonly Facet[]): Promise<Block>;
  /** Checks `expects` first. Never throws for what a workbook can hold: it refuses with a sentence. */
  apply(change: Change, watch: Progress): Promise<Receipt>;
  takeBack(receipt: Receipt, options?: { readonly force?: boolean }): Promise<TakenBack>;
  /**
   * Whole rows of a table in the rising order of a column of numbers, formulas along. Nothing is written, so it is no
   * change: the host's own undo takes it back. Never throws: it refuses with a sentence.
   */
  sort(table: string, by: string): Promise<Sorted>;
  /** Selects and shows a place. */
  reveal(place: Place): Promise<void>;
  /** Told after anything that may have changed the overview or the selection. */
  onChange(listen: () => void): Stop;
}
