/**
 * Finds the cell references in a formula's text, so that it can be moved as filling down moves it. Strings, quoted sheet
 * names, structured references, function and defined names are passed over.
 */
import { columnLetters } from "../addresses";
import { LAST_COLUMN, LAST_ROW } from "../limits";

interface Corner {
  /** Absent in a whole-row reference such as 1:3. */
  readonly column?: number;
  readonly columnIsFixed: boolean;
  /** Absent in a whole-column reference such as A:C. */
  readonly row?: number;
  readonly rowIsFixed: boolean;
}

type Piece = string | Corner;

/** A formula taken apart once, to be written out for many cells. */
export class MovableFormula {
  private readonly pieces: readonly Piece[];

  constructor(text: string) {
    this.pieces = takeApart(text);
  }

  /** The text for a cell that many rows below and columns to the right. */
  moved(rows: number, columns: number): string {
    let text = "";
    for (const piece of this.pieces) text += typeof piece === "string" ? piece : cornerText(piece, rows, columns);
    return text;
  }
}

function cornerText(corner: Corner, rows: number, columns: number): string {
  let text = "";
  if (corner.column !== undefined) {
    const column = corner.columnIsFixed ? corner.column : corner.column + columns;
    if (column < 1 || column > LAST_COLUMN) return "#REF!";
    text = (corner.columnIsFixed ? "$" : "") + columnLetters(column);
  }
  if (corner.row !== undefined) {
    const row = corner.rowIsFixed ? corner.row : corner.row + rows;
    if (row < 1 || row > LAST_ROW) return "#REF!";
    text += (corner.rowIsFixed ? "$" : "") + row;
  }
  return text;
}

function takeApart(text: string): Piece[] {
  const pieces: Piece[] = [];
  let plainFrom = 0;
  let at = 0;
  while (at < text.length) {
    const character = text[at] as string;
    if (character === '"' || character === "'") at = afterQuoted(text, at, character);
    else if (character === "[") at = afterBrackets(text, at);
    else if (isWord(text.charCodeAt(at)) || character === "$") {
      const end = afterWord(text, at);
      const corners = isCalledOrSheet(text, end) ? undefined : referenceAt(text, at, end);
      if (corners) {
        pieces.push(text.slice(plainFrom, at), ...corners.pieces);
        plainFrom = corners.end;
      }
      at = corners?.end ?? end;
    } else at++;
  }
  pieces.push(text.slice(plainFrom));
  return pieces;
}

/** After the closing quote; a doubled quote stands for itself. */
function afterQuoted(text: string, at: number, quote: string): number {
  for (let index = at + 1; index < text.length; index++) {
    if (text[index] !== quote) continue;
    if (text[index + 1] !== quote) return index + 1;
    index++;
  }
  return text.length;
}

/** After the bracket that closes this one. Inside, an apostrophe takes the next character as it stands. */
export function afterBrackets(text: string, at: number): number {
  let depth = 0;
  for (let index = at; index < text.length; index++) {
    const character = text[index];
    if (character === "'") index++;
    else if (character === "[") depth++;
    else if (character === "]" && --depth === 0) return index + 1;
  }
  return text.length;
}

function isLetter(code: number): boolean {
  return (code >= 65 && code <= 90) || (code >= 97 && code <= 122);
}

function isDigit(code: number): boolean {
  return code >= 48 && code <= 57;
}

/** Letters, digits and what else names are made of: _ . \ ? and everything beyond ASCII. */
function isWord(code: number): boolean {
  return isLetter(code) || isDigit(code) || code === 95 || code === 46 || code === 92 || code === 63 || code >= 128;
}

function afterWord(text: string, at: number): number {
  let index = at;
  while (isWord(text.charCodeAt(index)) || text[index] === "$") index++;
  return index;
}

/** LOG10( is a function, A1! a sheet, Tubes[ a table. */
function isCalledOrSheet(text: string, end: number): boolean {
  const next = text[end];
  return next === "(" || next === "!" || next === "[";
}

function referenceAt(text: string, at: number, end: number): { pieces: Piece[]; end: number } | undefined {
  const first = corner(text, at, end);
  if (!first) return undefined;
  if (first.column !== undefined && first.row !== undefined) return { pieces: [first], end };
  // A column or a row alone is a reference only as one end of A:C or 1:3.
  if (text[end] !== ":") return undefined;
  const secondEnd = afterWord(text, end + 1);
  const second = corner(text, end + 1, secondEnd);
  if (!second || isCalledOrSheet(text, secondEnd)) return undefined;
  if ((second.column === undefined) !== (first.column === undefined)) return undefined;
  if ((second.row === undefined) !== (first.row === undefined)) return undefined;
  return { pieces: [first, ":", second], end: secondEnd };
}

/** The word from `at` to `end` as $A$1, A or 1; undefined when it is anything else. */
function corner(text: string, at: number, end: number): Corner | undefined {
  let index = at;
  let dollar = text[index] === "$";
  if (dollar) index++;
  let column = 0;
  const lettersFrom = index;
  for (; index < end && isLetter(text.charCodeAt(index)); index++)
    column = column * 26 + (text.charCodeAt(index) & ~32) - 64;
  const hasColumn = index > lettersFrom;
  if (index - lettersFrom > 3 || column > LAST_COLUMN) return undefined;
  const columnIsFixed = hasColumn && dollar;
  if (hasColumn) {
    dollar = text[index] === "$" && index < end;
    if (dollar) index++;
  }
  let row = 0;
  const digitsFrom = index;
  for (; index < end && isDigit(text.charCodeAt(index)); index++) row = row * 10 + text.charCodeAt(index) - 48;
  const hasRow = index > digitsFrom;
  if (index !== end || index - digitsFrom > 7 || (hasRow && (row < 1 || row > LAST_ROW))) return undefined;
  if ((!hasColumn && !hasRow) || (dollar && hasColumn && !hasRow)) return undefined;
  return {
    ...(hasColumn ? { column } : {}),
    columnIsFixed,
    ...(hasRow ? { row } : {}),
    rowIsFixed: hasRow && dollar,
  };
}
