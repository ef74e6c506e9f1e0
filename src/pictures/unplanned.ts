/** Unplanned changes for each 1,000 tube-days, by period: points with exact limits, and what chance alone would make. */
import { poissonLimits } from "../maths/poisson";
import { chanceLimits } from "../service/chance-limits";
import type { Device } from "./devices";
import { periodOf, periodsBetween, type Period, type PeriodLength } from "./months";

export const PER = 1000;
const LEVEL = 0.95;
/** Below so many tube-days a rate says little (BMJ Quality & Safety: below 750 report the time since the last event). */
export const FEW_DAYS = 750;

export interface UnplannedPeriod extends Period {
  readonly events: number;
  readonly tubeDays: number;
  readonly rate: number;
  readonly low: number;
  readonly high: number;
  /** Rates beyond which chance alone hardly ever goes. */
  readonly chanceLow: number;
  readonly chanceHigh: number;
  readonly signal: "above" | "below" | null;
}

export interface UnplannedPicture {
  readonly periods: readonly UnplannedPeriod[];
  readonly events: number;
  readonly tubeDays: number;
  /** Of all periods together. */
  readonly rate: { readonly value: number; readonly low: number; readonly high: number } | null;
}

const rateOf = (events: number, days: number) => {
  const { low, high } = poissonLimits(events, LEVEL);
  return { value: (PER * events) / days, low: (PER * low) / days, high: (PER * high) / days };
};

/**
 * @param since a day of the first period: whole periods are counted, all but the last
 * @param asOf today: the last day that is counted
 */
export function unplannedPicture(
  devices: readonly Device[],
  since: number,
  asOf: number,
  length: PeriodLength,
): UnplannedPicture {
  const first = periodOf(since, length).from;
  const all = periodsBetween(first, asOf, length).map((period) => ({ ...period, events: 0, tubeDays: 0 }));
  for (const { from, until, days, unplanned } of devices) {
    const end = Math.min(until ?? from + Math.round(days), asOf + 1);
    for (let i = indexOf(all, from); i < all.length && all[i]!.from <= end; i++) {
      const period = all[i]!;
      period.tubeDays += Math.max(0, Math.min(end, period.end) - Math.max(from, period.from));
      if (unplanned && until !== null && until >= period.from && until < period.end) period.events++;
    }
  }
  const watched = all.filter(({ tubeDays }) => tubeDays > 0);
  const [events, tubeDays] = [sum(watched, "events"), sum(watched, "tubeDays")];
  const centre = events / tubeDays;
  const periods = watched.map((period): UnplannedPeriod => {
    const { value, low, high } = rateOf(period.events, period.tubeDays);
    const { least, most } = chanceLimits(centre * period.tubeDays);
    return {
      ...period,
      rate: value,
      low,
      high,
      chanceLow: (PER * least) / period.tubeDays,
      chanceHigh: (PER * most) / period.tubeDays,
      signal: period.events > most ? "above" : period.events < least ? "below" : null,
    };
  });
  return { periods, events, tubeDays, rate: tubeDays > 0 ? rateOf(events, tubeDays) : null };
}

/** The first period that ends after a day, by halving. */
function indexOf(periods: readonly Period[], day: number): number {
  let [low, high] = [0, periods.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (periods[middle]!.end > day) high = middle;
    else low = middle + 1;
  }
  return low;
}

const sum = (periods: readonly { readonly events: number; readonly tubeDays: number }[], key: "events" | "tubeDays") =>
  periods.reduce((all, period) => all + period[key], 0);
