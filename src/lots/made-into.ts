/**
 * Lots that a spreadsheet has turned into something else: typed into a cell that is not formatted as text, `1E5` becomes
 * 100000, `0012` becomes 12, `03-04` becomes a day, and of 17 digits the last two become zeros.
 */
import { calendarDate } from "../maths/calendar";

const NUMBER = /^[+-]?\d+(?:[.,]\d*)?(?:E[+-]?\d+)?$/u;
/** Spreadsheets keep so many digits. */
const DIGITS = 15;

/** The numbers that a spreadsheet may make of a lot. */
function numbersOf(key: string): readonly number[] {
  const percent = key.endsWith("%") ? 0.01 : 1;
  const text = key.replace(/%$/u, "");
  if (!NUMBER.test(text)) return [];
  const asDecimal = Number(text.replace(",", "."));
  /* A comma may divide thousands. */
  const asThousands = Number(text.replace(/[.,]/u, ""));
  return [asDecimal * percent, asThousands * percent];
}

const isAlmost = (a: number, b: number): boolean =>
  a === b ||
  (Number.isFinite(a) && Number.isFinite(b) && Number(a.toPrecision(DIGITS)) === Number(b.toPrecision(DIGITS)));

const cutTo15 = (key: string): number =>
  /^\d{16,}$/u.test(key) ? Number(key.slice(0, DIGITS) + "0".repeat(key.length - DIGITS)) : NaN;

/** Whether a spreadsheet may have made this number of a lot. */
export const mayHaveBecomeNumber = (key: string, number: number): boolean =>
  [...numbersOf(key), cutTo15(key)].some((made) => isAlmost(made, number));

const MONTHS = ["JAN", "FEB", "MAR", "APR", "MAY", "JUN", "JUL", "AUG", "SEP", "OCT", "NOV", "DEC"];
/** The same in German, French, Spanish, Dutch and Italian, where they begin with other letters. */
const OTHER_MONTHS: Readonly<Record<string, number>> = {
  ...{ MRZ: 3, MAI: 5, OKT: 10, DEZ: 12, FEV: 2, AVR: 4, JUI: 6, AOU: 8, ENE: 1, ABR: 4, AGO: 8, DIC: 12 },
  ...{ MRT: 3, MEI: 5, GEN: 1, MAG: 5, GIU: 6, LUG: 7, SET: 9, OTT: 10, MAA: 3, MAR: 3, MÄR: 3 },
};

/** The parts of what may be a day: numbers, or a month's name, one of them at least with a neighbour. */
function dayParts(key: string): readonly (number | { readonly month: number })[] | null {
  const parts = key.match(/\p{L}+|\d+/gu) ?? [];
  const isJoined = /^(?:\p{L}+|\d+)(?:[-/.]?(?:\p{L}+|\d+)){1,2}$/u.test(key);
  if (!isJoined || parts.length < 2 || parts.length > 3) return null;
  const read = parts.map((part) => {
    if (/^\d+$/u.test(part)) return Number(part);
    const month = part.length < 3 ? 0 : MONTHS.indexOf(part.slice(0, 3)) + 1 || (OTHER_MONTHS[part.slice(0, 3)] ?? 0);
    return { month };
  });
  return read.every((part) => typeof part === "number" || part.month > 0) ? read : null;
}

const isYear = (part: number, year: number): boolean => part === year || part === year % 100;

/**
 * Whether a spreadsheet may have made this day of a lot, in whatever order it reads days and months. A day and a month
 * alone get the year in which they were typed, which nobody knows any more.
 */
export function mayHaveBecomeDay(key: string, serial: number): boolean {
  const parts = dayParts(key);
  if (!parts) return false;
  const { year, month, day } = calendarDate(Math.floor(serial));
  const isMonth = (part: (typeof parts)[number]): boolean => (typeof part === "number" ? part : part.month) === month;
  const orders =
    parts.length === 2
      ? [
          [0, 1],
          [1, 0],
        ]
      : [
          [0, 1, 2],
          [1, 0, 2],
          [2, 1, 0],
          [2, 0, 1],
          [0, 2, 1],
          [1, 2, 0],
        ];
  return orders.some((order) => {
    const [first, second, third] = order.map((at) => parts[at]!);
    if (!isMonth(second!) || typeof first !== "number") return false;
    if (parts.length === 3) return first === day && typeof third === "number" && isYear(third, year);
    return first === day || (day === 1 && isYear(first, year));
  });
}
