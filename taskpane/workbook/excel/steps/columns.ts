/** Adding columns to a table or list in Excel, and removing them again. */
import { inA1, inTable } from "../../../../src/columns/formula";
import { bottom, right } from "../../area";
import type { Area } from "../../port";
import type { ColumnsTarget } from "../../change/target";
import { follow, restore, type LookChange } from "./look";
import { areaOf, PLACE, rangeOf } from "../place";
import { hiddenRows, requests } from "./rows";
import { colour, uncolour } from "./state-rules";
import { notEmptied } from "../sentences";
import { assertHolds, entry, formulasOf, GENERAL, READ_BACK, WriteProblem } from "../values";

/** How the cells were before, for taking back. Filled in as the work goes on. */
export interface Traces {
  /** Row by row of the data; "General" where all say so; null as long as nobody has looked. */
  formats: readonly (readonly string[])[] | typeof GENERAL | null;
  widths: readonly number[];
  header: LookChange | null;
  data: LookChange | null;
  /** Ids of the conditional formats that came with the columns. */
  rules: readonly string[];
}

export const noTraces = (): Traces => ({ formats: null, widths: [], header: null, data: null, rules: [] });

/**
 * Writes the columns of one target. A table is resized, not given columns by `columns.add`: that moves cells beyond
 * the table to the right, and nothing of the person's may move.
 * @param wrote told of cells written, after each request; false asks to stop
 */
export async function addColumns(
  context: Excel.RequestContext,
  target: ColumnsTarget,
  traces: Traces,
  wrote: (cells: number) => boolean,
): Promise<void> {
  const sheet = context.workbook.worksheets.getItem(target.sheet);
  const { area, data } = target;
  const header = { ...area, top: target.headerRow, rows: 1 };

  const before = rangeOf(sheet, data);
  before.load("numberFormat");
  const widths = columnsOf(sheet, area).map((column) => column.format);
  for (const format of widths) format.load("columnWidth");
  await context.sync();
  const formats = before.numberFormat as string[][];
  traces.formats = formats.every((row) => row.every((format) => format === GENERAL)) ? GENERAL : formats;
  traces.widths = widths.map((format) => format.columnWidth);

  if (target.table !== null) {
    const whole = { ...area, left: target.listLeft, columns: right(area) - target.listLeft };
    context.workbook.tables.getItem(target.table).resize(rangeOf(sheet, whole));
  }
  rangeOf(sheet, header).values = [target.columns.map((column) => asTyped(column.header))];
  await context.sync();
  const beside = (place: Area): Area => ({ ...place, left: place.left - 1, columns: 1 });
  traces.header = await follow(context, rangeOf(sheet, header), rangeOf(sheet, beside(header)), 1);
  traces.data = await follow(context, rangeOf(sheet, data), rangeOf(sheet, beside(data)), data.rows);
  await context.sync();

  const hidden = await hiddenRows(context, sheet, data);
  for (const request of requests(data.top, hidden)) {
    context.application.suspendScreenUpdatingUntilNextSync();
    let cells = 0;
    for (const run of request) {
      const range = rangeOf(sheet, { ...data, ...run });
      /* Formats first: into cells formatted as text a formula goes as a text. */
      range.numberFormat = rowsOf(run.rows, () => target.columns.map((column) => column.format));
      range.formulas = rowsOf(run.rows, (row) => rowEntries(target, run.top + row));
      cells += run.rows * data.columns;
    }
    await context.sync();
    if (!wrote(cells)) return;
  }
  await widen(context, sheet, area, traces.widths);
  traces.rules = await colour(context, sheet, target);
  await check(context, sheet, target, header);
}

const rowsOf = <T>(rows: number, row: (index: number) => T): T[] => Array.from({ length: rows }, (_, i) => row(i));

const rowEntries = (target: ColumnsTarget, row: number): (string | number | boolean)[] =>
  target.columns.map((column) =>
    "values" in column
      ? entry(column.values[row - target.data.top] ?? null, column.format)
      : "=" +
        (target.table === null ? inA1(column.formula, row, target.listLeft) : inTable(column.formula, target.table)),
  );

