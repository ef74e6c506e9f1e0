/**
 * The Weibull distribution fitted to lifetimes of which some are not over: maximum likelihood.
 *
 * With the shape given, the best scale follows; the best shape is the root of one falling function (Cohen AC,
 * Technometrics 1965;7:579-588). It is solved until the gradient vanishes, not until steps look small. Standard errors
 * from the observed information on the scale of logarithms.
 */
import { findRoot } from "./root";
import type { DayCounts } from "./survival";

export interface Weibull {
  readonly shape: number;
  /** Natural logarithm of the scale in days: the scale itself may be too large for a number. */
  readonly logScale: number;
  readonly failures: number;
  /** Of ln scale and ln shape. */
  readonly variance: { readonly logScale: number; readonly logShape: number; readonly covariance: number };
}

/** ln(day/longest), exact also where both are nearly the same. */
const logShareOf = (day: number, longest: number): number =>
  day > longest / 2 ? Math.log1p((day - longest) / longest) : Math.log(day / longest);

/** @returns undefined with fewer than 2 failures, all failures on one day, or a shape out of reach */
export function fitWeibull({ days, failed, ended }: DayCounts): Weibull | undefined {
  const failures = failed.reduce((sum, n) => sum + n, 0);
  if (failures < 2 || failed.filter((n) => n > 0).length < 2) return undefined;
  const longest = days.at(-1)!;
  const logs = days.map((day) => logShareOf(day, longest));
  let meanLogFailed = 0;
  for (let i = 0; i < logs.length; i++) meanLogFailed += (failed[i]! * logs[i]!) / failures;

  /** Sums of t^k, t^k ln t and t^k (ln t)^2 over all devices, t as a share of the longest. */
  const sums = (shape: number): [number, number, number] => {
    let [s0, s1, s2] = [0, 0, 0];
    for (let i = 0; i < logs.length; i++) {
      const log = logs[i]!;
      const term = ended[i]! * Math.exp(shape * log);
      s0 += term;
      s1 += term * log;
      s2 += term * log * log;
    }
    return [s0, s1, s2];
  };
  // Falls in ln k from far above 0 to below it, because a failure came before the longest life.
  const gradient = (logShape: number): readonly [number, number] => {
    const shape = Math.exp(logShape);
    const [s0, s1, s2] = sums(shape);
    const mean = s1 / s0;
    return [1 / shape + meanLogFailed - mean, -1 / shape - shape * (s2 / s0 - mean * mean)];
  };
  const [lowest, highest] = [Math.log(1e-6), Math.log(1e12)];
  if (!(gradient(lowest)[0] > 0 && gradient(highest)[0] < 0)) return undefined;
  const shape = Math.exp(findRoot(gradient, lowest, highest, Math.log(-1 / Math.min(meanLogFailed, -1e-12))));

  const [s0, s1, s2] = sums(shape);
  const logScale = Math.log(longest) + Math.log(s0 / failures) / shape;
  if (!Number.isFinite(logScale)) return undefined;
  // With z = shape x ln(t/scale) and weights e^z, which sum to the number of failures: mean and variance of z.
  const offset = Math.log(s0 / failures);
  const mean = shape * (s1 / s0) - offset;
  const spread = shape * shape * Math.max(0, s2 / s0 - (s1 / s0) ** 2);
  const determinant = failures * (1 + spread);
  return {
    shape,
    logScale,
    failures,
    variance: {
      logShape: 1 / determinant,
      logScale: (1 + spread + mean * mean) / (shape * shape * determinant),
      covariance: mean / (shape * determinant),
    },
  };
}

/** ln of the day by which `share` have failed, and its standard error by the delta method. */
export function weibullLogQuantile({ shape, logScale, variance }: Weibull, share: number) {
  const logHazard = Math.log(-Math.log1p(-share));
  const slope = -logHazard / shape;
  const squared = variance.logScale + slope * slope * variance.logShape + 2 * slope * variance.covariance;
  return { log: logScale + logHazard / shape, error: Math.sqrt(Math.max(0, squared)) };
}
