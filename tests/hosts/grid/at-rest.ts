/**
 * When the engines without a page have come to rest: none of them calculates, and neither grid nor adapter has planned
 * anything for later. Tests wait for that, however long it takes, instead of for a time that a slow machine needs
 * longer than. Timers are counted from the reading of this file on, before any engine starts.
 */
import { ICommandService } from "@univerjs/core";
import {
  SetFormulaCalculationNotificationMutation,
  SetFormulaCalculationStartMutation,
  type ISetFormulaCalculationNotificationMutation,
} from "@univerjs/engine-formula";
import type { Engine } from "../../../taskpane/workbook/embedded/engine";

type Timer = ReturnType<typeof setTimeout>;
type Work = (...given: unknown[]) => void;
const real = { setTimeout, clearTimeout, setInterval, clearInterval };

const planned = new Set<Timer | undefined>();
const calculating = new Set<Engine>();

/**
 * An interval that keeps coming round, or begins another as long as itself, only looks whether there is something to do:
 * the grid's buffers are such. It counts for so many rounds.
 */
const ROUNDS = 2;
/**
 * Grid and adapter gather for so long at most what comes together; longer timers give somebody up. Here nothing comes
 * later than it can, so that gathering takes a tenth of its time. In their own order they stay, and limits what they are.
 */
const GATHERED_WITHIN_MS = 100;
const shortened = (milliseconds = 0): number => (milliseconds <= GATHERED_WITHIN_MS ? milliseconds / 10 : milliseconds);

/** The interval whose turn it is just now: how long it is and which round of its kind. */
let inTurn: { readonly milliseconds: number | undefined; readonly round: number } | null = null;

Object.assign(globalThis, {
  setTimeout(work: Work, milliseconds?: number, ...given: unknown[]): Timer {
    const timer = real.setTimeout(() => {
      planned.delete(timer);
      work(...given);
    }, shortened(milliseconds));
    planned.add(timer);
    return timer;
  },
  setInterval(work: Work, milliseconds?: number, ...given: unknown[]): Timer {
    let round = inTurn?.milliseconds === milliseconds ? inTurn!.round : 0;
    const timer = real.setInterval(() => {
      if (++round >= ROUNDS) planned.delete(timer);
      inTurn = { milliseconds, round };
      try {
        work(...given);
      } finally {
        inTurn = null;
      }
    }, shortened(milliseconds));
    if (round < ROUNDS) planned.add(timer);
    return timer;
  },
  clearTimeout(timer?: Timer): void {
    planned.delete(timer);
    real.clearTimeout(timer);
  },
  clearInterval(timer?: Timer): void {
    planned.delete(timer);
    real.clearInterval(timer);
  },
});

/** Follows what an engine works out. */
export function watchRest(engine: Engine): void {
  const commands = engine.injector.get(ICommandService);
  commands.onCommandExecuted(({ id, params }) => {
    if (id === SetFormulaCalculationStartMutation.id) calculating.add(engine);
    if (id !== SetFormulaCalculationNotificationMutation.id) return;
    // one of two that overlap may say that it was stopped, while the other goes on and says how far it is
    const { functionsExecutedState } = params as ISetFormulaCalculationNotificationMutation;
    if (functionsExecutedState === undefined) calculating.add(engine);
    else calculating.delete(engine);
  });
  engine.univer.onDispose(() => calculating.delete(engine));
}

/** Promises and messages pass work on from turn to turn of the loop; after so many turns without any there is none. */
const TURNS = 20;

/** Resolves once nothing is worked out or planned any more. A test's own limit tells of an engine that never rests. */
export async function atRest(): Promise<void> {
  for (let turns = 0; turns < TURNS; turns++) {
    const isBusy = planned.size > 0 || calculating.size > 0;
    if (isBusy) turns = 0;
    await new Promise((resolve) => (isBusy ? real.setTimeout(resolve, 5) : setImmediate(resolve)));
  }
}
