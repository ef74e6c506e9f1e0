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
import type { Engine } from "../engine";
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
  return { edit: { ref, columns }, isLossy };
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
