/** Places in Excel's terms. */
import type { Area, Place } from "../port";

/** What must be loaded of a range before {@link areaOf}. */
export const PLACE = "rowIndex,columnIndex,rowCount,columnCount";

export const areaOf = (range: Excel.Range): Area => ({
  top: range.rowIndex,
  left: range.columnIndex,
  rows: range.rowCount,
  columns: range.columnCount,
});

export const rangeOf = (sheet: Excel.Worksheet, area: Area): Excel.Range =>
  sheet.getRangeByIndexes(area.top, area.left, area.rows, area.columns);

/** The sheet and cells a place stands for now. */
export async function standOf(
  context: Excel.RequestContext,
  place: Place,
): Promise<{ readonly id: string; readonly sheet: Excel.Worksheet; readonly area: Area }> {
  if ("sheet" in place)
    return { id: place.sheet, sheet: context.workbook.worksheets.getItem(place.sheet), area: place.area };
  const table = context.workbook.tables.getItem(place.table);
  const range = table.getRange();
  range.load(PLACE);
  table.worksheet.load("id");
  await context.sync();
  return { id: table.worksheet.id, sheet: table.worksheet, area: areaOf(range) };
}
