/**
 * The planned interval against what happened: how many fail before it, how long those stayed that were changed as planned,
 * and, where the clinic says what an unplanned change costs it, the day that would cost least (age replacement).
 *
 * Intervals are looked at up to the agreed one and no further: nothing here speaks for a later change.
 */
import { leastCostLogAge, meanStay } from "../maths/age-replacement";
import { randomFrom } from "../maths/random";
import { countByDay, placesIn } from "../maths/survival";
import { fitWeibull, type Weibull } from "../maths/weibull";
import { LEAST_DEVICES, LEAST_FAILURES } from "../wear/devices";
import type { Counts } from "./advice";
import type { Device } from "./devices";

const DAYS_A_MONTH = 365.25 / 12;
const DAYS_A_YEAR = 365.25;
const PEOPLE = 100;
/** Limits from so many lists drawn anew, person by person; fewer where a list is long and its limits are close. Clinic setting, no published source. */
const [DRAWS, DRAWS_OF_LONG, LONG] = [200, 100, 10_000];
const SEED = 20261201;
const [LOW, HIGH] = [0.05, 0.95];
/** Where more of the drawn lists than this give no curve, limits are not known. */
const MOST_WITHOUT = 0.1;
/** Bars of stays are so many days wide. */
export const BAR_DAYS = 15;

/** Limits are undefined where they cannot be told. */
export interface Estimate {
  readonly value: number;
  readonly low: number | undefined;
  readonly high: number | undefined;
}

export interface IntervalRow {
  readonly months: number;
  readonly days: number;
  /** Share that fails before it. */
  readonly failing: Estimate;
  /** Changes a year for 100 people. */
  readonly planned: Estimate;
  readonly unplanned: Estimate;
}

export interface Stays {
  /** Days in place of those that were changed as planned, rising. */
  readonly planned: readonly number[];
  /** Of those that failed. */
  readonly failed: readonly number[];
  /** Changed as planned later than the interval that is agreed now for the same person, or for the kind where that is not known. */
  readonly late: number;
}

export type Best =
  /** A planned change does not pay: devices fail at any age alike, or younger ones sooner. */
  { readonly is: "never" } | { readonly is: "earlier" | "not earlier"; readonly day: Estimate };

export interface IntervalPicture extends Counts {
  /** The middle one of the intervals that are agreed now, in days; null where none is. */
  readonly agreed: number | null;
  /** How many tubes have one. */
  readonly withAgreed: number;
  readonly stays: Stays;
  /** Undefined where there are too few to say. */
  readonly rows: readonly IntervalRow[] | undefined;
  /** Share failing before the agreed interval. */
  readonly atAgreed: Estimate | undefined;
  /** Null until somebody has said what an unplanned change costs, or nothing is agreed to compare with. */
  readonly best: Best | null;
}

interface Agreed {
  readonly person: string;
  /** Days from putting in to the day on which the change is due. */
  readonly agreed: number | null;
}

const middleOf = (sorted: readonly number[]): number => {
  const half = sorted.length / 2;
  return (sorted[Math.ceil(half) - 1]! + sorted[Math.floor(half)]!) / 2;
};

/**
 * @param tubes those in use, of the same kind
 * @param lastDay no interval beyond this day where none is agreed
 * @param costRatio what an unplanned change costs over a planned one; null: not said
 */
export function intervalPicture(
  devices: readonly Device[],
  tubes: readonly Agreed[],
  lastDay: number,
  costRatio: number | null,
): IntervalPicture {
  const known = tubes.flatMap(({ agreed }) => (agreed === null ? [] : [agreed])).sort((a, b) => a - b);
  const agreed = known.length > 0 ? middleOf(known) : null;
  const failures = devices.filter(({ failed }) => failed).length;
  const common = {
    devices: devices.length,
    failures,
    agreed,
    withAgreed: known.length,
    stays: staysOf(devices, tubes, agreed),
  };
  const drawn = failures >= LEAST_FAILURES && devices.length >= LEAST_DEVICES ? drawnCurves(devices) : undefined;
  if (!drawn) return { ...common, rows: undefined, atAgreed: undefined, best: null };
  const most = Math.floor((agreed ?? lastDay) / DAYS_A_MONTH + 1e-9);
  const rows = Array.from({ length: Math.max(0, most) }, (_, i): IntervalRow => {
    const days = (i + 1) * DAYS_A_MONTH;
    return {
      months: i + 1,
      days,
      failing: drawn.told((curve) => failingBy(curve, days)),
      planned: drawn.told((curve) => changes(curve, days) * (1 - failingBy(curve, days))),
      unplanned: drawn.told((curve) => changes(curve, days) * failingBy(curve, days)),
    };
  });
  return {
    ...common,
    rows,
    atAgreed: agreed === null ? undefined : drawn.told((curve) => failingBy(curve, agreed)),
    best: agreed === null || costRatio === null ? null : bestOf(drawn, costRatio, agreed),
  };
}

