/** How much a row looks like the head of the rows below it: 1 certainly, 0 no telling, below 0 rather one of them. */
import { isHeaderWord } from "./header-words";
import type { SheetBlock } from "./sheet-block";

/** So many rows below are looked at; more would tell nothing new. */
const ROWS_LOOKED_AT = 200;
/** Longer texts are notes or titles. */
const LONG_TEXT = 80;

interface Body {
  readonly filled: number;
  readonly numbers: number;
  /** Texts with a digit in them. */
  readonly withDigits: number;
  readonly words: ReadonlySet<string>;
}

function bodyOf(block: SheetBlock, column: number, rows: readonly number[]): Body {
  let [filled, numbers, withDigits] = [0, 0, 0];
  const words = new Set<string>();
  for (const row of rows.slice(0, ROWS_LOOKED_AT)) {
    if (!block.isFilled(row, column)) continue;
    const value = block.at(row, column);
    filled += 1;
    if (typeof value === "number") numbers += 1;
    else if (typeof value === "string") {
      if (/\p{Nd}/u.test(value)) withDigits += 1;
      words.add(value.trim().toLowerCase());
    }
  }
  return { filled, numbers, withDigits, words };
}

function cellEvidence(head: string, body: Body): number {
  const text = head.trim();
  if (isHeaderWord(text)) return 1;
  if (text.length > LONG_TEXT) return -0.5;
  const hasDigit = /\p{Nd}/u.test(text);
  const isWord = /\p{L}/u.test(text);
  if (body.filled === 0) return isWord ? 0.3 : 0;
  if (body.words.has(text.toLowerCase())) return -1;
  if (!isWord) return -0.5;
  if (body.numbers >= 0.5 * body.filled) return hasDigit ? -0.3 : 1;
  if (body.withDigits >= 0.5 * body.filled) return hasDigit ? -1 : 1;
  const repeats = body.filled >= 6 && body.words.size <= 0.5 * body.filled;
  return repeats ? 0.6 : 0.3;
}

export interface HeaderEvidence {
  /** Columns from the first to the one behind the last with a text in this row. */
  readonly from: number;
  readonly to: number;
  /** Average over the cells that hold something. */
  readonly score: number;
  /** Share of the columns with data below that have a head. */
  readonly share: number;
}

/** Looks at a row as the head of `rows`, within columns `from` to `to`; null where it cannot be one. */
export function headerEvidence(
  block: SheetBlock,
  row: number,
  from: number,
  to: number,
  rows: readonly number[],
): HeaderEvidence | null {
  let [first, last, filled, sum, withData, headed] = [-1, -1, 0, 0, 0, 0];
  const heads = new Set<string>();
  for (let column = from; column < to; column++) {
    const head = block.headAt(row, column);
    const body = bodyOf(block, column, rows);
    if (body.filled > 0) withData += 1;
    if (head === null || (typeof head === "string" && head.trim() === "")) continue;
    if (body.filled > 0) headed += 1;
    filled += 1;
    if (first < 0) first = column;
    last = column;
    if (typeof head !== "string") {
      sum -= 1;
      continue;
    }
    heads.add(head.trim().toLowerCase());
    sum += cellEvidence(head, body);
  }
  if (filled === 0 || headed === 0) return null;
  const differing = heads.size / filled;
  return { from: first, to: last + 1, score: (sum / filled) * differing, share: headed / withData };
}
