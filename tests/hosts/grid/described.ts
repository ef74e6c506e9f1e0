/** A workbook that the contract suite describes, put into the grid. */
import { CellValueType, type ICellData } from "@univerjs/core";
import { parseArea } from "../../../taskpane/workbook/area";
import type { BookFacts, TableFacts } from "../../../taskpane/workbook/embedded/book/facts";
import { gridValue } from "../../../taskpane/workbook/embedded/open/cells";
import { gridColumn } from "../../../taskpane/workbook/embedded/open/snapshot";
import type {
  CellDescription,
  SheetDescription,
  WorkbookDescription,
} from "../../../taskpane/workbook/fake/description";
import type { Area } from "../../../taskpane/workbook/port";
import type { Cell } from "../../../src/worksheet/cell";

const isDescribed = (cell: Cell | CellDescription): cell is CellDescription =>
  typeof cell === "object" && cell !== null;

function gridCell(cell: Cell | CellDescription): ICellData {
  if (!isDescribed(cell)) return gridValue(cell);
  const value = cell.error === undefined ? (cell.value ?? null) : { error: cell.error };
  return {
    ...gridValue(value),
    ...(cell.error !== undefined && { t: CellValueType.STRING }),
    ...(cell.formula !== undefined && { f: cell.formula }),
    ...((cell.format !== undefined || cell.bold) && {
      s: { ...(cell.format && { n: { pattern: cell.format } }), ...(cell.bold && { bl: 1 as const }) },
    }),
  };
}

function gridSheet(sheet: SheetDescription, id: string) {
  const cellData: Record<number, Record<number, ICellData>> = {};
  const put = (row: number, column: number, cell: Cell | CellDescription) => {
    if (cell !== null) (cellData[row] ??= {})[column] = gridCell(cell);
  };
  sheet.rows?.forEach((row, r) => row.forEach((cell, c) => put(r, c, cell)));
  for (const [address, cell] of Object.entries(sheet.cells ?? {})) {
    const { top, left } = parseArea(address)!;
    put(top, left, cell);
  }
  for (const spill of sheet.spills ?? []) {
    const { top, left, rows, columns } = parseArea(spill)!;
    for (let row = top; row < top + rows; row++)
      for (let column = left; column < left + columns; column++) {
        if (row === top && column === left) delete cellData[row]?.[column]?.v;
        else delete cellData[row]?.[column];
      }
  }
  const filtered = (sheet.tables ?? []).flatMap((table) => table.filteredRows ?? []);
  const rowData = Object.fromEntries([...(sheet.hiddenRows ?? []), ...filtered].map((row) => [row - 1, { hd: 1 }]));
  const far = Object.values(cellData).flatMap((row) => Object.keys(row).map(Number));
  return {
    id,
    name: sheet.name,
    hidden: sheet.hidden ? 1 : 0,
    rowCount: 5000,
    columnCount: Math.min(16_384, Math.max(26, ...far.map((column) => column + 5))),
    cellData,
    rowData,
    mergeData: (sheet.merges ?? []).map((merge) => gridRange(parseArea(merge)!)),
  };
}

const gridRange = (area: Area) => ({
  startRow: area.top,
  endRow: area.top + area.rows - 1,
  startColumn: area.left,
  endColumn: area.left + area.columns - 1,
});

function tablesOf(sheet: SheetDescription, id: string, text: (row: number, column: number) => string): TableFacts[] {
  return (sheet.tables ?? []).map((table, index) => {
    const area = parseArea(table.area)!;
    const columns = Array.from({ length: area.columns }, (_, c) => text(area.top, area.left + c));
    const geometry = {
      name: table.name,
      sheetName: sheet.name,
      top: area.top,
      left: area.left,
      bottom: area.top + area.rows - 1,
      columns,
      headerRows: table.hasHeader === false ? 0 : 1,
      totalsRows: table.hasTotals ? 1 : 0,
    };
    const filteredRows = (table.filteredRows ?? []).map((row) => row - 1);
    return { gridId: `${id}-table${index}`, name: table.name, sheet: id, geometry, filteredRows };
  });
}

const gridTable = ({ gridId, geometry }: TableFacts) => ({
  id: gridId,
  name: geometry.name,
  range: {
    startRow: geometry.top,
    endRow: geometry.bottom - geometry.totalsRows,
    startColumn: geometry.left,
    endColumn: geometry.left + geometry.columns.length - 1,
  },
  options: { showHeader: true, showFooter: false },
  filters: { tableColumnFilterList: [] },
  columns: geometry.columns.map((name, index) => gridColumn(`${gridId}-${index}`, name)),
  meta: {},
});

let books = 0;

export function described(description: WorkbookDescription) {
  const ids = description.sheets.map((_, index) => `sheet${index}`);
  const worksheets = description.sheets
    .map((sheet, index) => ({ sheet, id: ids[index]! }))
    .filter(({ sheet }) => sheet.kind !== "chart sheet");
  const sheets = Object.fromEntries(worksheets.map(({ sheet, id }) => [id, gridSheet(sheet, id)]));
  const tables = worksheets.flatMap(({ sheet, id }) =>
    tablesOf(sheet, id, (row, column) => String(sheets[id]!.cellData[row]?.[column]?.v ?? "")),
  );
  const names = Object.fromEntries(
    (description.names ?? []).map(({ name, refersTo }, index) => [
      `name${index}`,
      { id: `name${index}`, name, formulaOrRefString: refersTo, localSheetId: "AllDefaultWorkbook" },
    ]),
  );
  const tableResource = Object.fromEntries(
    worksheets.map(({ id }) => [
      id,
      { tables: tables.filter((table) => table.sheet === id).map(gridTable), tableFilteredOutRows: [] },
    ]),
  );
  const snapshot = {
    id: `described${books++}`,
    name: description.title ?? "Book",
    locale: "enUS",
    sheetOrder: worksheets.map(({ id }) => id),
    sheets,
    resources: [
      { name: "SHEET_DEFINED_NAME_PLUGIN", data: JSON.stringify(names) },
      { name: "SHEET_TABLE_PLUGIN", data: JSON.stringify(tableResource) },
    ],
  };
  const facts: BookFacts = {
    title: description.title ?? "Book",
    dateSystem: description.dateSystem ?? 1900,
    sheets: description.sheets.map((sheet, index) => ({
      id: ids[index]!,
      name: sheet.name,
      kind: sheet.kind ?? "worksheet",
      isHidden: sheet.hidden ?? false,
      isProtected: sheet.isProtected ?? false,
    })),
    tables,
    darkNames: [],
    todayNames: new Set(),
    keptAsValue: new Map(),
    file: null,
  };
  return { snapshot, facts };
}
