/**
 * The page to hand round: one quarter or one year of the calendar that is over, beside the one before it, with what may be
 * shown of it.
 *
 * Pages are of whole quarters and of the years that these make, and of no other periods: a page of any days whatever, less
 * one of a day fewer, would tell of single people. A quarter is decided by itself, as it was when it was over; its year is
 * decided with its four quarters known, because these may have been handed round.
 */
import { addMonths, calendarDate, dayNumber } from "../maths/calendar";
import { poissonLimits, rateRatio, type RateRatio } from "../maths/poisson";
import type { Device } from "../pictures/devices";
import { periodOf, type Period } from "../pictures/months";
import {
  breakdowns,
  NOT_WRITTEN,
  serviceFigures,
  type Breakdown,
  type ServiceChange,
  type ServiceFigures,
} from "./figures";
import { protect, type Shown, type Sum } from "./small-counts";

/** A rate is for so many tube-days. */
export const PER = 1000;
const LEVEL = 0.95;

export type BoardLength = "quarter" | "year";

/** A count as it may be handed round. */
export interface Told {
  readonly shown: Shown;
  /** Null where it is not shown. */
  readonly value: number | null;
}

export interface Rate {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

export interface BoardFigures extends Period {
  readonly people: Told;
  readonly tubeDays: number;
  readonly planned: Told;
  readonly unplanned: Told;
  readonly visits: Told;
  readonly nights: Told;
  /** Null where the count of unplanned changes is not shown, or nobody had a device. */
  readonly rate: Rate | null;
  /** The rows that are shown, the most frequent first; `others` says whether some are not. */
  readonly tables: Readonly<Record<Breakdown, { readonly rows: readonly BoardRow[]; readonly hasOthers: boolean }>>;
  /** Of ten changes, so many have it written down: rounded down, so that ten means all. Null where there are none to show. */
  readonly written: Readonly<Record<"where" | "position", number | null>>;
}

export interface BoardRow {
  readonly word: string;
  readonly count: number;
}

export interface Board {
  readonly length: BoardLength;
  readonly now: BoardFigures;
  /** The period before; null where no device was in then. */
  readonly before: BoardFigures | null;
  /** How many times as high as before, with exact limits; null where one of the two is not shown. */
  readonly ratio: RateRatio | null;
  /** The quarters of the year, or the quarter alone: for the picture. */
  readonly quarters: readonly BoardFigures[];
}

const yearOf = (day: number): Period => {
  const { year } = calendarDate(day);
  return { from: dayNumber(year, 1, 1), end: dayNumber(year + 1, 1, 1) };
};
export const boardPeriod = (day: number, length: BoardLength): Period =>
  length === "quarter" ? periodOf(day, "quarter") : yearOf(day);

/** Periods that are over, the newest first: at most so many of each. */
export function boardPeriods(first: number, asOf: number, length: BoardLength, most: number): readonly Period[] {
  const months = length === "quarter" ? 3 : 12;
  const found: Period[] = [];
  let period = boardPeriod(asOf, length);
  if (asOf < period.end - 1) period = boardPeriod(addMonths(period.from, -months), length);
  for (; period.end > first && found.length < most; period = boardPeriod(addMonths(period.from, -months), length))
    found.push(period);
  return found;
}

const counts = ["people", "planned", "unplanned", "visits", "nights"] as const;
const keyOf = (period: Period, name: string): string => `${period.from}-${period.end} ${name}`;

/** Every count of a period, and which of them add up. */
function cellsOf(period: Period, figures: ServiceFigures, words: Words): { cells: Map<string, number>; sums: Sum[] } {
  const key = (name: string): string => keyOf(period, name);
  const cells = new Map<string, number>(counts.map((name) => [key(name), figures[name]]));
  cells.set(key("changes"), figures.planned + figures.unplanned);
  const sums: Sum[] = [{ total: key("changes"), parts: [key("planned"), key("unplanned")] }];
  for (const table of breakdowns) {
    const parts = words[table].map((word) => key(`${table} ${word}`));
    words[table].forEach((word, i) => cells.set(parts[i]!, figures.tables[table].get(word) ?? 0));
    if (parts.length > 0) sums.push({ total: key(table === "position" ? "changes" : "unplanned"), parts });
  }
  return { cells, sums };
}

type Words = Readonly<Record<Breakdown, readonly string[]>>;

interface Decided {
  readonly figures: ServiceFigures;
  readonly shown: ReadonlyMap<string, Shown>;
}

/** Counts and decides periods, each once. */
class Deciding {
  private readonly kept = new Map<string, Decided>();

