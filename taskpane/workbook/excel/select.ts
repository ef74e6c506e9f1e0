/**
 * Selects cells so that the first row and column of the sheet stay in sight wherever they can. Excel moves its view just
 * as far as a selected cell needs, and for a cell in frozen panes not at all; so the beginning of what moves is selected
 * first, from where the view then moves as little as it must.
 */
import type { Area } from "../port";
import { areaOf, PLACE, rangeOf } from "./place";
import { SHEET_COLUMNS, SHEET_ROWS } from "../area";

export async function select(context: Excel.RequestContext, sheet: Excel.Worksheet, area: Area): Promise<void> {
  const frozen = sheet.freezePanes.getLocationOrNullObject();
  frozen.load(PLACE);
  await context.sync();
  const held = frozen.isNullObject ? { rows: 0, columns: 0 } : areaOf(frozen);
  // a pane that is frozen in one direction only tells all rows, or all columns, of the sheet
  const top = held.rows >= SHEET_ROWS ? 0 : held.rows;
  const left = held.columns >= SHEET_COLUMNS ? 0 : held.columns;
  rangeOf(sheet, { top, left, rows: 1, columns: 1 }).select();
  await context.sync();
  // a long selection is shown from its first cell
  rangeOf(sheet, area).select();
  await context.sync();
}
