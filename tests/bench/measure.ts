/** Pairs of runs in turn, so that a machine that slows down slows both; the median is what counts. */

export const median = (values: readonly number[]): number => {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
};

const milliseconds = (work: () => unknown): number => {
  const start = performance.now();
  work();
  return performance.now() - start;
};

export interface Pair {
  readonly ours: number;
  readonly peer: number;
  /** Median of the ratios peer / ours, run by run. */
  readonly timesAsFast: number;
}

/** Runs both in turn after one warm-up each. */
export function compare(ours: () => unknown, peer: () => unknown, runs = 7): Pair {
  ours();
  peer();
  const pairs = Array.from({ length: runs }, () => [milliseconds(ours), milliseconds(peer)] as const);
  return {
    ours: median(pairs.map(([a]) => a)),
    peer: median(pairs.map(([, b]) => b)),
    timesAsFast: median(pairs.map(([a, b]) => b / a)),
  };
}

/** The median of several runs after one warm-up. The run's number lets data differ from run to run. */
export function time(work: (run: number) => unknown, runs = 5): number {
  work(0);
  return median(Array.from({ length: runs }, (_, run) => milliseconds(() => work(run + 1))));
}

export const ms = (value: number): string => `${Math.round(value).toLocaleString("en-GB")} ms`;

/**
 * Cost against rows: what each size takes, and how many times more than the size before it. The fastest run of each
 * counts, because what slows a run has nothing to do with rows; one size at a time is in memory, because clearing it up
 * costs by all that is there.
 * @param make prepares the work on so many rows, untimed
 */
export function growth(sizes: readonly number[], make: (rows: number) => (run: number) => unknown, runs = 7): string {
  const fastest = (rows: number): number => {
    const work = make(rows);
    return Math.min(...Array.from({ length: runs }, (_, run) => milliseconds(() => work(run))));
  };
  fastest(sizes[0]!);
  const times = sizes.map(fastest);
  const steps = times.slice(1).map((value, i) => `${(value / times[i]!).toFixed(1)} times`);
  return `${times.map(ms).join(", ")}: ${steps.join(", ")}`;
}

/** Numbers from 0 to 1, the same in every run (a linear congruential generator, Numerical Recipes' constants). */
export function randoms(seed: number): () => number {
  let state = seed >>> 0;
  return () => (state = (Math.imul(state, 1664525) + 1013904223) >>> 0) / 2 ** 32;
}

/** One line of the report; `wanted` is a target, never a pass or a fail: machines differ. */
export function line(what: string, measured: string, wanted: string): void {
  console.log(`${what.padEnd(58)} ${measured.padEnd(44)} wanted: ${wanted}`);
}
