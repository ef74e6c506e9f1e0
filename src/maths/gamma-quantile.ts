/** Quantiles of the gamma distribution; half of a chi-square's with twice the shape as degrees of freedom. */
import { gammaTails, gammaTerm, logGamma } from "./gamma";
import { normalQuantile } from "./normal";
import { findRoot } from "./root";

/**
 * Above these shapes the expansion below has all digits for |z| up to 6, and 13 of them for |z| up to 3.3 (worked out
 * apart from this program, with 30 digits; the error falls by 1,000 for a shape ten times as large).
 */
const EXPANSION_FROM = 1e5;
const NEAR_EXPANSION_FROM = 1e4;
const NEAR = 3.3;
/** Above this one it is the best start: one or two steps are left to go. */
const GOOD_START_FROM = 50;

/** Cornish-Fisher expansion of the gamma quantile (Abramowitz and Stegun 26.2.49 with the gamma's cumulants). */
function expandedQuantile(a: number, z: number): number {
  const root = Math.sqrt(a);
  const z2 = z * z;
  return (
    a +
    root * z +
    (z2 - 1) / 3 +
    (z * (z2 - 7)) / (36 * root) -
    (3 * z2 * z2 + 7 * z2 - 16) / (810 * a) +
    (z * (9 * z2 * z2 + 256 * z2 - 433)) / (38880 * a * root)
  );
}

/**
 * The x at which the tail of the gamma distribution with shape `a` and scale 1 has the chance `p`.
 *
 * Small upper tails are asked for as such: 1 - 1e-20 is 1.
 */
export function gammaQuantile(p: number, a: number, tail: "lower" | "upper" = "lower"): number {
  if (p <= 0) return tail === "lower" ? 0 : Infinity;
  if (p >= 1) return tail === "lower" ? Infinity : 0;
  const z = tail === "lower" ? normalQuantile(p) : -normalQuantile(p);
  if (a > (Math.abs(z) < NEAR ? NEAR_EXPANSION_FROM : EXPANSION_FROM) && Math.abs(z) < 6) return expandedQuantile(a, z);

  // Wilson and Hilferty's cube; near 0 the first term of the lower tail's series.
  const cube = 1 - 1 / (9 * a) + z / (3 * Math.sqrt(a));
  const logLower = tail === "lower" ? Math.log(p) : Math.log1p(-p);
  const start =
    a > GOOD_START_FROM && Math.abs(z) < 6
      ? Math.log(expandedQuantile(a, z))
      : cube > 0.3
        ? Math.log(a) + 3 * Math.log(cube)
        : (logLower + logGamma(a + 1)) / a;

  // In ln x, where the logarithm of a tail is smooth; the smaller tail keeps its digits.
  const small = p <= 0.5 === (tail === "lower") ? "lower" : "upper";
  const target = p <= 0.5 ? Math.log(p) : Math.log1p(-p);
  const off = (logX: number): readonly [number, number] => {
    const x = Math.exp(logX);
    const chance = gammaTails(a, x)[small];
    const slope = (a * gammaTerm(a, x)) / chance;
    return [Math.log(chance) - target, small === "lower" ? slope : -slope];
  };
  const [lowest, highest] = [-744, Math.log(a + 2000) + 1];
  if (small === "lower" && off(lowest)[0] >= 0) return 0;
  return Math.exp(findRoot(off, lowest, highest, start, small === "lower"));
}
