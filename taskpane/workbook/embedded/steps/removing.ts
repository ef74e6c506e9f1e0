/** Rows taken out of a table, and put back. */
import type { ICellData } from "@univerjs/core";
import type { RemoveTarget } from "../../change/target";
import { styleIds } from "./changes";
import { relativeForm, shifted } from "../formulas/references";
import type { SheetReader } from "../book/sheet-reader";
import type { TableNow } from "../book/tables";
import { idOf, type Desk } from "./write";
import { Contents, held, NOTHING } from "./contents";
import { moveContents } from "./moving";
import { resizeTable } from "./size";

const columnsOf = ({ area }: TableNow): number[] => Array.from({ length: area.columns }, (_, c) => area.left + c);

/** Values go, formulas stay. */
export function blankRow(desk: Desk, table: TableNow, row: number): void {
  const { sheet } = table.facts;
  const reader = desk.reader(sheet);
  const cells = new Contents(reader);
  for (const column of columnsOf(table)) if (reader.formula(row, column) === null) cells.set(row, column, NOTHING);
  cells.put(desk, sheet);
}

/** @param rows counted from 0 below the header, ascending */
export function cutOut(desk: Desk, table: TableNow, rows: readonly number[]): void {
  if (rows.length === 0) return;
  const { area, facts } = table;
  const top = area.top + 1;
  const going = new Set(rows);
  const sources = new Map<number, number | null>();
  let to = rows[0]!;
  for (let from = to; from < area.rows - 1; from++) if (!going.has(from)) sources.set(top + to++, top + from);
  for (; to < area.rows - 1; to++) sources.set(top + to, null);
  moveContents(desk, facts.sheet, area, sources);
  resizeTable(desk, table, -rows.length);
}

interface TakenRow {
  /** The sheet row it stood in. */
  readonly row: number;
  readonly cells: readonly ICellData[];
  readonly formulas: readonly (string | null)[];
  readonly styles: readonly (string | null)[];
}

function take(desk: Desk, reader: SheetReader, table: TableNow, row: number): TakenRow {
  const columns = columnsOf(table);
  return {
    row,
    cells: columns.map((column) => held(reader, row, column)),
    formulas: columns.map((column) => reader.formula(row, column)),
    styles: columns.map((column) => idOf(desk, reader.cell(row, column)?.s)),
  };
}

/** A row's contents into a row; a column that has the same formula there already keeps it. */
function lay(desk: Desk, table: TableNow, row: number, taken: TakenRow): void {
  const { sheet } = table.facts;
  const reader = desk.reader(sheet);
  const cells = new Contents(reader);
  columnsOf(table).forEach((column, c) => {
    const [cell, formula] = [taken.cells[c]!, taken.formulas[c]!];
    const there = reader.formula(row, column);
    if (formula === null) cells.set(row, column, { ...cell, si: null });
    else if (there === null || !isAlike(there, row, formula, taken.row, column))
      cells.set(row, column, { ...cell, f: `=${shifted(formula.slice(1), row - taken.row, 0)}`, si: null });
  });
  const former = columnsOf(table).map((column) => idOf(desk, reader.cell(row, column)?.s));
  cells.put(desk, sheet);
  const base = { unitId: desk.unitId, subUnitId: sheet, top: row, left: table.area.left };
  desk.step.do(styleIds({ ...base, ids: [taken.styles] }), styleIds({ ...base, ids: [former] }));
}

const isAlike = (one: string, row: number, other: string, otherRow: number, column: number): boolean =>
  relativeForm(one.slice(1), row, column) === relativeForm(other.slice(1), otherRow, column);

/** Rows within a table that others move down for; what they hold is left to be written over. */
export function makeGaps(desk: Desk, table: TableNow, rows: readonly number[]): void {
  const { area, facts } = table;
  const top = area.top + 1;
  const gaps = new Set(rows);
  resizeTable(desk, table, rows.length);
  const sources = new Map<number, number | null>();
  let from = 0;
  for (let to = 0; to < area.rows - 1 + rows.length; to++) {
    if (gaps.has(to)) continue;
    if (from !== to) sources.set(top + to, top + from);
    from++;
  }
  moveContents(desk, facts.sheet, area, sources);
}

export type PutBack = (desk: Desk, tableNow: () => TableNow) => void;

export function removeRows(desk: Desk, { removed, emptiesFirst }: RemoveTarget, table: TableNow): PutBack {
  const reader = desk.reader(table.facts.sheet);
  const top = table.area.top + 1;
  const rows = removed.map((index) => take(desk, reader, table, top + index));
  const first = emptiesFirst ? take(desk, reader, table, top) : null;
  cutOut(desk, table, removed);
  if (emptiesFirst) blankRow(desk, table, top);
  return (again, tableNow) => {
    const all = tableNow().area.rows - 1 + removed.length;
    // where rows have become fewer since, the last of them go to the end
    const places = removed.map((index, i) => Math.min(index, all - (removed.length - i)));
    if (places.length > 0) makeGaps(again, tableNow(), places);
    const now = tableNow();
    const topNow = now.area.top + 1;
    rows.forEach((row, i) => lay(again, now, topNow + places[i]!, row));
    if (first) lay(again, now, topNow, first);
  };
}
