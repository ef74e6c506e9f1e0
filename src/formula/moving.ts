/**
 * Formulas as they would stand in another cell: what filling down and right does to their references (ECMA-376 part 1,
 * 18.17.2.3). Texts, sheets' names, structured references, functions and names are left as they are.
 */
import { columnLetters } from "./addresses";
import { cornerAt, type Corner, type Line } from "./areas";
import { tokens } from "./tokens";
import { LAST_COLUMN, LAST_ROW } from "./words";

type Piece = string | Corner;

/** A formula taken apart once, to be written out for many cells. */
export class MovableFormula {
  private readonly pieces: readonly Piece[];

  constructor(formula: string) {
    const all = tokens(formula);
    const pieces: Piece[] = [];
    all.forEach((token, at) => {
      const piece = cornerAt(all, at) ?? token.text;
      const before = pieces.at(-1);
      if (typeof piece === "string" && typeof before === "string") pieces[pieces.length - 1] = before + piece;
      else pieces.push(piece);
    });
    this.pieces = pieces;
  }

  /** The text for a cell that many rows below and columns to the right. */
  moved(rows: number, columns: number): string {
    return this.written((one) => {
      const [column, row] = [movedLine(one.column, columns, LAST_COLUMN), movedLine(one.row, rows, LAST_ROW)];
      if (column === "lost" || row === "lost") return "#REF!";
      return (column ? dollar(column) + columnLetters(column.at) : "") + (row ? dollar(row) + (row.at + 1) : "");
    });
  }

  /**
   * The same text for all formulas that mean the same relative to where they stand (R1C1 style).
   * @param row the formula's own row and column, counted from 0
   */
  relative(row: number, column: number): string {
    const from = (letter: string, line: Line | null, own: number): string =>
      line === null ? "" : line.isFixed ? letter + (line.at + 1) : `${letter}[${line.at - own}]`;
    return this.written((one) => from("R", one.row, row) + from("C", one.column, column));
  }

  private written(write: (one: Corner) => string): string {
    return this.pieces.map((piece) => (typeof piece === "string" ? piece : write(piece))).join("");
  }
}

const dollar = ({ isFixed }: Line): string => (isFixed ? "$" : "");

function movedLine(line: Line | null, by: number, count: number): Line | null | "lost" {
  if (line === null || line.isFixed) return line;
  const at = line.at + by;
  return at >= 0 && at < count ? { at, isFixed: false } : "lost";
}

/** Formulas taken apart, because a group that shares one asks for it in every row. */
const apart = new Map<string, MovableFormula>();
const KEPT = 500;

function takenApart(formula: string): MovableFormula {
  let known = apart.get(formula);
  if (known) return known;
  known = new MovableFormula(formula);
  if (apart.size >= KEPT) apart.clear();
  apart.set(formula, known);
  return known;
}

/** The formula as it would stand some rows and columns further on. */
export const shifted = (formula: string, rows: number, columns: number): string =>
  rows === 0 && columns === 0 ? formula : takenApart(formula).moved(rows, columns);

/** See MovableFormula.relative. */
export const relativeForm = (formula: string, row: number, column: number): string =>
  takenApart(formula).relative(row, column);
