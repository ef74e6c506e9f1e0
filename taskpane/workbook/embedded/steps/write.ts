/** What a change writes into the grid, step by step; everything one undo. */
import { CellValueType, type ICellData, type Styles, type Worksheet } from "@univerjs/core";
import { RemoveDefinedNameMutation, SetDefinedNameMutation } from "@univerjs/engine-formula";
import {
  SetRangeValuesMutation,
  SetWorksheetColumnCountMutation,
  SetWorksheetColWidthMutation,
} from "@univerjs/sheets";
import { SetSheetTableMutation } from "@univerjs/sheets-table";
import { inA1 } from "../../../../src/columns/formula";
import { bottom, right } from "../../area";
import type { Cell } from "../../../../src/worksheet/cell";
import { CellError } from "../../../../src/worksheet/error";
import type { Area, SheetId, Value } from "../../port";
import type { ColumnsTarget, FormulaTarget, NameTarget } from "../../change/target";
import { columnWidths, styleIds, type OneStep } from "./changes";
import type { Engine } from "../engine";
import { isMovedByEngine } from "../formulas/references";
import { WHOLE_WORKBOOK } from "../book/names";
import { gridValue } from "../open/cells";
import type { OriginStyle } from "../open/styles";
import { gridColumn, pixelsOfCharacters } from "../open/snapshot";
import { GENERAL, type SheetReader } from "../book/sheet-reader";
import { formattedName } from "../open/style-names";
import type { TableNow } from "../book/tables";

export type Cells = Record<number, Record<number, ICellData | null>>;

/** How cells looked before: what taking back restores. */
export interface Before {
  readonly sheet: SheetId;
  readonly area: Area;
  readonly styles: readonly (readonly (string | null)[])[];
  /** In pixels; null where a column has the sheet's own width. */
  readonly widths: readonly (number | null)[];
}

export interface Desk {
  readonly engine: Engine;
  readonly unitId: string;
  /** As a day number: the day of opening, renewed at midnight. */
  readonly today: number;
  readonly step: OneStep;
  readonly styles: Styles;
  reader(sheet: SheetId): SheetReader;
  sheets(): readonly Worksheet[];
  /** As it stands at this moment. */
  table(name: string): TableNow;
  /** Rows that a filter of the file hid when it was opened: of the table, or of the sheet itself. */
  filteredAtOpening(sheet: SheetId, table: TableNow | null): readonly number[];
  /** For names that have to be unlike all others of the session. */
  unique(): string;
}

const everyCell = <T>(area: Area, make: (row: number, column: number) => T): T[][] =>
  Array.from({ length: area.rows }, (_, r) =>
    Array.from({ length: area.columns }, (_, c) => make(area.top + r, area.left + c)),
  );

const cellsOf = <T extends ICellData | null>(area: Area, make: (row: number, column: number) => T): Cells => {
  const cells: Cells = {};
  for (let row = area.top; row < bottom(area); row++) {
    const columns: Record<number, ICellData | null> = {};
    for (let column = area.left; column < right(area); column++) columns[column] = make(row, column);
    cells[row] = columns;
  }
  return cells;
};

export const setCells = (unitId: string, subUnitId: string, cellValue: Cells) => ({
  id: SetRangeValuesMutation.id,
  params: { unitId, subUnitId, cellValue },
});

const emptied = (desk: Desk, sheet: SheetId, area: Area) =>
  setCells(
    desk.unitId,
    sheet,
    cellsOf(area, () => null),
  );

/** A cell's style by its id. A style that stands in the cell itself is filed first, so that it has one. */
export function idOf(desk: Desk, style: ICellData["s"] | undefined): string | null {
  if (typeof style === "string") return style;
  return style ? (desk.styles.setValue(style) ?? null) : null;
}

function look(desk: Desk, sheet: SheetId, area: Area): Before {
  const reader = desk.reader(sheet);
  const styles = everyCell(area, (row, column) => idOf(desk, reader.cell(row, column)?.s));
  const data = reader.worksheet.getConfig().columnData;
  const widths = Array.from({ length: area.columns }, (_, c) => data[area.left + c]?.w ?? null);
  return { sheet, area, styles, widths };
}

