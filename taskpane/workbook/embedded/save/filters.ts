/** Hidden rows, the sheet's filter and column widths, as they differ from the file. */
import { SheetsFilterService } from "@univerjs/sheets-filter";
import {
  parseRange,
  rangeText,
  type ColumnWidth,
  type FilterCriteria,
  type FilterEdit,
  type OpenedPackage,
} from "../../package";
import { TableManager } from "@univerjs/sheets-table";
import { bottom } from "../../area";
import type { Engine } from "../engine";
import { BLANK } from "../showing";
import type { TableNow } from "../tables";
import type { SheetReader } from "../sheetReader";
import { pixelsOfCharacters } from "../open/snapshot";

export function hiddenRows(opened: OpenedPackage, sheetName: string, reader: SheetReader): Map<number, boolean> {
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

/** The grid's own filter on a sheet, if somebody set one. */
export function filterDifference(
  engine: Engine,
  unitId: string,
  sheetId: string,
  opened: OpenedPackage,
  sheetName: string,
  isAnyRowHidden: (top: number, bottom: number) => boolean,
): FilterDifference {
  const before = opened.sheets.find((sheet) => sheet.name === sheetName)?.filter;
  const model = engine.injector.get(SheetsFilterService).getFilterModel(unitId, sheetId);
  if (!model && before && !before.isActive) return { isLossy: false, keepsArrows: true };
  if (!model) {
    const range = before?.isActive ? parseRange(before.ref) : undefined;
    // every row was shown by hand: a criterion left behind would hide them again
    if (!before || !range || isAnyRowHidden(range.top, range.bottom - 1)) return { isLossy: false };
    const columns = new Map(before.columns.map((column) => [column.offset, null]));
    return { edit: { columns }, isLossy: false };
  }
  const range = model.getRange();
  const { startRow, endRow, startColumn, endColumn } = range;
  const ref = rangeText({ top: startRow + 1, left: startColumn + 1, bottom: endRow + 1, right: endColumn + 1 });
  const columns = new Map<number, FilterCriteria | null>();
  for (const column of before?.columns ?? []) columns.set(column.offset, null);
  let isLossy = false;
  for (let column = startColumn; column <= endColumn; column++) {
    const criterion = model.getFilterColumn(column)?.getColumnData();
    if (!criterion) continue;
    if (!criterion.filters) {
      isLossy = true;
      continue;
    }
    columns.set(column - startColumn, {
      values: criterion.filters.filters ?? [],
      showsBlanks: criterion.filters.blank ?? false,
    });
  }
  const isAsItWas = before?.ref === ref && !before.isActive && columns.size === 0 && !isLossy;
  return isAsItWas ? { isLossy } : { edit: { ref, columns }, isLossy };
}

/** A table's own filter, if somebody set one, or took the file's off. */
export function tableFilter(
  engine: Engine,
  unitId: string,
  { facts, area }: TableNow,
  opened: OpenedPackage,
  isAnyRowHidden: (top: number, bottom: number) => boolean,
): FilterDifference {
  const before = opened.tables.find((table) => table.name === facts.name)?.filter;
  const held = facts.gridId === null ? undefined : engine.injector.get(TableManager).getTableById(unitId, facts.gridId);
  const columns = new Map<number, FilterCriteria | null>();
  let isLossy = false;
  for (let column = 0; column < area.columns; column++) {
    const filter = held?.getTableFilterColumn(column);
    if (filter?.filterType === "manual") {
      if (!filter.isAllSelected) columns.set(column, criteriaOf(filter.values));
    } else if (filter) isLossy = true;
  }
  const wasOn = facts.filteredRows.length > 0;
  const isOff = wasOn && !isLossy && columns.size === 0 && !isAnyRowHidden(area.top + 1, bottom(area) - 1);
  if (columns.size === 0 && !isOff) return { isLossy };
  for (const { offset } of before?.columns ?? []) if (!columns.has(offset)) columns.set(offset, null);
  return { edit: { columns }, isLossy };
}

function criteriaOf(values: readonly unknown[]): FilterCriteria {
  const texts = new Set(values.map(String));
  const showsBlanks = texts.delete(BLANK);
  return texts.delete("") || showsBlanks ? { values: [...texts], showsBlanks: true } : { values: [...texts] };
}

/** Widths somebody dragged. */
export function columnWidths(opened: OpenedPackage, sheetName: string, reader: SheetReader): ColumnWidth[] {
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
