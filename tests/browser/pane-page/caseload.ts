/** The ready-made caseload with its invented people, as a workbook in memory: values stand, nothing is worked out. */
import type { SheetDescription as BookSheet } from "../../../src/caseload/book";
import { caseloadBook } from "../../../src/caseload/index";
import { sheetNames } from "../../../src/caseload/names";
import { inA1 } from "../../../src/columns/formula";
import type { Cell } from "../../../src/worksheet/cell";
import { CellError } from "../../../src/worksheet/error";
import { areaAddress } from "../../../taskpane/workbook/area";
import type {
  CellDescription,
  SheetDescription,
  WorkbookDescription,
} from "../../../taskpane/workbook/fake/description";

type Cells = (Cell | CellDescription)[][];

function put(cells: Cells, row: number, column: number, cell: Cell | CellDescription): void {
  while (cells.length <= row) cells.push([]);
  const line = cells[row]!;
  while (line.length <= column) line.push(null);
  line[column] = cell;
}

const asCell = (value: Cell | CellError, formula?: string, format?: string): CellDescription => ({
  ...(value instanceof CellError ? { error: value.code } : { value }),
  ...(formula !== undefined && { formula: `=${formula}` }),
  ...(format !== undefined && { format }),
});

function sheetOf({ name, cells, table }: BookSheet): SheetDescription {
  const rows: Cells = [];
  for (const { row, column, value = null, formula, format } of cells)
    put(rows, row, column, asCell(value, formula, format));
  if (!table) return { name, rows };
  const { top, left, columns } = table;
  columns.forEach(({ header }, c) => put(rows, top, left + c, header));
  table.rows.forEach((row, r) =>
    columns.forEach(({ formula, format }, c) =>
      put(rows, top + 1 + r, left + c, asCell(row[c] ?? null, formula && inA1(formula, top + 1 + r, left), format)),
    ),
  );
  const area = areaAddress({ top, left, rows: table.rows.length + 1, columns: columns.length });
  return { name, rows, tables: [{ name: table.name, area }] };
}

export function caseload(today: number): WorkbookDescription {
  const book = caseloadBook({ asOf: today, people: "invented", groups: ["fit", "plan", "spare"] });
  const valueOf = (refersTo: string): Cell | undefined => {
    const [, sheet, letters, row] = /^'?([^'!]+)'?!\$([A-Z]+)\$(\d+)$/.exec(refersTo) ?? [];
    if (sheet === undefined) return refersTo === "TODAY()" ? today : undefined;
    const column = [...letters!].reduce((n, letter) => 26 * n + letter.charCodeAt(0) - 64, 0) - 1;
    const cells = book.sheets.find(({ name }) => name === sheet)!.cells;
    return cells.find((cell) => cell.row === Number(row) - 1 && cell.column === column)?.value ?? null;
  };
  return {
    title: "Invented caseload.xlsx",
    dateSystem: 1900,
    sheets: book.sheets.map(sheetOf),
    names: book.names.map(({ name, refersTo }) => {
      const value = valueOf(refersTo);
      return { name, refersTo: `=${refersTo}`, ...(value !== undefined && { value }) };
    }),
    selection: { sheet: sheetNames.tubes, area: "B4" },
  };
}
