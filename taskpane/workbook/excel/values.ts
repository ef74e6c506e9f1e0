/**
 * Values written so that Excel keeps them as they are. Excel reads what it is given as if somebody had typed it: it
 * would make a date of "03-04", a number of "1E5" and "007", a formula of "=A1" and "+44". An apostrophe in front keeps
 * a text, and Excel takes it away again; a cell formatted as text keeps every text by itself, but makes one of a number
 * too. Everything is read back: nobody is told "done" of a value that Excel changed.
 */
import { CellError } from "../../../src/worksheet/error";
import { cellAddress } from "../../../src/columns/formula";
import { isSame } from "../change/expectations";
import type { Area, Value } from "../port";

export class WriteProblem extends Error {}

export const GENERAL = "General";
const TEXT = "@";

/** Cells of one row: null where a cell is left as it is. */
export type RowOfCells = readonly ({ readonly value: Value } | null)[];

/** One row of cells, of which a few are named. */
export function rowOfCells(
  columns: number,
  values: readonly { readonly column: number; readonly value: Value }[],
): RowOfCells {
  const cells = new Array<{ readonly value: Value } | null>(columns).fill(null);
  for (const { column, value } of values) cells[column] = { value };
  return cells;
}

/** What a cell was before something was written into it. */
export interface CellBefore {
  readonly value: Value;
  readonly format: string;
}

/** As it has to be handed to Excel; "" empties a cell, an error is told by its code. */
export function entry(value: Value, format: string): string | number | boolean {
  if (value === null) return "";
  if (value instanceof CellError) return value.code;
  if (typeof value !== "string" || value === "" || format === TEXT) return value;
  return `'${value}`;
}

/** A number or a date would become a text in a cell formatted as text. */
export const formatFor = (value: Value, format: string): string =>
  format === TEXT && (typeof value === "number" || typeof value === "boolean") ? GENERAL : format;

/** Excel says "" for an empty cell and for a text of no length: only the type tells them apart. */
export function valuesOf(range: Excel.Range): Value[][] {
  return range.values.map((row: (string | number | boolean)[], r) =>
    row.map((value, c) => {
      const type = range.valueTypes[r]![c];
      if (type === Excel.RangeValueType.empty) return null;
      return type === Excel.RangeValueType.error ? new CellError(String(value)) : value;
    }),
  );
}

/**
 * For a cell without a formula Excel says its value here, and that may be a text that begins with "=".
 * @param range with formulas and values loaded
 */
export const formulasOf = (range: Excel.Range): (string | null)[][] =>
  range.formulas.map((row: unknown[], r) =>
    row.map((text, c) =>
      typeof text === "string" && text.startsWith("=") && range.values[r]![c] !== text ? text : null,
    ),
  );

/** Hands over one row; the caller syncs and then calls {@link assertHolds}. */
export function writeRow(range: Excel.Range, cells: RowOfCells, formats: readonly string[]): void {
  const needed = cells.map((cell, c) => (cell ? formatFor(cell.value, formats[c]!) : null));
  /* Formats first: they decide what Excel makes of a value. Null leaves a cell alone. */
  if (needed.some((format, c) => format !== null && format !== formats[c])) range.numberFormat = [[...needed]];
  range.values = [cells.map((cell, c) => (cell ? entry(cell.value, needed[c]!) : null))];
}

export const READ_BACK = "values,valueTypes";

/** @param range with {@link READ_BACK} loaded */
export function assertHolds(range: Excel.Range, area: Area, rows: readonly RowOfCells[]): void {
  const held = valuesOf(range);
  rows.forEach((cells, r) =>
    cells.forEach((cell, c) => {
      if (cell && !isAlike(held[r]![c]!, cell.value))
        throw new WriteProblem(`Excel changed what was written into ${cellAddress(area.top + r, area.left + c)}.`);
    }),
  );
}

const isAlike = (held: Value, wanted: Value): boolean =>
  held instanceof CellError && wanted instanceof CellError ? held.code === wanted.code : isSame(held, wanted);
