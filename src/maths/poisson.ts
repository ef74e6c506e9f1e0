/** Counts of rare events: exact limits, comparison of two rates, and how many to expect at most. */
import { betaFraction, betaLower, betaQuantileOdds } from "./beta";
import { gammaTails, halfDeviance, stirlingError } from "./gamma";
import { gammaQuantile } from "./gamma-quantile";
import { normalQuantile } from "./normal";

export interface Limits {
  readonly low: number;
  readonly high: number;
}

/** Answers kept at most: a column holds the same few counts again and again. A power of 2. */
const KEPT = 2 ** 16;

/** Odd numbers without a pattern in their bits (Knuth's multiplicative hashing): neighbours come to lie far apart. */
const [SPREAD_A, SPREAD_B] = [0x9e3779b1, 0x85ebca6b];
const placeOf = (a: number, b: number): number => (Math.imul(a, SPREAD_A) + Math.imul(b, SPREAD_B)) >>> 16;

/** Remembers what `work` gave for each pair of whole numbers; two that share a place push each other out. */
function byCounts<R>(work: (a: number, b: number, level: number) => R): (a: number, b: number, level: number) => R {
  const answers = new Array<R | undefined>(KEPT);
  // Three numbers for each answer: what it was asked for.
  let asked: Float64Array | undefined;
  return (a, b, level) => {
    asked ??= new Float64Array(3 * KEPT);
    const place = placeOf(a, b);
    const at = 3 * place;
    const known = answers[place];
    if (known !== undefined && asked[at] === a && asked[at + 1] === b && asked[at + 2] === level) return known;
    asked[at] = a;
    asked[at + 1] = b;
    asked[at + 2] = level;
    return (answers[place] = work(a, b, level));
  };
}

const limitsOf = byCounts((count, _, level): Limits => {
  const tail = (1 - level) / 2;
  return {
    low: count === 0 ? 0 : gammaQuantile(tail, count),
    high: gammaQuantile(tail, count + 1, "upper"),
  };
});

/** Exact limits for the expected count behind `count` events (Garwood F, Biometrika 1936;28:437-442). */
export const poissonLimits = (count: number, level: number): Limits => limitsOf(count, 0, level);

/** Chance of at most n events where `mean` are expected. */
export const poissonAtMost = (n: number, mean: number): number => (mean === 0 ? 1 : gammaTails(n + 1, mean).upper);

/** The smallest number that is enough with at least the chance `service`. */
export function poissonEnough(mean: number, service: number): number {
  // A service level typed with the table's own digits counts as reached.
  const enough = (n: number): boolean => poissonAtMost(n, mean) >= service * (1 - 1e-12);
  // Cornish and Fisher's first term for the skewness: the start is then right nearly always.
  const z = normalQuantile(service);
  let n = Math.max(0, Math.floor(mean + z * Math.sqrt(mean) + (z * z - 1) / 6 + 0.5));
  while (n > 0 && enough(n - 1)) n--;
  while (!enough(n)) n++;
  return n;
}

/** ln of the chance of exactly k in n trials with chance x each, rest = 1 - x. */
function logBinomial(k: number, n: number, x: number, rest: number): number {
  if (k === 0) return n * Math.log1p(-x);
  if (k === n) return n * Math.log1p(-rest);
  const exponent = -halfDeviance(k, n * x) - halfDeviance(n - k, n * rest);
  const errors = stirlingError(n) - stirlingError(k) - stirlingError(n - k);
  return exponent + errors + Math.log(n / (2 * Math.PI * k * (n - k))) / 2;
}

/** Chance of at most k, and of at least k, in n trials, of which the chance of exactly k is known. */
const atMost = (k: number, n: number, x: number, rest: number, exactly: number): number =>
  rest < (n - k + 1) / (n + 3)
    ? Math.min(1, exactly * x * betaFraction(n - k, k + 1, rest))
    : betaLower(n - k, k + 1, rest, x);
const atLeast = (k: number, n: number, x: number, rest: number, exactly: number): number =>
  x < (k + 1) / (n + 3)
    ? Math.min(1, exactly * rest * betaFraction(k, n - k + 1, x))
    : betaLower(k, n - k + 1, x, rest);

/** Counts whose chances differ by less than this are equally likely; the usual allowance for rounding. */
const AS_LIKELY = 1 + 1e-7;

/** Up to so many trials every outcome is added up, which takes less than two tails. */
const FEW_TRIALS = 100;

