/** Steps on cells that are there already, and on rows: each is carried out, and gives what undoes it, begun or done. */
import type { Area } from "../../port";
import type {
  ChangeColumnTarget,
  NamedCellTarget,
  ReenterTarget,
  Refusal,
  RefreshTarget,
  RowTarget,
  ShowRowsTarget,
} from "../../change/target";
import { appendRows, noAppendTraces, takeRowsAway } from "./append-rows";
import { changeCells, changeCellsBack, type CellTraces } from "./change-cells";
import { putColumnBack, refreshColumn, type ColumnTraces } from "./refresh-column";
import { noRemoveTraces, putRowsBack, removeRows } from "./remove-rows";
import { showAsBefore, showRows, type FilterTraces } from "./show-rows";
import { rowOfCells, type RowOfCells } from "../values";

export type CellsTarget =
  RowTarget | NamedCellTarget | ShowRowsTarget | RefreshTarget | ChangeColumnTarget | ReenterTarget;

export interface RowStep {
  /** @param wrote told of rows written, after each request; false asks to stop */
  readonly carryOut: (wrote: (rows: number) => boolean) => Promise<Refusal | null>;
  /** @param area where it stands now */
  readonly undo: (area: Area) => Promise<void>;
}

export function rowStep(target: CellsTarget): RowStep {
  switch (target.kind) {
    case "appendRows": {
      const traces = noAppendTraces();
      return {
        carryOut: (wrote) =>
          Excel.run(async (context) => {
            await appendRows(context, target, traces, wrote);
            return null;
          }),
        undo: (area) => Excel.run((context) => takeRowsAway(context, target, area, traces)),
      };
    }
    case "changeRow":
      return cells(target.sheet, target.area, rowOfCells(target.area.columns, target.values));
    case "writeNamed":
      return cells(target.sheet, target.area, [{ value: target.step.value }]);
    case "removeRows": {
      const traces = noRemoveTraces();
      return {
        carryOut: (wrote) =>
          Excel.run(async (context) => {
            await removeRows(context, target, traces);
            wrote(workOf(target));
            return null;
          }),
        undo: () => Excel.run((context) => putRowsBack(context, target, traces)),
      };
    }
    case "refreshColumn":
    case "changeColumn":
    case "reenterFormulas": {
      const traces: ColumnTraces = { before: [] };
      return {
        carryOut: (wrote) =>
          Excel.run(async (context) => {
            await refreshColumn(context, target, traces, wrote);
            return null;
          }),
        undo: (area) => Excel.run((context) => putColumnBack(context, target, area, traces)),
      };
    }
    case "showRows": {
      const traces: FilterTraces = { before: null };
      return {
        carryOut: (wrote) =>
          Excel.run(async (context) => {
            const refusal = await showRows(context, target, traces);
            wrote(1);
            return refusal;
          }),
        undo: (area) => Excel.run((context) => showAsBefore(context, target, area, traces)),
      };
    }
  }
}

function cells(sheet: string, area: Area, written: RowOfCells): RowStep {
  const traces: CellTraces = { before: null };
  return {
    carryOut: async (wrote) => {
      await changeCells(sheet, area, written, traces);
      wrote(1);
      return null;
    },
    undo: (now) => changeCellsBack(sheet, now, traces),
  };
}

/** In rows. */
export const workOf = (target: CellsTarget): number => {
  if (target.kind === "appendRows") return target.values.length;
  if (target.kind === "refreshColumn" || target.kind === "changeColumn" || target.kind === "reenterFormulas")
    return target.area.rows;
  return target.kind === "removeRows" ? Math.max(1, target.removed.length) : 1;
};
