/**
 * Rows whose height a file does not state are as high as what stands in them, as Excel makes them when it opens the file:
 * titles in large letters, headers in several lines. The grid would do that only after an edit.
 */
import { CellValueType, WrapStrategy, type IColumnData, type IRange, type IRowData } from "@univerjs/core";
import { BOLD, LINE_HEIGHT, linesOf } from "../../xlsx/lines";
import type { CellData } from "./cells";
import type { OriginStyle } from "./styles";

/** The default letters and column, where a file does not state its own (ECMA-376 part 1, 18.3.1.81). */
const SIZE = 11;
const CHARACTERS = 9;
/** What the grid gives a row by itself, in pixels. */
const PLAIN = 24;
/** An arrow takes this many characters of a header's width. */
const ARROW = 3;
const PIXELS_OF_CHARACTER = 7;

const pixels = (points: number): number => Math.round((points * 4) / 3);

export interface Surroundings {
  readonly styles: Readonly<Record<string, OriginStyle>>;
  readonly columns: Readonly<Record<number, Partial<IColumnData>>>;
  readonly merges: readonly IRange[];
  /** Header cells with an arrow in them. */
  readonly hasArrow: (row: number, column: number) => boolean;
}

/** Style indexes of which a cell may need more than a plain row: large letters, or lines that break. */
export const tallStyles = (styles: Surroundings["styles"]): ReadonlySet<number> =>
  new Set(
    Object.values(styles)
      .filter(({ fs = SIZE, tb }) => tb === WrapStrategy.WRAP || pixels((fs / SIZE) * LINE_HEIGHT) > PLAIN)
      .map(({ xf }) => xf!),
  );

/**
 * Adds heights to rows that have none.
 * @param tall cells in one of the tall styles, by row and column
 */
export function addHeights(
  rows: Record<number, Partial<IRowData>>,
  cells: CellData,
  tall: readonly (readonly [row: number, column: number])[],
  around: Surroundings,
): void {
  const needed = new Map<number, number>();
  for (const [row, column] of tall) {
    if (rows[row]?.h !== undefined) continue;
    const cell = cells[row]![column]!;
    const { fs = SIZE, tb, bl } = around.styles[cell.s as string]!;
    const scale = fs / SIZE;
    // Excel leaves merged cells out when it breaks lines
    const isBroken =
      tb === WrapStrategy.WRAP &&
      cell.t === CellValueType.STRING &&
      !around.merges.some((merge) => holds(merge, row, column));
    const lines = isBroken ? linesOf(String(cell.v), charactersOf(row, column) / scale / (bl === 1 ? BOLD : 1)) : 1;
    const height = pixels(lines * LINE_HEIGHT * scale);
    if (height > (needed.get(row) ?? PLAIN)) needed.set(row, height);
  }
  for (const [row, h] of needed) rows[row] = { ...rows[row], h };

  function charactersOf(row: number, column: number): number {
    const width = around.columns[column]?.w;
    const characters = width === undefined ? CHARACTERS : (width - 5) / PIXELS_OF_CHARACTER;
    return characters - (around.hasArrow(row, column) ? ARROW : 0);
  }
}

const holds = (range: IRange, row: number, column: number): boolean =>
  row >= range.startRow && row <= range.endRow && column >= range.startColumn && column <= range.endColumn;