/** A longer text is cut off by its neighbour, like all texts of a list. */
const WIDEST = 40;
/** Characters of a date as we write it, "30 Nov 2026"; of a heading's button, which a table puts there; beside a word. */
const [DATE_LENGTH, BUTTON, MARGIN] = [11, 3, 2];

/** Wide enough for heading and words; a column that is wide enough already is left alone. */
function widen(desk: Desk, { sheet, area, columns }: ColumnsTarget, before: Before, reader: SheetReader): void {
  const widths = columns.map((column, i) => {
    const { header } = column;
    const results = ("values" in column ? column.values : column.results) ?? [];
    let longest = Math.max(header.length + BUTTON, DATE_LENGTH);
    for (const result of results)
      if (typeof result === "string") longest = Math.max(longest, Math.min(result.length, WIDEST) + MARGIN);
    const wanted = pixelsOfCharacters(longest);
    const now = before.widths[i] ?? reader.worksheet.getConfig().defaultColumnWidth;
    return wanted > now ? wanted : before.widths[i]!;
  });
  setWidths(desk, sheet, area.left, widths, before.widths);
}

type Widths = Before["widths"];

function setWidths(desk: Desk, sheet: SheetId, left: number, widths: Widths, undone: Widths): void {
  const ids = { unitId: desk.unitId, subUnitId: sheet };
  // The grid paints anew only on a mutation of its own, which may be about no column.
  const paint = { id: SetWorksheetColWidthMutation.id, params: { ...ids, ranges: [], colWidth: 0 } };
  desk.step.do(columnWidths({ ...ids, left, widths }), columnWidths({ ...ids, left, widths: undone }), paint);
  desk.step.do(paint);
}

/** The same style with another number format, under an id that tells both. */
export function reformatted(desk: Desk, id: string | null, format: string): string | null {
  const changed: OriginStyle = { ...(id === null ? {} : desk.styles.get(id)) };
  if (format === GENERAL) delete changed.n;
  else changed.n = { pattern: format };
  const name = formattedName(id, format);
  if (!desk.styles.get(name)) desk.styles.addCustomStyle(name, changed);
  return name;
}

/** The style of the cell beside the new columns, its column's where the cell is empty. */
function besideStyle(desk: Desk, reader: SheetReader, row: number, column: number): string | null {
  const style = reader.cell(row, column)?.s ?? reader.worksheet.getColumnStyle(column);
  return idOf(desk, style as ICellData["s"]);
}

function makeRoom(desk: Desk, sheet: SheetId, columns: number): void {
  const now = desk.reader(sheet).worksheet.getColumnCount();
  if (columns <= now) return;
  const set = (columnCount: number) => ({
    id: SetWorksheetColumnCountMutation.id,
    params: { unitId: desk.unitId, subUnitId: sheet, columnCount },
  });
  desk.step.do(set(columns), set(now));
}

/** Columns put onto a table's right end, or cut off it. */
function tableColumns(
  desk: Desk,
  operationType: "insert" | "delete",
  sheet: SheetId,
  tableId: string,
  left: number,
  headers: readonly string[],
) {
  const columnsJson = headers.map((header) => gridColumn(desk.unique(), header));
  const rowColOperation = { operationType, rowColType: "column", index: left, count: headers.length, columnsJson };
  const params = { unitId: desk.unitId, subUnitId: sheet, tableId, config: { rowColOperation } };
  return { id: SetSheetTableMutation.id, params };
}

type Ends = readonly [sheet: SheetId, tableId: string, left: number, headers: readonly string[]];

const widenTable = (desk: Desk, ...ends: Ends): void =>
  desk.step.do(tableColumns(desk, "insert", ...ends), tableColumns(desk, "delete", ...ends));

export const narrowTable = (desk: Desk, ...ends: Ends): void =>
  desk.step.do(tableColumns(desk, "delete", ...ends), tableColumns(desk, "insert", ...ends));

/** A result that was worked out before the formula came in, as a cell holds it until the engine has its own. */
export const shown = (result: Value | undefined): Pick<ICellData, "v" | "t"> => {
  if (result === undefined) return {};
  return gridValue(result instanceof CellError ? { error: result.code } : result);
};

/** A text stays a text, whatever it looks like. */
export const valueAsItIs = (value: Cell): ICellData => ({
  ...gridValue(value === "" ? null : value),
  ...(typeof value === "string" && value !== "" && { t: CellValueType.STRING }),
});