function staysOf(devices: readonly Device[], tubes: readonly Agreed[], agreed: number | null): Stays {
  const own = new Map(tubes.flatMap(({ person, agreed: days }) => (days === null ? [] : [[person, days] as const])));
  const planned = devices.filter(({ until, unplanned }) => until !== null && !unplanned);
  const isLate = ({ person, days }: Device): boolean => days > (own.get(person) ?? agreed ?? Infinity);
  const rising = (some: readonly Device[]) => some.map(({ days }) => days).sort((a, b) => a - b);
  return {
    planned: rising(planned),
    failed: rising(devices.filter(({ failed }) => failed)),
    late: planned.filter(isLate).length,
  };
}

const inScales = ({ logScale }: Weibull, days: number): number => days * Math.exp(-logScale);
const failingBy = (curve: Weibull, days: number): number => -Math.expm1(-(inScales(curve, days) ** curve.shape));
/** Changes of any sort a year for 100 people, where each device is changed at `days` at the latest. */
const changes = (curve: Weibull, days: number): number =>
  (PEOPLE * DAYS_A_YEAR) / (meanStay(curve.shape, inScales(curve, days)) * Math.exp(curve.logScale));

interface Drawn {
  /** A figure of the curve, with the limits that the drawn lists give it. */
  told(of: (curve: Weibull) => number): Estimate;
}

/** The curve of the list, and those of lists made of its people drawn anew. */
function drawnCurves(devices: readonly Device[]): Drawn | undefined {
  const lives = {
    days: Float64Array.from(devices, ({ days }) => days),
    failed: Uint8Array.from(devices, ({ failed }) => (failed ? 1 : 0)),
  };
  const counts = countByDay(lives);
  const curve = fitWeibull(counts);
  if (!curve) return undefined;
  const at = placesIn(counts, lives.days);
  const places = new Map<string, number>();
  const owner = Uint32Array.from(devices, ({ person }) => {
    if (!places.has(person)) places.set(person, places.size);
    return places.get(person)!;
  });
  /* Person by person, so that those who are not drawn cost nothing. */
  const order = Uint32Array.from(owner.keys()).sort((a, b) => owner[a]! - owner[b]!);
  const [dayOf, didFail] = [order.map((i) => at[i]!), Uint8Array.from(order, (i) => lives.failed[i]!)];
  const ends = new Uint32Array(places.size);
  for (const whose of owner) ends[whose]!++;
  for (let i = 1; i < ends.length; i++) ends[i]! += ends[i - 1]!;
  const random = randomFrom(SEED);
  const times = new Uint32Array(places.size);
  const draws = devices.length < LONG ? DRAWS : DRAWS_OF_LONG;
  const curves = Array.from({ length: draws }, () => {
    times.fill(0);
    for (let i = 0; i < times.length; i++) times[Math.floor(random() * times.length)]!++;
    const [failed, ended] = [new Float64Array(counts.days.length), new Float64Array(counts.days.length)];
    for (let whose = 0, i = 0; whose < times.length; whose++) {
      const [n, end] = [times[whose]!, ends[whose]!];
      if (n === 0) i = end;
      for (; i < end; i++) {
        ended[dayOf[i]!]! += n;
        if (didFail[i] === 1) failed[dayOf[i]!]! += n;
      }
    }
    const isThere = (_: number, i: number): boolean => ended[i]! > 0;
    return fitWeibull({
      days: counts.days.filter(isThere),
      failed: failed.filter(isThere),
      ended: ended.filter(isThere),
    });
  }).filter((one) => one !== undefined);
  const isKnown = curves.length >= (1 - MOST_WITHOUT) * draws;
  return {
    told: (of) => {
      const value = of(curve);
      if (!isKnown) return { value, low: undefined, high: undefined };
      const all = Float64Array.from(curves, of).sort();
      const limit = (share: number): number | undefined => {
        const found = all[Math.round(share * (all.length - 1))]!;
        return Number.isFinite(found) ? found : undefined;
      };
      return { value, low: limit(LOW), high: limit(HIGH) };
    },
  };
}

function bestOf(drawn: Drawn, costRatio: number, agreed: number): Best {
  const day = drawn.told((curve) => {
    const log = leastCostLogAge(curve.shape, costRatio);
    return log === undefined ? Infinity : Math.exp(log + curve.logScale);
  });
  if (!Number.isFinite(day.value)) return { is: "never" };
  return { is: day.value < agreed ? "earlier" : "not earlier", day };
}

/** How many lie in each bar of BAR_DAYS days, from day 0 on. */
export function barsOf(days: readonly number[]): readonly number[] {
  const bars: number[] = [];
  for (const day of days) {
    const at = Math.floor(day / BAR_DAYS);
    while (bars.length <= at) bars.push(0);
    bars[at]!++;
  }
  return bars;
}
