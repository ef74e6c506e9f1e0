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

/** Whole days up to here, 300 years, are counted rather than sorted. */
const MOST_COUNTED = 110_000;

function countWholeDays({ days, failed }: Lifetimes): DayCounts | undefined {
  let last = 0;
  for (let i = 0; i < days.length; i++) {
    const day = days[i]!;
    if (!(Number.isInteger(day) && day >= 0 && day <= MOST_COUNTED)) return undefined;
    if (day > last) last = day;
  }
  const failures = new Float64Array(last + 1);
  const ended = new Float64Array(last + 1);
  for (let i = 0; i < days.length; i++) {
    ended[days[i]!]! += 1;
    if (failed[i] === 1) failures[days[i]!]! += 1;
  }
  const seen = Float64Array.from(ended.keys()).filter((day) => ended[day]! > 0);
  return { days: seen, failed: seen.map((day) => failures[day]!), ended: seen.map((day) => ended[day]!) };
}

export const countByDay = (lives: Lifetimes): DayCounts => countWholeDays(lives) ?? countSorted(lives);

/** Where each day stands among the counted ones; days that were counted as one stand in one place. */
export function placesIn(counts: DayCounts, days: Float64Array): Uint32Array {
  const known = new Map<number, number>();
  counts.days.forEach((day, i) => known.set(day, i));
  const nearest = (day: number): number => {
    let [low, high] = [0, counts.days.length - 1];
    while (low < high) {
      const middle = (low + high) >> 1;
      if (counts.days[middle]! < day) low = middle + 1;
      else high = middle;
    }
    return low > 0 && day - counts.days[low - 1]! < counts.days[low]! - day ? low - 1 : low;
  };
  return Uint32Array.from(days, (day) => known.get(day) ?? nearest(day));
}

/** The counts without some of the devices, given by their places. */
export function without(
  { days, failed, ended }: DayCounts,
  places: readonly number[],
  fails: readonly number[],
): DayCounts {
  const [lessFailed, lessEnded] = [failed.slice(), ended.slice()];
  places.forEach((at, i) => {
    lessEnded[at]! -= 1;
    lessFailed[at]! -= fails[i]!;
  });
  const isLeft = (_: number, i: number): boolean => lessEnded[i]! > 0;
  return { days: days.filter(isLeft), failed: lessFailed.filter(isLeft), ended: lessEnded.filter(isLeft) };
}

function countSorted({ days, failed }: Lifetimes): DayCounts {
  // One block of memory, failures in front: at a million rows each further block costs as much as sorting.
  const sorted = new Float64Array(days.length);
  let front = 0;
  let back = days.length;
  for (let i = 0; i < days.length; i++) sorted[failed[i] === 1 ? front++ : --back] = days[i]!;
  const failures = sorted.subarray(0, front).sort();
  const survivors = sorted.subarray(front).sort();
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

/** The curve's steps, one place each in every column: the days on which something failed. */
export interface Curve {
  readonly day: Float64Array;
  readonly atRisk: Float64Array;
  readonly failed: Float64Array;
  /** Share still working after this day. */
  readonly working: Float64Array;
  /** Limits of that share; NaN where it is 0. */
  readonly low: Float64Array;
  readonly high: Float64Array;
  /** The last day on which anything was seen. */
  readonly lastDay: number;
}

export function kaplanMeier(counts: DayCounts, level: number): Curve {
  const z = normalQuantile((1 + level) / 2);
  const steps = counts.failed.reduce((sum, n) => (n > 0 ? sum + 1 : sum), 0);
  const column = (): Float64Array => new Float64Array(steps);
  const curve = { day: column(), atRisk: column(), failed: column(), working: column(), low: column(), high: column() };
  let left = counts.ended.reduce((sum, n) => sum + n, 0);
  let share = 1;
  let logShare = 0;
  let greenwood = 0;
  for (let i = 0, step = 0; i < counts.days.length; i++) {
    const fell = counts.failed[i]!;
    if (fell > 0) {
      share *= (left - fell) / left;
      logShare += Math.log1p(-fell / left);
      greenwood += fell / (left * (left - fell));
      const swing = Math.exp((z * Math.sqrt(greenwood)) / -logShare);
      curve.day[step] = counts.days[i]!;
      curve.atRisk[step] = left;
      curve.failed[step] = fell;
      curve.working[step] = share;
      curve.low[step] = left === fell ? NaN : Math.exp(logShare * swing);
      curve.high[step] = left === fell ? NaN : Math.exp(logShare / swing);
      step++;
    }
    left -= counts.ended[i]!;
  }
  return { ...curve, lastDay: counts.days.at(-1) ?? 0 };
}

/** Shares nearer than this are the same: R's tolerance, the square root of the machine's precision. */
const SAME_SHARE = Math.sqrt(Number.EPSILON);

/** The least value up to each step: falls throughout, also where a limit does not. */
const leastSoFar = (curve: Float64Array): Float64Array => {
  const least = new Float64Array(curve.length);
  let lowest = Infinity;
  for (let i = 0; i < curve.length; i++) {
    if (curve[i]! < lowest) lowest = curve[i]!;
    least[i] = lowest;
  }
  return least;
};

/** The first step at which a falling column is at most, or `below`, a level; its length where there is none. */
function firstAt(least: Float64Array, level: number, below: boolean): number {
  let [from, to] = [0, least.length];
  while (from < to) {
    const middle = (from + to) >> 1;
    if (below ? least[middle]! < level : least[middle]! <= level) to = middle;
    else from = middle + 1;
  }
  return from;
}

/**
 * The day on which a curve has fallen to 1 - share; where it lies exactly there for a while, the middle of that time,
 * as R's quantile for survfit documents.
 */
function dayOf(share: number, { day, lastDay }: Curve, curve: Float64Array, least: Float64Array): number | undefined {
  const level = 1 - share;
  const reached = firstAt(least, level + SAME_SHARE, false);
  if (reached === least.length) return undefined;
  if (curve[reached]! < level - SAME_SHARE) return day[reached];
  const passed = firstAt(least, level - SAME_SHARE, true);
  return (day[reached]! + (day[passed] ?? lastDay)) / 2;
}

interface Falling {
  readonly working: Float64Array;
  readonly low: Float64Array;
  readonly high: Float64Array;
}
const falling = new WeakMap<Curve, Falling>();

function fallingOf(curve: Curve): Falling {
  let least = falling.get(curve);
  if (!least) {
    least = { working: leastSoFar(curve.working), low: leastSoFar(curve.low), high: leastSoFar(curve.high) };
    falling.set(curve, least);
  }
  return least;
}

/** The day by which `share` have failed, and its limits; undefined where the curve or limit does not fall so far. */
export function lifeQuantile(curve: Curve, share: number) {
  const least = fallingOf(curve);
  return {
    day: dayOf(share, curve, curve.working, least.working),
    low: dayOf(share, curve, curve.low, least.low),
    high: dayOf(share, curve, curve.high, least.high),
  };
}
