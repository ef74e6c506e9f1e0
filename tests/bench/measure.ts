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

export const ms = (value: number): string => `${Math.round(value).toLocaleString("en-GB")} ms`;

/** One line of the report; `wanted` is a target, never a pass or a fail: machines differ. */
export function line(what: string, measured: string, wanted: string): void {
  console.log(`${what.padEnd(58)} ${measured.padEnd(44)} wanted: ${wanted}`);
}
