/**
 * Cells of a table deleted and inserted, so that references elsewhere follow the rows they meant (a deleted one reads
 * #REF!, never somebody else). Excel moves what stands below the table with them; the counter-movement puts it back.
 */
import { bottom } from "../../area";
import type { Area } from "../../port";
import { areaOf, PLACE, rangeOf } from "../place";
import { assertHolds, formulasOf, READ_BACK, WriteProblem } from "../values";
import { filterHides } from "../../change/refusal";

/** Ranges in one request. */
const TOGETHER = 100;

async function stand(context: Excel.RequestContext, name: string, sheet: Excel.Worksheet) {
  const table = context.workbook.tables.getItem(name);
  const range = table.getRange();
  range.load(PLACE);
  table.autoFilter.load("isDataFiltered");
  const used = sheet.getUsedRangeOrNullObject();
  used.load(PLACE);
  await context.sync();
  /* Excel moves no cells under a filter; its library then leaves the rows and says nothing (office-js issue 994). */
  if (table.autoFilter.isDataFiltered) throw new WriteProblem(filterHides(name));
  const area = areaOf(range);
  return { table, area, isLast: used.isNullObject || bottom(areaOf(used)) <= bottom(area) };
}

const cutOut = (sheet: Excel.Worksheet, area: Area) => rangeOf(sheet, area).delete(Excel.DeleteShiftDirection.up);

async function makeWay(context: Excel.RequestContext, sheet: Excel.Worksheet, area: Area): Promise<void> {
  const filled = rangeOf(sheet, area).getUsedRangeOrNullObject(true);
  filled.load("address");
  await context.sync();
  if (filled.isNullObject) cutOut(sheet, area);
}

/** @param runs whole rows of the table, from the top down */
export async function deleteRows(
  context: Excel.RequestContext,
  name: string,
  sheetId: string,
  runs: readonly Area[],
): Promise<void> {
  const sheet = context.workbook.worksheets.getItem(sheetId);
  const { area, isLast } = await stand(context, name, sheet);
  const upwards = [...runs].reverse();
  for (let from = 0; from < upwards.length; from += TOGETHER) {
    context.application.suspendScreenUpdatingUntilNextSync();
    for (const run of upwards.slice(from, from + TOGETHER)) cutOut(sheet, run);
    await context.sync();
  }
  const rows = runs.reduce((sum, run) => sum + run.rows, 0);
  const now = await stand(context, name, sheet);
  if (now.area.rows !== area.rows - rows) throw new WriteProblem("Excel did not remove all the rows.");
  if (isLast) return;
  /* New cells take the look of those above; the ones that stood here had none. */
  const gap = { ...area, top: bottom(now.area), rows };
  rangeOf(sheet, gap).insert(Excel.InsertShiftDirection.down);
  rangeOf(sheet, gap).clear(Excel.ClearApplyTo.formats);
  await context.sync();
}

/** A place for rows: counted from 0 below the header, when those before it stand already. */
export interface Gap {
  readonly at: number;
  readonly rows: number;
}

/** Makes room for rows in a table. Cells right below it that are empty make way, all others stay where they are. */
export async function insertRows(
  context: Excel.RequestContext,
  name: string,
  sheetId: string,
  gaps: readonly Gap[],
): Promise<void> {
  const sheet = context.workbook.worksheets.getItem(sheetId);
  const { table, area, isLast } = await stand(context, name, sheet);
  let rows = area.rows - 1;
  const inside: Gap[] = [];
  const behind: Gap[] = [];
  for (const gap of gaps) {
    (gap.at < rows ? inside : behind).push(gap);
    rows += gap.rows;
  }
  const moved = inside.reduce((sum, gap) => sum + gap.rows, 0);
  if (moved > 0 && !isLast) await makeWay(context, sheet, { ...area, top: bottom(area), rows: moved });
  for (const gap of inside)
    rangeOf(sheet, { ...area, top: area.top + 1 + gap.at, rows: gap.rows }).insert(Excel.InsertShiftDirection.down);
  if (behind.length > 0) table.resize(rangeOf(sheet, { ...area, rows: rows + 1 }));
  await context.sync();
  const now = await stand(context, name, sheet);
  if (now.area.rows !== rows + 1) throw new WriteProblem("Excel did not make room for the rows.");
}

/** Empties one row but for its formulas. */
export async function emptyRow(context: Excel.RequestContext, sheet: Excel.Worksheet, row: Area): Promise<void> {
  const range = rangeOf(sheet, row);
  range.load("formulas,values");
  await context.sync();
  const typed = formulasOf(range)[0]!.map((text) => text === null);
  range.values = [typed.map((isTyped) => (isTyped ? "" : null))];
  range.load(READ_BACK);
  await context.sync();
  assertHolds(range, row, [typed.map((isTyped) => (isTyped ? { value: null } : null))]);
}
