/**
 * Is more happening than expected, looked at again and again as events come in: the Poisson maximised sequential
 * probability ratio test (Kulldorff M and others, Sequential Analysis 2011;30:58-78), with a least number of events
 * (Kulldorff M, Silva IR, REVSTAT 2015;13:19-39).
 */
import { findRootBetween, findRoot } from "./root";

/** ln of the likelihood ratio of `seen` events against `expected`; 0 where no more came than expected. */
export const logRatio = (seen: number, expected: number): number =>
  seen > expected ? (expected > 0 ? expected - seen + seen * Math.log(seen / expected) : Infinity) : 0;

/** The expected number up to which `seen` events signal at a critical value. */
function boundary(seen: number, critical: number): number {
  // In ln(expected/seen) = -x: e^-x - 1 + x = critical / seen, which rises in x from 0.
  const share = critical / seen;
  const x = findRoot(
    (at) => [Math.expm1(-at) + at - share, -Math.expm1(-at)],
    0,
    share + 1.5,
    Math.sqrt(2 * share),
    true,
  );
  return seen * Math.exp(-x);
}

/** Chances below this are left out of a sum. */
const NOTHING = 1e-18;

/** A ratio that any event above the expected number reaches. */
const LOWEST = 1e-6;

/** Chance of a signal before `total` events are expected, if nothing is wrong. */
export function signalChance(critical: number, total: number, least: number): number {
  // at[k]: chance of k events so far and no signal. It changes at the boundaries, where k events cease to signal.
  let at = new Float64Array([1]);
  let now = 0;
  const until = (expected: number): void => {
    const more = expected - now;
    const next: number[] = [];
    for (let k = 0; k < at.length; k++) {
      let chance = at[k]! * Math.exp(-more);
      for (let j = 0; chance > NOTHING || j < more; j++) {
        next[k + j] = (next[k + j] ?? 0) + chance;
        chance *= more / (j + 1);
      }
    }
    at = Float64Array.from(next, (chance) => chance ?? 0);
    now = expected;
  };
  for (let seen = least; ; seen++) {
    const limit = boundary(seen, critical);
    if (limit >= total) {
      until(total);
      return 1 - at.subarray(0, seen).reduce((sum, chance) => sum + chance, 0);
    }
    until(limit);
    at = at.subarray(0, seen);
  }
}

/**
 * The value that the ratio must reach for a signal.
 *
 * @param total how many events are expected until the end of the watch
 * @param level chance of a false signal over the whole watch
 */
export function criticalValue(total: number, level: number, least: number): number {
  const off = (critical: number): number => Math.log(signalChance(critical, total, least) / level);
  // So few are expected that the least number of events says enough.
  if (off(LOWEST) <= 0) return 0;
  let high = 2;
  while (off(high) > 0) high *= 1.5;
  return findRootBetween(off, LOWEST, high);
}
