/** The selected row as pairs of header and value: the grid is a picture to a screen reader. */
import { cellAddress } from "../../../../src/columns/formula";
import { bottom, contains, right } from "../../area";
import { asText } from "../../change/expectations";
import type { RowEntry, SelectedRow } from "../interface";
import type { GridWorkbookPort } from "../book/workbook";

/** Beyond this a row is no list of anybody's. */
const MOST_COLUMNS = 200;

/** What the cell shows: dates as dates, not as day numbers. */
function shown(workbook: GridWorkbookPort, sheet: string, row: number, column: number): string {
  const reader = workbook.reader(sheet);
  const value = reader.value(row, column);
  if (typeof value !== "number") return asText(value);
  // painted text where the grid has one; it is for reading only, never for calculating
  return workbook.paintedText(sheet, row, column) ?? asText(value);
}

export function selectedRow(workbook: GridWorkbookPort): SelectedRow | null {
  const { selection, sheets, tables } = workbook.overviewNow();
  if (!selection) return null;
  const row = selection.area.top;
  const sheet = sheets.find((one) => one.id === selection.sheet)!;
  const acrossRow = tables.filter(({ area, sheet: id }) => id === sheet.id && row > area.top && row < bottom(area));
  const table = acrossRow.find(({ area }) => contains(area, row, selection.area.left));
  const span = table?.area ?? sheet.used;
  if (!span) return { sheet: sheet.name, row: row + 1, entries: [] };
  const reader = workbook.reader(sheet.id);
  const plain = acrossRow.length > 0 ? null : headerAbove(workbook, sheet.id, row, span.left, right(span));
  const entries: RowEntry[] = [];
  for (let column = span.left; column < Math.min(right(span), span.left + MOST_COLUMNS); column++) {
    const headerRow = acrossRow.find(({ area }) => contains(area, row, column))?.area.top ?? plain;
    const header = headerRow === null ? "" : asText(reader.value(headerRow, column));
    const value = shown(workbook, sheet.id, row, column);
    if (header === "" && value === "") continue;
    entries.push({ header, value, address: cellAddress(row, column) });
  }
  return { sheet: sheet.name, row: row + 1, entries };
}

/** In a plain list: the top row of the block that the row stands in, if it is made of texts. */
function headerAbove(workbook: GridWorkbookPort, sheet: string, row: number, left: number, end: number): number | null {
  const reader = workbook.reader(sheet);
  const filled = (at: number) => {
    let count = 0;
    for (let column = left; column < end; column++) if (reader.value(at, column) !== null) count++;
    return count;
  };
  let top = row;
  while (top > 0 && filled(top - 1) > 1) top--;
  if (top === row) return null;
  for (let column = left; column < end; column++) {
    const value = reader.value(top, column);
    if (value !== null && typeof value !== "string") return null;
  }
  return top;
}
