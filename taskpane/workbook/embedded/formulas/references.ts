/** A1 references inside formula text: moved as filling down moves them, and told apart by what they mean, not where they stand. */
import { columnLetters } from "../../../../src/columns/formula";
import { isFunctionName, tokens, type Token } from "./tokens";

const LAST_ROW = 1_048_576;
const LAST_COLUMN = 16_384;

interface Part {
  readonly column?: number;
  readonly row?: number;
  readonly fixedColumn: boolean;
  readonly fixedRow: boolean;
}

const CELL = /^(\$?)([A-Za-z]{1,3})(\$?)([1-9]\d{0,6})$/;
const COLUMN = /^(\$?)([A-Za-z]{1,3})$/;
const ROW = /^(\$?)([1-9]\d{0,6})$/;

const columnNumber = (letters: string): number =>
  [...letters.toUpperCase()].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0);

function partOf(all: readonly Token[], at: number): Part | undefined {
  const token = all[at]!;
  if (token.kind !== "word" || isFunctionName(all, at) || all[at + 1]?.text === "!") return undefined;
  const cell = CELL.exec(token.text);
  if (cell) {
    const column = columnNumber(cell[2]!);
    const row = Number(cell[4]);
    if (column > LAST_COLUMN || row > LAST_ROW) return undefined;
    return { column, row, fixedColumn: cell[1] === "$", fixedRow: cell[3] === "$" };
  }
  // A:C and 3:7 only count as halves of a range
  const other = all[at + 1]?.text === ":" ? all[at + 2] : all[at - 1]?.text === ":" ? all[at - 2] : undefined;
  if (other?.kind !== "word") return undefined;
  const column = COLUMN.exec(token.text);
  if (column && COLUMN.test(other.text) && columnNumber(column[2]!) <= LAST_COLUMN) {
    return { column: columnNumber(column[2]!), fixedColumn: column[1] === "$", fixedRow: false };
  }
  const row = ROW.exec(token.text);
  if (row && ROW.test(other.text) && Number(row[2]) <= LAST_ROW) {
    return { row: Number(row[2]), fixedColumn: false, fixedRow: row[1] === "$" };
  }
  return undefined;
}

type Piece = string | Part;

/** Formulas taken apart, because a group that shares one asks for it in every row. */
const apart = new Map<string, readonly Piece[]>();
const KEPT = 500;

function piecesOf(formula: string): readonly Piece[] {
  const known = apart.get(formula);
  if (known) return known;
  const all = tokens(formula);
  const pieces: Piece[] = [];
  all.forEach((token, at) => {
    const piece = partOf(all, at) ?? token.text;
    const before = pieces.at(-1);
    if (typeof piece === "string" && typeof before === "string") pieces[pieces.length - 1] = before + piece;
    else pieces.push(piece);
  });
  if (apart.size >= KEPT) apart.clear();
  apart.set(formula, pieces);
  return pieces;
}

const rewritten = (formula: string, write: (part: Part) => string): string =>
  piecesOf(formula)
    .map((piece) => (typeof piece === "string" ? piece : write(piece)))
    .join("");

/**
 * Whether the engine may move this formula itself, as it does for groups that share one: it drops the doubled quotes
 * inside a text (measured: ="a""b"&A1 becomes ="a"b"&A2).
 */
export const isMovedByEngine = (formula: string): boolean =>
  !formula.includes('""') ||
  tokens(formula).every((token) => token.kind !== "text" || !token.text.slice(1, -1).includes('"'));

/** The formula as it would stand some rows and columns further on. */
export function shifted(formula: string, rows: number, columns: number): string {
  if (rows === 0 && columns === 0) return formula;
  return rewritten(formula, (part) => {
    const column = part.column === undefined ? undefined : part.fixedColumn ? part.column : part.column + columns;
    const row = part.row === undefined ? undefined : part.fixedRow ? part.row : part.row + rows;
    if (
      (column !== undefined && (column < 1 || column > LAST_COLUMN)) ||
      (row !== undefined && (row < 1 || row > LAST_ROW))
    )
      return "#REF!";
    const columnText = column === undefined ? "" : (part.fixedColumn ? "$" : "") + columnLetters(column - 1);
    const rowText = row === undefined ? "" : (part.fixedRow ? "$" : "") + row;
    return columnText + rowText;
  });
}

/**
 * The same text for all formulas that mean the same relative to where they stand (R1C1 style).
 * @param row the formula's own row and column, counted from 0
 */
export const relativeForm = (formula: string, row: number, column: number): string =>
  rewritten(formula, (part) => {
    const rowText = part.row === undefined ? "" : part.fixedRow ? `R${part.row}` : `R[${part.row - row - 1}]`;
    const columnText =
      part.column === undefined ? "" : part.fixedColumn ? `C${part.column}` : `C[${part.column - column - 1}]`;
    return rowText + columnText;
  });

export interface ReferredArea {
  /** Undefined: the formula's own sheet. */
  readonly sheetName: string | undefined;
  /** Counted from 1; a whole column ends at the last row of a sheet. */
  readonly bottom: number;
  readonly right: number;
}

/** The cells and ranges that a formula names, as far as their ends go. */
export function referredAreas(formula: string): readonly ReferredArea[] {
  const all = tokens(formula);
  const areas: ReferredArea[] = [];
  all.forEach((_, at) => {
    const part = partOf(all, at);
    if (!part) return;
    const start = all[at - 1]?.text === ":" ? at - 2 : at;
    const sheet = all[start - 1]?.text === "!" ? all[start - 2] : undefined;
    const sheetName = sheet?.text.replace(/^'|'$/g, "").replaceAll("''", "'");
    areas.push({ sheetName, bottom: part.row ?? LAST_ROW, right: part.column ?? LAST_COLUMN });
  });
  return areas;
}
