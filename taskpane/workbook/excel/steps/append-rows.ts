/**
 * Rows added at the end of a table, and taken away again. The table is resized over the cells below it: `rows.add`
 * moves what stands below, fails under a filter, and has left rows outside the table where many cells were blank
 * (OfficeDev/office-js issue 3191).
 */
import { bottom } from "../../area";
import type { Area } from "../../port";
import type { AppendTarget } from "../../change/target";
import { areaOf, PLACE, rangeOf } from "../place";
import { dress, looksOf, undress, type DressedRow } from "./row-look";
import { hiddenRows, requests } from "./rows";
import { deleteRows, emptyRow } from "./table-rows";
import { assertHolds, entry, formatFor, formulasOf, READ_BACK, rowOfCells, WriteProblem } from "../values";
import { notEmptied } from "../sentences";

/** How the cells were before, for taking back. Filled in as the work goes on. */
export interface AppendTraces {
  formats: readonly (readonly string[])[];
  looks: readonly DressedRow[];
}

export const noAppendTraces = (): AppendTraces => ({ formats: [], looks: [] });

/** A column's formula is looked for in as many rows above. */
const LOOKED_AT = 20;

/** Cells; more are dressed as one range, which says nothing of lines between its rows. */
const DRESSED_ROW_BY_ROW = 1_000;

/** Rows of the target that were not in the table before. */
const addedBy = ({ area, fillsBlankRow }: AppendTarget): Area =>
  fillsBlankRow ? { ...area, top: area.top + 1, rows: area.rows - 1 } : area;

/** @param wrote told of rows written, after each request; false asks to stop */
export async function appendRows(
  context: Excel.RequestContext,
  target: AppendTarget,
  traces: AppendTraces,
  wrote: (rows: number) => boolean,
): Promise<void> {
  const sheet = context.workbook.worksheets.getItem(target.sheet);
  const { area } = target;
  const added = addedBy(target);
  const model = { ...area, top: added.top - 1, rows: 1 };

  const before = rangeOf(sheet, area);
  before.load("numberFormat");
  const modelRow = rangeOf(sheet, model);
  modelRow.load("numberFormat");
  await context.sync();
  traces.formats = before.numberFormat as string[][];
  const formats = (modelRow.numberFormat as string[][])[0]!;

  await grow(context, target);
  if (added.rows > 0) await copyFormulas(context, sheet, target, added);

  const hidden = await hiddenRows(context, sheet, area);
  for (const request of requests(area.top, hidden)) {
    context.application.suspendScreenUpdatingUntilNextSync();
    let rows = 0;
    for (const run of request) {
      writeRun(sheet, target, { ...area, ...run }, formats);
      rows += run.rows;
    }
    await context.sync();
    if (!wrote(rows)) return;
  }
  await dressLike(context, sheet, model, added, traces);
  await check(context, sheet, target);
}

async function grow(context: Excel.RequestContext, { table: name, sheet, area }: AppendTarget): Promise<void> {
  const table = context.workbook.tables.getItem(name);
  const range = table.getRange();
  range.load(PLACE);
  await context.sync();
  const now = areaOf(range);
  if (bottom(now) < bottom(area))
    table.resize(rangeOf(context.workbook.worksheets.getItem(sheet), { ...now, rows: bottom(area) - now.top }));
  await context.sync();
}

/** Excel fills the formulas of a table into its new rows by itself, if its user has not turned that off. */
async function copyFormulas(context: Excel.RequestContext, sheet: Excel.Worksheet, target: AppendTarget, added: Area) {
  const table = context.workbook.tables.getItem(target.table).getRange();
  table.load(PLACE);
  await context.sync();
  const top = Math.max(areaOf(table).top + 1, added.top - LOOKED_AT);
  const above = { ...added, top, rows: added.top - top };
  const [models, present] = [rangeOf(sheet, above), rangeOf(sheet, added)];
  models.load("formulas,values");
  present.load("formulas,values");
  await context.sync();
  const [modelTexts, texts] = [formulasOf(models), formulasOf(present)];
  for (const column of target.formulas) {
    const at = modelTexts.map((row) => row[column] !== null).lastIndexOf(true);
    if (at < 0 || texts.every((row) => row[column] !== null)) continue;
    const place = { left: added.left + column, columns: 1 };
    const source = rangeOf(sheet, { ...place, top: above.top + at, rows: 1 });
    texts.forEach((row, r) => {
      if (row[column] !== null) return;
      rangeOf(sheet, { ...place, top: added.top + r, rows: 1 }).copyFrom(source, Excel.RangeCopyType.formulas);
    });
  }
  await context.sync();
}

