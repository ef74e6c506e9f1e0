/** Cells that move up or down because some were deleted or inserted above them. */
import { SHEET_COLUMNS, bottom, contains, overlaps, right } from "../../../taskpane/workbook/area";
import { dataArea, type Sheet, type Table } from "../../../taskpane/workbook/fake/book";
import type { Area } from "../../../taskpane/workbook/port";
import type { Looks } from "./looks";
import { ApiError } from "./objects";

/** Deletes cells; those below them, in the same columns, move up. */
export function deleteUp(sheet: Sheet, looks: Looks, area: Area): void {
  const table = shiftable(sheet, area);
  /* Excel cannot move cells in a filtered table: its library leaves the rows and says nothing (office-js issue 994). */
  if (table && table.filteredRows.size > 0) return;
  if (table && dataArea(table).rows <= area.rows)
    throw new ApiError("InvalidOperation", "A table keeps one row at least.");
  take(sheet, looks, area);
  move(sheet, looks, area, bottom(area), -area.rows);
  if (table) table.area = { ...table.area, rows: table.area.rows - area.rows };
}

/** Makes room for cells; those that stood there, and below in the same columns, move down. */
export function insertDown(sheet: Sheet, looks: Looks, area: Area): void {
  const table = shiftable(sheet, area);
  if (table && table.filteredRows.size > 0)
    throw new ApiError("InvalidOperation", "This would move cells in a filtered table.");
  move(sheet, looks, area, area.top, area.rows);
  if (table) table.area = { ...table.area, rows: table.area.rows + area.rows };
  /* New cells look like those above them, even when that is a table's header. */
  if (area.top === 0) return;
  for (let row = area.top; row < bottom(area); row++)
    for (let column = area.left; column < right(area); column++) {
      const above = sheet.cell(area.top - 1, column);
      if (above) Object.assign(sheet.made(row, column), { format: above.format, bold: above.bold });
      looks.copy(sheet, { row: area.top - 1, column }, { row, column });
    }
}

/** The table whose data rows are meant, if any. A shift that would tear a table apart is refused. */
function shiftable(sheet: Sheet, area: Area): Table | undefined {
  const below = { ...area, rows: 1_048_576 - area.top };
  const inside = sheet.tables.find((table) => overlaps(dataArea(table), { ...area, rows: 1 }));
  for (const table of sheet.tables) {
    if (!overlaps(table.area, below)) continue;
    const isWhole = table.area.left >= area.left && right(table.area) <= right(area);
    const isAllBelow = table.area.top >= bottom(area);
    if (!isWhole || (table !== inside && !isAllBelow))
      throw new ApiError("InvalidOperation", "This operation is attempting to shift cells in a table on the sheet.");
  }
  return inside;
}

function take(sheet: Sheet, looks: Looks, area: Area): void {
  for (let row = area.top; row < bottom(area); row++)
    for (let column = area.left; column < right(area); column++) {
      sheet.cells.delete(row * SHEET_COLUMNS + column);
      looks.forget(sheet, row, column);
    }
}

function move(sheet: Sheet, looks: Looks, area: Area, from: number, by: number): void {
  const isMoved = (row: number, column: number) => row >= from && column >= area.left && column < right(area);
  const moved = [...sheet.cells].filter(([key]) => isMoved(Math.floor(key / SHEET_COLUMNS), key % SHEET_COLUMNS));
  for (const [key] of moved) sheet.cells.delete(key);
  for (const [key, cell] of moved) sheet.cells.set(key + by * SHEET_COLUMNS, cell);
  looks.move(sheet, isMoved, by);
  for (const table of sheet.tables)
    if (table.area.top >= from && contains(area, area.top, table.area.left)) down(table, by);
  for (const merge of sheet.merges) if (isMoved(merge.top, merge.left)) Object.assign(merge, { top: merge.top + by });
  for (const spill of sheet.spills)
    if (isMoved(spill.area.top, spill.area.left)) spill.area = { ...spill.area, top: spill.area.top + by };
}

const down = (table: Table, by: number): void => {
  table.area = { ...table.area, top: table.area.top + by };
};
