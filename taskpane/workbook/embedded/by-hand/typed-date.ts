/**
 * Dates as people type them. The engine silently reads 03/04/2026 as 4 March (measured), so that a typed day and month is
 * read as the visible setting says, or not at all.
 */
import type { Asks, DayFirst } from "../interface";

export type TypedDate =
  /** Not a date in figures: left to the grid. */
  | { readonly kind: "other" }
  | { readonly kind: "date"; readonly serial: number; readonly time: boolean }
  /** Why, and what to do. */
  | { readonly kind: "refused"; readonly sentence: string; readonly asks?: Asks };

/** 3/4/2026, 03.04.26, 3-4-2026, 3/4: with a time behind or not. */
const DAY_MONTH =
  /^\s*(\d{1,2})([/.-])(\d{1,2})(?:\2(\d{1,4}))?\s*(?:[T ,]\s*(\d{1,2}):(\d{2})(?::(\d{2}))?\s*([ap]m?)?)?\s*$/i;
const YEAR_FIRST = /^\s*(\d{4})([/.-])(\d{1,2})\2(\d{1,2})(?:[T ]+(\d{1,2}):(\d{2})(?::(\d{2}))?)?\s*$/;

/** 4.7 is a size and 3-4 nobody's date: without a year only the stroke counts as one. */
const isNumberLike = (separator: string, year: string | undefined): boolean => year === undefined && separator !== "/";

const DAY = 86_400_000;
/** Day numbers of the 1900 system from 1 March 1900 on. */
const EPOCH = Date.UTC(1899, 11, 30);

function serialOf(year: number, month: number, day: number): number | undefined {
  const date = new Date(Date.UTC(year, month - 1, day));
  const isReal = date.getUTCMonth() === month - 1 && date.getUTCDate() === day && year >= 1901 && year <= 9999;
  return isReal ? Math.round((date.getTime() - EPOCH) / DAY) : undefined;
}

const partOfDay = (
  hour: string | undefined,
  minute: string | undefined,
  second: string | undefined,
  half = "",
): number => {
  if (hour === undefined) return 0;
  const hours = half === "" ? Number(hour) : (Number(hour) % 12) + (/^p/i.test(half) ? 12 : 0);
  return (hours * 3600 + Number(minute) * 60 + Number(second ?? 0)) / 86_400;
};

const refused = (sentence: string) => ({ kind: "refused" as const, sentence });

export function typedDate(text: string, dayFirst: DayFirst): TypedDate {
  const iso = YEAR_FIRST.exec(text);
  if (iso) {
    const [, year, , month, day, hour, minute, second] = iso;
    const serial = serialOf(Number(year), Number(month), Number(day));
    if (serial === undefined) return refused(`There is no such day as ${text.trim()}.`);
    return { kind: "date", serial: serial + partOfDay(hour, minute, second), time: hour !== undefined };
  }
  const found = DAY_MONTH.exec(text);
  if (!found) return { kind: "other" };
  const [, first, separator, other, year, hour, minute, second, half] = found;
  if (isNumberLike(separator!, year)) return { kind: "other" };
  if (year === undefined || year.length !== 4) {
    return refused(`Write the year of ${text.trim()} with four figures.`);
  }
  if (dayFirst === null) {
    const hint = `Which part of ${text.trim()} is the day? Choose day first or month first above, or write the year first`;
    return { ...refused(`${hint} (${year}-…).`), asks: "which part is the day" };
  }
  const [day, month] = dayFirst ? [Number(first), Number(other)] : [Number(other), Number(first)];
  const serial = serialOf(Number(year), month, day);
  if (serial === undefined) {
    const order = dayFirst ? "day first" : "month first";
    return refused(`Read ${order}, there is no such day as ${text.trim()}.`);
  }
  return { kind: "date", serial: serial + partOfDay(hour, minute, second, half), time: hour !== undefined };
}

/** The same day as text with the year first, for texts on their way in from the clipboard. */
export function yearFirst(serial: number): string {
  const minutes = Math.round(serial * 1440);
  const date = new Date(EPOCH + minutes * 60_000).toISOString();
  return minutes % 1440 === 0 ? date.slice(0, 10) : `${date.slice(0, 10)} ${date.slice(11, 16)}`;
}
