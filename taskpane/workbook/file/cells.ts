/** The cells of one sheet: those of the table and those beside it, by row and column. */
import {
  standing,
  type CellDescription,
  type SheetDescription,
  type TableDescription,
} from "../../../src/caseload/book";
import { cellAddress } from "../../../src/columns/formula";
import type { Written } from "./cell";
import { inFile } from "./formula";

/** Rows from the top; each holds its cells by column. */
export type Cells = Map<number, Map<number, Written>>;

function put(cells: Cells, row: number, column: number, written: Written): void {
  const inRow = cells.get(row) ?? new Map<number, Written>();
  cells.set(row, inRow.set(column, written));
}

/** The names of groups of columns, in the row above the headers. */
function putGroups(cells: Cells, { top, left, columns }: TableDescription): void {
  columns.forEach(({ group }, index) => {
    if (group === undefined) return;
    const isFirst = columns[index - 1]?.group !== group;
    put(cells, top - 1, left + index, { value: isFirst ? group : null, look: { look: "group" } });
  });
}

/**
 * By column: how a formula by addresses stands in the first row, and in those below. One that names its cells is written
 * out in every row, because Excel shares none of those.
 */
function sharedFormulas({ top, left, columns, rows }: TableDescription) {
  let groups = 0;
  return columns.map(({ isByAddress }, index) => {
    if (!isByAddress || rows.length === 1) return undefined;
    const [first, last] = [cellAddress(top + 1, left + index), cellAddress(top + rows.length, left + index)];
    const group = groups++;
    return { first: { group, ref: `${first}:${last}` }, below: { group } };
  });
}

function putTable(cells: Cells, table: TableDescription): void {
  const { top, left, columns, rows } = table;
  putGroups(cells, table);
  columns.forEach(({ header, kind }, index) => {
    const look = kind === "computed" ? "computedHeader" : "typedHeader";
    put(cells, top, left + index, { value: header, look: { look, wrap: true } });
  });
  const ways = columns.map(({ format, kind, formula }, index) => ({
    look: { look: kind === "computed" ? "computed" : "typed", format } as const,
    ...(formula && { formula: inFile(standing(table, index)) }),
  }));
  const shared = sharedFormulas(table);
  rows.forEach((values, r) =>
    ways.forEach((way, index) => {
      const group = shared[index];
      const formula = group && (r === 0 ? { ...group.first, text: way.formula! } : group.below);
      put(cells, top + 1 + r, left + index, { ...way, ...(formula && { formula }), value: values[index] ?? null });
    }),
  );
}

function written(cell: CellDescription): Written {
  const { value = null, formula, look, format, wrap } = cell;
  return {
    value,
    ...(formula !== undefined && { formula: inFile(formula) }),
    look: { ...(look && { look }), ...(format !== undefined && { format }), ...(wrap && { wrap }) },
  };
}

const isInside = ({ row, column }: CellDescription, { top, left, rows, columns }: TableDescription): boolean =>
  row > top && row <= top + rows.length && column >= left && column < left + columns.length;

const twiceAt = ({ name }: SheetDescription, row: number, column: number): Error =>
  new Error(`Two things stand in ${name} ${cellAddress(row, column)}`);

export function cellsOf(sheet: SheetDescription): Cells {
  const cells: Cells = new Map();
  const { table } = sheet;
  if (table) putTable(cells, table);
  for (const cell of sheet.cells) {
    const { row, column, across = 1 } = cell;
    const there = cells.get(row)?.get(column);
    const own = written(cell);
    if (table && there && isInside(cell, table)) {
      put(cells, row, column, { ...there, look: { ...there.look, ...own.look } });
      continue;
    }
    if (there) throw twiceAt(sheet, row, column);
    put(cells, row, column, own);
    for (let more = 1; more < across; more++) {
      if (cells.get(row)?.has(column + more)) throw twiceAt(sheet, row, column + more);
      put(cells, row, column + more, { value: null, look: own.look });
    }
  }
  return cells;
}
