/** A caseload as it has been read, without a workbook: for tests over many combinations of cells. */
import { tableNames, type RowsTable } from "../../../src/caseload/names";
import type { Cell } from "../../../src/worksheet/cell";
import type { Caseload, CaseloadRows } from "../../../taskpane/actions/caseload/read";
import type { Value } from "../../../taskpane/workbook/port";
import { headers } from "./book";

export type Cells = Readonly<Record<string, Value>>;

function rowsOf<T extends RowsTable>(of: T, columns: readonly string[], rows: readonly Cells[]): CaseloadRows<T> {
  const table = tableNames[of];
  return {
    of,
    table,
    sheet: table,
    sheetName: table.replaceAll("_", " "),
    area: { top: 3, left: 0, rows: rows.length + 1, columns: columns.length },
    columns,
    dataRows: rows.length,
    rows: rows.map((cells, index) => ({
      of,
      index,
      sheetRow: 5 + index,
      values: new Map(columns.map((header) => [header.toLowerCase(), cells[header] ?? null])),
    })),
  };
}

export interface InMemory {
  readonly tubes?: readonly Cells[];
  readonly checks?: readonly Cells[];
  readonly changes?: readonly Cells[];
  readonly names?: Readonly<Record<string, Cell>>;
}

export const caseloadOf = ({ tubes = [], checks = [], changes = [], names = {} }: InMemory): Caseload => ({
  is: "caseload",
  tubes: rowsOf("tubes", headers.tubes, tubes),
  checks: rowsOf("checks", headers.checks, checks),
  changes: rowsOf("changes", headers.changes, changes),
  names: new Map(Object.entries(names).map(([name, value]) => [name.toLowerCase(), value])),
});