/** The formats first: they decide what Excel makes of a value. Null leaves a cell alone. */
function writeRun(sheet: Excel.Worksheet, target: AppendTarget, run: Area, formats: readonly string[]): void {
  const range = rangeOf(sheet, run);
  const rows = target.values.slice(run.top - target.area.top, bottom(run) - target.area.top);
  const cells = rows.map((row) => rowOfCells(run.columns, row));
  const needed = cells.map((row) => row.map((cell, c) => (cell ? formatFor(cell.value, formats[c]!) : formats[c]!)));
  range.numberFormat = needed;
  range.values = cells.map((row, r) => row.map((cell, c) => (cell ? entry(cell.value, needed[r]![c]!) : null)));
}

async function dressLike(
  context: Excel.RequestContext,
  sheet: Excel.Worksheet,
  model: Area,
  added: Area,
  traces: AppendTraces,
): Promise<void> {
  if (added.rows === 0) return;
  const isMuch = added.rows * added.columns > DRESSED_ROW_BY_ROW;
  const rows = isMuch
    ? [added]
    : Array.from({ length: added.rows }, (_, r) => ({ ...added, top: added.top + r, rows: 1 }));
  const [look] = await looksOf(context, sheet, [model]);
  traces.looks = await dress(
    context,
    sheet,
    rows,
    rows.map(() => look!),
  );
  await context.sync();
}

async function check(context: Excel.RequestContext, sheet: Excel.Worksheet, target: AppendTarget): Promise<void> {
  const { area } = target;
  const table = context.workbook.tables.getItem(target.table).getRange();
  table.load(PLACE);
  await context.sync();
  if (bottom(areaOf(table)) < bottom(area)) throw new WriteProblem("Excel did not make the table longer.");
  const page = 500;
  for (let from = 0; from < area.rows; from += page) {
    const place = { ...area, top: area.top + from, rows: Math.min(page, area.rows - from) };
    const range = rangeOf(sheet, place);
    range.load(`${READ_BACK},formulas`);
    await context.sync();
    const wanted = target.values.slice(from, from + place.rows).map((row) => rowOfCells(area.columns, row));
    assertHolds(range, place, wanted);
    const texts = formulasOf(range);
    if ([...target.formulas].some((column) => texts.some((row) => row[column] === null)))
      throw new WriteProblem("Excel left a new row without its formulas.");
  }
}

/** @param area where the rows stand now */
export async function takeRowsAway(
  context: Excel.RequestContext,
  target: AppendTarget,
  area: Area,
  traces: AppendTraces,
): Promise<void> {
  const sheet = context.workbook.worksheets.getItem(target.sheet);
  const added = addedBy({ ...target, area });
  const table = context.workbook.tables.getItem(target.table);
  const range = table.getRange();
  range.load(PLACE);
  await context.sync();
  const now = areaOf(range);
  const isGrown = added.rows > 0 && bottom(now) >= bottom(added);
  if (isGrown && bottom(now) > bottom(added)) {
    await deleteRows(context, target.table, target.sheet, [added]);
  } else {
    if (isGrown) table.resize(rangeOf(sheet, { ...now, rows: added.top - now.top }));
    if (added.rows > 0) rangeOf(sheet, added).clear(Excel.ClearApplyTo.contents);
    restoreFormats(sheet, area, added, traces);
    undress(sheet, traces.looks);
  }
  await context.sync();
  if (target.fillsBlankRow) await blankAgain(context, sheet, { ...area, rows: 1 }, traces);
  if (isGrown && bottom(now) === bottom(added)) await checkEmpty(context, rangeOf(sheet, added));
}

/** The row that stood there blank stays, with its formulas. */
async function blankAgain(
  context: Excel.RequestContext,
  sheet: Excel.Worksheet,
  row: Area,
  { formats }: AppendTraces,
): Promise<void> {
  await emptyRow(context, sheet, row);
  if (formats[0]) rangeOf(sheet, row).numberFormat = [[...formats[0]]];
  await context.sync();
}

async function checkEmpty(context: Excel.RequestContext, range: Excel.Range): Promise<void> {
  const left = range.getUsedRangeOrNullObject(true);
  left.load("address");
  await context.sync();
  if (!left.isNullObject) throw new WriteProblem(notEmptied(left.address));
}

function restoreFormats(sheet: Excel.Worksheet, area: Area, added: Area, { formats }: AppendTraces): void {
  const before = formats.slice(added.top - area.top);
  if (before.length > 0) rangeOf(sheet, added).numberFormat = before.map((row) => [...row]);
}
