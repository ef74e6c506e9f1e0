/**
 * The filters that are on in a file, put into the grid's own, so that its arrows show them and a person can change them.
 * The grid itself is the judge: where its filter does not hide the very rows that the file hides, they stay hidden rows.
 */
import { BooleanNumber, ICommandService } from "@univerjs/core";
import { SetRowVisibleMutation } from "@univerjs/sheets";
import {
  SetSheetsFilterCriteriaMutation,
  SheetsFilterService,
  type CustomFilterOperator,
  type ICustomFilter,
  type IFilterColumn,
} from "@univerjs/sheets-filter";
import { SetSheetTableFilterMutation, TableManager, type ITableFilterItem } from "@univerjs/sheets-table";
import { aFilterIsOn, filterStaysInFile } from "./filter-sentences";
import type { FilterColumn, FilterComparison, FilterState } from "../../package";
import type { SheetId } from "../../port";
import type { Engine } from "../engine";
import type { BookFacts, TableFacts } from "../book/facts";
import type { SheetReader } from "../book/sheet-reader";
import { BLANK } from "../steps/showing";

/** What the grid's filter held of a column at opening, by its offset: for saving to see whether somebody changed it. */
export type HeldCriteria = ReadonlyMap<number, string>;

export interface OpeningFilters {
  readonly sheets: ReadonlyMap<SheetId, HeldCriteria>;
  readonly tables: ReadonlyMap<string, HeldCriteria>;
  readonly remarks: readonly string[];
}

export const NO_FILTERS: OpeningFilters = { sheets: new Map(), tables: new Map(), remarks: [] };

/** Where it stands is told beside it. */
export const criterionText = (criterion: IFilterColumn | ITableFilterItem): string =>
  JSON.stringify({ ...criterion, colId: undefined });

interface Around {
  readonly engine: Engine;
  readonly unitId: string;
  readonly readerOf: (sheet: SheetId) => SheetReader;
}

export function loadFilters(around: Around, facts: BookFacts): OpeningFilters {
  if (!facts.file) return NO_FILTERS;
  const { opened } = facts.file;
  const sheets = new Map<SheetId, HeldCriteria>();
  const tables = new Map<string, HeldCriteria>();
  const left: string[] = [];
  let isOn = false;
  for (const sheet of facts.sheets) {
    const filter = opened.sheets.find(({ name }) => name === sheet.name)?.filter;
    if (!filter?.isActive) continue;
    const held = loadSheet(around, sheet.id, filter, sheet.filteredRows ?? []);
    if (held) sheets.set(sheet.id, held);
    else left.push(filterStaysInFile(sheet.name, filter.columns));
    isOn ||= held !== undefined;
  }
  for (const table of facts.tables) {
    const filter = opened.tables.find(({ name }) => name === table.name)?.filter;
    if (!filter?.isActive) continue;
    const held = loadTable(around, table, filter);
    if (held) tables.set(table.name, held);
    else left.push(filterStaysInFile(table.name, filter.columns));
    isOn ||= held !== undefined;
  }
  return { sheets, tables, remarks: [...(isOn ? [aFilterIsOn] : []), ...left] };
}

function loadSheet(
  around: Around,
  subUnitId: SheetId,
  { columns }: FilterState,
  hidden: readonly number[],
): HeldCriteria | undefined {
  const { engine, unitId, readerOf } = around;
  const model = engine.injector.get(SheetsFilterService).getFilterModel(unitId, subUnitId);
  if (!model) return undefined;
  const reader = readerOf(subUnitId);
  const { startRow, endRow, startColumn, endColumn } = model.getRange();
  if (endRow >= reader.worksheet.getRowCount()) return undefined;
  const criteria: IFilterColumn[] = [];
  for (const column of columns) {
    const colId = startColumn + column.offset;
    const criterion = colId > endColumn ? undefined : onSheet(column, () => shown(reader, startRow, endRow, colId));
    if (!criterion) return undefined;
    criteria.push({ colId, ...criterion });
  }
  const set = (col: number, criterion: IFilterColumn | null) =>
    run(engine, SetSheetsFilterCriteriaMutation.id, { unitId, subUnitId, col, criteria: criterion, reCalc: true });
  for (const criterion of criteria) set(criterion.colId, criterion);
  if (!areSame(model.filteredOutRows, hidden)) {
    for (const { colId } of criteria) set(colId, null);
    return undefined;
  }
  unhide(around, subUnitId, hidden);
  return new Map(criteria.map((criterion) => [criterion.colId - startColumn, criterionText(criterion)]));
}

function loadTable(around: Around, table: TableFacts, { columns }: FilterState): HeldCriteria | undefined {
  const { engine, unitId, readerOf } = around;
  const { gridId, sheet, filteredRows } = table;
  const held = gridId === null ? undefined : engine.injector.get(TableManager).getTableById(unitId, gridId);
  if (!held) return undefined;
  const reader = readerOf(sheet);
  const { startRow, endRow, startColumn, endColumn } = held.getRange();
  if (endRow >= reader.worksheet.getRowCount()) return undefined;
  const criteria: (readonly [offset: number, criterion: ITableFilterItem])[] = [];
  for (const column of columns) {
    const at = startColumn + column.offset;
    const criterion = at > endColumn ? undefined : onTable(column, () => shown(reader, startRow, endRow, at));
    if (!criterion) return undefined;
    criteria.push([column.offset, criterion]);
  }
  const set = (column: number, tableFilter: ITableFilterItem | undefined) =>
    run(engine, SetSheetTableFilterMutation.id, { unitId, subUnitId: sheet, tableId: gridId, column, tableFilter });
  for (const [offset, criterion] of criteria) set(offset, criterion);
  if (!areSame(held.getTableFilters().getFilterOutRows(), filteredRows)) {
    for (const [offset] of criteria) set(offset, undefined);
    return undefined;
  }
  unhide(around, sheet, filteredRows);
  return new Map(criteria.map(([offset, criterion]) => [offset, criterionText(criterion)]));
}

