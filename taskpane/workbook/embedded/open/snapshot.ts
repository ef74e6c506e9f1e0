/** An opened package as a snapshot of the grid, and the facts about it that the grid has no place for. */
import {
  LocaleType,
  type IColumnData,
  type IRange,
  type IRowData,
  type IWorkbookData,
  type IWorksheetData,
} from "@univerjs/core";
import type { Sheet } from "hucre/xlsx";
import type { OpenedWorkbook, PackageSheet, PackageTable } from "../../package";
import { parseRange, type Sliced } from "../../package";
import type { BookFacts, SheetFacts, TableFacts } from "../book/facts";
import { livingNames, readNames, type Readers } from "../formulas/readable";
import type { TableGeometry } from "../formulas/structured";
import { addHeights, tallStyles } from "./heights";
import { extentsOf, isDrawn, within, type Drawn, type Extent } from "./extent";
import { FORMATTED_ROWS_BELOW, sheetCells, type SheetCells } from "./cells";
import type { Display } from "./display";
import { gridNames, isTodayName, namesLeftOut } from "./names";
import { conditionalFormats, notes, validations } from "./rules";
import { gridStyles, PADDING, styleId } from "./styles";
import { SHEET_COLUMNS, SHEET_ROWS } from "../../area";

export interface Reading {
  readonly snapshot: IWorkbookData;
  readonly facts: BookFacts;
  readonly remarks: readonly string[];
  /** Something has to be worked out at opening. */
  readonly hasLiving: boolean;
}

const LEAST_ROWS = 200;
const LEAST_COLUMNS = 26;
const SPARE_COLUMNS = 12;

const gridRange = (text: string): IRange => {
  const range = parseRange(text)!;
  return { startRow: range.top - 1, endRow: range.bottom - 1, startColumn: range.left - 1, endColumn: range.right - 1 };
};

/** Points on paper and characters of the default font, as pixels on screen (7 a character and 5 beside it). */
const pixelsOfPoints = (points: number): number => Math.round((points * 4) / 3);
export const pixelsOfCharacters = (characters: number): number => Math.round(characters * 7 + 5);

const sheetIdOf = (sheet: PackageSheet): string => `sheet${sheet.sheetId}`;

function geometryOf(table: PackageTable): TableGeometry {
  const area = gridRange(table.ref);
  return {
    name: table.name,
    sheetName: table.sheetName,
    top: area.startRow,
    left: area.startColumn,
    bottom: area.endRow,
    columns: table.columns.map((column) => column.name),
    headerRows: table.headerRowCount,
    totalsRows: table.totalsRowCount,
  };
}

/** Counted from 0, below a header. */
function hiddenRows(opened: OpenedWorkbook, sheetName: string, header: number, last: number): number[] {
  return [...opened.layout(sheetName).rows]
    .filter(([row, { isHidden }]) => isHidden && row - 1 > header && row - 1 <= last)
    .map(([row]) => row - 1);
}

/** Rows that the sheet's own filter hides. */
function filteredRows(opened: OpenedWorkbook, { name, filter }: PackageSheet): readonly number[] {
  if (!filter?.isActive || !parseRange(filter.ref)) return [];
  const { startRow, endRow } = gridRange(filter.ref);
  return hiddenRows(opened, name, startRow, endRow);
}

function tableFacts(table: PackageTable, opened: OpenedWorkbook, sheetId: string): TableFacts {
  const geometry = geometryOf(table);
  const filteredRows = table.filter?.isActive ? hiddenRows(opened, table.sheetName, geometry.top, geometry.bottom) : [];
  const gridId = geometry.headerRows > 0 ? `table${table.id}` : null;
  return { gridId, name: table.name, sheet: sheetId, geometry, filteredRows };
}

/** The grid's tables end above the totals row. */
function gridTable({ gridId, geometry }: TableFacts): object {
  return {
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
  };
}

