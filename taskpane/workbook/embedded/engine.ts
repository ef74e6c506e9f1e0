/** A running grid: with a page around it (page/page.ts) or without one (tests). */
import type { Injector, Univer } from "@univerjs/core";
import type { FUniver } from "@univerjs/core/lib/facade";
import { IFunctionService } from "@univerjs/engine-formula";

export interface Engine {
  readonly univer: Univer;
  readonly api: FUniver;
  readonly injector: Injector;
  /** How large the page shows the grid, in pixels; nothing where no page shows it. */
  readonly room?: () => Room | null;
}

export interface Room {
  readonly height: number;
  readonly width: number;
}

export function knowsFunction({ injector }: Engine): (name: string) => boolean {
  const service = injector.get(IFunctionService);
  return (name) => service.hasExecutor(name.toUpperCase());
}
