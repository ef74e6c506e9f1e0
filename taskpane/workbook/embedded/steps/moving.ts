/**
 * Contents of rows put into other rows. The grid's own way moves formulas as they stand, so that a row would go on reading
 * another row's cells (measured); here they move as spreadsheets move them when sorting: relative references go along.
 * Columns whose rows share one formula keep it where it is: it means the same on every row.
 */
import type { ICellData } from "@univerjs/core";
import type { SheetId } from "../../port";
import { styleIds } from "./changes";
import { shifted } from "../formulas/references";
import type { SheetReader } from "../book/sheet-reader";
import { idOf, type Desk } from "./write";
import { Contents, held, NOTHING } from "./contents";

/** Where each row's contents come from; null: it is emptied. Rows that are not named stay. */
export type Sources = ReadonlyMap<number, number | null>;

export interface Columns {
  readonly left: number;
  readonly columns: number;
}

export function moveContents(desk: Desk, sheet: SheetId, place: Columns, sources: Sources): void {
  const reader = desk.reader(sheet);
  const now = new Contents(reader);
  for (let column = place.left; column < place.left + place.columns; column++) {
    const groupOf = (row: number) => reader.cell(row, column)?.si ?? null;
    for (const [to, from] of sources) {
      const group = groupOf(to);
      const isShared = from !== null && group !== null && group === groupOf(from);
      if (!isShared) now.set(to, column, from === null ? NOTHING : moved(reader, column, from, to));
    }
  }
  const looks = looksAfter(desk, reader, place, sources);
  now.put(desk, sheet);
  const base = { unitId: desk.unitId, subUnitId: sheet, left: place.left };
  for (const { top, ids, former } of looks)
    desk.step.do(styleIds({ ...base, top, ids }), styleIds({ ...base, top, ids: former }));
}

function moved(reader: SheetReader, column: number, from: number, to: number): ICellData {
  const cell = held(reader, from, column);
  const formula = reader.formula(from, column);
  if (formula === null) return { ...cell, si: null };
  if (typeof cell.si === "string") return { ...cell, f: null };
  return { ...cell, f: `=${shifted(formula.slice(1), to - from, 0)}` };
}

function looksAfter(desk: Desk, reader: SheetReader, { left, columns }: Columns, sources: Sources) {
  const rows = [...sources.keys()].sort((one, other) => one - other);
  const idsOf = (row: number | null) =>
    Array.from({ length: columns }, (_, c) => (row === null ? null : idOf(desk, reader.cell(row, left + c)?.s)));
  return runs(rows).map(([top, end]) => {
    const stretch = Array.from({ length: end - top + 1 }, (_, r) => top + r);
    return { top, ids: stretch.map((row) => idsOf(sources.get(row)!)), former: stretch.map(idsOf) };
  });
}

/** Neighbouring rows together, each as first and last. */
function runs(rows: readonly number[]): [number, number][] {
  const found: [number, number][] = [];
  for (const row of rows) {
    const last = found.at(-1);
    if (last && last[1] === row - 1) last[1] = row;
    else found.push([row, row]);
  }
  return found;
}
