/** How a service did in one period: counted from the devices of its caseload, each change once. */
import type { Device } from "../pictures/devices";
import type { Period } from "../pictures/months";

/** A change as it was written down; a text is "" where nothing was. */
export interface ServiceChange {
  readonly device: Device;
  readonly where: string;
  readonly isVisit: boolean;
  readonly nights: number;
  readonly position: string;
  /** Nothing went in: no longer needed, or the person left. */
  readonly isLast: boolean;
}

export const NOT_WRITTEN = "not written down";
export const NOTHING_PUT_IN = "nothing put in";

/** Tables of a period, each of which adds up to one of its counts. */
export const breakdowns = ["reasons", "where", "position"] as const;
export type Breakdown = (typeof breakdowns)[number];

export interface ServiceFigures {
  /** Different people who had a device on at least one day. */
  readonly people: number;
  readonly tubeDays: number;
  readonly planned: number;
  readonly unplanned: number;
  /** Unplanned changes that led to a visit, and nights in hospital. */
  readonly visits: number;
  readonly nights: number;
  readonly tables: Readonly<Record<Breakdown, ReadonlyMap<string, number>>>;
}

/** Days of a device within a period; the day on which it comes out does not count, today does. */
export function daysWithin({ from, until, days }: Device, period: Period, asOf: number): number {
  const end = until ?? from + Math.round(days);
  return Math.max(0, Math.min(end, period.end, asOf + 1) - Math.max(from, period.from));
}

/**
 * @param devices all devices, those still in too
 * @param changes those that have come out, with what was written down
 * @param asOf today: the last day that is counted
 */
export function serviceFigures(
  devices: readonly Device[],
  changes: readonly ServiceChange[],
  period: Period,
  asOf: number,
): ServiceFigures {
  const people = new Set<string>();
  let tubeDays = 0;
  for (const device of devices) {
    const days = daysWithin(device, period, asOf);
    if (days > 0) people.add(device.person);
    tubeDays += days;
  }
  const own = changes.filter(({ device: { until } }) => until !== null && until >= period.from && until < period.end);
  const unplanned = own.filter(({ device }) => device.unplanned);
  const tally = (words: readonly string[]): ReadonlyMap<string, number> => {
    const counts = new Map<string, number>();
    for (const word of words) counts.set(word, (counts.get(word) ?? 0) + 1);
    return counts;
  };
  const said = (word: string): string => (word === "" ? NOT_WRITTEN : word);
  return {
    people: people.size,
    tubeDays,
    planned: own.length - unplanned.length,
    unplanned: unplanned.length,
    visits: unplanned.filter(({ isVisit }) => isVisit).length,
    nights: unplanned.reduce((sum, { nights }) => sum + nights, 0),
    tables: {
      reasons: tally(unplanned.map(({ device }) => said(device.reason))),
      where: tally(unplanned.map(({ where }) => said(where))),
      position: tally(own.map(({ position, isLast }) => (isLast ? NOTHING_PUT_IN : said(position)))),
    },
  };
}