  constructor(
    private readonly devices: readonly Device[],
    private readonly changes: readonly ServiceChange[],
    private readonly asOf: number,
    private readonly least: number,
    private readonly words: Words,
  ) {}

  of(period: Period): Decided {
    const key = keyOf(period, "");
    const known = this.kept.get(key);
    if (known) return known;
    const figures = serviceFigures(this.devices, this.changes, period, this.asOf);
    const { cells, sums } = cellsOf(period, figures, this.words);
    const before = new Map<string, Shown>();
    if (period.end - period.from > 300) this.addQuarters(period, cells, sums, before);
    const decided = { figures, shown: protect(cells, sums, this.least, before) };
    this.kept.set(key, decided);
    return decided;
  }

  /** The four quarters of a year are out already. */
  private addQuarters(year: Period, cells: Map<string, number>, sums: Sum[], before: Map<string, Shown>): void {
    const names = [...cells.keys()].map((key) => key.slice(keyOf(year, "").length));
    const quarters = quartersOf(year);
    for (const quarter of quarters) {
      const own = this.of(quarter);
      const within = cellsOf(quarter, own.figures, this.words);
      for (const [key, value] of within.cells) cells.set(key, value);
      for (const [key, what] of own.shown) before.set(key, what);
      sums.push(...within.sums);
    }
    for (const name of names) {
      /* Somebody may be there in several quarters. */
      if (name === "people") continue;
      sums.push({ total: keyOf(year, name), parts: quarters.map((quarter) => keyOf(quarter, name)) });
    }
  }
}

const quartersOf = ({ from }: Period): readonly Period[] =>
  [0, 3, 6, 9].map((months) => periodOf(addMonths(from, months), "quarter"));

function toldOf(period: Period, { figures, shown }: Decided): BoardFigures {
  const told = (name: (typeof counts)[number]): Told => {
    const what = shown.get(keyOf(period, name))!;
    return { shown: what, value: what === "shown" ? figures[name] : null };
  };
  const unplanned = told("unplanned");
  const { tubeDays } = figures;
  const table = (name: Breakdown) => {
    const all = [...figures.tables[name]];
    const rows = all
      .filter(([word]) => shown.get(keyOf(period, `${name} ${word}`)) === "shown")
      .map(([word, count]) => ({ word, count }))
      .sort((a, b) => b.count - a.count || (a.word < b.word ? -1 : 1));
    return { rows, hasOthers: rows.length < all.length };
  };
  const written = (name: "where" | "position", of: Told): number | null => {
    if (of.value === null || of.value === 0) return null;
    const missing = figures.tables[name].get(NOT_WRITTEN) ?? 0;
    return Math.floor((10 * (of.value - missing)) / of.value);
  };
  const changes = shown.get(keyOf(period, "changes")) === "shown" ? figures.planned + figures.unplanned : null;
  return {
    ...period,
    people: told("people"),
    tubeDays,
    planned: told("planned"),
    unplanned,
    visits: told("visits"),
    nights: told("nights"),
    rate: unplanned.value === null || tubeDays === 0 ? null : rateOf(unplanned.value, tubeDays),
    tables: { reasons: table("reasons"), where: table("where"), position: table("position") },
    written: {
      where: written("where", unplanned),
      position: written("position", { shown: "shown", value: changes }),
    },
  };
}

function rateOf(events: number, tubeDays: number): Rate {
  const { low, high } = poissonLimits(events, LEVEL);
  const each = PER / tubeDays;
  return { value: events * each, low: low * each, high: high * each };
}

/**
 * @param least counts below it are not shown
 * @param words every word that each table may hold: that one of them is missing must not be told either
 */
export function board(
  devices: readonly Device[],
  changes: readonly ServiceChange[],
  period: Period,
  length: BoardLength,
  { asOf, least, words }: { readonly asOf: number; readonly least: number; readonly words: Words },
): Board {
  const deciding = new Deciding(devices, changes, asOf, least, words);
  const now = toldOf(period, deciding.of(period));
  const earlier = boardPeriod(period.from - 1, length);
  const before = toldOf(earlier, deciding.of(earlier));
  const [a, b] = [now.unplanned.value, before.unplanned.value];
  const canCompare = a !== null && b !== null && a + b > 0 && now.tubeDays > 0 && before.tubeDays > 0;
  return {
    length,
    now,
    before: before.tubeDays === 0 ? null : before,
    ratio: canCompare ? rateRatio(a, now.tubeDays, b, before.tubeDays, LEVEL) : null,
    quarters: (length === "year" ? quartersOf(period) : [period]).map((one) => toldOf(one, deciding.of(one))),
  };
}
