/** Why rows of a table may not move here. */
import { bottom, right } from "../../area";
import { filterHides } from "../../change/refusal";
import type { RemoveTarget } from "../../change/target";
import type { LiveBook } from "../book/live-book";
import { fixedCell } from "./ties";
import type { TableNow } from "../book/tables";
import type { Desk } from "./write";
import { readerOfSomeRows } from "./readers";

/** A sentence; undefined where they may be removed. */
export function removalObstacle(desk: Desk, workbook: LiveBook, target: RemoveTarget): string | undefined {
  const [first] = target.removed;
  return first === undefined ? undefined : movingObstacle(desk, workbook, desk.table(target.table), first);
}

/** @param first counted from 0 below the header: that row and those below it would move */
export function movingObstacle(desk: Desk, workbook: LiveBook, table: TableNow, first: number): string | undefined {
  const { area, facts } = table;
  const range = {
    startRow: area.top + 1 + first,
    endRow: bottom(area) - facts.geometry.totalsRows - 1,
    startColumn: area.left,
    endColumn: right(area) - 1,
  };
  const reader = desk.reader(facts.sheet);
  for (let row = area.top + 1; row <= range.endRow; row++)
    if (reader.worksheet.getRowFiltered(row)) return filterHides(facts.name);
  const fixed = fixedCell(desk.engine, workbook, facts.sheet, range);
  if (fixed?.what === "note")
    return `A note stands in ${fixed.address}: in the file it would stay behind, beside another row. Do that in Excel.`;
  if (fixed) return `${fixed.address} holds a formula that this page cannot move. Do that in Excel.`;
  const who = readerOfSomeRows(desk, table);
  return (
    who &&
    `${who} reads single rows of "${facts.name}" and would come to read other rows. Change that formula first, or do that in Excel.`
  );
}
