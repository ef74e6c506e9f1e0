/** Goes to a place in the grid: its sheet in front, its cells selected, their first row and column in sight. */
import { ICommandService, type Worksheet } from "@univerjs/core";
import { SetSelectionsOperation, SetWorksheetActiveOperation, SetWorksheetShowCommand } from "@univerjs/sheets";
import { bottom, right } from "../area";
import type { Area } from "../port";
import type { Engine } from "./engine";

/** Only where there is a page. */
const SCROLL = "sheet.command.scroll-view";

/** What surely fits into the smallest view that the page has, in pixels. */
const ROOM = { rows: 240, columns: 400 };

export async function reveal(
  engine: Engine,
  sheet: { readonly unitId: string; readonly subUnitId: string },
  area: Area,
  isHidden: boolean,
): Promise<void> {
  const commands = engine.injector.get(ICommandService);
  if (isHidden) await commands.executeCommand(SetWorksheetShowCommand.id, sheet);
  await commands.executeCommand(SetWorksheetActiveOperation.id, sheet);
  const { top, left } = area;
  const range = { startRow: top, endRow: bottom(area) - 1, startColumn: left, endColumn: right(area) - 1 };
  const primary = {
    ...{ ...range, endRow: top, endColumn: left },
    ...{ actualRow: top, actualColumn: left, isMerged: false, isMergedMainCell: false },
  };
  await commands.executeCommand(SetSelectionsOperation.id, { ...sheet, selections: [{ range, primary, style: null }] });
  if (!commands.hasCommand(SCROLL)) return;
  const worksheet = engine.api.getWorkbook(sheet.unitId)!.getWorkbook().getSheetBySheetId(sheet.subUnitId)!;
  await commands.executeCommand(SCROLL, { ...viewOn(worksheet, top, left), offsetX: 0, offsetY: 0 });
}

/**
 * From the sheet's beginning where the place is in sight from there, else from the place itself. The grid's own way of
 * scrolling to cells stays where it is when they are held in place above an empty stretch, and goes to the last row of a
 * long range (0.25.1).
 */
function viewOn(worksheet: Worksheet, top: number, left: number) {
  const { startRow, startColumn } = worksheet.getFreeze();
  const height = (row: number) => (worksheet.getRowVisible(row) ? worksheet.getRowHeight(row) : 0);
  const width = (column: number) => (worksheet.getColVisible(column) ? worksheet.getColumnWidth(column) : 0);
  return {
    sheetViewStartRow: start(top, Math.max(0, startRow), height, ROOM.rows),
    sheetViewStartColumn: start(left, Math.max(0, startColumn), width, ROOM.columns),
  };
}

/** @param held the first row or column that moves; the grid leaves those before it out of its count */
function start(place: number, held: number, sizeOf: (at: number) => number, room: number): number {
  let size = 0;
  for (let at = held; at <= place; at++) {
    size += sizeOf(at);
    if (size > room) return place - held;
  }
  return 0;
}
