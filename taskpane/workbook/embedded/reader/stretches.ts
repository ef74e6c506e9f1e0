/** A sheet's formulas as they stand in the grid's cells, those of a column that mean the same together. */
import type { SheetReader } from "../book/sheet-reader";

export interface Stretch {
  readonly column: number;
  /** Rows in order; others between them hold something else. */
  readonly rows: readonly number[];
  /** As in its first cell, without "=". */
  readonly text: string;
}

/** Farther apart they are read one by one. */
const WIDEST_GAP = 1_000;

export function stretchesOf(reader: SheetReader): readonly Stretch[] {
  const all: { readonly column: number; readonly rows: number[]; readonly text: string }[] = [];
  const open = new Map<number, Map<string, number[]>>();
  for (const row of reader.rows()) {
    for (const column of reader.columnsOf(row)) {
      const form = reader.form(row, column);
      if (form === null) continue;
      let forms = open.get(column);
      if (!forms) open.set(column, (forms = new Map()));
      const rows = forms.get(form);
      if (rows && row - rows.at(-1)! <= WIDEST_GAP) rows.push(row);
      else {
        const first = [row];
        forms.set(form, first);
        all.push({ column, rows: first, text: reader.formula(row, column)!.replace(/^=/, "") });
      }
    }
  }
  return all;
}

/** Rows between the first and the last that are not there. */
export function gapsIn(rows: readonly number[]): readonly number[] {
  const [first, last] = [rows[0]!, rows.at(-1)!];
  if (last - first + 1 === rows.length) return [];
  const there = new Set(rows);
  return Array.from({ length: last - first + 1 }, (_, i) => first + i).filter((row) => !there.has(row));
}
