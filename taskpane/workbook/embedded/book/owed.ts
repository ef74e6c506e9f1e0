/**
 * Results that the engine still owes. After a change it waits a tenth of a second for more, then works in its own time;
 * until it is done the cells show what they showed before the change, and a file saved then would hold that.
 */
import { ICommandService, type ICommandInfo, type IExecutionOptions } from "@univerjs/core";
import {
  IActiveDirtyManagerService,
  SetFormulaCalculationNotificationMutation,
  SetFormulaCalculationStartMutation,
} from "@univerjs/engine-formula";
import {
  ClearSelectionFormatCommand,
  SetBorderCommand,
  SetRangeValuesMutation,
  SetStyleCommand,
  type ISetRangeValuesMutationParams,
} from "@univerjs/sheets";
import type { Engine } from "../engine";
import { runsOf, type Runs } from "./runs";

/** So long without a sign of life and it is taken for broken: saving must not hang on it. */
const NO_SIGN_OF_LIFE = 20_000;

/** Changes of looks, which the engine leaves out by who asked for them. */
const LOOKS: ReadonlySet<string> = new Set([SetStyleCommand.id, SetBorderCommand.id, ClearSelectionFormatCommand.id]);

export class OwedResults {
  /** A change that the engine has not set out on. */
  private isWaiting = false;
  private readonly runs: Runs;
  private lastSign = 0;
  private readonly listeners = new Set<() => void>();

  constructor(private readonly engine: Engine) {
    this.runs = runsOf(engine);
    engine.injector.get(ICommandService).onCommandExecuted((command, options) => this.hear(command, options));
  }

  /** Resolves when all results stand in their cells: true; or when the engine gave no sign of life any more: false. */
  async paid(): Promise<boolean> {
    this.lastSign = performance.now();
    while (this.isWaiting || this.runs.count > 0) {
      await this.nextSign();
      if (performance.now() - this.lastSign >= NO_SIGN_OF_LIFE) return false;
    }
    return true;
  }

  private nextSign(): Promise<void> {
    return new Promise((resolve) => {
      const go = () => {
        clearTimeout(timer);
        this.listeners.delete(go);
        // the cells get the results right before the engine says that it is done
        setTimeout(resolve, 0);
      };
      const timer = setTimeout(go, NO_SIGN_OF_LIFE);
      this.listeners.add(go);
    });
  }

  private hear({ id, params }: Readonly<ICommandInfo>, options: IExecutionOptions | undefined): void {
    if (id === SetFormulaCalculationStartMutation.id) this.isWaiting = false;
    else if (this.isWorkForEngine(id, params, options)) this.isWaiting = true;
    else if (id !== SetFormulaCalculationNotificationMutation.id) return;
    this.lastSign = performance.now();
    for (const listen of [...this.listeners]) listen();
  }

  /** As the engine itself decides it (TriggerCalculationController, sheets-formula 0.25.1). */
  private isWorkForEngine(id: string, params: unknown, options: IExecutionOptions | undefined): boolean {
    if (!this.engine.injector.get(IActiveDirtyManagerService).get(id)) return false;
    if (id !== SetRangeValuesMutation.id) return true;
    const { trigger } = params as ISetRangeValuesMutationParams;
    return options?.onlyLocal !== true && !LOOKS.has(trigger ?? "");
  }
}
