/** Rows of the fake's tables: added, changed, removed, put back, shown. Each gives what takes it back. */
import { bottom, right, SHEET_COLUMNS } from "../area";
import { MovableFormula } from "../../../src/formula/moving";
import type { Area, Value } from "../port";
import { risingOrder, type SortTarget } from "../change/sorted";
import {
  lets,
  type AppendTarget,
  type ChangeRowTarget,
  type NamedCellTarget,
  type RemoveTarget,
  type ShowRowsTarget,
} from "../change/target";
import type { Book, Sheet, StoredCell, Table } from "./book";

/** Where the step's cells stand now. */
export type TakeBack = (now: Area) => void;

const key = (row: number, column: number): number => row * SHEET_COLUMNS + column;

const movedText = (formula: string, rows: number): string => `=${new MovableFormula(formula.slice(1)).moved(rows, 0)}`;

/** A value as it is: a text that looks like a formula stays a text. */
function put(sheet: Sheet, row: number, column: number, value: Value): void {
  const cell = sheet.made(row, column);
  cell.value = value === "" ? null : value;
  cell.formula = null;
}

type RowCells = readonly (StoredCell | undefined)[];

function taken(sheet: Sheet, { left, columns }: Area, row: number): RowCells {
  return Array.from({ length: columns }, (_, c) => {
    const cell = sheet.cell(row, left + c);
    return cell && { ...cell };
  });
}

function laid(sheet: Sheet, { left }: Area, row: number, cells: RowCells, cameFrom: number): void {
  cells.forEach((cell, c) => {
    sheet.cells.delete(key(row, left + c));
    if (!cell) return;
    const formula = cell.formula === null ? null : movedText(cell.formula, row - cameFrom);
    sheet.cells.set(key(row, left + c), { ...cell, formula });
  });
}

function resize(table: Table, rows: number): void {
  table.area = { ...table.area, rows: table.area.rows + rows };
}

/** Counted from 0 below the header, ascending. */
function cutOut(sheet: Sheet, table: Table, rows: readonly number[]): void {
  const top = table.area.top + 1;
  const count = table.area.rows - 1;
  const going = new Set(rows);
  const staying = Array.from({ length: count }, (_, index) => index).filter((index) => !going.has(index));
  staying.forEach((from, to) => {
    if (from !== to) laid(sheet, table.area, top + to, taken(sheet, table.area, top + from), top + from);
  });
  const nothing: RowCells = Array.from({ length: table.area.columns }, () => undefined);
  for (let row = staying.length; row < count; row++) laid(sheet, table.area, top + row, nothing, top + row);
  resize(table, -rows.length);
}

export function appendRows(book: Book, target: AppendTarget): TakeBack {
  const { sheet, table } = book.table(target.table)!;
  const { area, fillsBlankRow } = target;
  const last = fillsBlankRow ? area.top : area.top - 1;
  resize(table, fillsBlankRow ? area.rows - 1 : area.rows);
  target.values.forEach((values, r) => {
    const row = area.top + r;
    if (row > last)
      for (let column = area.left; column < right(area); column++) {
        const above = sheet.cell(last, column);
        if (above) Object.assign(sheet.made(row, column), { format: above.format, bold: above.bold });
        if (!target.formulas.has(column - area.left)) continue;
        let model = last;
        while (model > table.area.top && !sheet.cell(model, column)?.formula) model--;
        sheet.type(row, column, movedText(sheet.cell(model, column)!.formula!, row - model));
      }
    for (const { column, value } of values) put(sheet, row, area.left + column, value);
  });
  return (now) => {
    const rows = Array.from({ length: now.rows }, (_, r) => now.top - table.area.top - 1 + r);
    cutOut(sheet, table, fillsBlankRow ? rows.slice(1) : rows);
    if (fillsBlankRow) blank(sheet, now, now.top);
  };
}

/** Values go, formulas and looks stay. */
function blank(sheet: Sheet, { left, columns }: Area, row: number): void {
  for (let column = left; column < left + columns; column++)
    if (sheet.cell(row, column)?.formula === null) put(sheet, row, column, null);
}

export function changeRow(book: Book, target: ChangeRowTarget): TakeBack {
  const { sheet } = book.table(target.table)!;
  const { top, left } = target.area;
  const former = target.values.map(({ column }) => sheet.value(top, left + column));
  for (const { column, value } of target.values) put(sheet, top, left + column, value);
  return (now) => target.values.forEach(({ column }, i) => put(sheet, now.top, left + column, former[i]!));
}

export function removeRows(book: Book, target: RemoveTarget): TakeBack {
  const { sheet, table } = book.table(target.table)!;
  const { area, removed, emptiesFirst } = target;
  const former = removed.map((row) => taken(sheet, area, area.top + row));
  const first = emptiesFirst ? taken(sheet, area, area.top) : null;
  cutOut(sheet, table, removed);
  if (emptiesFirst) blank(sheet, area, area.top);
  return (now) => {
    removed.forEach((index, i) => {
      const at = Math.min(index, table.area.rows - 1);
      resize(table, 1);
      for (let row = bottom(table.area) - 1; row > now.top + at; row--)
        laid(sheet, area, row, taken(sheet, area, row - 1), row - 1);
      laid(sheet, area, now.top + at, former[i]!, area.top + index);
    });
    if (first) laid(sheet, area, now.top, first, area.top);
  };
}

export function writeNamed(sheet: Sheet, { area, step }: NamedCellTarget): TakeBack {
  const former = sheet.value(area.top, area.left);
  put(sheet, area.top, area.left, step.value);
  return (now) => put(sheet, now.top, now.left, former);
}

export function showRows(book: Book, sheet: Sheet, { area, table, criteria }: ShowRowsTarget): TakeBack {
  const holder = table === null ? sheet.listFilter : book.table(table)!.table.filteredRows;
  const former = [...holder];
  const set = (rows: readonly number[]) => {
    holder.clear();
    for (const row of rows) holder.add(row);
  };
  const rows = Array.from({ length: area.rows - 1 }, (_, r) => area.top + 1 + r);
  const isOut = (row: number) =>
    criteria.some((criterion) => !lets(criterion, sheet.value(row, area.left + criterion.column)));
  set(rows.filter(isOut));
  return () => set(former);
}

/** Relative references go along with their row. */
export function sortRows(sheet: Sheet, { data, column }: SortTarget): void {
  const rows = Array.from({ length: data.rows }, (_, r) => taken(sheet, data, data.top + r));
  const keys = rows.map((_, r) => sheet.value(data.top + r, data.left + column));
  risingOrder(keys).forEach((from, to) => laid(sheet, data, data.top + to, rows[from]!, data.top + from));
}
