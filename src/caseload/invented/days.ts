/** Days as the invented stories count them: so many days before or after the day on which the people are invented. */
import { calendarDate, dayNumber, isLeapYear } from "../../maths/calendar";

/** An age in whole days, so that a day of birth and a story's day stay the same number of days apart. */
export const years = (count: number): number => Math.round(365.25 * count);
export const weeks = (count: number): number => 7 * count;

/** The newest such day of the year that lies at least so many days back. */
export function newest(month: number, day: number, atLeast: number, asOf: number): number {
  const latest = asOf - atLeast;
  let { year } = calendarDate(latest);
  const exists = () => month !== 2 || day < 29 || isLeapYear(year);
  while (!exists() || dayNumber(year, month, day) > latest) year -= 1;
  return dayNumber(year, month, day);
}

/** First day of the calendar quarter that lies so many quarters before the one of this day. */
export function quarterStart(asOf: number, quartersBefore: number): number {
  const { year, month } = calendarDate(asOf);
  const quarter = 4 * year + Math.floor((month - 1) / 3) - quartersBefore;
  return dayNumber(Math.floor(quarter / 4), 3 * (quarter % 4) + 1, 1);
}
