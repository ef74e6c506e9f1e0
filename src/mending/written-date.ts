/**
 * A date as somebody wrote it into a cell, taken apart and never guessed: "13 Jun 2026" is one day, "3/4/2026" may be
 * two, and the century of "3/4/24" is not written at all. What is open is said, and `dayMeant` wants it answered.
 *
 * A year of two figures is taken to stand last; "24/03/13" as year, month, day is not read so.
 */
import { calendarDate, dayNumber, daysInMonth, FIRST_DAY, LAST_DAY, weekday } from "../maths/calendar";
import { monthNamed, weekdayNamed } from "./month-words";

/** How it is written. */
export type DateForm =
  /** 2026-10-22, 2026/10/22 */
  | "year first"
  /** 20261022 */
  | "run together"
  /** 13 Jun 2026, June 13, 2026 */
  | "month in words"
  /** 22/10/2026 */
  | "strokes"
  /** 22.10.2026 */
  | "points"
  /** 22-10-2026 */
  | "hyphens"
  /** 22 10 2026 */
  | "spaces";

/**
 * Which of two figures is the day.
 * - "known": the form says so.
 * - "day first", "month first": only so is there such a month.
 * - "same": both are the same figure.
 * - "open": there are two days that it may be.
 */
export type DateOrder = "known" | "day first" | "month first" | "same" | "open";

export interface WrittenDate {
  readonly form: DateForm;
  readonly order: DateOrder;
  /** The figures of day and month; where the order is open, as they stand. */
  readonly day: number;
  readonly month: number;
  /** As written: with two figures the century is open. */
  readonly year: number;
  readonly isShortYear: boolean;
  /** 0 is Sunday; null where none is written. */
  readonly weekday: number | null;
}

/** Why a text is not read as a date; short fragments, shown to people. */
export const notRead = {
  words: "no date in it",
  year: "no year in it",
  day: "no day in it",
  doubt: "in doubt: a question mark, or about",
  several: "more than one date",
  beside: "other words or figures beside the date",
  noSuchDay: "there is no such day",
  weekday: "the day of the week does not go with the date",
} as const;
export type NotRead = (typeof notRead)[keyof typeof notRead];

/** Longer texts are notes. */
const LONGEST = 60;

