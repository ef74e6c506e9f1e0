/**
 * Calendar arithmetic on day numbers: integers only, no Date objects, no time zone.
 *
 * Day numbers count as spreadsheets do from 1 March 1900 on: 61 is 1 March 1900, 45658 is 1 January 2025 (ECMA-376
 * part 1, 18.17.4). Day 60 of that count never existed, so nothing below 61 is handled here.
 *
 * The conversions are the usual ones for the proleptic Gregorian calendar with years that begin in March, so that the
 * leap day comes last (E. G. Richards, "Calendars", Explanatory Supplement to the Astronomical Almanac, 3rd ed. 2013,
 * 15.11); every day of 400 years is checked against the Temporal polyfill.
 */

/** First and last day number that spreadsheets and this library agree on: 1 March 1900 and 31 December 9999. */
export const FIRST_DAY = 61;
export const LAST_DAY = 2958465;

/** Days from 1 March of the year 0 to day number 0. */
const SHIFT = 693899;

/** The calendar begins anew after so many years, and so many days. */
const CYCLE_YEARS = 400;
const CYCLE_DAYS = 146097;

/**
 * Up to here everything below stays within what the machine divides as whole numbers, several times as fast as others: a
 * date needs seven divisions. They are written out, each with its own divisor, because the engine turns a division by a
 * number that it knows into a multiplication (measured: a third of a column of due dates).
 */
const NEAR_YEARS = 100_000;
const NEAR_DAYS = 365 * NEAR_YEARS;

export interface CalendarDate {
  readonly year: number;
  /** 1 to 12 */
  readonly month: number;
  /** 1 to 31 */
  readonly day: number;
}

/** Day number of a calendar date; the date must exist. */
export function dayNumber(year: number, month: number, day: number): number {
  if (year > 0 && year < NEAR_YEARS) return nearDayNumber(year | 0, month, day);
  const cycles = Math.floor(year / CYCLE_YEARS) - 1;
  return nearDayNumber(year - CYCLE_YEARS * cycles, month, day) + CYCLE_DAYS * cycles;
}

function nearDayNumber(year: number, month: number, day: number): number {
  const marchYear = month > 2 ? year : year - 1;
  const marchMonth = month > 2 ? month - 3 : month + 9;
  const leapDays = ((marchYear / 4) | 0) - ((marchYear / 100) | 0) + ((marchYear / 400) | 0);
  return 365 * marchYear + leapDays + (((153 * marchMonth + 2) / 5) | 0) + day - 1 - SHIFT;
}

/** Calendar date of a day number. */
export function calendarDate(serial: number): CalendarDate {
  if (serial >= -SHIFT && serial < NEAR_DAYS) return nearCalendarDate(serial);
  const cycles = Math.floor(serial / CYCLE_DAYS);
  const { year, month, day } = nearCalendarDate(serial - CYCLE_DAYS * cycles);
  return { year: year + CYCLE_YEARS * cycles, month, day };
}

function nearCalendarDate(serial: number): CalendarDate {
  const days = (serial | 0) + SHIFT;
  const century = ((4 * days + 3) / 146097) | 0;
  const inCentury = days - (((146097 * century) / 4) | 0);
  const yearOfCentury = ((4 * inCentury + 3) / 1461) | 0;
  const inYear = inCentury - (((1461 * yearOfCentury) / 4) | 0);
  const marchMonth = ((5 * inYear + 2) / 153) | 0;
  const month = marchMonth < 10 ? marchMonth + 3 : marchMonth - 9;
  return {
    year: 100 * century + yearOfCentury + (month <= 2 ? 1 : 0),
    month,
    day: inYear - (((153 * marchMonth + 2) / 5) | 0) + 1,
  };
}

export const isLeapYear = (year: number): boolean => year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);

/** @param month 1 to 12 */
export function daysInMonth(year: number, month: number): number {
  if (month === 2) return isLeapYear(year) ? 29 : 28;
  return month === 4 || month === 6 || month === 9 || month === 11 ? 30 : 31;
}

/**
 * Adds whole months; a day that the month reached does not have becomes its last day, as in OpenFormula EDATE
 * (OASIS ODF 1.3 part 4, 6.10.8) and Temporal's "constrain".
 *
 * Not associative: 31 January + 1 month + 1 month is not 31 January + 2 months. Always add from the original date.
 */
export function addMonths(serial: number, months: number): number {
  const { year, month, day } = calendarDate(serial);
  const all = 12 * year + (month - 1) + months;
  const isNear = all >= 0 && all < 12 * NEAR_YEARS;
  const count = isNear ? all | 0 : all;
  const newYear = isNear ? (count / 12) | 0 : Math.floor(count / 12);
  const newMonth = count - 12 * newYear + 1;
  // Every month has 28 days: only later days can need clipping.
  return dayNumber(newYear, newMonth, day <= 28 ? day : Math.min(day, daysInMonth(newYear, newMonth)));
}

/** 0 is Sunday, 6 is Saturday. Day number 61, 1 March 1900, was a Thursday. */
export const weekday = (serial: number): number => (serial + 6) % 7;
