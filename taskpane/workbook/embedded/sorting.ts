/** Rows put in another order: formulas go along with their row (rows/moving.ts says why the grid's own way is not used). */
import { CanceledError, ICommandService, type IRange } from "@univerjs/core";
import { ReorderRangeCommand } from "@univerjs/sheets";
import { OneStep } from "./changes";
import type { Engine } from "./engine";
import { moveContents } from "./rows/moving";
import type { GridWorkbookPort } from "./workbook";

interface Reorder {
  readonly subUnitId: string;
  readonly range: IRange;
  /** Row by row, where its cells come from. */
  readonly order: Readonly<Record<number, number>>;
}

export function watchSorting(engine: Engine, workbook: GridWorkbookPort): void {
  engine.injector.get(ICommandService).beforeCommandExecuted((command) => {
    if (command.id !== ReorderRangeCommand.id) return;
    const { subUnitId, range, order } = command.params as Reorder;
    const sources = new Map<number, number>();
    for (let row = range.startRow; row <= range.endRow; row++) {
      const from = order[row] ?? row;
      if (from !== row) sources.set(row, from);
    }
    const step = new OneStep(engine, workbook.unit);
    const columns = { left: range.startColumn, columns: range.endColumn - range.startColumn + 1 };
    moveContents(workbook.desk(step), subUnitId, columns, sources);
    step.commit();
    throw new CanceledError();
  });
}
