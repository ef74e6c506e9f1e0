/** The engine works formulas out in its own time, a few hundred at once: waiting for it, watching it, stopping it. */
import { ICommandService } from "@univerjs/core";
import {
  FormulaExecuteStageType,
  IActiveDirtyManagerService,
  SetFormulaCalculationNotificationMutation,
  SetFormulaCalculationStartMutation,
  SetSuperTableMutation,
  type IExecutionInProgressParams,
} from "@univerjs/engine-formula";
import type { Engine } from "../engine";
import { runsOf } from "./runs";

/** It answers a change after this long at the latest (measured: 0.1 s for 10,000 rows); a change without formulas gets none. */
const STARTS_WITHIN = 600;

/**
 * A table that changes its size makes the engine work out everything that hangs on any of its cells (measured: 100,000
 * formulas for one new row), because a formula may name it. None does here: formulas are A1 for the engine
 * (formulas/structured.ts), and those that read whole columns are written anew (steps/size.ts).
 */
export function leaveTablesOut({ injector }: Engine): void {
  const { id: commandId } = SetSuperTableMutation;
  injector.get(IActiveDirtyManagerService).register(commandId, { commandId, getDirtyData: () => ({}) });
}

interface Notification {
  readonly functionsExecutedState?: number;
  readonly stageInfo?: IExecutionInProgressParams;
}

export interface Watch {
  /** Share of the formulas worked out, 0 to 1. */
  readonly share?: (share: number) => void;
  readonly signal?: AbortSignal;
}

/** Makes the change and resolves when what hangs on it is worked out, or when the signal says stop. */
export function calculated(engine: Engine, change: () => void, watch: Watch = {}): Promise<"worked out" | "stopped"> {
  const commands = engine.injector.get(ICommandService);
  return new Promise((resolve) => {
    const runs = runsOf(engine);
    let hasStarted = false;
    let timer: ReturnType<typeof setTimeout> | undefined;
    const finish = (outcome: "worked out" | "stopped") => {
      clearTimeout(timer);
      listening.dispose();
      watch.signal?.removeEventListener("abort", stop);
      resolve(outcome);
    };
    const wait = () => {
      clearTimeout(timer);
      timer = setTimeout(() => finish("worked out"), STARTS_WITHIN);
    };
    const stop = () => {
      engine.api.getFormula().stopCalculation();
      finish("stopped");
    };
    const listening = commands.onCommandExecuted((command) => {
      if (command.id === SetFormulaCalculationStartMutation.id) {
        hasStarted = true;
        clearTimeout(timer);
      }
      if (command.id !== SetFormulaCalculationNotificationMutation.id) return;
      const { functionsExecutedState, stageInfo } = (command.params ?? {}) as Notification;
      if (
        stageInfo?.stage === FormulaExecuteStageType.CURRENTLY_CALCULATING &&
        stageInfo.totalFormulasToCalculate > 0
      ) {
        watch.share?.(Math.min(1, stageInfo.completedFormulasCount / stageInfo.totalFormulasToCalculate));
      }
      const isOver = functionsExecutedState !== undefined && runs.count === 0;
      if (isOver && hasStarted) setTimeout(() => finish("worked out"), 0);
    });
    watch.signal?.addEventListener("abort", stop, { once: true });
    change();
    // counted from the end of the change, which may itself take longer than that
    if (!hasStarted) wait();
  });
}
