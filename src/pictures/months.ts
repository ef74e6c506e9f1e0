/** Periods of the calendar in which things are counted. */
import { addMonths, calendarDate, dayNumber } from "../maths/calendar";

export type PeriodLength = "month" | "quarter";

export interface Period {
  /** First day, and the first day of the next one. */
  readonly from: number;
  readonly end: number;
}

const lengths: Readonly<Record<PeriodLength, number>> = { month: 1, quarter: 3 };

/** The period that holds a day. */
export function periodOf(day: number, length: PeriodLength): Period {
  const { year, month } = calendarDate(day);
  const first = month - ((month - 1) % lengths[length]);
  const from = dayNumber(year, first, 1);
  return { from, end: addMonths(from, lengths[length]) };
}

/** The periods from the one that holds `first` to the one that holds `last`. */
export function periodsBetween(first: number, last: number, length: PeriodLength): readonly Period[] {
  const periods: Period[] = [];
  for (let period = periodOf(first, length); period.from <= last; period = periodOf(period.end, length)) {
    periods.push(period);
  }
  return periods;
}
