/**
 * The incomplete beta function, from which binomial tails follow: continued fraction of NIST Digital Library of
 * Mathematical Functions 8.17.22.
 *
 * A place x is given together with `rest` = 1 - x, because either may be too small to be told from the other's rounding.
 */
import { normalQuantile } from "./normal";
import { halfDeviance, stirlingError } from "./gamma";
import { findRoot } from "./root";

/** x^a rest^b / (a B(a, b)) without overflow: Stirling's formula with its error terms, as in gamma.ts. */
function betaTerm(a: number, b: number, x: number, rest: number): number {
  const n = a + b;
  const exponent = -halfDeviance(a, n * x) - halfDeviance(b, n * rest);
  const errors = stirlingError(n) - stirlingError(a) - stirlingError(b);
  return Math.exp(exponent + errors) * Math.sqrt(b / (2 * Math.PI * a * n));
}

/** The lower tail divided by `betaTerm`, by Lentz's method. Good for x below (a + 1)/(a + b + 2). */
function betaFraction(a: number, b: number, x: number): number {
  const TINY = 1e-300;
  let c = 1;
  let d = 1 / (1 - ((a + b) * x) / (a + 1) || TINY);
  let fraction = d;
  for (let m = 1; m < 1_000_000; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / (1 + even * d || TINY);
    c = 1 + even / c || TINY;
    fraction *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / (1 + odd * d || TINY);
    c = 1 + odd / c || TINY;
    const step = d * c;
    fraction *= step;
    if (Math.abs(step - 1) < 1e-16) break;
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

/** The odds x/(1 - x) below which the chance `p`, at most one half, lies. */
export function betaQuantileOdds(p: number, a: number, b: number): number {
  const off = (logOdds: number): readonly [number, number] => {
    const x = 1 / (1 + Math.exp(-logOdds));
    const rest = 1 / (1 + Math.exp(logOdds));
    const chance = betaLower(a, b, x, rest);
    return [Math.log(chance / p), (a * betaTerm(a, b, x, rest)) / chance];
  };
  return Math.exp(findRoot(off, -700, 700, oddsStart(p, a, b), true));
}
