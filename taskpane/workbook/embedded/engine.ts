/** A running grid: with a page around it (page.ts) or without one (tests). */
import type { Injector, Univer } from "@univerjs/core";
import type { FUniver } from "@univerjs/core/lib/facade";
import { IFunctionService } from "@univerjs/engine-formula";

export interface Engine {
  readonly univer: Univer;
  readonly api: FUniver;
  readonly injector: Injector;
}

export function knowsFunction({ injector }: Engine): (name: string) => boolean {
  const service = injector.get(IFunctionService);
  return (name) => service.hasExecutor(name.toUpperCase());
}