/** A header that looks like a formula is put in as a text. */
const asTyped = (header: string): string => (/^[=+\-@']/.test(header) ? `'${header}` : header);

const columnsOf = (sheet: Excel.Worksheet, area: Area): readonly Excel.Range[] =>
  Array.from({ length: area.columns }, (_, i) => rangeOf(sheet, { ...area, left: area.left + i, columns: 1 }));

/** A date in a narrow column shows as "####". Columns are widened, never made narrower, hidden ones left hidden. */
async function widen(context: Excel.RequestContext, sheet: Excel.Worksheet, area: Area, before: readonly number[]) {
  const columns = columnsOf(sheet, area).filter((_, i) => before[i]! > 0);
  const kept = before.filter((width) => width > 0);
  for (const column of columns) {
    column.format.autofitColumns();
    column.format.load("columnWidth");
  }
  await context.sync();
  columns.forEach((column, i) => {
    if (column.format.columnWidth < kept[i]!) column.format.columnWidth = kept[i]!;
  });
  await context.sync();
}

/** Reads back what was written: nobody is told "done" of cells that Excel filled otherwise. */
async function check(context: Excel.RequestContext, sheet: Excel.Worksheet, target: ColumnsTarget, header: Area) {
  const names = rangeOf(sheet, header);
  names.load("values");
  const table = target.table === null ? null : context.workbook.tables.getItem(target.table).getRange();
  table?.load(PLACE);
  await context.sync();
  if (target.columns.some((column, i) => String(names.values[0]![i]) !== column.header))
    throw new WriteProblem("Excel gave a new column another name.");
  if (table && right(areaOf(table)) !== right(target.area))
    throw new WriteProblem("Excel did not make the table wider.");
  const page = 5_000;
  for (let top = target.data.top; top < bottom(target.data); top += page) {
    const rows = Math.min(page, bottom(target.data) - top);
    const range = rangeOf(sheet, { ...target.data, top, rows });
    range.load(`formulas,${READ_BACK}`);
    await context.sync();
    if (formulasOf(range).some((row) => row.some((text, c) => text === null && "formula" in target.columns[c]!)))
      throw new WriteProblem("Excel left some rows without a formula. Clear any filter, then try again.");
    const first = top - target.data.top;
    const wanted = rowsOf(rows, (row) =>
      target.columns.map((column) => ("values" in column ? { value: column.values[first + row] ?? null } : null)),
    );
    assertHolds(range, { ...target.data, top, rows }, wanted);
  }
}

/**
 * Takes columns away from where they stand now. Cells are emptied, never deleted: deleting would move the person's
 * cells. The table is made narrower first, since an emptied header of a table would be given a name by Excel.
 */
export async function removeColumns(
  context: Excel.RequestContext,
  table: string | null,
  sheetId: string,
  area: Area,
  traces: Traces,
): Promise<void> {
  const sheet = context.workbook.worksheets.getItem(sheetId);
  if (table !== null) {
    const found = context.workbook.tables.getItem(table);
    const range = found.getRange();
    range.load(PLACE);
    await context.sync();
    const now = areaOf(range);
    if (right(now) === right(area)) found.resize(rangeOf(sheet, { ...now, columns: now.columns - area.columns }));
  }
  const hidden = await hiddenRows(context, sheet, area);
  const header = { ...area, rows: 1 };
  const data = { ...area, top: area.top + 1, rows: area.rows - 1 };
  for (const request of requests(area.top, hidden)) {
    context.application.suspendScreenUpdatingUntilNextSync();
    for (const run of request) {
      const range = rangeOf(sheet, { ...area, ...run });
      range.clear(Excel.ClearApplyTo.contents);
      if (traces.formats !== null)
        range.numberFormat = rowsOf(run.rows, (row) => formatsBefore(traces, run.top + row - data.top, area.columns));
    }
    await context.sync();
  }
  await uncolour(context, rangeOf(sheet, data), traces.rules);
  if (traces.data) restore(rangeOf(sheet, data), traces.data);
  if (traces.header) restore(rangeOf(sheet, header), traces.header);
  columnsOf(sheet, area).forEach((column, i) => {
    const width = traces.widths[i];
    if (width) column.format.columnWidth = width;
  });
  const left = rangeOf(sheet, area).getUsedRangeOrNullObject(true);
  left.load("address");
  await context.sync();
  if (!left.isNullObject) throw new WriteProblem(notEmptied(left.address));
}

const formatsBefore = ({ formats }: Traces, row: number, columns: number): string[] => [
  ...((Array.isArray(formats) ? formats[row] : undefined) ?? new Array<string>(columns).fill(GENERAL)),
];
