/** Goes to a place in the grid: its sheet in front, its cells selected, their first row and column in sight. */
import { ICommandService, type Worksheet } from "@univerjs/core";
import { SetSelectionsOperation, SetWorksheetActiveOperation, SetWorksheetShowCommand } from "@univerjs/sheets";
import { bottom, right } from "../../area";
import type { Area } from "../../port";
import type { Engine, Room } from "../engine";

/** Only where there is a page. */
const SCROLL = "sheet.command.scroll-view";

/** What surely fits into the smallest view that the page has, in pixels. */
const SMALLEST: Room = { height: 240, width: 400 };

/** What the grid takes of its own size (0.25.1): letters above, numbers and the bar for scrolling at the sides. */
const BESIDE = { height: 20 + 10, width: 46 + 10 };

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
  const view = viewOn(worksheet, area, engine.room?.() ?? null);
  await commands.executeCommand(SCROLL, { ...view, offsetX: 0, offsetY: 0 });
}

/**
 * From the sheet's beginning where the place is in sight from there (its first row, all its columns), else from the
 * place itself. The grid's own way of scrolling to cells stays where it is when they are held in place above an empty
 * stretch, and goes to the last row of a long range (0.25.1).
 */
function viewOn(worksheet: Worksheet, area: Area, shown: Room | null) {
  const { startRow, startColumn } = worksheet.getFreeze();
  const height = (row: number) => (worksheet.getRowVisible(row) ? worksheet.getRowHeight(row) : 0);
  const width = (column: number) => (worksheet.getColVisible(column) ? worksheet.getColumnWidth(column) : 0);
  const room = shown ? within(shown, worksheet.getZoomRatio()) : SMALLEST;
  const rows = { first: area.top, last: area.top };
  const columns = { first: area.left, last: right(area) - 1 };
  return {
    sheetViewStartRow: start(rows, startRow, height, room.height),
    sheetViewStartColumn: start(columns, startColumn, width, room.width),
  };
}

const within = ({ height, width }: Room, zoom: number): Room => ({
  height: height / zoom - BESIDE.height,
  width: width / zoom - BESIDE.width,
});

/** @param freeze the first row or column that moves, -1 for none held; the grid leaves those before it out of its count */
function start(
  place: { readonly first: number; readonly last: number },
  freeze: number,
  sizeOf: (at: number) => number,
  room: number,
): number {
  let size = 0;
  for (let at = 0; at <= place.last; at++) {
    size += sizeOf(at);
    if (size > room) return Math.max(0, place.first - Math.max(0, freeze));
  }
  return 0;
}