/** For each number of trials n, how many times as many ways there are to i + 1 of them as to i. */
const ways: (Float64Array | undefined)[] = [];
const waysOf = (n: number): Float64Array => (ways[n] ??= Float64Array.from({ length: n }, (_, i) => (n - i) / (i + 1)));

/** The same from the chances of all outcomes, each as a multiple of the one seen; NaN where these grow beyond numbers. */
function fewP(k: number, n: number, odds: number): number {
  const more = waysOf(n);
  const against = 1 / odds;
  let [rarer, all] = [1, 1];
  for (let i = k, times = 1; i < n; i++) {
    all += times *= more[i]! * odds;
    if (times <= AS_LIKELY) rarer += times;
  }
  for (let i = k, times = 1; i > 0; i--) {
    // as many times fewer ways as there are more from the other end
    all += times *= more[n - i]! * against;
    if (times <= AS_LIKELY) rarer += times;
  }
  return rarer / all;
}

/** Chances of neighbours follow from each other; what is farther off than this is jumped to. */
const NEIGHBOURS = 4;

/** Two-sided p: all outcomes that are not more likely than the one seen. */
function binomialP(k: number, n: number, x: number, rest: number): number {
  if (n <= FEW_TRIALS) {
    const p = fewP(k, n, x / rest);
    if (p > 0) return p;
  }
  const expected = n * x;
  if (k === expected) return 1;
  // Seen from the other side it is the same.
  return k < expected ? pBelow(k, n, x, rest) : pBelow(n - k, n, rest, x);
}

/** The same for fewer than expected. */
function pBelow(k: number, n: number, x: number, rest: number): number {
  const logSeen = logBinomial(k, n, x, rest);
  const exactly = Math.exp(logSeen);
  // smaller than any number
  if (exactly === 0) return 0;
  const rarer = atMost(k, n, x, rest, exactly);
  const odds = x / rest;
  const most = Math.ceil(n * x);
  // Beyond the most likely count the chances fall: the first one not more likely lies near the mirror image of k. Each jump
  // goes where the parabola through the chance's logarithm, its slope and its bend says.
  const under = n * x - k;
  const skew = ((1 - 2 * x) * under * under) / (3 * n * x * rest);
  let count = Math.min(n, Math.max(most, Math.round(n * x + under + skew)));
  let log = logBinomial(count, n, x, rest);
  for (let jumps = 0; jumps < 20; jumps++) {
    const slope = Math.log(((n - count + 0.5) / (count + 0.5)) * odds);
    const bend = 1 / (count + 0.5) + 1 / (n - count + 0.5);
    const excess = log - logSeen;
    const off = (2 * excess) / (Math.sqrt(Math.max(0, slope * slope + 2 * bend * excess)) - slope);
    if (!(Math.abs(off) > NEIGHBOURS)) break;
    const next = Math.min(n, Math.max(most, count + Math.round(off)));
    if (next === count) break;
    count = next;
    log = logBinomial(count, n, x, rest);
  }
  // How many times as likely as the one seen.
  let times = Math.exp(log - logSeen);
  for (; times > AS_LIKELY; count++) times *= ((n - count) / (count + 1)) * odds;
  for (; count > most; count--) {
    const nearer = (times * count) / ((n - count + 1) * odds);
    if (!(nearer <= AS_LIKELY)) break;
    times = nearer;
  }
  return count > n ? rarer : Math.min(1, rarer + atLeast(count, n, x, rest, times * exactly));
}

export interface RateRatio extends Limits {
  readonly ratio: number;
  readonly p: number;
}

/** Limits of A's odds by Clopper and Pearson; infinite where B has no events. */
const oddsLimits = byCounts((eventsA, eventsB, level): Limits => {
  const tail = (1 - level) / 2;
  return {
    low: eventsA === 0 ? 0 : betaQuantileOdds(tail, eventsA, eventsB + 1),
    // The upper limit of A's odds is one over the lower limit of B's.
    high: eventsB === 0 ? Infinity : 1 / betaQuantileOdds(tail, eventsB, eventsA + 1),
  };
});

/**
 * Ratio of two rates, by the share of all events that fell to A (Przyborowski and Wilenski, Biometrika
 * 1940;31:313-323). Infinite where B has no events.
 */
export function rateRatio(eventsA: number, daysA: number, eventsB: number, daysB: number, level: number): RateRatio {
  const { low, high } = oddsLimits(eventsA, eventsB, level);
  const perDays = daysB / daysA;
  const days = daysA + daysB;
  return {
    ratio: (eventsA / eventsB) * perDays,
    low: low * perDays,
    high: high * perDays,
    p: binomialP(eventsA, eventsA + eventsB, daysA / days, daysB / days),
  };
}
