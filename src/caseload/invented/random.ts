/**
 * Numbers that look like chance and are the same every time: a linear congruential generator with the constants of
 * Numerical Recipes (3rd edition, 7.1), of which the upper bits are used.
 */
export interface Chance {
  /** From 0 up to, never reaching, 1. */
  next(): number;
  /** A whole number, both ends included. */
  whole(least: number, most: number): number;
  pick<T>(of: readonly T[]): T;
}

export function chance(seed: number): Chance {
  let state = seed >>> 0;
  const next = () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return (state >>> 8) / 2 ** 24;
  };
  const whole = (least: number, most: number) => least + Math.floor((most - least + 1) * next());
  return { next, whole, pick: (of) => of[whole(0, of.length - 1)]! };
}

/** The whole pack again and again, each time in another order: shares come out as they stand in the pack. */
export function dealer<T>(pack: readonly T[], by: Chance): () => T {
  let left: T[] = [];
  return () => {
    if (left.length === 0) left = [...pack];
    return left.splice(by.whole(0, left.length - 1), 1)[0]!;
  };
}
