import { LAST_COLUMN, LAST_ROW } from "../xlsx/limits";

/** Rows and columns count from 1. */
export interface Address {
  readonly row: number;
  readonly column: number;
}

export interface Range {
  readonly top: number;
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
}

const letters: string[] = [];

/** 1 is "A", 16384 is "XFD". */
export function columnLetters(column: number): string {
  const known = letters[column];
  if (known !== undefined) return known;
  let text = "";
  for (let rest = column; rest > 0; rest = Math.floor((rest - 1) / 26)) {
    text = String.fromCharCode(65 + ((rest - 1) % 26)) + text;
  }
  if (column <= LAST_COLUMN) letters[column] = text;
  return text;
}

export function addressOf(row: number, column: number): string {
  return columnLetters(column) + row;
}

/** "B12", with or without dollar signs; undefined for anything else and beyond the sheet's last row or column. */
export function parseAddress(text: string): Address | undefined {
  let at = 0;
  if (text.charCodeAt(at) === 36) at++;
  let column = 0;
  const lettersFrom = at;
  for (; at < text.length; at++) {
    const letter = text.charCodeAt(at) & ~32;
    if (letter < 65 || letter > 90) break;
    column = column * 26 + letter - 64;
  }
  if (at === lettersFrom || at - lettersFrom > 3 || column > LAST_COLUMN) return undefined;
  if (text.charCodeAt(at) === 36) at++;
  let row = 0;
  const digitsFrom = at;
  for (; at < text.length; at++) {
    const digit = text.charCodeAt(at) - 48;
    if (digit < 0 || digit > 9) return undefined;
    row = row * 10 + digit;
  }
  if (at === digitsFrom || at - digitsFrom > 7 || row < 1 || row > LAST_ROW) return undefined;
  return { row, column };
}

/** "B2:D9" or a single "B2", corners in any order. */
export function parseRange(text: string): Range | undefined {
  const colon = text.indexOf(":");
  const first = parseAddress(colon < 0 ? text : text.slice(0, colon));
  const second = colon < 0 ? first : parseAddress(text.slice(colon + 1));
  if (!first || !second) return undefined;
  return {
    top: Math.min(first.row, second.row),
    left: Math.min(first.column, second.column),
    bottom: Math.max(first.row, second.row),
    right: Math.max(first.column, second.column),
  };
}

export function rangeText(range: Range): string {
  const first = addressOf(range.top, range.left);
  const last = addressOf(range.bottom, range.right);
  return first === last ? first : `${first}:${last}`;
}

export function contains(range: Range, row: number, column: number): boolean {
  return row >= range.top && row <= range.bottom && column >= range.left && column <= range.right;
}

export function overlap(one: Range, other: Range): boolean {
  return one.top <= other.bottom && other.top <= one.bottom && one.left <= other.right && other.left <= one.right;
}
