/**
 * Several range arguments that belong together row by row: "days" and "failed" of one device stand side by side.
 *
 * Rows that are blank in all of them are skipped; a row that is blank in some only is a fault that names the row, so
 * that no device drops out of a count unseen. Excel may hand a blank over as the number 0, so that counts as blank in a
 * row where everything else is blank or such a 0 too; a written "no" never does.
 */
import type { Cell, Matrix } from "./cell";
import type { Param } from "./define";
import { argument, fault, SheetError } from "./error";
import { numberReader, range, type NumberRule } from "./parameters";

/** A range argument read cell by cell, in reading order. */
export interface Column<V extends ArrayLike<number | string> = Float64Array | readonly string[]> {
  readonly rows: number;
  readonly columns: number;
  /** Numbers: NaN where blank, as a Float64Array because a million rows must stay light. Texts: "" where blank. */
  readonly values: V;
  /** Marks each 0 that somebody wrote as an answer ("no", "0"), which Excel cannot have made of a blank; often none. */
  readonly written?: Uint8Array | undefined;
}
export type NumberColumn = Column<Float64Array>;
export type TextColumn = Column<readonly string[]>;

const isBlank = (value: number | string): boolean => value === "" || Number.isNaN(value);
/** A 0 that Excel may have made of a blank. */
const isLooseZero = ({ values, written }: Column, i: number): boolean =>
  (values[i] === 0 || values[i] === "0") && !written?.[i];

/** "row 3", or "row 3, column 2" in a wider range. */
const place = ({ columns }: { readonly columns: number }, index: number): string =>
  columns === 1 ? `row ${index + 1}` : `row ${Math.floor(index / columns) + 1}, column ${(index % columns) + 1}`;

type CellReader = Param<number>["read"];

function readNumbers(cells: Matrix, read: CellReader): NumberColumn | SheetError {
  const rows = cells.length;
  const columns = cells[0]?.length ?? 0;
  const values = new Float64Array(rows * columns);
  let written: Uint8Array | undefined;
  let index = 0;
  for (const row of cells) {
    if (row.length !== columns) return new SheetError("must be a rectangle of cells");
    for (const cell of row) {
      const value = isEmpty(cell) ? null : read(cell);
      if (value === 0 && typeof cell !== "number") (written ??= new Uint8Array(values.length))[index] = 1;
      if (typeof value === "object" && value !== null) {
        return value.behind([`in ${place({ columns }, index)} `]);
      }
      values[index++] = value ?? NaN;
    }
  }
  return { rows, columns, values, written };
}

const isEmpty = (cell: Cell | undefined): cell is null | "" | undefined =>
  cell === null || cell === undefined || (typeof cell === "string" && cell.trim() === "");

type ColumnOptions = { readonly optional?: false; readonly unit?: string; readonly limits?: string };

/** A column read by any reader that gives numbers (dates, yes and no as 1 and 0). */
export const columnOf = (help: string, options: ColumnOptions, read: CellReader) =>
  range<NumberColumn, ColumnOptions>(help, options, (cells) => readNumbers(cells, read));

/** A column of numbers. */
export const numberColumn = (help: string, rule: NumberRule & ColumnOptions) =>
  columnOf(help, rule, numberReader(rule));

/** A column of words or identifiers, compared without regard to case and outer spaces. */
export const textColumn = (help: string) =>
  range<TextColumn, ColumnOptions>(help, {}, (cells) => {
    const columns = cells[0]?.length ?? 0;
    const values: string[] = [];
    for (const row of cells) {
      if (row.length !== columns) return new SheetError("must be a rectangle of cells");
      for (const cell of row) values.push(isEmpty(cell) ? "" : sameText(cell));
    }
    return { rows: cells.length, columns, values };
  });

/** How identifiers are compared: 7 and "7" are one, "007" is another. */
export const sameText = (cell: Exclude<Cell, null>): string => String(cell).trim().toLowerCase();

const size = ({ rows, columns }: Column): string => `${rows} x ${columns}`;

/** A sentence when the columns have different shapes. */
export function unlike(group: Readonly<Record<string, Column>>): SheetError | undefined {
  const columns = Object.entries(group);
  const [firstName, first] = columns[0]!;
  const odd = columns.find(([, { rows, columns }]) => rows !== first.rows || columns !== first.columns);
  if (!odd) return undefined;
  const [name, other] = odd;
  return fault`${argument(firstName)} has ${size(first)} cells and ${argument(name)} ${size(other)}: make them alike`;
}

export const missingIn = (name: string, column: Column, index: number): SheetError =>
  fault`${argument(name)} is missing in ${place(column, index)}`;

/**
 * The rows that are filled in all columns, by index.
 * @param group the columns by their arguments' names
 */
export function filledRows(group: Readonly<Record<string, Column>>): Uint32Array | SheetError {
  const fault = unlike(group);
  if (fault) return fault;
  const columns = Object.entries(group);
  const first = columns[0]![1];
  const count = first.values.length;
  const filled = new Uint32Array(count);
  let length = 0;
  for (let i = 0; i < count; i++) {
    let blank: string | undefined;
    for (const [name, column] of columns) {
      if (isBlank(column.values[i]!)) {
        blank = name;
        break;
      }
    }
    if (blank === undefined) filled[length++] = i;
    else if (columns.some(([, column]) => !isBlank(column.values[i]!) && !isLooseZero(column, i))) {
      return missingIn(blank, first, i);
    }
  }
  return filled.subarray(0, length);
}
