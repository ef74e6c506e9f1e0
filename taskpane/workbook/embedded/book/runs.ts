/**
 * How many calculations the engine has set out on and not ended. One that a change has stopped says at once that it has
 * ended, and says so again when it is through; by then the next one has been asked for. Only the second counts, or the
 * next one would be taken for ended before it has begun (0.25.1).
 */
import { ICommandService, type ICommandInfo } from "@univerjs/core";
import {
  FormulaExecuteStageType,
  SetFormulaCalculationNotificationMutation,
  SetFormulaCalculationStartMutation,
  type ISetFormulaCalculationNotificationMutation,
} from "@univerjs/engine-formula";
import type { Engine } from "../engine";

export class Runs {
  /** Not ended, begun or not. */
  count = 0;
  private isThrough = false;

  hear({ id, params }: Readonly<ICommandInfo>): void {
    if (id === SetFormulaCalculationStartMutation.id) this.count += 1;
    if (id !== SetFormulaCalculationNotificationMutation.id) return;
    const { stageInfo, functionsExecutedState } = params as ISetFormulaCalculationNotificationMutation;
    if (stageInfo?.stage === FormulaExecuteStageType.CALCULATION_COMPLETED) this.isThrough = true;
    if (functionsExecutedState === undefined || !this.isThrough) return;
    this.isThrough = false;
    this.count = Math.max(0, this.count - 1);
  }
}

const runs = new WeakMap<Engine, Runs>();

/** The engine's, counted from the first time that somebody asks. */
export function runsOf(engine: Engine): Runs {
  const known = runs.get(engine);
  if (known) return known;
  const counted = new Runs();
  runs.set(engine, counted);
  engine.injector.get(ICommandService).onCommandExecuted((command) => counted.hear(command));
  return counted;
}
