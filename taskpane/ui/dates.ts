/** Dates between the day numbers of cells, the page's clock, and the screen. */
import { calendarDate, dayNumber } from "../../src/maths/calendar";

/** Today by the computer's own clock and time zone. */
export const dayNumberOf = (moment: Date): number =>
  dayNumber(moment.getFullYear(), moment.getMonth() + 1, moment.getDate());

const WRITTEN = { day: "numeric", month: "short", year: "numeric", timeZone: "UTC" } as const;

/** The computer's way of writing dates; browsers can name a locale that is none ("en-US@posix"), then British. */
function writer(locale: string): Intl.DateTimeFormat {
  try {
    return new Intl.DateTimeFormat(locale, WRITTEN);
  } catch {
    return new Intl.DateTimeFormat("en-GB", WRITTEN);
  }
}

/** A day number as this person's computer writes dates, the month in letters so that it cannot be turned round. */
export function dateText(serial: number, locale: string): string {
  const { year, month, day } = calendarDate(Math.floor(serial));
  return writer(locale).format(Date.UTC(year, month - 1, day));
}

/** Milliseconds until a new day begins by the computer's own clock. */
export function untilMidnight(moment: Date): number {
  const next = new Date(moment.getFullYear(), moment.getMonth(), moment.getDate() + 1);
  return next.getTime() - moment.getTime();
}
