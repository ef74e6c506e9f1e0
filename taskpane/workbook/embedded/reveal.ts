/** Goes to a place in the grid: its sheet in front, its cells selected and in sight. */
import { ICommandService } from "@univerjs/core";
import { SetSelectionsOperation, SetWorksheetActiveOperation, SetWorksheetShowCommand } from "@univerjs/sheets";
import { bottom, right } from "../area";
import type { Area } from "../port";
import type { Engine } from "./engine";

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
  /* Painted only where there is a page. */
  if (commands.hasCommand("sheet.command.scroll-to-cell")) {
    await commands.executeCommand("sheet.command.scroll-to-cell", { range });
  }
}
