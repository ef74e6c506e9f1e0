/** Rows put in another order: formulas go along with their row (moving.ts says why the grid's own way is not used). */
import { CanceledError, ICommandService, type IRange } from "@univerjs/core";
import { ReorderRangeCommand } from "@univerjs/sheets";
import { SortRangeCommand } from "@univerjs/sheets-sort";
import { sortKey } from "../../../../src/caseload/sort-key";
import { contains } from "../../area";
import type { SheetId } from "../../port";
import { OneStep } from "./changes";
import type { Engine } from "../engine";
import { moveContents } from "./moving";
import type { TableNow } from "../book/tables";
import type { Desk } from "./write";

/** What sorting asks of the workbook in the grid. */
interface SortedBook {
  readonly unit: string;
  readonly desk: (step: OneStep) => Desk;
  readonly tables: () => readonly TableNow[];
}

interface Sort {
  readonly subUnitId: string;
  readonly range: IRange;
  readonly orderRules: readonly { colIndex: number }[];
}

interface Reorder {
  readonly subUnitId: string;
  readonly range: IRange;
  /** Row by row, where its cells come from. */
  readonly order: Readonly<Record<number, number>>;
}

export function watchSorting(engine: Engine, workbook: SortedBook): void {
  engine.injector.get(ICommandService).beforeCommandExecuted((command) => {
    if (command.id === SortRangeCommand.id) return takeKeys(workbook, command.params as Sort);
    if (command.id !== ReorderRangeCommand.id) return;
    const { subUnitId, range, order } = command.params as Reorder;
    reorder(engine, workbook, subUnitId, range, (row) => order[row] ?? row);
    throw new CanceledError();
  });
}

/** One step of the grid's own undo. */
export function reorder(
  engine: Engine,
  workbook: SortedBook,
  sheet: SheetId,
  range: IRange,
  from: (row: number) => number,
): void {
  const sources = new Map<number, number>();
  for (let row = range.startRow; row <= range.endRow; row++) if (from(row) !== row) sources.set(row, from(row));
  const step = new OneStep(engine, workbook.unit);
  const columns = { left: range.startColumn, columns: range.endColumn - range.startColumn + 1 };
  moveContents(workbook.desk(step), sheet, columns, sources);
  step.commit();
}

/** Sorted by words that have an order of their own, by the arrow of their header or otherwise: by the key beside them. */
function takeKeys(workbook: SortedBook, { subUnitId, range, orderRules }: Sort): void {
  for (const rule of orderRules) {
    const table = workbook
      .tables()
      .find(({ facts, area }) => facts.sheet === subUnitId && contains(area, range.startRow, rule.colIndex));
    const key = table && sortKey(table.facts.name, table.columns[rule.colIndex - table.area.left] ?? "");
    const column = key ? table.columns.indexOf(key) : -1;
    if (column >= 0) rule.colIndex = table!.area.left + column;
  }
}
