/** Days on which the clinic is shut: dates, and names of weekdays. */
import { LAST_DAY, weekday } from "../maths/calendar";
import type { Matrix } from "../worksheet/cell";
import { readDate } from "../worksheet/dates";
import { cellText, fault, SheetError } from "../worksheet/error";

export interface ClosedDays {
  readonly dates: ReadonlySet<number>;
  /** By weekday, Sunday first. */
  readonly weekdays: readonly boolean[];
}

const NAMES = ["sunday", "monday", "tuesday", "wednesday", "thursday", "friday", "saturday"];

export const noClosedDays: ClosedDays = { dates: new Set(), weekdays: NAMES.map(() => false) };

/** Reads a block of dates and English day names (three letters or in full); blanks are skipped. */
export function readClosedDays(cells: Matrix): ClosedDays | SheetError {
  const dates = new Set<number>();
  const weekdays = NAMES.map(() => false);
  for (const cell of cells.flat()) {
    if (cell === null || cell === undefined) continue;
    const word = String(cell).trim().toLowerCase();
    if (word === "") continue;
    const name = NAMES.findIndex((full) => full === word || full.slice(0, 3) === word);
    if (name >= 0) {
      weekdays[name] = true;
      continue;
    }
    const day = readDate(cell);
    if (day instanceof SheetError) return fault`holds ${cellText(String(cell))}: give dates, or day names such as Sat`;
    if (day !== null) dates.add(day);
  }
  return { dates, weekdays };
}

const isClosed = (day: number, { dates, weekdays }: ClosedDays): boolean => weekdays[weekday(day)]! || dates.has(day);

/**
 * The nearest open day at or before a day.
 * @param after the result must be later than this day
 * @returns undefined when there is none
 */
export function openDayAtOrBefore(day: number, closed: ClosedDays, after: number): number | undefined {
  for (let d = day; d > after; d--) if (!isClosed(d, closed)) return d;
  return undefined;
}

/** No day of the week is open. */
export const neverOpen = ({ weekdays }: ClosedDays): boolean => weekdays.every(Boolean);

/**
 * The nearest open day at or after a day; some weekday must be open.
 * @returns undefined when there is none up to the last day of the calendar
 */
export function openDayAtOrAfter(day: number, closed: ClosedDays): number | undefined {
  for (let d = day; d <= LAST_DAY; d++) if (!isClosed(d, closed)) return d;
  return undefined;
}
