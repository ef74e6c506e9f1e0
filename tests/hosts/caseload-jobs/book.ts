/**
 * A small caseload in memory, its people invented. Its headers are the ready-made caseload's; columns can be left out,
 * moved or added.
 */
import type { Header } from "../../../src/caseload/headers";
import { sheetNames, tableNames, type RowsTable } from "../../../src/caseload/names";
import { columnsOf } from "../../../src/caseload/tables";
import type { Cell } from "../../../src/worksheet/cell";
import { cellAddress } from "../../../src/columns/formula";
import { areaAddress } from "../../../taskpane/workbook/area";
import type {
  CellDescription,
  SheetDescription,
  WorkbookDescription,
} from "../../../taskpane/workbook/fake/description";

export type RowOf = Readonly<Record<string, Cell | CellDescription>>;

const headersOf = (table: RowsTable) => columnsOf(table, ["fit", "plan", "spare"]).map(({ header }) => header);

/** Of the ready-made caseload with all its groups. */
export const headers = { tubes: headersOf("tubes"), checks: headersOf("checks"), changes: headersOf("changes") };

export interface Parts {
  readonly tubes?: readonly RowOf[];
  readonly checks?: readonly RowOf[];
  readonly changes?: readonly RowOf[];
  /** Value by name; a name that is not given is not there. */
  readonly names?: Readonly<Record<string, Cell>>;
  readonly columns?: Partial<Readonly<Record<keyof typeof headers, readonly string[]>>>;
}

function sheet(key: keyof typeof headers, rows: readonly RowOf[], columns: readonly string[]): SheetDescription {
  const area = { top: 3, left: 0, rows: Math.max(rows.length, 1) + 1, columns: columns.length };
  return {
    name: sheetNames[key],
    rows: [["Invented"], [], [], [...columns], ...rows.map((row) => columns.map((header) => row[header] ?? null))],
    tables: [{ name: tableNames[key], area: areaAddress(area) }],
  };
}

export const caseloadBook = ({
  tubes = [],
  checks = [],
  changes = [],
  names = {},
  columns = {},
}: Parts): WorkbookDescription => ({
  title: "Invented caseload.xlsx",
  dateSystem: 1900,
  sheets: [
    { name: sheetNames.readFirst, rows: [["Invented people"]] },
    sheet("tubes", tubes, columns.tubes ?? headers.tubes),
    sheet("checks", checks, columns.checks ?? headers.checks),
    sheet("changes", changes, columns.changes ?? headers.changes),
    { name: sheetNames.settings, rows: Object.entries(names).map(([name, value]) => [name, value]) },
  ],
  names: Object.entries(names).map(([name, value], row) => ({
    name,
    refersTo: `='${sheetNames.settings}'!$B$${row + 1}`,
    value,
  })),
});

/** The address of a cell in the sheet row (from 1) of a table with all its columns. */
export const addressOf = (key: RowsTable, header: Header, sheetRow: number): string =>
  cellAddress(sheetRow - 1, headers[key].indexOf(header));