export const gridColumn = (id: string, displayName: string) => ({
  id,
  displayName,
  dataType: "string",
  formula: "",
  meta: {},
  style: {},
});

function layoutOf(opened: OpenedWorkbook, sheetName: string, { rows: rowCount, columns: columnCount }: Drawn) {
  const layout = opened.layout(sheetName);
  const rowData: Record<number, Partial<IRowData>> = {};
  for (const [row, { isHidden, height, styleIndex }] of layout.rows) {
    if (row > rowCount) continue;
    rowData[row - 1] = {
      ...(height !== undefined && { h: pixelsOfPoints(height), ia: 0 }),
      ...(isHidden && { hd: 1 }),
      ...(styleIndex && { s: styleId(styleIndex) }),
    };
  }
  const columnData: Record<number, Partial<IColumnData>> = {};
  for (const { first, last, width, isHidden, styleIndex } of layout.columns) {
    for (let column = first; column <= Math.min(last, columnCount); column++) {
      columnData[column - 1] = {
        ...(width !== undefined && { w: pixelsOfCharacters(width) }),
        ...(isHidden && { hd: 1 }),
        ...(styleIndex && { s: styleId(styleIndex) }),
      };
    }
  }
  return {
    rowData,
    columnData,
    mergeData: within(layout.merges.map(gridRange), { rows: rowCount, columns: columnCount }),
  };
}

/** Notes may stand beyond the last value. */
function reach(
  display: Display["sheets"],
  sheetName: string,
  extent: Extent | undefined,
): { row: number; column: number } {
  const found = display.get(sheetName);
  let [row, column] = [-1, -1];
  for (const [key, cell] of found?.cells ?? []) {
    if (!cell.comment) continue;
    const [r, c] = key.split(",").map(Number) as [number, number];
    if (!isDrawn(extent, r, c)) continue;
    [row, column] = [Math.max(row, r), Math.max(column, c)];
  }
  return { row, column };
}

/** Where the arrows of the sheet's own filter stand; its criteria come afterwards (filters.ts). */
const arrowsOf = ({ filter }: PackageSheet): IRange | undefined =>
  filter && parseRange(filter.ref) ? gridRange(filter.ref) : undefined;

const filterOn = (ref: IRange) => ({ ref, filterColumns: [], cachedFilteredOut: [] });

const isHeader = (
  { startRow, startColumn, endColumn }: Pick<IRange, "startRow" | "startColumn" | "endColumn">,
  row: number,
  column: number,
): boolean => row === startRow && column >= startColumn && column <= endColumn;

/** A pane that holds more than there is would leave nothing to move. */
function paneWithin(pane: Sheet["freezePane"], { rows, columns }: Drawn): Sheet["freezePane"] {
  return pane && (pane.rows ?? 0) < rows && (pane.columns ?? 0) < columns ? pane : undefined;
}

const notDrawn = (sheetName: string, { left }: Extent): string =>
  left.count === 1
    ? `"${sheetName}": ${left.first} stands too far from the other cells to be shown here. It stays in the file; formulas that read it show their stored values.`
    : `"${sheetName}": ${left.count} cells, the first of them ${left.first}, stand too far from the others to be shown here. They stay in the file; formulas that read them show their stored values.`;

const count = (number: number, one: string, many: string): string => (number === 1 ? `1 ${one}` : `${number} ${many}`);

/** What the page knows that no file does. */
interface Here {
  readonly knowsFunction: (name: string) => boolean;
  /** As a day number. */
  readonly today: number;
}

