/** What a formula tells about the cells that it looks up, so that it is worked out anew when they change. */
import type { Column } from "./cells";
import type { Key } from "./criteria";

export interface Watcher {
  /** The formula in `row` asked which cells of the column hold the key. */
  keyed(row: number, column: Column, key: Key): void;
  /** Cells of `column` count where the cell beside them in `by` holds a key that was asked for. */
  via(column: Column, by: Column): void;
  /** The formula in `row` read the cell that it had found. */
  cell(row: number, column: Column, at: number): void;
  /** Any change of the column counts for every row. */
  whole(column: Column): void;
}

/** For formulas that nobody keeps. */
export const nobody: Watcher = { keyed: () => {}, via: () => {}, cell: () => {}, whole: () => {} };
