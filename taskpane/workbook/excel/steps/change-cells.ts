/** A few cells of one row changed, and changed back. */
import type { Area, SheetId } from "../../port";
import { rangeOf } from "../place";
import { assertHolds, READ_BACK, valuesOf, writeRow, type CellBefore, type RowOfCells } from "../values";

/** What the cells held before, as far as they were written. */
export interface CellTraces {
  before: readonly (CellBefore | null)[] | null;
}

export const changeCells = (sheetId: SheetId, area: Area, cells: RowOfCells, traces: CellTraces): Promise<void> =>
  Excel.run(async (context) => {
    const range = rangeOf(context.workbook.worksheets.getItem(sheetId), area);
    range.load(`${READ_BACK},numberFormat`);
    await context.sync();
    const formats = (range.numberFormat as string[][])[0]!;
    traces.before = valuesOf(range)[0]!.map((value, c) => (cells[c] ? { value, format: formats[c]! } : null));
    writeRow(range, cells, formats);
    await confirm(context, range, area, cells);
  });

export const changeCellsBack = (sheetId: SheetId, area: Area, { before }: CellTraces): Promise<void> =>
  Excel.run(async (context) => {
    if (!before) return;
    const range = rangeOf(context.workbook.worksheets.getItem(sheetId), area);
    range.load("numberFormat");
    await context.sync();
    writeRow(range, before, (range.numberFormat as string[][])[0]!);
    range.numberFormat = [before.map((cell) => cell?.format ?? null)];
    await confirm(context, range, area, before);
  });

async function confirm(context: Excel.RequestContext, range: Excel.Range, area: Area, cells: RowOfCells) {
  range.load(READ_BACK);
  await context.sync();
  assertHolds(range, area, [cells]);
}
