/**
 * Rows whose height a file does not state are as high as what stands in them, as Excel makes them when it opens the file:
 * titles in large letters, headers in several lines. The grid would do that only after an edit.
 */
import { CellValueType, WrapStrategy, type IColumnData, type IRange, type IRowData } from "@univerjs/core";
import { linesOf, LINE_HEIGHT } from "../../file/heights";
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

/** Adds heights to rows that have none. */
export function addHeights(rows: Record<number, Partial<IRowData>>, cells: CellData, around: Surroundings): void {
  const special = new Map(
    Object.entries(around.styles)
      .map(
        ([id, { fs = SIZE, tb, bl }]) => [id, { size: fs, wraps: tb === WrapStrategy.WRAP, isBold: bl === 1 }] as const,
      )
      .filter(([, { size, wraps }]) => wraps || pixels((size / SIZE) * LINE_HEIGHT) > PLAIN),
  );
  if (special.size === 0) return;
  for (const key in cells) {
    const row = Number(key);
    if (rows[row]?.h !== undefined) continue;
    let needed = PLAIN;
    for (const place in cells[row]) {
      const cell = cells[row][Number(place)]!;
      const style = special.get(cell.s as string);
      if (!style || cell.v === undefined) continue;
      const { size, wraps, isBold } = style;
      const column = Number(place);
      const isText = wraps && cell.t === CellValueType.STRING;
      // Excel leaves merged cells out when it breaks lines
      const isBroken = isText && !around.merges.some((merge) => holds(merge, row, column));
      const lines = isBroken
        ? linesOf(String(cell.v), charactersOf(row, column) / (size / SIZE) / (isBold ? 1.1 : 1))
        : 1;
      needed = Math.max(needed, pixels(lines * LINE_HEIGHT * (size / SIZE)));
    }
    if (needed > PLAIN) rows[row] = { ...rows[row], h: needed };
  }

  function charactersOf(row: number, column: number): number {
    const width = around.columns[column]?.w;
    const characters = width === undefined ? CHARACTERS : (width - 5) / PIXELS_OF_CHARACTER;
    return characters - (around.hasArrow(row, column) ? ARROW : 0);
  }
}

const holds = (range: IRange, row: number, column: number): boolean =>
  row >= range.startRow && row <= range.endRow && column >= range.startColumn && column <= range.endColumn;