/** So many rows go into the grid at once: between two slices the page can paint and hear. */
const SLICE = 2_000;

/** Work that may wait for a breath; in order, and all of it. */
export type Later = (work: () => void) => void;

export function addColumns(desk: Desk, target: ColumnsTarget, tableId: string | null, later: Later): Before {
  const { sheet, area, data, headerRow } = target;
  makeRoom(desk, sheet, right(area));
  const before = look(desk, sheet, area);
  const reader = desk.reader(sheet);
  const headers = target.columns.map((column) => column.header);
  if (tableId !== null) widenTable(desk, sheet, tableId, area.left, headers);

  const ids = everyCell(area, (row, column) => {
    const beside = besideStyle(desk, reader, row, area.left - 1);
    const isData = row >= data.top && row < bottom(data);
    return isData ? reformatted(desk, beside, target.columns[column - area.left]!.format) : beside;
  });
  desk.step.do(
    styleIds({ unitId: desk.unitId, subUnitId: sheet, top: area.top, left: area.left, ids }),
    styleIds({ unitId: desk.unitId, subUnitId: sheet, top: area.top, left: area.left, ids: before.styles }),
  );

  widen(desk, target, before, reader);
  const groups = target.columns.map((added) =>
    "formula" in added && isMovedByEngine(inA1(added.formula, data.top, target.listLeft)) ? desk.unique() : null,
  );
  const cell = (row: number, column: number): ICellData => {
    const index = column - area.left;
    const added = target.columns[index]!;
    if (row === headerRow) return { v: added.header, t: CellValueType.STRING };
    if ("values" in added) return valueAsItIs(added.values[row - data.top] ?? null);
    const result = shown(added.results?.[row - data.top]);
    const isShared = groups[index] !== null;
    if (isShared && row > data.top) return { ...result, si: groups[index] };
    const own = { ...result, f: `=${inA1(added.formula, row, target.listLeft)}` };
    return isShared ? { ...own, si: groups[index] } : own;
  };
  for (let top = headerRow; top < bottom(data); top += SLICE) {
    const slice = { ...area, top, rows: Math.min(SLICE, bottom(data) - top) };
    later(() => desk.step.do(setCells(desk.unitId, sheet, cellsOf(slice, cell)), emptied(desk, sheet, slice)));
  }
  return before;
}

export function writeFormula(desk: Desk, target: FormulaTarget, formula: string): Before {
  const { sheet, area, step } = target;
  makeRoom(desk, sheet, right(area));
  const before = look(desk, sheet, area);
  if (step.format !== undefined) {
    const ids = [[reformatted(desk, before.styles[0]![0]!, step.format)]];
    desk.step.do(
      styleIds({ unitId: desk.unitId, subUnitId: sheet, top: area.top, left: area.left, ids }),
      styleIds({ unitId: desk.unitId, subUnitId: sheet, top: area.top, left: area.left, ids: before.styles }),
    );
  }
  const cell = { [area.top]: { [area.left]: { f: formula } } };
  desk.step.do(setCells(desk.unitId, sheet, cell), emptied(desk, sheet, area));
  return before;
}

export function defineName(desk: Desk, target: NameTarget, engineText: string): void {
  const params = {
    id: desk.unique(),
    unitId: desk.unitId,
    name: target.step.name,
    formulaOrRefString: engineText,
    localSheetId: WHOLE_WORKBOOK,
  };
  desk.step.do({ id: SetDefinedNameMutation.id, params }, { id: RemoveDefinedNameMutation.id, params });
}

/** Empties cells and gives them their former look. */
export function restore(desk: Desk, sheet: SheetId, area: Area, before: Before): void {
  const now = look(desk, sheet, area);
  const reader = desk.reader(sheet);
  const held = cellsOf(area, (row, column) => {
    const formula = reader.formula(row, column);
    if (formula !== null) return { f: formula };
    const content = { ...reader.cell(row, column) };
    delete content.s;
    return content;
  });
  const base = { unitId: desk.unitId, subUnitId: sheet, top: area.top, left: area.left };
  setWidths(desk, sheet, area.left, before.widths, now.widths);
  desk.step.do(emptied(desk, sheet, area), setCells(desk.unitId, sheet, held));
  desk.step.do(styleIds({ ...base, ids: before.styles }), styleIds({ ...base, ids: now.styles }));
}
