/** How many held rows and columns leave the list under and beside them in reach. */

/** Our choice: two thirds of the height are for rows; beside the first columns at least two more are in sight. */
const MOST = { height: 0.35, width: 0.5 };

export interface Held {
  readonly rows: number;
  readonly columns: number;
}

/** The rows and columns that a sheet holds; -1 and 0 for none. */
export interface Freeze {
  readonly startRow: number;
  readonly ySplit: number;
  readonly startColumn: number;
  readonly xSplit: number;
}

/** How many of the sizes fit, one after the other. */
function fitting(sizes: readonly number[], room: number): number {
  let used = 0;
  const tooMuch = sizes.findIndex((size) => (used += size) > room);
  return tooMuch < 0 ? sizes.length : tooMuch;
}

const places = (count: number, at: (i: number) => number): readonly number[] =>
  Array.from({ length: count }, (_, i) => at(i));

/**
 * Rows are counted up from the list: its header stays longest. Columns are counted from the first on.
 * @param sizes in pixels; 0 for what is hidden
 * @param room of the whole grid, in the sheet's own pixels
 */
export function heldWithin(
  { startRow, ySplit, startColumn, xSplit }: Freeze,
  sizes: { readonly row: (at: number) => number; readonly column: (at: number) => number },
  room: { readonly height: number; readonly width: number },
): Held {
  const firstColumn = startColumn - xSplit;
  return {
    rows: fitting(
      places(ySplit, (i) => sizes.row(startRow - 1 - i)),
      room.height * MOST.height,
    ),
    columns: fitting(
      places(xSplit, (i) => sizes.column(firstColumn + i)),
      room.width * MOST.width,
    ),
  };
}
