/**
 * How far a sheet is drawn. A cell that stands alone a million rows or sixteen thousand columns away from all others
 * would make a rectangle that nothing on the page can go through, so it is left in the file: not drawn, not read, not
 * touched at saving; formulas that read it keep their stored results.
 */
import type { IRange } from "@univerjs/core";
import { addressOf, parseRange, type OpenedWorkbook, type PackageSheet } from "../../package";
import { referredAreas } from "../formulas/references";

/** Cells in the rectangle from A1. Our choice: twice what a file may hold (xlsx/limits.ts); all lists tried fit in. */
const MOST_CELLS = 4_000_000;

export interface Extent {
  /** The last row and column that are drawn, counted from 0. What lies further on exists for the file only. */
  readonly lastRow: number;
  readonly lastColumn: number;
  /** The first ones that hold something and are not drawn. */
  readonly firstHiddenRow: number;
  readonly firstHiddenColumn: number;
  readonly left: { readonly count: number; readonly first: string };
}

/** By sheet name; a sheet that is drawn as a whole, as nearly all are, has none. */
export type Extents = ReadonlyMap<string, Extent>;

export function extentsOf(opened: OpenedWorkbook): Extents {
  const extents = new Map<string, Extent>();
  for (const sheet of opened.sheets) {
    if (sheet.kind !== "worksheet" || !isFar(sheet)) continue;
    const extent = extentOf(opened, sheet.name);
    if (extent) extents.set(sheet.name, extent);
  }
  return extents;
}

function isFar({ usedRange }: PackageSheet): boolean {
  const used = usedRange === undefined ? undefined : parseRange(usedRange);
  return used !== undefined && used.bottom * used.right > MOST_CELLS;
}

/** Rows or columns that hold something, in order, with how many cells each. */
class Line {
  private readonly counts = new Map<number, number>();
  places: number[] = [];

  add(place: number): void {
    this.counts.set(place, (this.counts.get(place) ?? 0) + 1);
  }

  sort(): void {
    this.places = [...this.counts.keys()].sort((one, other) => one - other);
  }

  get last(): number {
    return this.places.at(-1) ?? -1;
  }

  /** What is gained for each cell that is given up with the last of them. */
  gain(across: number): number {
    const before = this.places.at(-2) ?? -1;
    return ((this.last - before) * across) / this.counts.get(this.last)!;
  }
}

function extentOf(opened: OpenedWorkbook, sheetName: string): Extent | undefined {
  const [rows, columns] = [new Line(), new Line()];
  const cells = [...opened.cells(sheetName)].filter((cell) => cell.value !== null || cell.formula);
  for (const cell of cells) {
    rows.add(cell.row - 1);
    columns.add(cell.column - 1);
  }
  rows.sort();
  columns.sort();
  // a table is drawn as a whole
  const tables = opened.tables.filter((table) => table.sheetName === sheetName).map(({ ref }) => parseRange(ref)!);
  const least = {
    row: Math.max(0, ...tables.map((area) => area.bottom)),
    column: Math.max(0, ...tables.map((area) => area.right)),
  };
  let [firstHiddenRow, firstHiddenColumn] = [Infinity, Infinity];
  while ((rows.last + 1) * (columns.last + 1) > MOST_CELLS) {
    const mayDropRow = rows.last >= least.row && rows.places.length > 1;
    const mayDropColumn = columns.last >= least.column && columns.places.length > 1;
    if (!mayDropRow && !mayDropColumn) break;
    if (mayDropRow && (!mayDropColumn || rows.gain(columns.last + 1) >= columns.gain(rows.last + 1))) {
      firstHiddenRow = rows.places.pop()!;
    } else firstHiddenColumn = columns.places.pop()!;
  }
  const left = cells.filter((cell) => cell.row - 1 > rows.last || cell.column - 1 > columns.last);
  const [first] = left;
  if (!first) return undefined;
  return {
    lastRow: rows.last,
    lastColumn: columns.last,
    firstHiddenRow,
    firstHiddenColumn,
    left: { count: left.length, first: addressOf(first.row, first.column) },
  };
}

export const isDrawn = (extent: Extent | undefined, row: number, column: number): boolean =>
  !extent || (row <= extent.lastRow && column <= extent.lastColumn);

/** Functions that find their cells only while they are worked out. */
const ANYWHERE = /\b(?:INDIRECT|OFFSET)\s*\(/i;

/**
 * Whether a formula reads cells that are not drawn.
 * @param text in the grid's spelling, without "="
 */
export function readsUndrawn(extents: Extents, text: string, sheetName: string): boolean {
  if (extents.size === 0) return false;
  if (ANYWHERE.test(text)) return true;
  return referredAreas(text).some((area) => {
    const extent = extents.get(area.sheetName ?? sheetName);
    return extent !== undefined && (area.bottom - 1 > extent.lastRow || area.right - 1 > extent.lastColumn);
  });
}

/** How large the grid's sheet is. */
export interface Drawn {
  readonly rows: number;
  readonly columns: number;
}

/** Ranges of a file cut at the edge of what is drawn; those that lie beyond it are left out. */
export const within = (ranges: readonly IRange[], { rows, columns }: Drawn): IRange[] =>
  ranges
    .filter((range) => range.startRow < rows && range.startColumn < columns)
    .map((range) => ({
      ...range,
      endRow: Math.min(range.endRow, rows - 1),
      endColumn: Math.min(range.endColumn, columns - 1),
    }));