const run = ({ injector }: Engine, id: string, params: object): unknown =>
  injector.get(ICommandService).syncExecuteCommand(id, params);

const areSame = (some: ReadonlySet<number> | undefined, others: readonly number[]): boolean =>
  (some?.size ?? 0) === others.length && others.every((row) => some!.has(row));

/** The grid's filter hides them now: a row hidden twice would stay hidden when the filter is cleared. */
function unhide({ engine, unitId }: Around, subUnitId: SheetId, rows: readonly number[]): void {
  if (rows.length === 0) return;
  const ranges = rows.map((row) => ({ startRow: row, endRow: row, startColumn: 0, endColumn: 0 }));
  run(engine, SetRowVisibleMutation.id, { unitId, subUnitId, ranges });
}

type Shown = () => readonly (string | number)[];

/** What the cells below the header show, as the grid's filters compare it. */
function shown(reader: SheetReader, header: number, last: number, column: number): (string | number)[] {
  const texts = new Set<string | number>();
  for (let row = header + 1; row <= last; row++) texts.add(reader.shownText(row, column));
  return [...texts];
}

/** The grid knows capitals from small letters; Excel's lists of values do not. */
function spelled(values: readonly string[], texts: readonly (string | number)[]): (string | number)[] {
  const wanted = new Set(values.map((value) => value.toLowerCase()));
  const found = texts.filter((text) => text !== "" && wanted.has(String(text).toLowerCase()));
  const strings = new Set(found.map(String));
  return [...found, ...values.filter((value) => !strings.has(value))];
}

function onSheet(
  { values, showsBlanks, comparisons }: FilterColumn,
  texts: Shown,
): Omit<IFilterColumn, "colId"> | undefined {
  if (values) {
    const filters = spelled(values, texts()).map(String);
    return { filters: { filters, ...(showsBlanks && { blank: true as const }) } };
  }
  if (!comparisons || comparisons.each.length > 2) return undefined;
  const [first, second] = comparisons.each.map(comparison) as [ICustomFilter, ICustomFilter?];
  return {
    customFilters: {
      ...(second && comparisons.both && { and: BooleanNumber.TRUE }),
      customFilters: second ? [first, second] : [first],
    },
  };
}

const isNumber = (text: string): boolean => text.trim() !== "" && Number.isFinite(Number(text));

/** Without an operator the grid compares texts, wildcards and all; with "equal" it compares numbers only. */
const comparison = ({ operator, value }: FilterComparison): ICustomFilter =>
  operator === "equal" && !isNumber(value)
    ? { val: value }
    : { val: value, operator: operator as CustomFilterOperator };

function onTable({ values, showsBlanks, comparisons }: FilterColumn, texts: Shown): ITableFilterItem | undefined {
  if (values) {
    // an empty result of a formula is a text without letters there
    const blanks = showsBlanks ? [BLANK, ""] : [];
    return { filterType: "manual", values: [...spelled(values, texts()), ...blanks] } as ITableFilterItem;
  }
  const [first, second] = comparisons?.each ?? [];
  if (!first) return undefined;
  if (!second) return condition(isNumber(first.value) ? ofNumbers(first) : ofTexts(first));
  const from = [first, second].find(({ operator }) => operator === "greaterThanOrEqual");
  const to = [first, second].find(({ operator }) => operator === "lessThanOrEqual");
  if (!comparisons!.both || !from || !to || !isNumber(from.value) || !isNumber(to.value)) return undefined;
  const expectedValue = [Number(from.value), Number(to.value)];
  return condition({ conditionType: "number", compareType: "between", expectedValue });
}

const condition = (filterInfo: object | undefined): ITableFilterItem | undefined =>
  filterInfo && ({ filterType: "condition", filterInfo } as ITableFilterItem);

const ofNumbers = ({ operator, value }: FilterComparison) => ({
  conditionType: "number",
  compareType: operator,
  expectedValue: Number(value),
});

/** "x*", "*x" and "*x*"; any other wildcard is none of the grid's. */
function ofTexts({ operator, value }: FilterComparison): object | undefined {
  const [, before, text, after] = /^(\*?)([^*?~]+)(\*?)$/.exec(value) ?? [];
  if (text === undefined) return undefined;
  const is = operator === "equal" ? IS[`${before}${after && "+"}`] : IS_NOT[`${before}${after && "+"}`];
  const isKnown = operator === "equal" || operator === "notEqual";
  return isKnown && is ? { conditionType: "string", compareType: is, expectedValue: text } : undefined;
}

const IS: Readonly<Record<string, string>> = { "": "equal", "*": "endsWith", "+": "startsWith", "*+": "contains" };
const IS_NOT: Readonly<Record<string, string>> = { "": "notEqual", "*+": "notContains" };
