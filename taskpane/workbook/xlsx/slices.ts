/**
 * Long work in slices. Its steps are a generator that gives the share done so far now and then: whoever runs it can do so
 * at once, or let a page paint and hear between the slices and stop it there.
 */
export type Sliced<T> = Generator<number, T, void>;

export function ranToItsEnd<T>(work: Sliced<T>): T {
  for (let step = work.next(); ; step = work.next()) if (step.done) return step.value;
}

/** Who watches a long work. */
export interface Watching {
  /** From 0 to 1. */
  readonly tell?: (share: number) => void;
  readonly signal?: AbortSignal;
}

/** Somebody stopped it. */
export class Stopped extends Error {}

/** At most so long without a look at what else the thread has to do, in milliseconds. */
const SLICE = 40;

/** Lets the thread do what waits. A timer is kept back by browsers once it is set again and again, a message is not. */
export function breath(): Promise<void> {
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      resolve();
    };
    port2.postMessage(null);
  });
}

/** @param from the share that was done before, and @param to the one that is done with this work */
export async function inSlices<T>(work: Sliced<T>, { tell, signal }: Watching = {}, from = 0, to = 1): Promise<T> {
  let begun = performance.now();
  for (;;) {
    const step = work.next();
    if (step.done) return step.value;
    if (performance.now() - begun < SLICE) continue;
    tell?.(from + step.value * (to - from));
    await breath();
    if (signal?.aborted) throw new Stopped();
    begun = performance.now();
  }
}
