/**
 * Rows shown and hidden by the grid's own filter: a table's where there is a table, else the sheet's. Whatever filtered
 * the same rows before gives way, hidden rows of the file's filter too.
 */
import type { IMutationInfo } from "@univerjs/core";
import { SetRowHiddenMutation, SetRowVisibleMutation } from "@univerjs/sheets";
import {
  RemoveSheetsFilterMutation,
  SetSheetsFilterCriteriaMutation,
  SetSheetsFilterRangeMutation,
  SheetsFilterService,
  type IFilterColumn,
} from "@univerjs/sheets-filter";
import { SetSheetTableFilterMutation, TableManager, type ITableFilterItem } from "@univerjs/sheets-table";
import { bottom, overlaps, right } from "../../area";
import { asText } from "../../change/expectations";
import type { Area, Criterion } from "../../port";
import { lets, type ShowRowsTarget } from "../../change/target";
import { areaOf, type SheetReader } from "../book/sheet-reader";
import type { TableNow } from "../book/tables";
import type { Desk } from "./write";

/** How the grid's table filter names a blank (0.25.1). */
export const BLANK = "__UNIVER_TABLE_FILTER_EMPTY__";

interface Shown {
  readonly column: number;
  /** As the cells show them: that is what filters compare. */
  readonly texts: readonly (string | number)[];
  readonly blank: boolean;
}

function shownBy(criterion: Criterion, reader: SheetReader, area: Area): Shown {
  const column = area.left + criterion.column;
  const texts = new Set<string | number>();
  for (const value of criterion.keeps) if (typeof value === "string" && value !== "") texts.add(value);
  for (let row = area.top + 1; row < bottom(area); row++) {
    const value = reader.value(row, column);
    if (asText(value) !== "" && lets(criterion, value)) texts.add(reader.shownText(row, column));
  }
  return { column: criterion.column, texts: [...texts], blank: criterion.keeps.some((value) => asText(value) === "") };
}

/** @returns what shows the rows as before */
export function showRows(desk: Desk, target: ShowRowsTarget, table: TableNow | null): (desk: Desk) => void {
  const { sheet, area, criteria } = target;
  const reader = desk.reader(sheet);
  const shown = criteria.map((criterion) => shownBy(criterion, reader, area));
  const changes = [
    ...unhidden(desk, target, table, reader),
    ...(table?.facts.gridId
      ? [...sheetFilter(desk, target, []), ...tableFilter(desk, table, shown)]
      : sheetFilter(desk, target, shown)),
  ];
  for (const { redo, undo } of changes) desk.step.do(redo, undo);
  return (again) => {
    for (const { redo, undo } of [...changes].reverse()) again.step.do(undo, redo);
  };
}

interface Change {
  readonly redo: IMutationInfo;
  readonly undo: IMutationInfo;
}

/** Rows that a filter of the file hides which the grid does not hold (open/filters.ts). */
function unhidden(desk: Desk, { sheet, area }: ShowRowsTarget, table: TableNow | null, reader: SheetReader): Change[] {
  const rows = desk
    .filteredAtOpening(sheet, table)
    .filter((row) => row > area.top && row < bottom(area) && !reader.worksheet.getRowRawVisible(row));
  if (rows.length === 0) return [];
  const ranges = rows.map((row) => ({
    startRow: row,
    endRow: row,
    startColumn: area.left,
    endColumn: right(area) - 1,
  }));
  const params = { unitId: desk.unitId, subUnitId: sheet, ranges };
  return [{ redo: { id: SetRowVisibleMutation.id, params }, undo: { id: SetRowHiddenMutation.id, params } }];
}

function tableFilter(desk: Desk, table: TableNow, shown: readonly Shown[]): Change[] {
  const { gridId, sheet } = table.facts;
  const held = desk.engine.injector.get(TableManager).getTableById(desk.unitId, gridId!)!;
  const set = (column: number, tableFilter: ITableFilterItem | undefined): IMutationInfo => ({
    id: SetSheetTableFilterMutation.id,
    params: { unitId: desk.unitId, subUnitId: sheet, tableId: gridId!, column, tableFilter },
  });
  const changes: Change[] = [];
  for (let column = 0; column < table.area.columns; column++) {
    const before = held.getTableFilterColumn(column);
    const found = shown.filter((one) => one.column === column);
    if (!before && found.length === 0) continue;
    changes.push({ redo: set(column, asTableFilter(found)), undo: set(column, before) });
  }
  return changes;
}

/** Several criteria of one column: what all of them keep. */
function inAll(found: readonly Shown[]): Omit<Shown, "column"> {
  const [first, ...others] = found;
  return {
    texts: first!.texts.filter((text) => others.every((other) => other.texts.includes(text))),
    blank: found.every((one) => one.blank),
  };
}

function asTableFilter(found: readonly Shown[]): ITableFilterItem | undefined {
  if (found.length === 0) return undefined;
  const { texts, blank } = inAll(found);
  // an empty result of a formula is a text without letters there
  return { filterType: "manual", values: [...texts, ...(blank ? [BLANK, ""] : [])] } as ITableFilterItem;
}

function sheetFilter(desk: Desk, { sheet, area, table }: ShowRowsTarget, shown: readonly Shown[]): Change[] {
  const ids = { unitId: desk.unitId, subUnitId: sheet };
  const model = desk.engine.injector.get(SheetsFilterService).getFilterModel(desk.unitId, sheet);
  const remove: IMutationInfo = { id: RemoveSheetsFilterMutation.id, params: ids };
  const on = (range: object): IMutationInfo => ({ id: SetSheetsFilterRangeMutation.id, params: { ...ids, range } });
  const set = (col: number, criteria: IFilterColumn | null): IMutationInfo => ({
    id: SetSheetsFilterCriteriaMutation.id,
    params: { ...ids, col, criteria, reCalc: true },
  });
  const changes: Change[] = [];
  if (model && overlaps(areaOf(model.getRange()), area)) {
    const range = model.getRange();
    const columns = model.getAllFilterColumns().map(([col, column]) => [col, column.serialize()] as const);
    for (const [col, criteria] of columns) changes.push({ redo: set(col, null), undo: set(col, criteria) });
    // all rows shown again: the arrows stay, as in Excel
    if (table !== null || shown.length > 0) changes.push({ redo: remove, undo: on(range) });
  }
  if (shown.length === 0) return changes;
  const range = {
    startRow: area.top,
    endRow: bottom(area) - 1,
    startColumn: area.left,
    endColumn: right(area) - 1,
  };
  changes.push({ redo: on(range), undo: remove });
  for (const column of new Set(shown.map((one) => one.column))) {
    const { texts, blank } = inAll(shown.filter((one) => one.column === column));
    const col = area.left + column;
    const filters = { filters: texts.map(String), ...(blank && { blank: true as const }) };
    changes.push({ redo: set(col, { colId: col, filters }), undo: set(col, null) });
  }
  return changes;
}
