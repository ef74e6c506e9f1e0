/** Whether anything was changed since opening or saving. Results that the engine works out are no change of anybody's. */
import { CommandType, ICommandService } from "@univerjs/core";
import type { Engine } from "./engine";

interface Params {
  readonly unitId?: string;
}

/** The engine's own talk, and what only moves the view. */
const NO_CHANGE =
  /^formula\.mutation\.(?!set-defined-name|remove-defined-name)|\.operation\.|\.skeleton|auto-height|set-worksheet-active|permission|mark-dirty|doc\.mutation|rich-text/;

export class Unsaved {
  isChanged = false;
  private readonly listeners = new Set<() => void>();

  constructor(engine: Engine, unitId: () => string) {
    engine.injector.get(ICommandService).onCommandExecuted((command, options) => {
      if (command.type !== CommandType.MUTATION || this.isChanged) return;
      if (NO_CHANGE.test(command.id) || options?.fromFormula || options?.applyFormulaCalculationResult) return;
      const { unitId: unit } = (command.params ?? {}) as Params;
      if (unit !== unitId()) return;
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

  private tell(): void {
    for (const listen of [...this.listeners]) listen();
  }
}
