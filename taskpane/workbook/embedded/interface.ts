/**
 * What the page may do with the embedded spreadsheet. The pane knows only `workbook`, the port; the page's own bar
 * (open, save, the unsaved mark, the date setting, the selected row as text) uses the rest.
 */
import type { Watching } from "../package";
import type { Workbook } from "../port";

export type { Watching };

/** How a typed `03/04/2026` is read: day first, month first, or not at all (null: refused with a sentence). */
export type DayFirst = boolean | null;

export interface GridOptions {
  /** Today as a day number of the 1900 system (1 March 1900 is 61). The page's clock, passed in. */
  readonly today: number;
  readonly dayFirst: DayFirst;
  /** Shown to the person: why something was not done, and what to do. */
  readonly say: (sentence: string, asks?: Asks) => void;
  /** Something was typed since: what was said no longer tells of the last entry. */
  readonly hush: () => void;
}

export interface Opened {
  readonly outcome: "opened";
  readonly name: string;
  /** Sentences about what is in the file but not shown, or not to be trusted here; empty for most files. */
  readonly remarks: readonly string[];
}

/** Nothing was changed: what stood in the grid still stands there. */
export interface Refusal {
  readonly outcome: "refused";
  readonly sentence: string;
}

export interface Saved {
  readonly outcome: "saved";
  readonly bytes: Uint8Array;
  readonly name: string;
  /** Sentences a person should read: values kept because the grid could not work them out, and the like. */
  readonly report: readonly string[];
}

/** One cell of the selected row, as texts. */
export interface RowEntry {
  /** The header above it; "" where there is none. */
  readonly header: string;
  readonly value: string;
  /** For example "C14". */
  readonly address: string;
}

export interface SelectedRow {
  readonly sheet: string;
  /** As the sheet shows it, counted from 1. */
  readonly row: number;
  readonly entries: readonly RowEntry[];
}

/** A cell under the pointer; its edges in pixels of the page. */
export interface PointedAt {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  readonly left: number;
  readonly top: number;
  readonly bottom: number;
}

/** Something that only the person can answer, asked with a refusal. */
export type Asks = "which part is the day";

export interface Grid {
  readonly workbook: Workbook;
  /** Replaces what stands in the grid; refused, like saving, while the pane changes the workbook. The page asks about unsaved changes first. Bytes are taken as hostile. */
  open(bytes: Uint8Array, name: string, watching?: Watching): Promise<Opened | Refusal>;
  /** A fresh workbook with one empty sheet. */
  openEmpty(): Promise<Opened | Refusal>;
  /** Something is typed that stands in no cell yet: it counts as unsaved, and as no part of the workbook. */
  hasEntry(): boolean;
  /** Puts it into its cell. False where it was turned down: a sentence has been said why. */
  endEntry(): Promise<boolean>;
  /** The workbook as .xlsx, with the entry that is still open. Calling it does not clear the unsaved mark: call `markSaved` once the file is out. */
  save(watching?: Watching): Promise<Saved | Refusal>;
  markSaved(): void;
  isChanged(): boolean;
  /** Told when isChanged() may answer otherwise than before. Returns what stops it. */
  onChanged(listen: () => void): () => void;
  /** At midnight: the name As_of of the grid moves on. */
  setToday(serial: number): void;
  dayFirst(): DayFirst;
  setDayFirst(dayFirst: DayFirst): void;
  /** For screen readers, because the grid is a picture to them. Null where nothing is selected. */
  selectedRow(): SelectedRow | null;
  /** Told which cell the pointer rests on; null where on none. Returns what stops it. */
  onPointer(listen: (at: PointedAt | null) => void): () => void;
  /** Puts the keyboard into the grid. */
  focus(): void;
  dispose(): void;
}

/** Builds the grid inside an element that has a size. Nothing is read, sent or stored. */
export type CreateGrid = (container: HTMLElement, options: GridOptions) => Promise<Grid>;
