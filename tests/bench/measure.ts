/** Works in turn, so that a machine that slows down slows all of them; medians are what counts. */

export const median = (values: readonly number[]): number => {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
};

export const milliseconds = async (work: () => unknown): Promise<number> => {
  const start = performance.now();
  await work();
  return performance.now() - start;
};

/** Processor time of this process, its helpers that clear up memory included. */
export const cpu = (work: () => unknown): number => {
  const start = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(start);
  return (user + system) / 1000;
};

/** The same until what was begun has ended. */
export const cpuUntil = async (work: () => unknown): Promise<number> => {
  const start = process.cpuUsage();
  await work();
  const { user, system } = process.cpuUsage(start);
  return (user + system) / 1000;
};

/**
 * Lets each measure itself once a round; every round begins with another one. The first round warms up and does not count
 * unless `isCold`.
 * @returns the figures of each, round by round
 */
export async function inTurn<Name extends string, F>(
  works: Readonly<Record<Name, () => F | Promise<F>>>,
  rounds: number,
  isCold = false,
): Promise<Record<Name, F[]>> {
  const names = Object.keys(works) as Name[];
  const figures = Object.fromEntries(names.map((name) => [name, [] as F[]])) as Record<Name, F[]>;
  const from = isCold ? 0 : -1;
  for (let round = from; round < rounds; round++) {
    for (let i = 0; i < names.length; i++) {
      const name = names[(i + round - from) % names.length]!;
      const figure = await works[name]();
      if (round >= 0) figures[name].push(figure);
    }
  }
  return figures;
}

/** Medians of what each takes, in turn. */
export async function medians<Name extends string>(
  works: Readonly<Record<Name, () => number | Promise<number>>>,
  rounds: number,
): Promise<Record<Name, number>> {
  const figures = await inTurn(works, rounds);
  return Object.fromEntries(Object.entries<number[]>(figures).map(([name, all]) => [name, median(all)])) as Record<
    Name,
    number
  >;
}

/** Numbers from 0 to 1, the same in every run (a linear congruential generator, Numerical Recipes' constants). */
export function randoms(seed: number): () => number {
  let state = seed >>> 0;
  return () => (state = (Math.imul(state, 1664525) + 1013904223) >>> 0) / 2 ** 32;
}
