/** Rows taken out of a table, and put back. */
import { MovableFormula } from "../../../../src/formula/moving";
import type { Area, Value } from "../../port";
import type { RemoveTarget } from "../../change/target";
import { areaOf, PLACE, rangeOf } from "../place";
import { dress, looksOf, type RowLook } from "./row-look";
import { deleteRows, emptyRow, insertRows, type Gap } from "./table-rows";
import { assertHolds, entry, formatFor, formulasOf, GENERAL, READ_BACK, valuesOf, WriteProblem } from "../values";

interface KeptRow {
  readonly index: number;
  readonly values: readonly Value[];
  readonly formulas: readonly (string | null)[];
  readonly formats: readonly string[];
  readonly look: RowLook | null;
}

/** What is needed to put the rows back. Filled in as the work goes on. */
export interface RemoveTraces {
  rows: readonly KeptRow[];
  first: KeptRow | null;
  areAllGone: boolean;
}

export const noRemoveTraces = (): RemoveTraces => ({ rows: [], first: null, areAllGone: false });

/** Looks are kept of so many rows: more would take Excel long. Beyond, a row put back looks like the row above it. */
const LOOKS_KEPT = 50;
/** Rows read or written in one request. */
const TOGETHER = 200;

const rowOf = (area: Area, index: number): Area => ({ ...area, top: area.top + index, rows: 1 });

export async function removeRows(context: Excel.RequestContext, target: RemoveTarget, traces: RemoveTraces) {
  const sheet = context.workbook.worksheets.getItem(target.sheet);
  const { area, removed, emptiesFirst } = target;
  const kept = await keep(context, sheet, area, emptiesFirst ? [0, ...removed] : removed);
  const runs: Area[] = [];
  for (const index of removed) {
    const last = runs.at(-1);
    if (last && last.top + last.rows === area.top + index) runs[runs.length - 1] = { ...last, rows: last.rows + 1 };
    else runs.push(rowOf(area, index));
  }
  traces.rows = emptiesFirst ? kept.slice(1) : kept;
  if (runs.length > 0) await deleteRows(context, target.table, target.sheet, runs);
  traces.areAllGone = true;
  if (!emptiesFirst) return;
  traces.first = kept[0]!;
  await emptyRow(context, sheet, rowOf(area, 0));
}

async function keep(
  context: Excel.RequestContext,
  sheet: Excel.Worksheet,
  area: Area,
  indexes: readonly number[],
): Promise<readonly KeptRow[]> {
  const looks =
    indexes.length <= LOOKS_KEPT
      ? await looksOf(
          context,
          sheet,
          indexes.map((index) => rowOf(area, index)),
        )
      : [];
  const kept: KeptRow[] = [];
  for (let from = 0; from < indexes.length; from += TOGETHER) {
    const ranges = indexes.slice(from, from + TOGETHER).map((index) => rangeOf(sheet, rowOf(area, index)));
    for (const range of ranges) range.load(`${READ_BACK},formulas,numberFormat`);
    await context.sync();
    ranges.forEach((range, i) =>
      kept.push({
        index: indexes[from + i]!,
        values: valuesOf(range)[0]!,
        formulas: formulasOf(range)[0]!,
        formats: (range.numberFormat as string[][])[0]!,
        look: looks[from + i] ?? null,
      }),
    );
  }
  return kept;
}

export async function putRowsBack(context: Excel.RequestContext, target: RemoveTarget, traces: RemoveTraces) {
  const sheet = context.workbook.worksheets.getItem(target.sheet);
  const table = context.workbook.tables.getItem(target.table).getRange();
  table.load(PLACE);
  await context.sync();
  const now = areaOf(table);
  const data = { ...now, top: now.top + 1, rows: now.rows - 1 };
  const gone = goneOf(target, traces, data.rows);
  const places = placesOf(gone, data.rows);
  if (gone.length > 0) {
    await insertRows(context, target.table, target.sheet, gapsOf(places));
    const rows = gone.map((row, i) => ({ row, place: rowOf(data, places[i]!) }));
    await fill(context, sheet, target.area, rows);
  }
  if (traces.first) await fill(context, sheet, target.area, [{ row: traces.first, place: rowOf(data, 0) }]);
}

/** Rows go from the bottom up: where Excel broke off, the upper ones still stand. */
function goneOf(target: RemoveTarget, { rows, areAllGone }: RemoveTraces, standing: number): readonly KeptRow[] {
  const count = target.area.rows - standing;
  return areAllGone ? rows : count > 0 ? rows.slice(-count) : [];
}

/** Where they stood, or at the end of a table that has become shorter since. */
const placesOf = (rows: readonly KeptRow[], standing: number): readonly number[] =>
  rows.map(({ index }, i) => Math.min(index, standing + i));

function gapsOf(places: readonly number[]): readonly Gap[] {
  const gaps: Gap[] = [];
  for (const at of places) {
    const last = gaps.at(-1);
    if (last && last.at + last.rows === at) gaps[gaps.length - 1] = { ...last, rows: last.rows + 1 };
    else gaps.push({ at, rows: 1 });
  }
  return gaps;
}

interface RowBack {
  readonly row: KeptRow;
  readonly place: Area;
}

async function fill(context: Excel.RequestContext, sheet: Excel.Worksheet, area: Area, rows: readonly RowBack[]) {
  for (let from = 0; from < rows.length; from += TOGETHER) {
    const some = rows.slice(from, from + TOGETHER).map((one) => ({ ...one, range: rangeOf(sheet, one.place) }));
    for (const { range } of some) range.load("formulas,values");
    await context.sync();
    for (const { row, place, range } of some) write(range, row, moved(row, area, place), formulasOf(range)[0]!);
    for (const { range } of some) range.load(`${READ_BACK},formulas`);
    await context.sync();
    for (const { row, place, range } of some) {
      const isFormula = formulasOf(range)[0]!.map((text) => text !== null);
      if (row.formulas.some((text, c) => (text !== null) !== isFormula[c]))
        throw new WriteProblem("Excel put a row back without all its formulas.");
      assertHolds(range, place, [row.values.map((value, c) => (row.formulas[c] === null ? { value } : null))]);
    }
  }
  const dressed = rows.filter(({ row }) => row.look !== null);
  if (dressed.length === 0) return;
  await dress(
    context,
    sheet,
    dressed.map(({ place }) => place),
    dressed.map(({ row }) => row.look!),
  );
  await context.sync();
}

const moved = (row: KeptRow, area: Area, place: Area): readonly (string | null)[] =>
  row.formulas.map((text) => {
    if (text === null) return null;
    const { index } = row;
    return `=${new MovableFormula(text.slice(1)).moved(place.top - area.top - index, place.left - area.left)}`;
  });

/** Into a cell formatted as text a formula would go as a text: the formats come last once more. */
function write(
  range: Excel.Range,
  row: KeptRow,
  formulas: readonly (string | null)[],
  present: readonly (string | null)[],
) {
  const first = row.formats.map((format, c) => (formulas[c] === null ? formatFor(row.values[c]!, format) : GENERAL));
  range.numberFormat = [first];
  /* A formula that Excel has filled in already is left alone: writing it could fill the whole column once more. */
  range.formulas = [
    row.values.map((value, c) => {
      const text = formulas[c]!;
      if (text === null) return entry(value, first[c]!);
      return text === present[c] ? null : text;
    }),
  ];
  if (first.some((format, c) => format !== row.formats[c])) range.numberFormat = [[...row.formats]];
}
