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
import { notDrawn, remarksOf } from "./remarks";
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

type Header = Pick<IRange, "startRow" | "startColumn" | "endColumn">;

const isHeader = ({ startRow, startColumn, endColumn }: Header, row: number, column: number): boolean =>
  row === startRow && column >= startColumn && column <= endColumn;

/** A pane that holds more than there is would leave nothing to move. */
function paneWithin(pane: Sheet["freezePane"], { rows, columns }: Drawn): Sheet["freezePane"] {
  return pane && (pane.rows ?? 0) < rows && (pane.columns ?? 0) < columns ? pane : undefined;
}

const frozen = ({ rows, columns }: NonNullable<Sheet["freezePane"]>) => ({
  xSplit: columns ?? 0,
  ySplit: rows ?? 0,
  startRow: rows || -1,
  startColumn: columns || -1,
});

const lastColumnOf = ({ left, columns }: TableGeometry): number => left + columns.length - 1;

type SheetLook = NonNullable<ReturnType<Display["sheets"]["get"]>>;

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
  const worksheets = opened.sheets.filter((sheet) => sheet.kind === "worksheet");
  const idByName = new Map(opened.sheets.map((sheet) => [sheet.name, sheetIdOf(sheet)]));
  const tables = opened.tables.map((table) => tableFacts(table, opened, idByName.get(table.sheetName)!));
  const extents = extentsOf(opened);
  const leftOut = namesLeftOut(opened);
  const geometries = tables.map((table) => table.geometry);
  const known = { tables: geometries, knowsFunction, sheetNames: worksheets.map(({ name }) => name), extents };
  const { named, darkNames } = readNames(opened.definedNames, known, leftOut);
  const readers: Readers = { ...known, darkNames, livingNames: livingNames(named) };
  const styles = gridStyles(opened.styleCount, display, (index) => opened.numberFormat(index));

  const reader = new SheetsReader({ opened, display, readers, styles, tables, today });
  for (const sheet of worksheets) yield* reader.read(sheet);

  const visible = opened.definedNames.filter((name) => !name.isHidden);
  const visibleNames = new Set(visible);
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
    sheetOrder: worksheets.map(sheetIdOf),
    sheets: reader.sheets,
    resources: [{ name: "SHEET_DEFINED_NAME_PLUGIN", data: JSON.stringify(names) }, ...reader.pluginResources()],
  };
  const front = worksheets.find((sheet) => sheet.name === opened.activeSheet && sheet.state === "visible");
  const dark = visible.filter(
    ({ name }) => darkNames.has(name.toLowerCase()) && !leftOut.has(name.toLowerCase()) && !name.startsWith("_xlnm"),
  );
  return {
    snapshot,
    remarks: [...reader.remarks, ...remarksOf(opened, { kept: reader.kept, names: leftOut.size })],
    hasLiving: reader.hasLiving,
    facts: {
      ...(front && { activeSheet: sheetIdOf(front) }),
      title,
      dateSystem: opened.date1904 ? 1904 : 1900,
      sheets: opened.sheets.map((sheet) => sheetFacts(sheet, opened)),
      tables,
      darkNames: dark.map((name) => ({ name: name.name, refersTo: `=${name.text}` })),
      todayNames: new Set(
        named
          .filter(({ name, text }) => text !== null && isTodayName(name.name, text))
          .map(({ name }) => name.name.toLowerCase()),
      ),
      keptAsValue: reader.keptAsValue,
      file: { opened, readers, styles },
    },
  };
}

const sheetFacts = (sheet: PackageSheet, opened: OpenedWorkbook): SheetFacts => ({
  id: sheetIdOf(sheet),
  name: sheet.name,
  kind: sheet.kind === "worksheet" ? "worksheet" : "chart sheet",
  isHidden: sheet.state !== "visible",
  isProtected: sheet.isProtected,
  allowsFiltering: sheet.allowsFiltering,
  filteredRows: filteredRows(opened, sheet),
});

/** What all sheets of a file are read with. */
interface Book {
  readonly opened: OpenedWorkbook;
  readonly display: Display;
  readonly readers: Readers;
  readonly styles: ReturnType<typeof gridStyles>;
  readonly tables: readonly TableFacts[];
  readonly today: number;
}

/** What plugins of the grid keep of each sheet, by their names in a snapshot. */
const PLUGINS = {
  notes: "SHEET_NOTE_PLUGIN",
  validations: "SHEET_DATA_VALIDATION_PLUGIN",
  formats: "SHEET_CONDITIONAL_FORMATTING_PLUGIN",
  tables: "SHEET_TABLE_PLUGIN",
  filters: "SHEET_FILTER_PLUGIN",
} as const;
type Plugin = keyof typeof PLUGINS;

