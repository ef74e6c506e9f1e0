/**
 * Held rows and columns never take so much of the screen that the list under them cannot be reached, at any zoom. What
 * stays held then are the rows next to the list, which are its headers, and its first columns. Only the view is changed:
 * the file holds what it held.
 */
import {
  ICommandService,
  IUniverInstanceService,
  UniverInstanceType,
  type Workbook,
  type Worksheet,
} from "@univerjs/core";
import { SetFrozenMutation, SetWorksheetActiveOperation } from "@univerjs/sheets";
import { SetZoomRatioOperation } from "@univerjs/sheets-ui";
import type { Engine, Room } from "../engine";
import { heldWithin, type Freeze } from "./held";

const CANVAS = "canvas[id^='univer-sheet-main-canvas']";

/** @param container that the grid stands in; nothing is done where it has no size */
/** How large the grid is in the page; nothing while it has no size. */
export function roomIn(container: HTMLElement): Room | null {
  const canvas = container.querySelector<HTMLElement>(CANVAS);
  return canvas && canvas.clientHeight > 0 ? { height: canvas.clientHeight, width: canvas.clientWidth } : null;
}

export function keepReachable({ injector }: Engine, container: HTMLElement): void {
  const commands = injector.get(ICommandService);
  const instances = injector.get(IUniverInstanceService);
  /** As each sheet came. */
  const own = new WeakMap<Worksheet, Freeze>();

  let seen: Element | null = null;
  const sizes = new ResizeObserver(() => fit());

  function fit(): void {
    const book = instances.getCurrentUnitOfType<Workbook>(UniverInstanceType.UNIVER_SHEET);
    const sheet = book?.getActiveSheet(true);
    const canvas = container.querySelector<HTMLElement>(CANVAS);
    if (!book || !sheet || !canvas) return;
    // each workbook has a canvas of its own, which follows the window later than what it stands in
    if (canvas !== seen) {
      sizes.disconnect();
      sizes.observe((seen = canvas));
    }
    if (canvas.clientHeight === 0) return;
    const freeze = own.get(sheet) ?? { ...sheet.getFreeze() };
    own.set(sheet, freeze);
    const zoom = sheet.getZoomRatio();
    const held = heldWithin(
      freeze,
      {
        row: (at) => (sheet.getRowVisible(at) ? sheet.getRowHeight(at) : 0),
        column: (at) => (sheet.getColVisible(at) ? sheet.getColumnWidth(at) : 0),
      },
      { height: canvas.clientHeight / zoom, width: canvas.clientWidth / zoom },
    );
    const firstColumn = freeze.startColumn - freeze.xSplit;
    const next = {
      startRow: held.rows === 0 ? -1 : freeze.startRow,
      ySplit: held.rows,
      startColumn: held.columns === 0 ? -1 : firstColumn + held.columns,
      xSplit: held.columns,
    };
    const now = sheet.getFreeze();
    if (now.startRow === next.startRow && now.ySplit === next.ySplit && now.startColumn === next.startColumn) return;
    const ids = { unitId: book.getUnitId(), subUnitId: sheet.getSheetId() };
    commands.syncExecuteCommand(SetFrozenMutation.id, { ...ids, ...next }, { onlyLocal: true });
  }

  instances
    .getCurrentTypeOfUnit$<Workbook>(UniverInstanceType.UNIVER_SHEET)
    .subscribe(() => requestAnimationFrame(fit));
  const after: ReadonlySet<string> = new Set([SetWorksheetActiveOperation.id, SetZoomRatioOperation.id]);
  commands.onCommandExecuted(({ id }) => after.has(id) && requestAnimationFrame(fit));
}
