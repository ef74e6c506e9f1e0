/** Dates between the day numbers of cells, the page's clock, and the screen. */

const DAY_MS = 86_400_000;
/** Day 0 of the 1900 system as all day numbers from 61 (1 March 1900) on count it. */
const DAY_ZERO = Date.UTC(1899, 11, 30);

/** Today by the computer's own clock and time zone. */
export const dayNumberOf = (moment: Date): number =>
  Math.round((Date.UTC(moment.getFullYear(), moment.getMonth(), moment.getDate()) - DAY_ZERO) / DAY_MS);

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
export const dateText = (serial: number, locale: string): string =>
  writer(locale).format(new Date(DAY_ZERO + Math.floor(serial) * DAY_MS));

/** Milliseconds until a new day begins by the computer's own clock. */
export function untilMidnight(moment: Date): number {
  const next = new Date(moment.getFullYear(), moment.getMonth(), moment.getDate() + 1);
  return next.getTime() - moment.getTime();
}