const TIME = /[ ,t]+(\d{1,2}):(\d{2})(?::(\d{2})(?:[.,]\d+)?)?(?: ?([ap])\.?m\.?)?(?: ?(?:uhr|h))?z?$/;
const YEAR_FIRST = /^(\d{4})([-/.])(\d{1,2})\2(\d{1,2})$/;
const RUN_TOGETHER = /^((?:19|20)\d{2})(\d{2})(\d{2})$/;
const FIGURES = /^(\d{1,2})( ?[-/.] ?| )(\d{1,2})( ?[-/.] ?| )('?\d{2}|\d{4})$/;
const DAY_AND_MONTH = /^\d{1,2} ?[-/.] ?\d{1,2}\.?$/;
const MONTH_AND_YEAR = /^\d{1,2} ?[-/.] ?\d{4}$|^(?:19|20)\d{2}$/;
const DOUBT = /[?~≈<>]|\b(?:ca|circa|approx|about|around|etwa|ungefahr|environ|aprox)\b/;
const DATE_WITHIN = /\d{1,4}[-/.]\d{1,2}[-/.]\d{1,4}/;
/** What may stand between day, month and year. */
const LITTLE_WORDS = new Set(["of", "de", "del", "di", "the", "den", "der", "am", "le", "el", "il", "on", "op"]);
const ORDINAL = new Set(["st", "nd", "rd", "th", "er", "e", "o", "a"]);
const FORMS: Readonly<Record<string, DateForm>> = { "/": "strokes", ".": "points", "-": "hyphens", "": "spaces" };

/** Small letters, plain spaces and hyphens, no accents. */
const plain = (text: string): string =>
  text
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replace(/[\u2010-\u2015\u2212]/gu, "-")
    .replace(/[\u2018\u2019\u00b4`]/gu, "'")
    .replace(/\s+/gu, " ")
    .trim();

/** The text without a time of day behind its date; null where that is no time. */
function withoutTime(text: string): string | null {
  const found = TIME.exec(text);
  if (!found) return text;
  const [hour, minute, second] = found.slice(1, 4).map((part) => Number(part ?? 0)) as [number, number, number];
  const most = found[4] === undefined ? 23 : 12;
  return hour > most || minute > 59 || second > 59 ? null : text.slice(0, found.index).trim();
}

/** What is written there, or why it is no date. A blank is no question for it. */
export function readWrittenDate(raw: string): WrittenDate | NotRead {
  if (raw.length > LONGEST) return notRead.words;
  const whole = plain(raw);
  if (DOUBT.test(whole)) return notRead.doubt;
  const text = withoutTime(whole);
  if (text === null) return notRead.beside;
  return inFigures(text) ?? inWords(text);
}

function inFigures(text: string): WrittenDate | NotRead | null {
  const iso = YEAR_FIRST.exec(text);
  if (iso) return known("year first", Number(iso[1]), Number(iso[3]), Number(iso[4]));
  const together = RUN_TOGETHER.exec(text);
  if (together) return known("run together", Number(together[1]), Number(together[2]), Number(together[3]));
  const found = FIGURES.exec(text);
  if (found) {
    const [first, between, second, again, end] = found.slice(1) as [string, string, string, string, string];
    if (between.trim() !== again.trim()) return notRead.beside;
    const year = end.replace("'", "");
    return ordered(FORMS[between.trim()]!, Number(first), Number(second), Number(year), year.length === 2);
  }
  if (DAY_AND_MONTH.test(text)) return notRead.year;
  if (MONTH_AND_YEAR.test(text)) return notRead.day;
  return text.split(DATE_WITHIN).length > 2 ? notRead.several : null;
}

const known = (
  form: DateForm,
  year: number,
  month: number,
  day: number,
  more: Partial<Pick<WrittenDate, "isShortYear" | "weekday">> = {},
): WrittenDate | NotRead => {
  const { isShortYear = false, weekday: named = null } = more;
  return isPossible(year, month, day, isShortYear)
    ? { form, order: "known", day, month, year, isShortYear, weekday: named }
    : notRead.noSuchDay;
};

/** A leap year of two figures is one in both centuries that are asked about, but for 00. */
function isPossible(year: number, month: number, day: number, isShort: boolean): boolean {
  if (month < 1 || month > 12 || day < 1) return false;
  if (isShort) return day <= daysInMonth(2000 + year, month);
  return year >= 1900 && day <= daysInMonth(year, month) && dayNumber(year, month, day) >= FIRST_DAY;
}

function ordered(form: DateForm, first: number, second: number, year: number, isShort: boolean): WrittenDate | NotRead {
  const dayFirst = isPossible(year, second, first, isShort);
  const monthFirst = isPossible(year, first, second, isShort);
  if (!dayFirst && !monthFirst) return notRead.noSuchDay;
  const order: DateOrder = first === second ? "same" : !monthFirst ? "day first" : !dayFirst ? "month first" : "open";
  const [day, month] = order === "month first" ? [second, first] : [first, second];
  return { form, order, day, month, year, isShortYear: isShort, weekday: null };
}

/** Numbers and words in their order; what else stands there must be a mark between them. */
function inWords(text: string): WrittenDate | NotRead {
  if (!/\d/.test(text)) return notRead.words;
  const rest = text.replace(/\p{L}+|\d+/gu, "");
  const tokens = text.match(/\p{L}+|\d+/gu) ?? [];
  const [first = ""] = tokens;
  const named = weekdayNamed(first);
  const parts = (named === undefined ? tokens : tokens.slice(1)).filter(
    (token, i, all) => !LITTLE_WORDS.has(token) && !(ORDINAL.has(token) && /^\d/.test(all[i - 1] ?? "")),
  );
  if (named !== undefined && !parts.some((part) => monthNamed(part) !== undefined)) {
    const figures = inFigures(text.slice(first.length).replace(/^[ .,]+/, ""));
    return figures === null || typeof figures === "string"
      ? (figures ?? notRead.beside)
      : { ...figures, weekday: named };
  }
  const months = parts.filter((part) => monthNamed(part) !== undefined);
  const numbers = parts.filter((part) => /^\d/.test(part));
  if (months.length === 0) return DATE_WITHIN.test(text) ? notRead.beside : notRead.words;
  if (months.length > 1) return notRead.several;
  if (parts.length !== months.length + numbers.length || !/^[ .,'/-]*$/.test(rest)) return notRead.beside;
  const month = monthNamed(months[0]!)!;
  const [one, other, ...more] = numbers;
  if (more.length > 0) return notRead.beside;
  if (one === undefined) return notRead.day;
  if (other === undefined) return one.length === 4 ? notRead.day : notRead.year;
  const weekdayOf = { weekday: named ?? null };
  if (one.length === 4 && parts[0] === one && other.length <= 2)
    return known("month in words", Number(one), month, Number(other), weekdayOf);
  if (one.length > 2 || (other.length !== 2 && other.length !== 4)) return notRead.beside;
  return known("month in words", Number(other), month, Number(one), { isShortYear: other.length === 2, ...weekdayOf });
}

/** How years of two figures are meant. */
export type Century =
  /** 24 is 2024. */
  | "2000s"
  /** The last such day that is not after today: 24 is 2024, 31 is 1931. */
  | "up to today";

/** What a person has said of a column; null: not asked, or left as it is. */
export interface DateAnswers {
  readonly order: "day first" | "month first" | null;
  readonly century: Century | null;
}

/** What must be said before it is one day. */
export type Open = "order" | "century";

export const openIn = ({ order, isShortYear }: WrittenDate, answers: DateAnswers): readonly Open[] => [
  ...(order === "open" && answers.order === null ? (["order"] as const) : []),
  ...(isShortYear && answers.century === null ? (["century"] as const) : []),
];

/** The day number that is meant; null while something is open; why not where there is no such day. */
export function dayMeant(date: WrittenDate, answers: DateAnswers, asOf: number): number | null | NotRead {
  if (openIn(date, answers).length > 0) return null;
  const isTurned = date.order === "open" && answers.order === "month first";
  const [day, month] = isTurned ? [date.month, date.day] : [date.day, date.month];
  const found = date.isShortYear ? inCentury(date.year, month, day, answers.century!, asOf) : at(date.year, month, day);
  if (found === null) return notRead.noSuchDay;
  return date.weekday !== null && weekday(found) !== date.weekday ? notRead.weekday : found;
}

function at(year: number, month: number, day: number): number | null {
  if (year < 1900 || day > daysInMonth(year, month)) return null;
  const serial = dayNumber(year, month, day);
  return serial >= FIRST_DAY && serial <= LAST_DAY ? serial : null;
}

function inCentury(short: number, month: number, day: number, century: Century, asOf: number): number | null {
  const recent = at(2000 + short, month, day);
  if (century === "2000s" || (recent !== null && recent <= asOf)) return recent;
  return at(1900 + short, month, day);
}

/** Day and month of a day number exchanged; null where there is no such day, or where both are the same. */
export function turnedRound(serial: number): number | null {
  const { year, month, day } = calendarDate(Math.floor(serial));
  return day > 12 || day === month ? null : at(year, day, month);
}
