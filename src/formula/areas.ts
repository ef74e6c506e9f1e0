/** Which cells an A1 reference means, and which of its parts move with the formula. Rows and columns are counted from 0. */
import { isFunctionName, type Token } from "./tokens";
import { columnNumber, isCell, isColumn, isRow, LAST_COLUMN, LAST_ROW } from "./words";

export interface Line {
  readonly at: number;
  /** With a $: the same wherever the formula stands. */
  readonly isFixed: boolean;
}

export interface Area {
  /** Null for the sheet that the formula stands on. */
  readonly sheet: string | null;
  readonly top: Line;
  readonly bottom: Line;
  readonly left: Line;
  readonly right: Line;
}

const PARTS = /^(\$?)([A-Za-z]*)(\$?)(\d*)$/;

/** A cell, or one end of A:C or 3:7, which then has no row or no column. */
export interface Corner {
  readonly row: Line | null;
  readonly column: Line | null;
}

/** $A$1, A or 1; null where it is anything else. */
function corner(word: string): Corner | null {
  if (!isCell(word) && !isColumn(word) && !isRow(word)) return null;
  const [, first, letters, second, digits] = PARTS.exec(word)! as unknown as [string, string, string, string, string];
  const column = letters === "" ? null : { at: columnNumber(letters) - 1, isFixed: first === "$" };
  const row = digits === "" ? null : { at: Number(digits) - 1, isFixed: (letters === "" ? first : second) === "$" };
  return { row, column };
}

/** A token that is a cell, or one end of A:C or 3:7. */
export function cornerAt(all: readonly Token[], at: number): Corner | null {
  const token = all[at]!;
  const next = all[at + 1];
  // LOG10( is a function, A1! a sheet, A1[ a table
  if (token.kind !== "word" || next?.text === "!" || next?.kind === "bracket" || isFunctionName(all, at)) return null;
  const one = corner(token.text);
  if (!one || (one.row && one.column)) return one;
  const beside = next?.text === ":" ? all[at + 2] : all[at - 1]?.text === ":" ? all[at - 2] : undefined;
  const other = beside?.kind === "word" ? corner(beside.text) : null;
  if (!other) return null;
  return (one.row === null) === (other.row === null) && (one.column === null) === (other.column === null) ? one : null;
}

const earlier = (a: Line, b: Line): readonly [Line, Line] => (a.at <= b.at ? [a, b] : [b, a]);
const FIRST: Line = { at: 0, isFixed: true };
const lastOf = (count: number): Line => ({ at: count - 1, isFixed: true });

/** "Sheet1", "'It''s 2'". */
const sheetName = (text: string): string => (text.startsWith("'") ? text.slice(1, -1).replaceAll("''", "'") : text);

/** @returns null for structured references, names, other workbooks, several sheets, and what was deleted (#REF!) */
export function readArea(reference: string): Area | null {
  const cut = reference.lastIndexOf("!");
  const sheet = cut < 0 ? null : sheetName(reference.slice(0, cut));
  if (sheet !== null && /[[\]:!]/.test(sheet)) return null;
  const [from, to = from, ...more] = reference.slice(cut + 1).split(":") as [string, string?];
  const [a, b] = [corner(from), corner(to)];
  if (!a || !b || more.length > 0) return null;
  if ((a.row === null) !== (b.row === null) || (a.column === null) !== (b.column === null)) return null;
  const [top, bottom] = a.row && b.row ? earlier(a.row, b.row) : [FIRST, lastOf(LAST_ROW)];
  const [left, right] = a.column && b.column ? earlier(a.column, b.column) : [FIRST, lastOf(LAST_COLUMN)];
  // a column alone is no reference: A:C is one
  if ((a.row === null || a.column === null) && !reference.includes(":")) return null;
  return { sheet, top, bottom, left, right };
}