/** One worksheet after the other, as the grid and its plugins want it. */
class SheetsReader {
  readonly sheets: Record<string, Partial<IWorksheetData>> = {};
  readonly remarks: string[] = [];
  readonly keptAsValue = new Map<string, SheetCells["keptAsValue"]>();
  /** Formulas that show their stored values. */
  kept = 0;
  hasLiving = false;
  private readonly tall: ReturnType<typeof tallStyles>;
  private readonly resources: Readonly<Record<Plugin, Record<string, unknown>>> = {
    notes: {},
    validations: {},
    formats: {},
    tables: {},
    filters: {},
  };

  constructor(private readonly book: Book) {
    this.tall = tallStyles(book.styles);
  }

  pluginResources(): NonNullable<IWorkbookData["resources"]> {
    return (Object.keys(PLUGINS) as Plugin[]).map((plugin) => ({
      name: PLUGINS[plugin],
      data: JSON.stringify(this.resources[plugin]),
    }));
  }

  *read(sheet: PackageSheet): Sliced<void> {
    const { opened, display, readers } = this.book;
    const id = sheetIdOf(sheet);
    const extent = readers.extents?.get(sheet.name);
    const read = yield* sheetCells(opened, sheet.name, readers, extent, this.tall);
    if (read.keptAsValue.length > 0) this.keptAsValue.set(id, read.keptAsValue);
    this.kept += read.keptAsValue.length;
    this.hasLiving ||= read.hasLiving;
    if (extent) this.remarks.push(notDrawn(sheet.name, extent));
    const drawn = this.drawnOf(sheet, read, extent);
    const look = display.sheets.get(sheet.name);
    const pane = paneWithin(look?.freezePane, drawn);
    this.sheets[id] = {
      id,
      name: sheet.name,
      hidden: sheet.state === "visible" ? 0 : 1,
      rowCount: drawn.rows,
      columnCount: drawn.columns,
      cellData: read.cells,
      // the workbook's own is not asked for by the grid's pages (0.25.1)
      defaultStyle: { pd: PADDING },
      ...this.layoutOf(sheet, read, drawn),
      ...(pane && { freeze: frozen(pane) }),
      showGridlines: look?.view?.showGridLines === false ? 0 : 1,
      rightToLeft: look?.view?.rightToLeft ? 1 : 0,
    } as Partial<IWorksheetData>;
    this.keepForPlugins(sheet, look, drawn);
  }

  private tablesOn(sheet: PackageSheet): readonly TableFacts[] {
    return this.book.tables.filter((table) => table.geometry.sheetName === sheet.name);
  }

  /** As far as cells, notes and tables reach, and some room to type in. */
  private drawnOf(sheet: PackageSheet, read: SheetCells, extent: Extent | undefined): Drawn {
    const far = reach(this.book.display.sheets, sheet.name, extent);
    const own = this.tablesOn(sheet).map(({ geometry }) => geometry);
    const lastRow = Math.max(read.lastRow, far.row, ...own.map((table) => table.bottom));
    const lastColumn = Math.max(read.lastColumn, far.column, ...own.map(lastColumnOf));
    return {
      rows: Math.min(
        SHEET_ROWS,
        extent?.firstHiddenRow ?? Infinity,
        Math.max(LEAST_ROWS, lastRow + 1 + FORMATTED_ROWS_BELOW),
      ),
      columns: Math.min(
        SHEET_COLUMNS,
        extent?.firstHiddenColumn ?? Infinity,
        Math.max(LEAST_COLUMNS, lastColumn + 1 + SPARE_COLUMNS),
      ),
    };
  }

  /** Rows and columns with the heights that their texts need; a header with an arrow needs more. */
  private layoutOf(sheet: PackageSheet, read: SheetCells, drawn: Drawn): ReturnType<typeof layoutOf> {
    const layout = layoutOf(this.book.opened, sheet.name, drawn);
    const filter = arrowsOf(sheet);
    const headers: readonly Header[] = [
      ...(filter ? [filter] : []),
      ...this.tablesOn(sheet).map(({ geometry }) => ({
        startRow: geometry.top,
        startColumn: geometry.left,
        endColumn: lastColumnOf(geometry),
      })),
    ];
    addHeights(layout.rowData, read.cells, read.tall, {
      styles: this.book.styles,
      columns: layout.columnData,
      merges: layout.mergeData,
      hasArrow: (row, column) => headers.some((header) => isHeader(header, row, column)),
    });
    return layout;
  }

  private keepForPlugins(sheet: PackageSheet, look: SheetLook | undefined, drawn: Drawn): void {
    const { opened, display, today } = this.book;
    const { resources } = this;
    const id = sheetIdOf(sheet);
    const filter = arrowsOf(sheet);
    if (filter && filter.startRow < drawn.rows) resources.filters[id] = filterOn(filter);
    if (look) {
      resources.validations[id] = validations(look, id, drawn, opened.date1904);
      resources.formats[id] = conditionalFormats(look, id, display.themeColors, drawn, today);
      const found = notes(look, drawn);
      if (found) resources.notes[id] = found;
    }
    const tables = this.book.tables.filter((table) => table.sheet === id && table.gridId !== null);
    if (tables.length > 0) resources.tables[id] = { tables: tables.map(gridTable), tableFilteredOutRows: [] };
  }
}
