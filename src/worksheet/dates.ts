/**
 * Dates at the edge of the worksheet: day numbers in, day numbers out. Only the ISO 8601 calendar form is read from
 * text, because it is the only one that cannot be turned round (3/4 is March in some countries and April in others).
 */
import { calendarDate, dayNumber, daysInMonth, FIRST_DAY, LAST_DAY } from "../maths/calendar";
import { SheetError } from "./error";

const ISO = /^(\d{4})-(\d{2})-(\d{2})(?:T\d{2}:\d{2}(?::\d{2}(?:[.,]\d+)?)?(?:Z|[+-]\d{2}(?::?\d{2})?)?)?$/;

/** Day number of `YYYY-MM-DD`, a time of day dropped; null for any other text or a day that does not exist. */
export function dayOfText(text: string): number | null {
  const match = ISO.exec(text.trim());
  if (!match) return null;
  const [year, month, day] = match.slice(1, 4).map(Number) as [number, number, number];
  if (month < 1 || month > 12 || day < 1 || day > daysInMonth(year, month)) return null;
  const serial = dayNumber(year, month, day);
  return serial >= FIRST_DAY && serial <= LAST_DAY ? serial : null;
}

const two = (n: number): string => String(n).padStart(2, "0");

/** `YYYY-MM-DD` of a day number. */
export function isoText(serial: number): string {
  const { year, month, day } = calendarDate(serial);
  return `${String(year).padStart(4, "0")}-${two(month)}-${two(day)}`;
}

/** A day number written as a date, for examples: throws when the text is not a date. */
export function day(text: string): number {
  const serial = dayOfText(text);
  if (serial === null) throw new Error(`${text} is not a date`);
  return serial;
}

const beyond = new SheetError("is before 1 March 1900 or after 9999");

/** Reads a date from a cell that is not blank. The number 0 is a blank: Excel sends 0 for an empty cell. */
export function readDate(cell: number | string | boolean): number | null | SheetError {
  if (typeof cell === "number") {
    if (cell === 0) return null;
    const serial = Math.floor(cell);
    return serial >= FIRST_DAY && serial <= LAST_DAY ? serial : beyond;
  }
  const serial = typeof cell === "string" ? dayOfText(cell) : null;
  return serial ?? new SheetError("must be a date, or text such as 2026-05-14; other texts are not guessed");
}

/** A computed date, kept within what a worksheet can show. */
export const dateResult = (serial: number): number | SheetError =>
  serial >= FIRST_DAY && serial <= LAST_DAY ? serial : new SheetError("the date would be outside 1900 to 9999");
