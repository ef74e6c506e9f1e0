/** Dates between the day numbers of cells, the page's clock, and the screen. */
import { calendarDate, dayNumber } from "../../../src/maths/calendar";

/** Today by the computer's own clock and time zone. */
export const dayNumberOf = (moment: Date): number =>
  dayNumber(moment.getFullYear(), moment.getMonth() + 1, moment.getDate());

const WRITTEN = { day: "numeric", month: "short", year: "numeric", timeZone: "UTC" } as const;
const WITH_DAY = { ...WRITTEN, weekday: "short" } as const;
const MONTH = { month: "long", year: "numeric", timeZone: "UTC" } as const;
const LONG_MONTH = { month: "long", timeZone: "UTC" } as const;
const YEAR = { year: "numeric", timeZone: "UTC" } as const;
const SHORT_MONTH = { month: "short", timeZone: "UTC" } as const;
const IN_FULL = { ...WRITTEN, weekday: "long", month: "long" } as const;

/** The computer's way of writing dates; browsers can name a locale that is none ("en-US@posix"), then British. */
function written(serial: number, locale: string, how: Intl.DateTimeFormatOptions): string {
  const { year, month, day } = calendarDate(Math.floor(serial));
  const moment = Date.UTC(year, month - 1, day);
  try {
    return new Intl.DateTimeFormat(locale, how).format(moment);
  } catch {
    return new Intl.DateTimeFormat("en-GB", how).format(moment);
  }
}

/** A day number as this person's computer writes dates, the month in letters so that it cannot be turned round. */
export const dateText = (serial: number, locale: string): string => written(serial, locale, WRITTEN);

/** "Thu, 26 Nov 2026" */
export const dayText = (serial: number, locale: string): string => written(serial, locale, WITH_DAY);

/** "Thursday 26 November 2026": a typed date, read back. */
export const dayInFull = (serial: number, locale: string): string =>
  /* Versions of the browser differ in a comma behind the weekday. */
  written(serial, locale, IN_FULL).replace(/^(\p{L}+), (?=\d)/u, "$1 ");

/** "December 2026" */
export const monthText = (serial: number, locale: string): string => written(serial, locale, MONTH);

/** "December" */
export const longMonth = (serial: number, locale: string): string => written(serial, locale, LONG_MONTH);

/** "Dec" */
export const shortMonth = (serial: number, locale: string): string => written(serial, locale, SHORT_MONTH);

/** Milliseconds until a new day begins by the computer's own clock. */
export function untilMidnight(moment: Date): number {
  const next = new Date(moment.getFullYear(), moment.getMonth(), moment.getDate() + 1);
  return next.getTime() - moment.getTime();
}

/** "2026" */
export const yearText = (serial: number, locale: string): string => written(serial, locale, YEAR);
