/** Rectangles of cells, counted from 0, and their A1 texts. */
import { cellAddress } from "../../src/columns/formula";
import type { Area } from "./port";
import { LAST_COLUMN, LAST_ROW } from "../../src/formula/words";

/** The size of a sheet: 1,048,576 rows, columns A to XFD. */
export const SHEET_ROWS = LAST_ROW;
export const SHEET_COLUMNS = LAST_COLUMN;

export const right = (area: Area): number => area.left + area.columns;
export const bottom = (area: Area): number => area.top + area.rows;

/** "B3" for one cell, "B3:D9" for more. */
export function areaAddress(area: Area): string {
  const first = cellAddress(area.top, area.left);
  const last = cellAddress(bottom(area) - 1, right(area) - 1);
  return first === last ? first : `${first}:${last}`;
}

const CELL = /^\$?([A-Z]{1,3})\$?([0-9]{1,7})$/i;

/** Reads "B3" or "$B$3:$D$9", without a sheet's name; null where it is no such text. */
export function parseArea(address: string): Area | null {
  const [from, to = from, ...more] = address.split(":").map((corner) => CELL.exec(corner.trim()));
  if (!from || !to || more.length > 0) return null;
  const column = (corner: RegExpExecArray) =>
    [...corner[1]!.toUpperCase()].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1;
  const row = (corner: RegExpExecArray) => Number(corner[2]) - 1;
  const top = Math.min(row(from), row(to));
  const left = Math.min(column(from), column(to));
  return {
    top,
    left,
    rows: Math.max(row(from), row(to)) - top + 1,
    columns: Math.max(column(from), column(to)) - left + 1,
  };
}

export const overlaps = (a: Area, b: Area): boolean =>
  a.top < bottom(b) && b.top < bottom(a) && a.left < right(b) && b.left < right(a);

export const contains = (area: Area, row: number, column: number): boolean =>
  row >= area.top && row < bottom(area) && column >= area.left && column < right(area);

/** The smallest rectangle around both. */
export function around(a: Area, b: Area): Area {
  const top = Math.min(a.top, b.top);
  const left = Math.min(a.left, b.left);
  return { top, left, rows: Math.max(bottom(a), bottom(b)) - top, columns: Math.max(right(a), right(b)) - left };
}

/** Rows of a table below its header, without its totals row. */
export const dataRows = (table: { area: Area; hasHeader: boolean; hasTotals: boolean }): number =>
  table.area.rows - (table.hasHeader ? 1 : 0) - (table.hasTotals ? 1 : 0);

/** "Sheet1!$B$3" or "'A sheet''s name'!$B$3:$D$9", with or without "="; null where it is no such text. */
export function parsePlace(text: string): { readonly sheetName: string; readonly area: Area } | null {
  const found = /^=?\s*(?:'((?:[^']|'')+)'|([^'!"()\s]+))!([^!]+)$/.exec(text.trim());
  const area = found && parseArea(found[3]!);
  return area ? { sheetName: found[1]?.replaceAll("''", "'") ?? found[2]!, area } : null;
}
