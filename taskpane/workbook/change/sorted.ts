/** Putting the rows of a table in order: what is asked before, and which row comes where. */
import type { Area, Overview, SheetId, Value } from "../port";
import { noHeader, noTable, Refusal, unwritableSheet } from "./refusal";

export interface SortTarget {
  readonly sheet: SheetId;
  readonly table: string;
  /** The rows below the header, without totals. */
  readonly data: Area;
  /** Counted from 0 within the table. */
  readonly column: number;
}

export function sortTarget(overview: Overview, name: string, by: string): SortTarget | Refusal {
  const table = overview.tables.find((one) => one.name.toLowerCase() === name.toLowerCase());
  if (!table) return noTable(name);
  if (!table.hasHeader) return noHeader(table.name);
  const unwritable = unwritableSheet(table.sheet, overview);
  if (unwritable) return unwritable;
  const column = table.columns.indexOf(by);
  if (column < 0) return new Refusal(`The table "${table.name}" has no column "${by}". Choose the list again.`);
  if (table.isFiltered)
    return new Refusal(`A filter hides rows of "${table.name}", and they would stay. Show all rows, then try again.`);
  const { sheet, area } = table;
  return {
    sheet,
    table: table.name,
    data: { ...area, top: area.top + 1, rows: area.rows - 1 - (table.hasTotals ? 1 : 0) },
    column,
  };
}

/** Where each row comes from, counted from 0: numbers rising, then all else; what is alike stays in its order. */
export function risingOrder(values: readonly Value[]): readonly number[] {
  const place = (value: Value): number => (typeof value === "number" ? value : Number.POSITIVE_INFINITY);
  const rows = values.map((value, row) => ({ row, at: place(value) }));
  return rows.sort((a, b) => (a.at === b.at ? a.row - b.row : a.at < b.at ? -1 : 1)).map(({ row }) => row);
}
