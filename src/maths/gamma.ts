/**
 * The gamma function and its incomplete relatives, from which Poisson, chi-square and normal tails follow.
 *
 * Everything rests on Stirling's formula with its error term, so that nothing large is subtracted from something large:
 * a shape of 100 million keeps its digits. Formulas: NIST Digital Library of Mathematical Functions, 5.11, 8.7 and 8.9.
 */
const HALF_LOG_TWO_PI = 0.9189385332046727;

/** From here on the series of `stirlingError` has all digits. */
const SERIES_FROM = 10;

/** Errors of whole numbers, as counts are, up to so many, each kept from its first time on. */
const KEPT = 4096;
const kept = new Float64Array(KEPT);

/** How far Stirling's formula is off: ln gamma(a) - ((a - 1/2) ln a - a + ln(2 pi)/2), for a > 0. */
export function stirlingError(a: number): number {
  if (!(a < KEPT && Math.floor(a) === a)) return errorOf(a);
  // Never 0 in earnest: it is above 1/(12 a + 1).
  return (kept[a] ||= errorOf(a));
}

function errorOf(a: number): number {
  let error = 0;
  let b = a;
  // gamma(b + 1) = b gamma(b), step by step up to where the series holds.
  for (; b < SERIES_FROM; b++) error += (b + 0.5) * Math.log1p(1 / b) - 1;
  const inverse = 1 / b;
  const square = inverse * inverse;
  const series =
    inverse *
    (1 / 12 -
      square *
        (1 / 360 -
          square *
            (1 / 1260 -
              square *
                (1 / 1680 -
                  square * (1 / 1188 - square * (691 / 360360 - square * (1 / 156 - square * (3617 / 122400))))))));
  return error + series;
}

/** ln gamma(a), for a > 0. */
export const logGamma = (a: number): number => (a - 0.5) * Math.log(a) - a + HALF_LOG_TWO_PI + stirlingError(a);

/** d - ln(1 + d), for d above -1: nearly d^2/2 near 0, where the plain difference would lose its digits. */
export function logExcess(d: number): number {
  if (d < -0.3 || d > 0.5) return d - Math.log1p(d);
  // ln(1 + d) = 2 (y + y^3/3 + y^5/5 + ...): up to the last digits for the largest y here, and in two halves, which the
  // machine works out side by side.
  const y = d / (2 + d);
  const u = y * y;
  const v = u * u;
  const even = 1 / 3 + v * (1 / 7 + v * (1 / 11 + v * (1 / 15 + v * (1 / 19 + v * (1 / 23)))));
  const odd = 1 / 5 + v * (1 / 9 + v * (1 / 13 + v * (1 / 17 + v * (1 / 21))));
  return d * y - 2 * y * u * (even + u * odd);
}

/** a ln(a/x) + x - a: half the Poisson deviance of a events where x are expected. */
export function halfDeviance(a: number, x: number): number {
  const d = (x - a) / a;
  return d < -0.3 || d > 0.5 ? x - a - a * Math.log(x / a) : a * logExcess(d);
}

/** x^a e^-x / gamma(a + 1): for a whole a, the chance of exactly a events where x are expected. */
export function gammaTerm(a: number, x: number): number {
  if (a === 0) return Math.exp(-x);
  if (x === 0) return 0;
  return Math.exp(-halfDeviance(a, x) - stirlingError(a)) / Math.sqrt(2 * Math.PI * a);
}

/** Sum of the lower tail, divided by `gammaTerm`: DLMF 8.7.1. Good for x up to a + 1. */
function lowerSeries(a: number, x: number): number {
  let term = 1;
  let sum = 1;
  for (let b = a + 1; term > sum * 1e-17; b++) {
    term *= x / b;
    sum += term;
  }
  return sum;
}

/** The upper tail divided by `gammaTerm`: continued fraction DLMF 8.9.2 by Lentz's method. Good for x above a + 1. */
function upperFraction(a: number, x: number): number {
  const TINY = 1e-300;
  let b = x + 1 - a;
  let c = 1 / TINY;
  let d = 1 / (b === 0 ? TINY : b);
  let fraction = d;
  for (let i = 1; i < 1_000_000; i++) {
    const an = -i * (i - a);
    b += 2;
    d = 1 / (an * d + b || TINY);
    c = b + an / c || TINY;
    const step = d * c;
    fraction *= step;
    if (Math.abs(step - 1) < 1e-16) break;
  }
  return fraction * a;
}

/** Regularised incomplete gamma functions P (lower) and Q (upper), a > 0, x >= 0; the smaller one keeps its digits. */
export function gammaTails(a: number, x: number): { readonly lower: number; readonly upper: number } {
  if (x <= 0) return { lower: 0, upper: 1 };
  if (x === Infinity) return { lower: 1, upper: 0 };
  const term = gammaTerm(a, x);
  if (x < a + 1) {
    const lower = Math.min(1, term * lowerSeries(a, x));
    return { lower, upper: 1 - lower };
  }
  const upper = Math.min(1, term * upperFraction(a, x));
  return { lower: 1 - upper, upper };
}

/** The upper one alone. */
export const gammaUpper = (a: number, x: number): number => gammaTails(a, x).upper;
