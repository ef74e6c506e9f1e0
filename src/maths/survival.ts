/**
 * How long things last when some are still in use: the Kaplan-Meier estimate.
 *
 * Kaplan EL, Meier P, J Am Stat Assoc 1958;53:457-481; variance by Greenwood 1926; limits on the log(-log) scale
 * (Kalbfleisch and Prentice 1980), which keep within 0 and 1 and are near the truth for small numbers. What is still in
 * use on a day on which another one failed counts as at risk on that day.
 */
import { normalQuantile } from "./normal";

/** Devices, one place each: how long, and 1 where it failed, 0 where it was still working when last known. */
export interface Lifetimes {
  readonly days: Float64Array;
  readonly failed: Uint8Array;
}

/** The same devices by day, days rising. */
export interface DayCounts {
  readonly days: Float64Array;
  readonly failed: Float64Array;
  readonly ended: Float64Array;
}

/** Days that differ by less than this share of themselves are one day: 0.1 + 0.2 is 0.3. */
const SAME_DAY = 1e-9;

export function countByDay({ days, failed }: Lifetimes): DayCounts {
  const failures = days.filter((_, i) => failed[i] === 1).sort();
  const survivors = days.filter((_, i) => failed[i] !== 1).sort();
  const out = {
    days: new Float64Array(days.length),
    failed: new Float64Array(days.length),
    ended: new Float64Array(days.length),
  };
  let count = 0;
  for (let f = 0, s = 0; f < failures.length || s < survivors.length; count++) {
    const day = Math.min(failures[f] ?? Infinity, survivors[s] ?? Infinity);
    const until = day * (1 + SAME_DAY);
    const [f0, s0] = [f, s];
    while (failures[f]! <= until) f++;
    while (survivors[s]! <= until) s++;
    out.days[count] = day;
    out.failed[count] = f - f0;
    out.ended[count] = f - f0 + (s - s0);
  }
  return {
    days: out.days.subarray(0, count),
    failed: out.failed.subarray(0, count),
    ended: out.ended.subarray(0, count),
  };
}

/** One step of the curve: a day on which something failed. */
export interface Step {
  readonly day: number;
  readonly atRisk: number;
  readonly failed: number;
  /** Share still working after this day. */
  readonly working: number;
  /** Limits of that share; NaN where it is 0. */
  readonly low: number;
  readonly high: number;
}

export interface Curve {
  readonly steps: readonly Step[];
  /** The last day on which anything was seen. */
  readonly lastDay: number;
}

export function kaplanMeier(counts: DayCounts, level: number): Curve {
  const z = normalQuantile((1 + level) / 2);
  const steps: Step[] = [];
  let atRisk = counts.ended.reduce((sum, n) => sum + n, 0);
  let working = 1;
  let logWorking = 0;
  let greenwood = 0;
  for (let i = 0; i < counts.days.length; i++) {
    const failed = counts.failed[i]!;
    if (failed > 0) {
      const left = atRisk - failed;
      working *= left / atRisk;
      logWorking += Math.log1p(-failed / atRisk);
      greenwood += failed / (atRisk * left);
      const swing = Math.exp((z * Math.sqrt(greenwood)) / -logWorking);
      const [low, high] = left === 0 ? [NaN, NaN] : [Math.exp(logWorking * swing), Math.exp(logWorking / swing)];
      steps.push({ day: counts.days[i]!, atRisk, failed, working, low, high });
    }
    atRisk -= counts.ended[i]!;
  }
  return { steps, lastDay: counts.days.at(-1) ?? 0 };
}

/** Shares nearer than this are the same: R's tolerance, the square root of the machine's precision. */
const SAME_SHARE = Math.sqrt(Number.EPSILON);

/**
 * The day on which a curve has fallen to 1 - share; where it lies exactly there for a while, the middle of that time,
 * as R's quantile for survfit documents.
 */
function dayOf(share: number, { steps, lastDay }: Curve, which: "working" | "low" | "high"): number | undefined {
  const level = 1 - share;
  const reached = steps.find((step) => step[which] <= level + SAME_SHARE);
  if (!reached) return undefined;
  if (reached[which] < level - SAME_SHARE) return reached.day;
  const passed = steps.find((step) => step[which] < level - SAME_SHARE);
  return (reached.day + (passed?.day ?? lastDay)) / 2;
}

/** The day by which `share` have failed, and its limits; undefined where the curve or limit does not fall so far. */
export const lifeQuantile = (curve: Curve, share: number) => ({
  day: dayOf(share, curve, "working"),
  low: dayOf(share, curve, "low"),
  high: dayOf(share, curve, "high"),
});
