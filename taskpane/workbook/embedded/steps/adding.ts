/** Rows at the end of a table. */
import type { ICellData } from "@univerjs/core";
import { bottom } from "../../area";
import type { AppendTarget } from "../../change/target";
import { styleIds } from "./changes";
import { isMovedByEngine, shifted } from "../formulas/references";
import type { SheetReader } from "../book/sheet-reader";
import type { TableNow } from "../book/tables";
import { idOf, type Desk } from "./write";
import { Contents, NOTHING, typed } from "./contents";
import { resizeTable } from "./size";

type RowMaker = (row: number) => ICellData | undefined;

/** Rows above the last one in which a column's formula is looked for, where the last one was typed over. */
const LOOKED_AT = 20;

/** What a new row below the last one gets in a column with a formula. */
function formulaMaker(desk: Desk, reader: SheetReader, column: number, last: number, first: number): RowMaker {
  let model = last;
  while (model > last - LOOKED_AT && reader.formula(model, column) === null) model--;
  const text = reader.formula(model, column)?.slice(1);
  if (text === undefined) return () => undefined;
  const group = reader.cell(model, column)?.si;
  if (group) return () => ({ ...NOTHING, si: group });
  const written = (row: number) => ({ ...NOTHING, f: `=${shifted(text, row - model, 0)}` });
  if (!isMovedByEngine(text)) return written;
  const name = desk.unique();
  return (row) => (row === first ? { ...written(row), si: name } : { ...NOTHING, si: name });
}

/** Counted within the table: columns in which at least half of the last rows hold a formula. */
export function formulaColumns(reader: SheetReader, { area }: TableNow): ReadonlySet<number> {
  const last = bottom(area) - 1;
  const rows = Array.from({ length: Math.min(LOOKED_AT, area.rows - 1) }, (_, r) => last - r);
  const isWorkedOut = (column: number) =>
    rows.filter((row) => reader.formula(row, column) !== null).length * 2 >= rows.length;
  return new Set(Array.from({ length: area.columns }, (_, c) => c).filter((c) => isWorkedOut(area.left + c)));
}

/**
 * Rows of a table's whole width below its last one: they look like it and take its columns' formulas.
 * @param typedInto what else is to stand in them: all of it in one go, because the engine goes over every formula each time
 */
export function grow(
  desk: Desk,
  table: TableNow,
  rows: number,
  formulas: ReadonlySet<number>,
  typedInto: (cells: Contents) => void = () => undefined,
): void {
  const { sheet } = table.facts;
  const { area } = table;
  const [last, first] = [bottom(area) - 1, bottom(area)];
  resizeTable(desk, table, rows);
  const reader = desk.reader(sheet);
  const makers = new Map<number, RowMaker>();
  for (const index of formulas) {
    const column = area.left + index;
    makers.set(column, formulaMaker(desk, reader, column, last, first));
  }
  const cells = new Contents(reader);
  for (let row = first; row < first + rows; row++) {
    for (const [column, make] of makers) {
      const content = make(row);
      if (content) cells.set(row, column, content);
    }
  }
  const columns = Array.from({ length: area.columns }, (_, c) => area.left + c);
  const looks = columns.map((column) => idOf(desk, reader.cell(last, column)?.s));
  const ids = Array.from({ length: rows }, () => looks);
  const formerIds = ids.map((_, r) => columns.map((column) => idOf(desk, reader.cell(first + r, column)?.s)));
  const base = { unitId: desk.unitId, subUnitId: sheet, top: first, left: area.left };
  desk.step.do(styleIds({ ...base, ids }), styleIds({ ...base, ids: formerIds }));
  typedInto(cells);
  cells.put(desk, sheet);
}

export function appendRows(desk: Desk, target: AppendTarget, table: TableNow): void {
  const { sheet, area, values, fillsBlankRow, formulas } = target;
  const rows = fillsBlankRow ? area.rows - 1 : area.rows;
  const typedInto = (cells: Contents) =>
    values.forEach((row, r) => {
      for (const { column, value } of row) cells.set(area.top + r, area.left + column, typed(value));
    });
  if (rows > 0) return grow(desk, table, rows, formulas, typedInto);
  const cells = new Contents(desk.reader(sheet));
  typedInto(cells);
  cells.put(desk, sheet);
}
