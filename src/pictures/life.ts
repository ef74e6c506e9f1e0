/** How long devices have lasted: the curve with its limits, the numbers still watched, and what may be said in words. */
import { countByDay, kaplanMeier, lifeQuantile, type Curve } from "../maths/survival";
import { LEAST_DEVICES, LEAST_FAILURES } from "../wear/devices";
import type { Device } from "./devices";

/** The curve is cut where fewer than so many are still watched. Clinic setting, no published source. */
export const LEAST_WATCHED = 5;
const LEVEL = 0.95;

export interface LifePicture {
  readonly devices: number;
  readonly failures: number;
  readonly stillIn: number;
  /** Undefined where there are too few to say anything: at least 8 failures of 20 devices. */
  readonly curve: Curve | undefined;
  /** Up to this day at least LEAST_WATCHED are watched. */
  readonly lastDay: number;
  /** Days by which a quarter and half of them have failed; undefined where so many have not while LEAST_WATCHED were watched. */
  readonly quarter: Quantile;
  readonly half: Quantile;
  /** Days at which a device was still in or was changed as planned: ticks on the curve. */
  readonly ticks: readonly number[];
  /** How many are watched at a day: for the figures under the curve. */
  readonly watchedAt: (day: number) => number;
}

export interface Quantile {
  readonly day: number | undefined;
  readonly low: number | undefined;
  readonly high: number | undefined;
}

/** Beyond the cut the failure of one of the last few watched takes half of the curve away: that tells nothing of the others. */
const reached = (quantile: Quantile, lastDay: number): Quantile =>
  quantile.day !== undefined && quantile.day <= lastDay ? quantile : nobody;

const nobody: Quantile = { day: undefined, low: undefined, high: undefined };

export function lifePicture(devices: readonly Device[]): LifePicture {
  const days = Float64Array.from(devices, (device) => device.days);
  const failed = Uint8Array.from(devices, (device) => (device.failed ? 1 : 0));
  const failures = failed.reduce((sum, one) => sum + one, 0);
  const counts = countByDay({ days, failed });
  const isEnough = failures >= LEAST_FAILURES && devices.length >= LEAST_DEVICES;
  const curve = isEnough ? kaplanMeier(counts, LEVEL) : undefined;
  const sorted = days.slice().sort();
  const lastDay = sorted[Math.max(0, sorted.length - LEAST_WATCHED)] ?? 0;
  const watchedAt = (day: number): number => {
    const first = sorted.findIndex((one) => one >= day);
    return first < 0 ? 0 : sorted.length - first;
  };
  return {
    devices: devices.length,
    failures,
    stillIn: devices.filter(({ isInUse }) => isInUse).length,
    curve,
    lastDay,
    quarter: curve ? reached(lifeQuantile(curve, 0.25), lastDay) : nobody,
    half: curve ? reached(lifeQuantile(curve, 0.5), lastDay) : nobody,
    ticks: devices.filter((device) => !device.failed).map((device) => device.days),
    watchedAt,
  };
}

/** Share still working at a day by the curve. */
export function workingAt(curve: Curve, day: number): number {
  let share = 1;
  for (let i = 0; i < curve.day.length && curve.day[i]! <= day; i++) share = curve.working[i]!;
  return share;
}
