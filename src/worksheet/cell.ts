/** What a cell can hold. `null` is an empty cell or an argument left out; some hosts send "" or 0 instead. */
export type Cell = number | string | boolean | null;

/** A block of cells, row by row. Every row has the same length. */
export type Matrix<T = Cell> = readonly (readonly T[])[];
