/** Why rows of a table may not move here. */
import { bottom, right } from "../../area";
import type { RemoveTarget } from "../../target";
import type { LiveBook } from "../liveBook";
import { fixedCell } from "../ties";
import type { Desk } from "../write";
import { readerOfSomeRows } from "./readers";

/** A sentence; undefined where they may be removed. */
export function removalObstacle(desk: Desk, workbook: LiveBook, target: RemoveTarget): string | undefined {
  const { area, sheet, removed, table } = target;
  if (removed.length === 0) return undefined;
  const range = {
    startRow: area.top + removed[0]!,
    endRow: bottom(area) - 1,
    startColumn: area.left,
    endColumn: right(area) - 1,
  };
  const fixed = fixedCell(desk.engine, workbook, sheet, range);
  if (fixed?.what === "note")
    return `A note stands in ${fixed.address}: in the file it would stay behind, beside another row. Remove the rows in Excel.`;
  if (fixed) return `${fixed.address} holds a formula that this page cannot move. Remove the rows in Excel.`;
  const reader = readerOfSomeRows(desk, desk.table(table));
  return (
    reader &&
    `${reader} reads single rows of "${table}" and would come to read other rows. Change that formula first, or remove the rows in Excel.`
  );
}
