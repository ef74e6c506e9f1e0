/**
 * The incomplete beta function, from which binomial tails follow: continued fraction of NIST Digital Library of
 * Mathematical Functions 8.17.22.
 *
 * A place x is given together with `rest` = 1 - x, because either may be too small to be told from the other's rounding.
 */
import { normalQuantile } from "./normal";
import { halfDeviance, stirlingError } from "./gamma";
import { findRoot } from "./root";

/** What of `betaTerm` does not depend on the place. */
const betaScale = (a: number, b: number): number =>
  Math.exp(stirlingError(a + b) - stirlingError(a) - stirlingError(b)) * Math.sqrt(b / (2 * Math.PI * a * (a + b)));

/** x^a rest^b / (a B(a, b)) without overflow: Stirling's formula with its error terms, as in gamma.ts. */
const betaTerm = (a: number, b: number, x: number, rest: number, scale = betaScale(a, b)): number =>
  scale * Math.exp(-halfDeviance(a, (a + b) * x) - halfDeviance(b, (a + b) * rest));

/** Convergents that differ by less have come to their last digits. */
const LAST_DIGITS = 3e-16;
/** Numerators and denominators grow together: beyond this they are made small again. */
const LARGE = 1e100;

/**
 * The lower tail divided by `betaTerm`, by the convergents' own recurrence, which divides half as often as Lentz's
 * method. Good for x below (a + 1)/(a + b + 2).
 */
export function betaFraction(a: number, b: number, x: number): number {
  let [before, beforeBelow] = [1, 1];
  let [last, lastBelow] = [1 - ((a + b) * x) / (a + 1), 1];
  let fraction = 1 / last;
  for (let m = 1; m < 1_000_000; m++) {
    const at = a + 2 * m;
    const even = (m * (b - m) * x) / ((at - 1) * at);
    before = last + even * before;
    beforeBelow = lastBelow + even * beforeBelow;
    const odd = (-(a + m) * (a + b + m) * x) / (at * (at + 1));
    last = before + odd * last;
    lastBelow = beforeBelow + odd * lastBelow;
    const next = lastBelow / last;
    if (Math.abs(next - fraction) <= LAST_DIGITS * next) return next;
    fraction = next;
    if (last > LARGE || last < 1 / LARGE) {
      [before, beforeBelow, lastBelow] = [before / last, beforeBelow / last, lastBelow / last];
      last = 1;
    }
  }
  return fraction;
}

/** Chance of a value below x, for a, b > 0. */
export function betaLower(a: number, b: number, x: number, rest = 1 - x): number {
  if (x <= 0) return 0;
  if (rest <= 0) return 1;
  return x < (a + 1) / (a + b + 2)
    ? Math.min(1, betaTerm(a, b, x, rest) * betaFraction(a, b, x))
    : 1 - Math.min(1, betaTerm(b, a, rest, x) * betaFraction(b, a, rest));
}

/**
 * A start in ln odds: Carter's approximation to Fisher's z (Abramowitz and Stegun 26.5.22); for few events, where it may
 * miss by far, the middle.
 */
function oddsStart(p: number, a: number, b: number): number {
  const z = normalQuantile(p);
  const [pa, pb] = [1 / (2 * a - 1), 1 / (2 * b - 1)];
  if (!(a > 1 && b > 1)) return Math.log(a / b);
  const h = 2 / (pa + pb);
  const lambda = (z * z - 3) / 6;
  const w = (z * Math.sqrt(h + lambda)) / h + (pb - pa) * (lambda + 5 / 6 - 2 / (3 * h));
  const start = Math.log(a / b) + 2 * w;
  return Number.isFinite(start) ? start : Math.log(a / b);
}

/**
 * A place at which ln(chance / p) is no more than this is wrong after one more step by less than the last digits: the
 * step's error goes with its fourth power.
 */
const SURE_MISS = 1e-3;
/** Starts that are not good enough after so many steps are left to the way that cannot run away. */
const QUICK_STEPS = 6;

/** The odds x/(1 - x) below which the chance `p`, at most one half, lies. */
export function betaQuantileOdds(p: number, a: number, b: number): number {
  const start = oddsStart(p, a, b);
  const scale = betaScale(a, b);
  let logOdds = start;
  // Householder's third method on ln(chance / p): its slope is a term of the chance, so all that bends it comes for nothing.
  for (let turn = 0; turn < QUICK_STEPS; turn++) {
    const against = Math.exp(-logOdds);
    const [x, rest] = [1 / (1 + against), against / (1 + against)];
    // Above it the fraction would be the other tail's.
    if (!(x < (a + 1) / (a + b + 2))) break;
    const term = betaTerm(a, b, x, rest, scale);
    const chance = Math.min(1, term * betaFraction(a, b, x));
    const off = Math.log(chance / p);
    const slope = (a * term) / chance;
    const pull = a * rest - b * x - slope;
    const bend = slope * pull;
    const twist = bend * pull - slope * ((a + b) * x * rest + bend);
    const square = slope * slope;
    logOdds -= (off * (6 * square - 3 * off * bend)) / (slope * (6 * square - 6 * off * bend) + off * off * twist);
    if (Math.abs(off) <= SURE_MISS) return Math.exp(logOdds);
  }
  return sureQuantileOdds(p, a, b, start, scale);
}

/** The same inside a bracket, for starts that are far off. */
function sureQuantileOdds(p: number, a: number, b: number, start: number, scale: number): number {
  const mirrored = betaScale(b, a);
  const off = (logOdds: number): readonly [number, number, number] => {
    const x = 1 / (1 + Math.exp(-logOdds));
    const rest = 1 / (1 + Math.exp(logOdds));
    const term = betaTerm(a, b, x, rest, scale);
    const isLower = x < (a + 1) / (a + b + 2);
    const chance = isLower
      ? Math.min(1, term * betaFraction(a, b, x))
      : 1 - Math.min(1, betaTerm(b, a, rest, x, mirrored) * betaFraction(b, a, rest));
    const slope = (a * term) / chance;
    return [Math.log(chance / p), slope, slope * (a * rest - b * x - slope)];
  };
  return Math.exp(findRoot(off, -700, 700, start, true));
}
