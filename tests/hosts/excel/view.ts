/**
 * What is in sight on a sheet. Excel moves its view just as far as a selected cell needs; a cell in frozen panes is in
 * sight already, so that nothing moves (support.microsoft.com, "Freeze panes to lock rows and columns").
 */
import { right, bottom } from "../../../taskpane/workbook/area";
import type { Area } from "../../../taskpane/workbook/port";

const ROWS = 30;
const COLUMNS = 8;

export class View {
  /** Rows and columns that do not move. */
  frozen = { rows: 0, columns: 0 };
  /** The first that is in sight below and beside the frozen ones. */
  top = 0;
  left = 0;

  /** A long selection is gone to by its first cell. */
  goTo({ top, left }: Area): void {
    this.top = moved(this.top, top, this.frozen.rows, ROWS);
    this.left = moved(this.left, left, this.frozen.columns, COLUMNS);
  }

  get inSight(): Area {
    return { top: this.top, left: this.left, rows: ROWS, columns: COLUMNS };
  }

  shows(row: number, column: number): boolean {
    const { inSight, frozen } = this;
    const hasRow = row < frozen.rows || (row >= inSight.top && row < bottom(inSight));
    return hasRow && (column < frozen.columns || (column >= inSight.left && column < right(inSight)));
  }
}

function moved(first: number, place: number, frozen: number, length: number): number {
  if (place < frozen) return first;
  if (place < first) return place;
  return place >= first + length ? place - length + 1 : first;
}
