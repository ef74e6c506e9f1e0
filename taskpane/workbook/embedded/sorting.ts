/**
 * Rows put in another order. The grid's own way moves formulas as they stand, so that a row would go on reading another
 * row's cells (measured); here they move as spreadsheets move them when sorting: relative references go along.
 */
import { CanceledError, ICommandService, Tools, type ICellData, type IRange } from "@univerjs/core";
import { ReorderRangeCommand } from "@univerjs/sheets";
import { OneStep, styleIds } from "./changes";
import type { Engine } from "./engine";
import { shifted } from "./formulas/references";
import type { GridWorkbookPort } from "./workbook";
import { idOf, setCells, type Cells, type Desk } from "./write";

interface Reorder {
  readonly subUnitId: string;
  readonly range: IRange;
  /** Row by row, where its cells come from. */
  readonly order: Readonly<Record<number, number>>;
}

/** What a cell must lose before it takes another's content: the grid only adds to cells. */
const NOTHING: ICellData = { v: null, t: null, f: null, si: null, p: null, custom: null };

function reorder(desk: Desk, { subUnitId, range, order }: Reorder): void {
  const reader = desk.reader(subUnitId);
  const now: Cells = {};
  const before: Cells = {};
  const base = { unitId: desk.unitId, subUnitId, top: range.startRow, left: range.startColumn };
  const ids: (string | null)[][] = [];
  const formerIds: (string | null)[][] = [];
  const content = (row: number, column: number, to: number): ICellData => {
    const cell: ICellData = { ...NOTHING, ...Tools.deepClone(reader.cell(row, column) ?? {}), si: null };
    delete cell.s;
    const formula = reader.formula(row, column);
    return formula === null ? cell : { ...cell, f: `=${shifted(formula.slice(1), to - row, 0)}` };
  };
  for (let row = range.startRow; row <= range.endRow; row++) {
    const from = order[row] ?? row;
    const [cells, formerCells]: [Record<number, ICellData>, Record<number, ICellData>] = [{}, {}];
    const [rowIds, formerRowIds]: [(string | null)[], (string | null)[]] = [[], []];
    for (let column = range.startColumn; column <= range.endColumn; column++) {
      if (from !== row) {
        cells[column] = content(from, column, row);
        formerCells[column] = content(row, column, row);
      }
      rowIds.push(idOf(desk, reader.cell(from, column)?.s));
      formerRowIds.push(idOf(desk, reader.cell(row, column)?.s));
    }
    if (from !== row) [now[row], before[row]] = [cells, formerCells];
    ids.push(rowIds);
    formerIds.push(formerRowIds);
  }
  desk.step.do(setCells(desk.unitId, subUnitId, now), setCells(desk.unitId, subUnitId, before));
  desk.step.do(styleIds({ ...base, ids }), styleIds({ ...base, ids: formerIds }));
}

export function watchSorting(engine: Engine, workbook: GridWorkbookPort): void {
  engine.injector.get(ICommandService).beforeCommandExecuted((command) => {
    if (command.id !== ReorderRangeCommand.id) return;
    const step = new OneStep(engine, workbook.unit);
    reorder(workbook.desk(step), command.params as Reorder);
    step.commit();
    throw new CanceledError();
  });
}
