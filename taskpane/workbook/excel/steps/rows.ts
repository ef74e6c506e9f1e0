/**
 * Writing past hidden rows. An array of several rows written over rows that a filter hides is spoilt by Excel: shown
 * rows get the array's first element, hidden ones nothing (xlwings issue 747; OfficeDev/office-js issue 224). So shown
 * rows are written in unbroken runs, hidden rows one at a time, and everything is read back afterwards.
 */
import type { Area } from "../../port";

/** Rows that are written together. */
export interface Run {
  readonly top: number;
  readonly rows: number;
}

/** Rows in one range; far below Excel's 5 MB a request even for long formulas in several columns. */
const ROWS_TOGETHER = 500;
/** Ranges in one request, for lists with many hidden rows. */
const RANGES_TOGETHER = 100;

/** Row by row: hidden by hand or by a filter. */
export async function hiddenRows(
  context: Excel.RequestContext,
  sheet: Excel.Worksheet,
  area: Area,
): Promise<readonly boolean[]> {
  const range = sheet.getRangeByIndexes(area.top, area.left, area.rows, 1);
  range.load("rowHidden");
  await context.sync();
  /* Null when some rows are hidden and some are not. */
  if (typeof range.rowHidden === "boolean") return new Array<boolean>(area.rows).fill(range.rowHidden);
  const rows = range.getRowProperties({ rowHidden: true });
  await context.sync();
  return rows.value.map((row) => row.rowHidden === true);
}

/**
 * Cuts rows into runs that Excel writes truly, gathered into one list for each request.
 * @param isMeant by place among the rows: others are left out
 */
export function requests(
  top: number,
  hidden: readonly boolean[],
  isMeant: (row: number) => boolean = () => true,
): readonly (readonly Run[])[] {
  const all: Run[][] = [];
  let request: Run[] = [];
  let rowsInRequest = 0;
  for (let from = 0; from < hidden.length;) {
    let to = from + 1;
    if (isMeant(from)) {
      const most = from + ROWS_TOGETHER - rowsInRequest;
      if (!hidden[from]) while (to < hidden.length && to < most && !hidden[to] && isMeant(to)) to++;
      request.push({ top: top + from, rows: to - from });
      rowsInRequest += to - from;
    }
    from = to;
    if (rowsInRequest >= ROWS_TOGETHER || request.length >= RANGES_TOGETHER || from >= hidden.length) {
      all.push(request);
      request = [];
      rowsInRequest = 0;
    }
  }
  return all;
}
