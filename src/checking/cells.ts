/** Cells of a row as rules read them. */
import type { RowCells } from "../columns/recipes/recipe";
import { spelled } from "../columns/spelling";
import { readDate } from "../worksheet/dates";
import { CellError } from "../worksheet/error";

type OneCell = RowCells["last"];

/** A day number; null for a blank, a text that is no date, an error. */
export function dayIn(cell: OneCell): number | null {
  if (cell === undefined || cell === null || cell instanceof CellError) return null;
  const day = readDate(cell);
  return typeof day === "number" ? day : null;
}

/** In small letters, without outer spaces; "" for a blank and for what is no word, a number with decimals too. */
export const wordIn = (cell: OneCell): string =>
  cell === undefined || cell instanceof CellError ? "" : (spelled(cell) ?? "");

/** Blank, only spaces, or the 0 that a link to a blank cell gives. */
export const isEmpty = (cell: OneCell): boolean =>
  cell === undefined || cell === null || cell === 0 || (typeof cell === "string" && cell.trim() === "");

export const numberIn = (cell: OneCell): number | null => (typeof cell === "number" ? cell : null);
