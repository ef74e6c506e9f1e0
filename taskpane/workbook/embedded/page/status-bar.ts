/** What the grid's bar says of the selected cells. A sum of dates is a number that means nothing, so they are counted. */
import { IStatusBarService } from "@univerjs/preset-sheets-core";
import { SheetsSelectionsService } from "@univerjs/sheets";
import { looksLikeDate } from "../by-hand/typing";
import type { Engine } from "../engine";
import type { LiveBook } from "../book/live-book";

const COUNTS: ReadonlySet<string> = new Set(["COUNT", "COUNTA"]);

export function watchStatusBar({ injector }: Engine, workbook: LiveBook): void {
  const bar = injector.get(IStatusBarService);
  const setState = bar.setState.bind(bar);
  bar.setState = (state) => {
    if (!state || !holdsDate()) return setState(state);
    setState({ pattern: null, values: state.values.filter(({ func }) => COUNTS.has(String(func))) });
  };

  function holdsDate(): boolean {
    const sheet = workbook.book.getActiveSheet();
    const reader = workbook.reader(sheet.getSheetId());
    const used = reader.used();
    if (!used) return false;
    return injector
      .get(SheetsSelectionsService)
      .getCurrentSelections()
      .some(({ range }) => {
        // whole rows and columns have no end of their own
        const [top, left] = [range.startRow || 0, range.startColumn || 0];
        const bottom = Math.min(range.endRow || used.top + used.rows - 1, used.top + used.rows - 1);
        const right = Math.min(range.endColumn || used.left + used.columns - 1, used.left + used.columns - 1);
        for (let column = left; column <= right; column++)
          for (let row = top; row <= bottom; row++)
            if (typeof reader.cell(row, column)?.v === "number" && looksLikeDate(reader.format(row, column)))
              return true;
        return false;
      });
  }
}
