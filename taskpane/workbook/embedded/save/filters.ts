/** Hidden rows, the sheet's filter and column widths, as they differ from the file. */
import { SheetsFilterService, type IFilterColumn } from "@univerjs/sheets-filter";
import {
  parseRange,
  rangeText,
  type ColumnWidth,
  type FilterCriteria,
  type FilterEdit,
  type FilterState,
  type OpenedWorkbook,
} from "../../package";
import { TableManager, type ITableFilterItem } from "@univerjs/sheets-table";
import type { Engine } from "../engine";
import { criterionText, type HeldCriteria } from "../open/filters";
import { BLANK } from "../steps/showing";
import type { TableNow } from "../book/tables";
import type { SheetReader } from "../book/sheet-reader";
import { pixelsOfCharacters } from "../open/snapshot";
import type { GridWorkbookPort } from "../book/workbook";

export function hiddenRows(opened: OpenedWorkbook, sheetName: string, reader: SheetReader): Map<number, boolean> {
  const rows = opened.layout(sheetName).rows;
  const changed = new Map<number, boolean>();
  const count = reader.worksheet.getRowCount();
  for (let row = 0; row < count; row++) {
    const was = rows.get(row + 1)?.isHidden ?? false;
    const is = reader.isHidden(row);
    if (was !== is) changed.set(row + 1, is);
  }
  return changed;
}

export interface FilterDifference {
  readonly edit?: FilterEdit;
  /** Criteria of a kind that is not saved: the rows stay hidden all the same. */
  readonly isLossy: boolean;
  /** The file's arrows were taken away here, which is not saved. */
  readonly keepsArrows?: boolean;
}

/** A filter of the file that the grid could not hold: its criteria go once none of the rows that it hid is hidden. */
interface FromFile {
  readonly before: FilterState | undefined;
  readonly held: HeldCriteria | undefined;
  /** From 0. */
  readonly hid: readonly number[];
}

const isTakenOff = ({ before, held, hid }: FromFile, reader: SheetReader): boolean =>
  before !== undefined &&
  held === undefined &&
  hid.length > 0 &&
  hid.every((row) => reader.worksheet.getRowRawVisible(row));

/** What is to become of the file's criteria; `now` gives the grid's own of a column. */
function changedCriteria<T extends IFilterColumn | ITableFilterItem>(
  from: FromFile,
  reader: SheetReader,
  count: number,
  now: (offset: number) => T | undefined,
  asSaved: (criterion: T) => FilterCriteria | null,
): { readonly columns: Map<number, FilterCriteria | null>; readonly isLossy: boolean } {
  const columns = new Map<number, FilterCriteria | null>();
  const stated = new Set(from.before?.columns.map(({ offset }) => offset));
  const isOff = isTakenOff(from, reader);
  let isLossy = false;
  for (let offset = 0; offset < count; offset++) {
    const criterion = now(offset);
    const held = from.held?.get(offset);
    if (!criterion) {
      if (stated.has(offset) && (held !== undefined || isOff)) columns.set(offset, null);
      continue;
    }
    if (criterionText(criterion) === held) continue;
    const saved = asSaved(criterion);
    isLossy ||= saved === null;
    if (saved || stated.has(offset)) columns.set(offset, saved);
  }
  return { columns, isLossy };
}

/** The grid's own filter on a sheet. */
export function filterDifference(
  engine: Engine,
  workbook: GridWorkbookPort,
  sheetId: string,
  opened: OpenedWorkbook,
  reader: SheetReader,
): FilterDifference {
  const { unit, bookFacts, filtersAtOpening } = workbook;
  const facts = bookFacts.sheets.find(({ id }) => id === sheetId);
  const before = opened.sheets.find(({ name }) => name === facts?.name)?.filter;
  const from: FromFile = { before, held: filtersAtOpening.sheets.get(sheetId), hid: facts?.filteredRows ?? [] };
  const model = engine.injector.get(SheetsFilterService).getFilterModel(unit, sheetId);
  const { startRow, endRow, startColumn, endColumn } = model?.getRange() ?? NOWHERE;
  const count = model
    ? endColumn - startColumn + 1
    : Math.max(0, ...(before?.columns ?? []).map((one) => one.offset + 1));
  const { columns, isLossy } = changedCriteria(
    from,
    reader,
    count,
    (offset) => model?.getFilterColumn(startColumn + offset)?.getColumnData(),
    ({ filters }) => (filters ? { values: filters.filters ?? [], showsBlanks: filters.blank ?? false } : null),
  );
  if (!model) return { ...(columns.size > 0 && { edit: { columns } }), isLossy, ...(before && { keepsArrows: true }) };
  const ref = rangeText({ top: startRow + 1, left: startColumn + 1, bottom: endRow + 1, right: endColumn + 1 });
  const stands = before && parseRange(before.ref);
  const isAsItWas = stands && rangeText(stands) === ref && columns.size === 0;
  return isAsItWas ? { isLossy } : { edit: { ref, columns }, isLossy };
}

const NOWHERE = { startRow: 0, endRow: 0, startColumn: 0, endColumn: 0 };

/** A table's own filter. */
export function tableFilter(
  engine: Engine,
  workbook: GridWorkbookPort,
  { facts, area }: TableNow,
  opened: OpenedWorkbook,
  reader: SheetReader,
): FilterDifference {
  const { unit, filtersAtOpening } = workbook;
  const before = opened.tables.find((table) => table.name === facts.name)?.filter;
  const from: FromFile = { before, held: filtersAtOpening.tables.get(facts.name), hid: facts.filteredRows };
  const table = facts.gridId === null ? undefined : engine.injector.get(TableManager).getTableById(unit, facts.gridId);
  const { columns, isLossy } = changedCriteria(
    from,
    reader,
    area.columns,
    (offset) => {
      const filter = table?.getTableFilterColumn(offset);
      return filter?.filterType === "manual" && filter.isAllSelected ? undefined : filter;
    },
    (filter) => (filter.filterType === "manual" ? criteriaOf(filter.values) : null),
  );
  return { ...(columns.size > 0 && { edit: { columns } }), isLossy };
}

function criteriaOf(values: readonly unknown[]): FilterCriteria {
  const texts = new Set(values.map(String));
  const showsBlanks = texts.delete(BLANK);
  return texts.delete("") || showsBlanks ? { values: [...texts], showsBlanks: true } : { values: [...texts] };
}

/** Widths somebody dragged. */
export function columnWidths(opened: OpenedWorkbook, sheetName: string, reader: SheetReader): ColumnWidth[] {
  const spans = opened.layout(sheetName).columns;
  const data = reader.worksheet.getConfig().columnData;
  const widths: ColumnWidth[] = [];
  for (const [key, column] of Object.entries(data)) {
    const index = Number(key) + 1;
    if (column?.w === undefined || column.w === null) continue;
    const was = spans.find((span) => index >= span.first && index <= span.last)?.width;
    if (was !== undefined && pixelsOfCharacters(was) === Math.round(column.w)) continue;
    widths.push({ first: index, last: index, width: Math.round(((column.w - 5) / 7) * 100) / 100 });
  }
  return widths;
}
