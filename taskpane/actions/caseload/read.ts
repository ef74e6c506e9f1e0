/**
 * Reads the ready-made caseload through the port: its three tables row by row, its settings by name.
 *
 *   const found = await readCaseload(workbook);
 *   if (found.is !== "caseload") show(found.sentence);
 *   else valueIn(found.tubes.rows[0], "Held by");
 */
import type { Header } from "../../../src/caseload/headers";
import type { RowsTable } from "../../../src/caseload/names";
import type { Cell } from "../../../src/worksheet/cell";
import type { Area, Expectation, Overview, SheetId, TableOverview, Value, Workbook } from "../../workbook/port";
import { textOf } from "./cells";
import { headerKey, recogniseCaseload, requiredHeaders, type NoCaseload } from "./recognise";

/** @typeParam T its table: what is asked of a row is one of that table's headers, or it does not compile */
export interface CaseloadRow<T extends RowsTable = RowsTable> {
  readonly of: T;
  /** Counted from 0 below the header, as steps of a change count. */
  readonly index: number;
  /** From 1, as people see it beside the sheet. */
  readonly sheetRow: number;
  readonly values: ReadonlyMap<string, Value>;
}

export interface CaseloadRows<T extends RowsTable = RowsTable> {
  readonly of: T;
  /** The table's name as it stands. */
  readonly table: string;
  readonly sheet: SheetId;
  readonly sheetName: string;
  readonly area: Area;
  /** Headers as they stand. */
  readonly columns: readonly string[];
  readonly dataRows: number;
  /** Rows in which something of ours is written. */
  readonly rows: readonly CaseloadRow<T>[];
}

type AllRows = { readonly [T in RowsTable]: CaseloadRows<T> };

export interface Caseload extends AllRows {
  readonly is: "caseload";
  /** Settings and other names as they stand, by name without letter case. */
  readonly names: ReadonlyMap<string, Cell>;
}

/** What stands in a row under one of the caseload's headers; null where the column is missing. */
export const valueIn = <T extends RowsTable>(row: CaseloadRow<T>, header: Header<NoInfer<T>>): Value =>
  row.values.get(headerKey(header)) ?? null;

export const textIn = <T extends RowsTable>(row: CaseloadRow<T>, header: Header<NoInfer<T>>): string =>
  textOf(valueIn(row, header));

/** A header as it stands in the table, for writing; undefined where the column was left out. */
export const columnOf = <T extends RowsTable>(rows: CaseloadRows<T>, header: Header<NoInfer<T>>): string | undefined =>
  rows.columns.find((column) => headerKey(column) === headerKey(header));

/** A named cell's value; null for a blank and for a name that is not there. */
export const named = (names: Caseload["names"], name: string): Cell => names.get(name.toLowerCase()) ?? null;

export const namesOf = (overview: Overview): Caseload["names"] =>
  new Map(overview.names.map(({ name, value }) => [name.toLowerCase(), value]));

/** That the table still has these columns and rows. */
export const asItWas = ({ table, columns, dataRows }: CaseloadRows): Expectation => ({
  kind: "table",
  table,
  columns,
  dataRows,
});

/** Where a row stands on its sheet. */
export const placeOf = ({ sheet, area }: CaseloadRows, { index }: Pick<CaseloadRow, "index">) => ({
  sheet,
  area: { top: area.top + 1 + index, left: area.left, rows: 1, columns: area.columns },
});

export async function readCaseload(workbook: Pick<Workbook, "overview" | "read">): Promise<Caseload | NoCaseload> {
  const overview = await workbook.overview();
  const recognised = recogniseCaseload(overview);
  if (recognised.is !== "caseload") return recognised;
  const { tubes, checks, changes } = recognised.tables;
  return {
    is: "caseload",
    tubes: await readRows("tubes", tubes, overview, workbook),
    checks: await readRows("checks", checks, overview, workbook),
    changes: await readRows("changes", changes, overview, workbook),
    names: namesOf(overview),
  };
}

async function readRows<T extends RowsTable>(
  key: T,
  table: TableOverview,
  overview: Overview,
  workbook: Pick<Workbook, "read">,
): Promise<CaseloadRows<T>> {
  const { values = [], area } = await workbook.read({ table: table.name }, ["values"]);
  const dataRows = area.rows - 1 - (table.hasTotals ? 1 : 0);
  const keys = table.columns.map(headerKey);
  const rows = values.slice(1, 1 + dataRows).map((cells, index): CaseloadRow<T> => ({
    of: key,
    index,
    sheetRow: area.top + 2 + index,
    values: new Map(keys.map((header, column) => [header, cells[column] ?? null])),
  }));
  const required: readonly Header<T>[] = requiredHeaders[key];
  return {
    of: key,
    table: table.name,
    sheet: table.sheet,
    sheetName: overview.sheets.find(({ id }) => id === table.sheet)?.name ?? table.name,
    area,
    columns: table.columns,
    dataRows,
    rows: rows.filter((row) => required.some((header) => textIn<T>(row, header) !== "")),
  };
}
