/** The committed workbooks, read by a reader that had no part in making them or this product. */
import { readFileSync } from "node:fs";
import { read, utils, type WorkBook, type WorkSheet } from "@e965/xlsx";
import type { Rectangle } from "../../../src/columns/rectangle";
import type { SheetValue } from "../../../src/columns/sheet-block";
import { CellError } from "../../../src/worksheet/error";

const FOLDER = "tests/workbooks";

export interface ExpectedList {
  readonly sheet: string;
  readonly table: string | null;
  readonly range: string;
  readonly headerRow: number | null;
  readonly firstRow: number;
  readonly lastRow: number;
  readonly columns: Readonly<Record<string, string>>;
}

interface ExpectedFile {
  readonly lists?: readonly ExpectedList[];
}

export const expectedFiles = (
  JSON.parse(readFileSync(`${FOLDER}/expected.json`, "utf8")) as { files: Record<string, ExpectedFile> }
).files;

export const openFixture = (file: string): WorkBook =>
  read(readFileSync(`${FOLDER}/files/${file}`), { cellDates: false, cellNF: true });

export interface ReadSheet {
  readonly used: Rectangle | null;
  readonly values: SheetValue[][];
  readonly merges: Rectangle[];
}

/** A sheet as a host tells it: the smallest rectangle round cells with a value. */
export function readSheet(sheet: WorkSheet): ReadSheet {
  const cells = Object.entries(sheet).filter(
    ([address, cell]) => !address.startsWith("!") && (cell as { v?: unknown }).v !== undefined,
  ) as [string, { t: string; v: unknown; w?: string }][];
  if (cells.length === 0) return { used: null, values: [], merges: [] };
  const places = cells.map(([address]) => utils.decode_cell(address));
  const top = Math.min(...places.map(({ r }) => r));
  const left = Math.min(...places.map(({ c }) => c));
  const rows = Math.max(...places.map(({ r }) => r)) - top + 1;
  const columns = Math.max(...places.map(({ c }) => c)) - left + 1;
  const values = Array.from({ length: rows }, () => new Array<SheetValue>(columns).fill(null));
  cells.forEach(([, cell], i) => {
    const { r, c } = places[i]!;
    values[r - top]![c - left] = cell.t === "e" ? new CellError(cell.w ?? "#VALUE!") : (cell.v as SheetValue);
  });
  const merges = (sheet["!merges"] ?? []).map(({ s, e }) => ({
    top: s.r,
    left: s.c,
    rows: e.r - s.r + 1,
    columns: e.c - s.c + 1,
  }));
  return { used: { top, left, rows, columns }, values, merges };
}
