/** Changes of the grid that stand together as one step of its undo. */
import {
  CommandType,
  ICommandService,
  IUndoRedoService,
  IUniverInstanceService,
  UniverInstanceType,
  type ICellData,
  type IMutation,
  type IMutationInfo,
  type Workbook as GridWorkbook,
} from "@univerjs/core";
import type { Engine } from "../engine";

interface StyleIds {
  readonly unitId: string;
  readonly subUnitId: string;
  /** Row by row from `top`, `left`; null takes the style away. */
  readonly top: number;
  readonly left: number;
  readonly ids: readonly (readonly (string | null)[])[];
}

/**
 * Gives cells a style by its id. The grid's own way merges styles by their known keys and so loses which style of the
 * file one came from (open/styles.ts).
 */
const SetStyleIds: IMutation<StyleIds> = {
  id: "gastrostomy.mutation.set-style-ids",
  type: CommandType.MUTATION,
  handler: (accessor, { unitId, subUnitId, top, left, ids }) => {
    const book = accessor.get(IUniverInstanceService).getUnit<GridWorkbook>(unitId, UniverInstanceType.UNIVER_SHEET);
    const cells = book?.getSheetBySheetId(subUnitId)?.getCellMatrix();
    if (!cells) return false;
    ids.forEach((row, r) =>
      row.forEach((id, c) => {
        const cell: ICellData = cells.getValue(top + r, left + c) ?? {};
        if (id === null) delete cell.s;
        else cell.s = id;
        if (Object.keys(cell).length === 0) cells.realDeleteValue(top + r, left + c);
        else cells.setValue(top + r, left + c, cell);
      }),
    );
    return true;
  },
};

interface ColumnWidths {
  readonly unitId: string;
  readonly subUnitId: string;
  readonly left: number;
  /** In pixels; null: the sheet's own width again, which the grid's own way cannot give back. */
  readonly widths: readonly (number | null)[];
}

const SetColumnWidths: IMutation<ColumnWidths> = {
  id: "gastrostomy.mutation.set-column-widths",
  type: CommandType.MUTATION,
  handler: (accessor, { unitId, subUnitId, left, widths }) => {
    const book = accessor.get(IUniverInstanceService).getUnit<GridWorkbook>(unitId, UniverInstanceType.UNIVER_SHEET);
    const columns = book?.getSheetBySheetId(subUnitId)?.getConfig().columnData;
    if (!columns) return false;
    widths.forEach((width, i) => {
      const column = { ...columns[left + i] };
      if (width === null) delete column.w;
      else column.w = width;
      if (Object.keys(column).length === 0) delete columns[left + i];
      else columns[left + i] = column;
    });
    return true;
  },
};

export function registerChanges({ injector }: Engine): void {
  injector.get(ICommandService).registerCommand(SetStyleIds);
  injector.get(ICommandService).registerCommand(SetColumnWidths);
}

export const columnWidths = (params: ColumnWidths): IMutationInfo => ({ id: SetColumnWidths.id, params });

export const styleIds = (params: StyleIds): IMutationInfo => ({ id: SetStyleIds.id, params });

/** Mutations that are done one by one and, once all are done, undone together. */
export class OneStep {
  private readonly done: IMutationInfo[] = [];
  private readonly undoing: IMutationInfo[] = [];

  constructor(
    private readonly engine: Engine,
    private readonly unitId: string,
  ) {}

  do(redo: IMutationInfo, ...undo: IMutationInfo[]): void {
    this.engine.injector.get(ICommandService).syncExecuteCommand(redo.id, redo.params);
    this.done.push(redo);
    this.undoing.unshift(...undo);
  }

  /** Undo and redo now go over all of it at once. */
  commit(): void {
    if (this.done.length === 0) return;
    this.engine.injector
      .get(IUndoRedoService)
      .pushUndoRedo({ unitID: this.unitId, undoMutations: this.undoing, redoMutations: this.done });
  }

  rollBack(): void {
    const commands = this.engine.injector.get(ICommandService);
    for (const mutation of this.undoing) commands.syncExecuteCommand(mutation.id, mutation.params);
    this.undoing.length = 0;
    this.done.length = 0;
  }
}
