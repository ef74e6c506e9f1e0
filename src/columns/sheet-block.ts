/** The used cells of a sheet, read by their addresses on the sheet. */
import type { Cell } from "../worksheet/cell";
import { CellError } from "../worksheet/error";
import type { Rectangle } from "./rectangle";

export type SheetValue = Cell | CellError;

export class SheetBlock {
  readonly top: number;
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
  /** Cells under a merge, by "row column", to the cell that holds their value. */
  private readonly mergedInto = new Map<string, readonly [row: number, column: number]>();

  constructor(
    readonly area: Rectangle,
    private readonly values: readonly (readonly SheetValue[])[],
    merges: readonly Rectangle[] = [],
  ) {
    this.top = area.top;
    this.left = area.left;
    this.bottom = area.top + area.rows;
    this.right = area.left + area.columns;
    for (const merge of merges) {
      // A title over the whole width is no header of each column: only upright merges carry a text downwards.
      for (let row = merge.top; row < Math.min(merge.top + merge.rows, this.bottom); row++)
        if (row > merge.top) this.mergedInto.set(`${row} ${merge.left}`, [merge.top, merge.left]);
    }
  }

  at(row: number, column: number): SheetValue {
    return this.values[row - this.top]?.[column - this.left] ?? null;
  }

  isFilled(row: number, column: number): boolean {
    const value = this.at(row, column);
    return value !== null && (typeof value !== "string" || value.trim() !== "");
  }

  /** The text at the head of a column, also where it stands in an upright merge that ends in this row. */
  headAt(row: number, column: number): SheetValue {
    const anchor = this.mergedInto.get(`${row} ${column}`);
    return anchor && !this.isFilled(row, column) ? this.at(anchor[0], anchor[1]) : this.at(row, column);
  }

  filledIn(row: number, from: number, to: number): number {
    let count = 0;
    for (let column = from; column < to; column++) if (this.isFilled(row, column)) count += 1;
    return count;
  }

  /** Columns with anything in them, in stretches without a wholly empty one. */
  stretches(): readonly (readonly [from: number, to: number])[] {
    const found: [number, number][] = [];
    for (let column = this.left; column < this.right; column++) {
      let filled = false;
      for (let row = this.top; row < this.bottom && !filled; row++) filled = this.isFilled(row, column);
      if (!filled) continue;
      const last = found.at(-1);
      if (last && last[1] === column) last[1] = column + 1;
      else found.push([column, column + 1]);
    }
    return found;
  }
}

/** A text in a cell as people read it; a blank is "". */
export function textOf(value: SheetValue): string {
  if (value === null) return "";
  if (value instanceof CellError) return value.code;
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  return String(value);
}
