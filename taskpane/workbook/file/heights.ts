/** Row heights: programs that only read a file do not work out how tall a wrapped text is, least of all across columns. */
import type { SheetDescription } from "../../../src/caseload/book";
import { BOLD, LINE_HEIGHT, linesOf } from "../xlsx/lines";
import { looks, NORMAL_SIZE } from "./looks";

/** A filter button takes this many characters of a header's width. */
const BUTTON = 3;
/** Points above and below a header, so that letters that hang are not cut. */
const ROOM = 4;

/** Heights in points by row, for rows that need more than one plain line. */
export function heightsOf(sheet: SheetDescription, widthOf: (column: number) => number): ReadonlyMap<number, number> {
  const heights = new Map<number, number>();
  const need = (row: number, points: number): void => {
    if (points > LINE_HEIGHT) heights.set(row, Math.max(points, heights.get(row) ?? 0));
  };
  for (const { row, column, value, look = "text", wrap, across = 1 } of sheet.cells) {
    const { size = NORMAL_SIZE, isBold } = looks[look];
    const scale = size / NORMAL_SIZE;
    const width = Array.from({ length: across }, (_, i) => widthOf(column + i)).reduce((sum, one) => sum + one, 0);
    const lines = wrap && typeof value === "string" ? linesOf(value, width / scale / (isBold ? BOLD : 1)) : 1;
    need(row, Math.ceil(lines * LINE_HEIGHT * scale));
  }
  for (const { header, width, isHidden } of sheet.table?.columns ?? []) {
    if (isHidden) continue;
    need(sheet.table!.top, linesOf(header, (width - BUTTON) / BOLD) * LINE_HEIGHT + ROOM);
  }
  return heights;
}