/** In slices: a sign of life now and then, the share that is done. */
export function* readSnapshot(
  opened: OpenedWorkbook,
  display: Display,
  title: string,
  unitId: string,
  { knowsFunction, today }: Here,
): Sliced<Reading> {
  const remarks: string[] = [];
  const worksheets = opened.sheets.filter((sheet) => sheet.kind === "worksheet");
  const idByName = new Map(opened.sheets.map((sheet) => [sheet.name, sheetIdOf(sheet)]));
  const tables = opened.tables.map((table) => tableFacts(table, opened, idByName.get(table.sheetName)!));
  const geometries = tables.map((table) => table.geometry);
  const visibleNames = new Set(opened.definedNames.filter((name) => !name.isHidden));
  const extents = extentsOf(opened);
  const leftOut = namesLeftOut(opened);
  const known = { tables: geometries, knowsFunction, sheetNames: worksheets.map(({ name }) => name), extents };
  const { named, darkNames } = readNames(opened.definedNames, known, leftOut);
  const readers: Readers = { ...known, darkNames, livingNames: livingNames(named) };
  const styles = gridStyles(opened.styleCount, display, (index) => opened.numberFormat(index));

  const tall = tallStyles(styles);

  const sheets: Record<string, Partial<IWorksheetData>> = {};
  const resources: Record<"notes" | "validations" | "formats" | "tables" | "filters", Record<string, unknown>> = {
    filters: {},
    notes: {},
    validations: {},
    formats: {},
    tables: {},
  };
  const keptAsValue = new Map<string, SheetCells["keptAsValue"]>();
  let hasLiving = false;
  for (const sheet of worksheets) {
    const id = sheetIdOf(sheet);
    const extent = extents.get(sheet.name);
    const read = yield* sheetCells(opened, sheet.name, readers, extent, tall);
    if (read.keptAsValue.length > 0) keptAsValue.set(id, read.keptAsValue);
    hasLiving ||= read.hasLiving;
    const far = reach(display.sheets, sheet.name, extent);
    const own = geometries.filter((table) => table.sheetName === sheet.name);
    const lastRow = Math.max(read.lastRow, far.row, ...own.map((table) => table.bottom));
    const lastColumn = Math.max(
      read.lastColumn,
      far.column,
      ...own.map((table) => table.left + table.columns.length - 1),
    );
    const rowCount = Math.min(
      SHEET_ROWS,
      extent?.firstHiddenRow ?? Infinity,
      Math.max(LEAST_ROWS, lastRow + 1 + FORMATTED_ROWS_BELOW),
    );
    const columnCount = Math.min(
      SHEET_COLUMNS,
      extent?.firstHiddenColumn ?? Infinity,
      Math.max(LEAST_COLUMNS, lastColumn + 1 + SPARE_COLUMNS),
    );
    const drawn: Drawn = { rows: rowCount, columns: columnCount };
    const look = display.sheets.get(sheet.name);
    const pane = paneWithin(look?.freezePane, drawn);
    const layout = layoutOf(opened, sheet.name, drawn);
    const filter = arrowsOf(sheet);
    if (filter && filter.startRow < rowCount) resources.filters[id] = filterOn(filter);
    addHeights(layout.rowData, read.cells, read.tall, {
      styles,
      columns: layout.columnData,
      merges: layout.mergeData,
      hasArrow: (row, column) =>
        (filter !== undefined && isHeader(filter, row, column)) ||
        own.some((table) =>
          isHeader(
            { startRow: table.top, startColumn: table.left, endColumn: table.left + table.columns.length - 1 },
            row,
            column,
          ),
        ),
    });
    if (extent) remarks.push(notDrawn(sheet.name, extent));
    sheets[id] = {
      id,
      name: sheet.name,
      hidden: sheet.state === "visible" ? 0 : 1,
      rowCount,
      columnCount,
      cellData: read.cells,
      ...layout,
      ...(pane && {
        freeze: {
          xSplit: pane.columns ?? 0,
          ySplit: pane.rows ?? 0,
          startRow: pane.rows || -1,
          startColumn: pane.columns || -1,
        },
      }),
      showGridlines: look?.view?.showGridLines === false ? 0 : 1,
      rightToLeft: look?.view?.rightToLeft ? 1 : 0,
    } as Partial<IWorksheetData>;
    if (look) {
      resources.validations[id] = validations(look, id, drawn, opened.date1904);
      resources.formats[id] = conditionalFormats(look, id, display.themeColors, drawn, today);
      const found = notes(look, drawn);
      if (found) resources.notes[id] = found;
    }
    const gridTables = tables.filter((table) => table.sheet === id && table.gridId !== null);
    if (gridTables.length > 0) resources.tables[id] = { tables: gridTables.map(gridTable), tableFilteredOutRows: [] };
  }

  const chartSheets = opened.sheets.filter((sheet) => sheet.kind !== "worksheet");
  if (chartSheets.length > 0) {
    remarks.push(
      `${count(chartSheets.length, "chart sheet is", "chart sheets are")} not shown here and stay in the file: ${chartSheets.map((sheet) => sheet.name).join(", ")}.`,
    );
  }
  const kept = [...keptAsValue.values()].reduce((sum, cells) => sum + cells.length, 0);
  if (kept > 0) {
    remarks.push(
      `${count(kept, "formula uses", "formulas use")} something this page cannot work out. The stored values are shown and follow no change made here; the formulas stay in the file.`,
    );
  }
  if (leftOut.size > 0) {
    remarks.push(
      `${leftOut.size} of the ${opened.definedNames.length} names are not read here, because there are too many. They stay in the file; formulas that use them show their stored values.`,
    );
  }
  if (opened.hasMacros) remarks.push("The file holds macros. They stay in the file and never run here.");

  const names = gridNames(
    named.filter(({ name }) => visibleNames.has(name)),
    (sheetName) => idByName.get(sheetName),
  );
  const snapshot: IWorkbookData = {
    id: unitId,
    name: title,
    appVersion: "",
    locale: LocaleType.EN_US,
    styles,
    defaultStyle: { pd: PADDING },
    sheetOrder: worksheets.map(sheetIdOf),
    sheets,
    resources: [
      { name: "SHEET_DEFINED_NAME_PLUGIN", data: JSON.stringify(names) },
      { name: "SHEET_NOTE_PLUGIN", data: JSON.stringify(resources.notes) },
      { name: "SHEET_DATA_VALIDATION_PLUGIN", data: JSON.stringify(resources.validations) },
      { name: "SHEET_CONDITIONAL_FORMATTING_PLUGIN", data: JSON.stringify(resources.formats) },
      { name: "SHEET_TABLE_PLUGIN", data: JSON.stringify(resources.tables) },
      { name: "SHEET_FILTER_PLUGIN", data: JSON.stringify(resources.filters) },
    ],
  };
  const sheetFacts: SheetFacts[] = opened.sheets.map((sheet) => ({
    id: sheetIdOf(sheet),
    name: sheet.name,
    kind: sheet.kind === "worksheet" ? "worksheet" : "chart sheet",
    isHidden: sheet.state !== "visible",
    isProtected: sheet.isProtected,
    allowsFiltering: sheet.allowsFiltering,
    filteredRows: filteredRows(opened, sheet),
  }));
  const front = worksheets.find((sheet) => sheet.name === opened.activeSheet && sheet.state === "visible");
  const todayNames = new Set(
    named
      .filter(({ name, text }) => text !== null && isTodayName(name.name, text))
      .map(({ name }) => name.name.toLowerCase()),
  );
  const dark = [...visibleNames]
    .filter(
      ({ name }) => darkNames.has(name.toLowerCase()) && !leftOut.has(name.toLowerCase()) && !name.startsWith("_xlnm"),
    )
    .map((name) => ({ name: name.name, refersTo: `=${name.text}` }));
  return {
    snapshot,
    remarks,
    hasLiving,
    facts: {
      ...(front && { activeSheet: sheetIdOf(front) }),
      title,
      dateSystem: opened.date1904 ? 1904 : 1900,
      sheets: sheetFacts,
      tables,
      darkNames: dark,
      todayNames,
      keptAsValue,
      file: { opened, readers, styles },
    },
  };
}
