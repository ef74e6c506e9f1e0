/**
 * When to change as planned so that planned and unplanned changes together cost least (age replacement: Barlow RE,
 * Proschan F, Mathematical Theory of Reliability, Wiley 1965).
 *
 * With lives in units of the Weibull scale and the unplanned change r times as dear as the planned one, the cost a day,
 * (S + r (1 - S)) / integral of S, is least where hazard x integral of S - (1 - S) = 1 / (r - 1). The left side rises
 * with age from 0 without end where the shape is above 1, and never where it is not: then no planned change pays.
 */
import { gammaTails, logGamma } from "./gamma";
import { findRoot } from "./root";

/** Days in place that a device has on average when it is changed at `age`, in units of the scale: integral of S. */
export const meanStay = (shape: number, age: number): number =>
  // u = t^shape turns the integral into a lower incomplete gamma function.
  Math.exp(logGamma(1 / shape + 1)) * gammaTails(1 / shape, age ** shape).lower;

/** Far beyond any life, in ln of the scale. */
const FAR = 700;

/**
 * @param costRatio cost of an unplanned change over that of a planned one, above 1
 * @returns ln of the age in units of the scale; undefined where no planned change pays
 */
export function leastCostLogAge(shape: number, costRatio: number): number | undefined {
  if (!(shape > 1)) return undefined;
  const target = 1 / (costRatio - 1);
  const off = (log: number): readonly [number, number] => {
    const age = Math.exp(log);
    const hazard = shape * Math.exp((shape - 1) * log);
    const value = hazard * meanStay(shape, age) + Math.expm1(-(age ** shape)) - target;
    // Its slope is the hazard's slope times the mean stay; times age, because the place is a logarithm.
    return [value, (shape - 1) * hazard * meanStay(shape, age)];
  };
  // Beyond the mean life the hazard's part decides: hazard x mean life = 1 + target.
  const start = (Math.log1p(target) - Math.log(shape) - logGamma(1 / shape + 1)) / (shape - 1);
  const highest = Math.max(0, start) + 50;
  if (!Number.isFinite(start) || highest > FAR) return undefined;
  return findRoot(off, -FAR / shape, highest, Math.min(start, 0), true);
}
