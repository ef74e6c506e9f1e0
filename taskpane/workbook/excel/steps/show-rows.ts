/**
 * Excel's own filter. It compares the texts that cells show, so those are read and handed over, and the rows that it
 * then hides are compared with what was meant: rows that a filter cannot tell apart are not passed off as chosen.
 */
import type { Area, Value } from "../../port";
import { lets, Refusal, type ShowRowsTarget } from "../../change/target";
import { areaOf, PLACE, rangeOf } from "../place";
import { hiddenRows } from "./rows";
import { READ_BACK, valuesOf } from "../values";

/** The filter that was on before. */
export interface FilterTraces {
  before: FilterBefore | null;
}

interface FilterBefore {
  /** Null where a list had no filter at all. */
  readonly area: Area | null;
  readonly columns: readonly (readonly [number, Excel.FilterCriteria])[];
}

const PAGE = 5_000;

export async function showRows(
  context: Excel.RequestContext,
  target: ShowRowsTarget,
  traces: FilterTraces,
): Promise<Refusal | null> {
  const sheet = context.workbook.worksheets.getItem(target.sheet);
  const { area, criteria } = target;
  const data = { ...area, top: area.top + 1, rows: area.rows - 1 };
  const before = await filterNow(context, target);
  if (before.area && target.table === null && !isSameList(before.area, area) && before.columns.length > 0)
    return new Refusal("Another list on this sheet is filtered, and a sheet has one filter. Show all its rows first.");
  traces.before = before;
  if (before.columns.length > 0) clear(context, target);
  const byHand = await hiddenRows(context, sheet, data);

  const columns = [...new Set(criteria.map(({ column }) => column))];
  const cells = new Map<number, { readonly values: readonly Value[]; readonly texts: readonly string[] }>();
  for (const column of columns) cells.set(column, await columnOf(context, sheet, data, column));
  for (const column of columns) {
    const { values, texts } = cells.get(column)!;
    const own = criteria.filter((criterion) => criterion.column === column);
    const kept = texts.filter((_, row) => own.every((criterion) => lets(criterion, values[row]!)));
    apply(context, target, column, {
      filterOn: Excel.FilterOn.values,
      values: kept.length > 0 ? distinct(kept) : [NOBODY],
    });
  }
  await context.sync();

  const hidden = await hiddenRows(context, sheet, data);
  const isMeant = (row: number) => criteria.every((one) => lets(one, cells.get(one.column)!.values[row]!));
  if (hidden.some((isHidden, row) => (isHidden ? isMeant(row) && !byHand[row] : !isMeant(row))))
    return new Refusal("Excel's filter cannot tell these rows from others, so the list was left as it was.");
  return null;
}

/** A text that no cell shows: a filter for it shows no row. */
const NOBODY = "\u2014 none \u2014";

/** Whatever the capitals, as Excel compares them. */
const distinct = (texts: readonly string[]): string[] => [
  ...new Map(texts.map((text) => [text.toLowerCase(), text])).values(),
];

const isSameList = (one: Area, other: Area): boolean =>
  one.top === other.top && one.left === other.left && one.columns === other.columns;

async function columnOf(context: Excel.RequestContext, sheet: Excel.Worksheet, data: Area, column: number) {
  const values: Value[] = [];
  const texts: string[] = [];
  for (let from = 0; from < data.rows; from += PAGE) {
    const rows = Math.min(PAGE, data.rows - from);
    const page = { top: data.top + from, left: data.left + column, rows, columns: 1 };
    const range = rangeOf(sheet, page);
    range.load(`${READ_BACK},text`);
    await context.sync();
    values.push(...valuesOf(range).map((row) => row[0]!));
    texts.push(...range.text.map((row) => row[0]!));
  }
  return { values, texts };
}

const filterOf = (context: Excel.RequestContext, { table, sheet }: ShowRowsTarget): Excel.AutoFilter =>
  table === null
    ? context.workbook.worksheets.getItem(sheet).autoFilter
    : context.workbook.tables.getItem(table).autoFilter;

async function filterNow(context: Excel.RequestContext, target: ShowRowsTarget): Promise<FilterBefore> {
  const filter = filterOf(context, target);
  filter.load("criteria,isDataFiltered");
  const range = filter.getRangeOrNullObject();
  range.load(PLACE);
  await context.sync();
  const area = range.isNullObject ? null : areaOf(range);
  if (!filter.isDataFiltered) return { area, columns: [] };
  return {
    area,
    columns: (filter.criteria as (Excel.FilterCriteria | null)[]).flatMap((one, column) =>
      one?.filterOn ? [[column, withoutNulls(one)] as const] : [],
    ),
  };
}

/** Excel tells criteria with nulls in them, and does not take them back that way (OfficeDev/office-js issue 1226). */
const withoutNulls = (criteria: Excel.FilterCriteria): Excel.FilterCriteria =>
  Object.fromEntries(Object.entries(criteria).filter(([, value]) => value !== null)) as unknown as Excel.FilterCriteria;

function clear(context: Excel.RequestContext, target: ShowRowsTarget): void {
  if (target.table === null) filterOf(context, target).clearCriteria();
  else context.workbook.tables.getItem(target.table).clearFilters();
}

function apply(
  context: Excel.RequestContext,
  { table, sheet, area }: ShowRowsTarget,
  column: number,
  criteria: Excel.FilterCriteria,
): void {
  if (table !== null) return context.workbook.tables.getItem(table).columns.getItemAt(column).filter.apply(criteria);
  const worksheet = context.workbook.worksheets.getItem(sheet);
  worksheet.autoFilter.apply(rangeOf(worksheet, area), column, criteria);
}

/** @param area header and data rows, where they stand now */
export async function showAsBefore(
  context: Excel.RequestContext,
  target: ShowRowsTarget,
  area: Area,
  { before }: FilterTraces,
): Promise<void> {
  if (!before) return;
  const now = await filterNow(context, target);
  if (target.table === null && !before.area) {
    if (now.area) filterOf(context, target).remove();
  } else {
    if (now.columns.length > 0) clear(context, target);
    const place = { ...target, area: before.area && target.table === null ? before.area : area };
    for (const [column, criteria] of before.columns) apply(context, place, column, criteria);
  }
  await context.sync();
}
