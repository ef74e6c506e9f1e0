/**
 * One formula down a column that is there already, or values into some of its cells; every cell's former content is kept
 * for the way back.
 */
import { cellAddress } from "../../../../src/columns/formula";
import type { Area, Value } from "../../port";
import {
  refreshedFormula,
  type ChangeColumnTarget,
  type ReenterTarget,
  type RefreshTarget,
} from "../../change/refreshed";
import { rangeOf } from "../place";
import { hiddenRows, requests } from "./rows";
import { assertHolds, entry, formatFor, formulasOf, GENERAL, READ_BACK, valuesOf, WriteProblem } from "../values";

type ColumnTarget = RefreshTarget | ChangeColumnTarget | ReenterTarget;

/** Cell by cell, from the top down. */
export interface ColumnTraces {
  before: readonly Cell[];
}

interface Cell {
  readonly formula: string | null;
  readonly value: Value;
  readonly format: string;
}

const PAGE = 5_000;

/** @param wrote told of rows written, after each request; false asks to stop */
export async function refreshColumn(
  context: Excel.RequestContext,
  target: ColumnTarget,
  traces: ColumnTraces,
  wrote: (rows: number) => boolean,
): Promise<void> {
  const { area } = target;
  const before = await cellsOf(context, target.sheet, area);
  traces.before = before;
  const after = before.map((cell, r) => written(target, cell, r));
  const isMeant = meant(target);
  if (!(await write(context, target.sheet, area, after, isMeant, wrote))) return;
  await check(context, target.sheet, area, after, isMeant);
}

/** Cells that are not meant are left alone: Excel would read anew what they hold. */
type IsMeant = (row: number) => boolean;

const meant = (target: ColumnTarget): IsMeant => {
  if (target.kind === "refreshColumn") return () => true;
  if (target.kind === "reenterFormulas") return (row) => target.step.formulas[row] !== null;
  const { values } = target.step;
  return (row) => values[row] !== undefined;
};

function written(target: ColumnTarget, cell: Cell, row: number): Cell {
  if (target.kind === "reenterFormulas") return { ...cell, formula: target.step.formulas[row] ?? cell.formula };
  if (target.kind === "refreshColumn") return { ...cell, formula: refreshedFormula(target, target.area.top + row) };
  const { values, format } = target.step;
  const value = values[row];
  return value === undefined ? cell : { value, formula: null, format: format ?? formatFor(value, cell.format) };
}

/** @param area where the column's data cells stand now */
export async function putColumnBack(
  context: Excel.RequestContext,
  target: ColumnTarget,
  area: Area,
  { before }: ColumnTraces,
): Promise<void> {
  if (before.length === 0) return;
  const isMeant = meant(target);
  await write(context, target.sheet, area, before, isMeant, () => true);
  await check(context, target.sheet, area, before, isMeant);
}

async function cellsOf(context: Excel.RequestContext, sheetId: string, area: Area): Promise<readonly Cell[]> {
  const sheet = context.workbook.worksheets.getItem(sheetId);
  const cells: Cell[] = [];
  for (let from = 0; from < area.rows; from += PAGE) {
    const range = rangeOf(sheet, { ...area, top: area.top + from, rows: Math.min(PAGE, area.rows - from) });
    range.load(`${READ_BACK},formulas,numberFormat`);
    await context.sync();
    const [values, formulas] = [valuesOf(range), formulasOf(range)];
    values.forEach(([value], r) =>
      cells.push({ formula: formulas[r]![0]!, value: value!, format: (range.numberFormat as string[][])[r]![0]! }),
    );
  }
  return cells;
}

async function write(
  context: Excel.RequestContext,
  sheetId: string,
  area: Area,
  cells: readonly Cell[],
  isMeant: IsMeant,
  wrote: (rows: number) => boolean,
): Promise<boolean> {
  const sheet = context.workbook.worksheets.getItem(sheetId);
  for (const request of requests(area.top, await hiddenRows(context, sheet, area), isMeant)) {
    context.application.suspendScreenUpdatingUntilNextSync();
    let rows = 0;
    for (const run of request) {
      const range = rangeOf(sheet, { ...area, ...run });
      const some = cells.slice(run.top - area.top, run.top - area.top + run.rows);
      /* Formats first: into a cell formatted as text a formula goes as a text. They come last once more. */
      const needed = some.map(({ formula, value, format }) => (formula ? asNoText(format) : formatFor(value, format)));
      range.numberFormat = needed.map((format) => [format]);
      range.formulas = some.map(({ formula, value }, r) => [formula ?? entry(value, needed[r]!)]);
      if (some.some(({ format }, r) => format !== needed[r])) range.numberFormat = some.map(({ format }) => [format]);
      rows += run.rows;
    }
    await context.sync();
    if (!wrote(rows)) return false;
  }
  return true;
}

const asNoText = (format: string): string => (format === "@" ? GENERAL : format);

/** Excel may fill a whole column of a table after one formula in it: then cells hold what was not meant for them. */
async function check(
  context: Excel.RequestContext,
  sheetId: string,
  area: Area,
  wanted: readonly Cell[],
  isMeant: IsMeant,
): Promise<void> {
  const sheet = context.workbook.worksheets.getItem(sheetId);
  for (let from = 0; from < area.rows; from += PAGE) {
    const place = { ...area, top: area.top + from, rows: Math.min(PAGE, area.rows - from) };
    const range = rangeOf(sheet, place);
    range.load(`${READ_BACK},formulas`);
    await context.sync();
    const some = wanted.slice(from, from + place.rows);
    formulasOf(range).forEach(([formula], r) => {
      if (isMeant(from + r) && (formula === null) !== (some[r]!.formula === null))
        throw new WriteProblem(`Excel filled ${cellAddress(place.top + r, place.left)} by itself.`);
    });
    assertHolds(
      range,
      place,
      some.map(({ formula, value }, r) => [formula === null && isMeant(from + r) ? { value } : null]),
    );
  }
}
