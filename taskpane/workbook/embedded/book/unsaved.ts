/** Whether anything was changed since opening or saving. Results that the engine works out are no change of anybody's. */
import { CommandType, ICommandService } from "@univerjs/core";
import { SetWorksheetHideMutation } from "@univerjs/sheets";
import { isChange } from "../by-hand/commands";
import type { Engine } from "../engine";

interface Params {
  readonly unitId?: string;
}

export class Unsaved {
  isChanged = false;
  /** How many changes there were: what is saved holds those up to a moment. */
  changes = 0;
  private readonly listeners = new Set<() => void>();

  constructor(engine: Engine, unitId: () => string, isFile: () => boolean) {
    engine.injector.get(ICommandService).onCommandExecuted((command, options) => {
      if (command.type !== CommandType.MUTATION) return;
      if (!isChange(command.id) || options?.fromFormula || options?.applyFormulaCalculationResult) return;
      const { unitId: unit } = (command.params ?? {}) as Params;
      if (unit !== unitId()) return;
      // a file's hidden sheet that is shown to look at it stays hidden in the file
      if (command.id === SetWorksheetHideMutation.id && isFile()) return;
      this.changes++;
      if (this.isChanged) return;
      this.isChanged = true;
      this.tell();
    });
  }

  clear(): void {
    const was = this.isChanged;
    this.isChanged = false;
    if (was) this.tell();
  }

  listen(listen: () => void): () => void {
    this.listeners.add(listen);
    return () => this.listeners.delete(listen);
  }

  tell(): void {
    for (const listen of [...this.listeners]) listen();
  }
}
