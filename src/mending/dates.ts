/**
 * A column of dates as many people typed it, brought to real dates: what is certain at once, what is open after one
 * question for the whole column, and nothing where a text is no date. What other cells of the column prove is counted
 * and told; it never answers by itself.
 */
import { calendarDate, FIRST_DAY, LAST_DAY } from "../maths/calendar";
import { dateDoubt } from "../columns/recipes/date-doubt";
import { textOf, type SheetValue } from "../columns/sheet-block";
import { CellError } from "../worksheet/error";
import {
  dayMeant,
  openIn,
  readWrittenDate,
  turnedRound,
  type DateAnswers,
  type DateForm,
  type NotRead,
  type Open,
  type WrittenDate,
} from "./written-date";

/** Rows are counted from 0 within the column. */
type Rows = readonly number[];

/** Texts that are written in the same way, and of which the same has to be asked. */
export interface DateWording {
  readonly form: DateForm;
  /** What has to be asked before they are read. */
  readonly asks: readonly Open[];
  /** The first of them as it stands there. */
  readonly example: string;
  readonly rows: Rows;
}

/** What the cells of the column say about the order of day and month. */
export interface OrderProof {
  /** Texts that can only be read with the day first, or the month first. */
  readonly dayFirst: number;
  readonly monthFirst: number;
  /** Texts with points between: countries that write so put the day first. */
  readonly points: number;
}

/** "is an error" and the reasons of texts. */
export type WhyNotRead = NotRead | "is an error" | "a number that is no date";

export interface DateColumn {
  readonly of: number;
  readonly blank: number;
  /** Cells that hold a date already. */
  readonly dates: Rows;
  /** Texts that can be read, or could be with an answer; the most frequent first. */
  readonly wordings: readonly DateWording[];
  /** The rest, by reason, the most frequent first. */
  readonly unread: readonly { readonly reason: WhyNotRead; readonly rows: Rows }[];
  readonly proof: OrderProof;
  /** The earliest and the latest year that is written in full; null where none is. */
  readonly years: readonly [earliest: number, latest: number] | null;
  /** Real dates in which a program may have exchanged day and month when they were typed (see `exchanged`). */
  readonly exchanged: Rows;
  /** Cell by cell; null: nothing to be read. */
  readonly cells: readonly (WrittenDate | null)[];
  readonly values: readonly SheetValue[];
}

export interface DateChoices extends DateAnswers {
  /** A person says that day and month of `exchanged` are to be put right. */
  readonly putRight: boolean;
}

export const NOTHING_SAID: DateChoices = { order: null, century: null, putRight: false };

type Read =
  | { readonly is: "blank" }
  | { readonly is: "date"; readonly serial: number }
  | { readonly is: "written"; readonly date: WrittenDate }
  | { readonly is: "unread"; readonly reason: WhyNotRead };

function readCell(value: SheetValue): Read {
  if (value instanceof CellError) return { is: "unread", reason: "is an error" };
  const text = textOf(value);
  if (text.trim() === "" || value === 0) return { is: "blank" };
  if (typeof value === "number") {
    if (value >= FIRST_DAY && value < LAST_DAY + 1) return { is: "date", serial: value };
    const together = readWrittenDate(text);
    return typeof together === "object"
      ? { is: "written", date: together }
      : { is: "unread", reason: "a number that is no date" };
  }
  const date = typeof value === "string" ? readWrittenDate(text) : "no date in it";
  return typeof date === "string" ? { is: "unread", reason: date } : { is: "written", date };
}

export function readDateColumn(values: readonly SheetValue[]): DateColumn {
  const read = values.map(readCell);
  const dates = read.flatMap((cell, row) => (cell.is === "date" ? [row] : []));
  const written = read.map((cell) => (cell.is === "written" ? cell.date : null));
  const all = written.filter((date) => date !== null);
  const ordered = (order: WrittenDate["order"]): number => all.filter((date) => date.order === order).length;
  const proof: OrderProof = {
    dayFirst: ordered("day first"),
    monthFirst: ordered("month first"),
    points: all.filter(({ form }) => form === "points").length,
  };
  const isOpen = ordered("open") > 0;
  return {
    of: values.length,
    blank: read.filter(({ is }) => is === "blank").length,
    dates,
    wordings: wordingsOf(values, written),
    unread: grouped(read.flatMap((cell, row) => (cell.is === "unread" ? [[cell.reason, row] as const] : []))).map(
      ([reason, rows]) => ({ reason, rows }),
    ),
    proof,
    years: yearsOf(values, dates, all),
    exchanged: isOpen ? [] : exchanged(values, dates, proof),
    cells: written,
    values,
  };
}

/** Row numbers by what they share, most first. */
function grouped<T>(entries: readonly (readonly [T, number])[]): readonly (readonly [T, number[]])[] {
  const groups = new Map<T, number[]>();
  for (const [key, row] of entries) {
    const rows = groups.get(key);
    if (rows) rows.push(row);
    else groups.set(key, [row]);
  }
  return [...groups].sort(([, a], [, b]) => b.length - a.length || a[0]! - b[0]!);
}

function wordingsOf(values: readonly SheetValue[], written: readonly (WrittenDate | null)[]): readonly DateWording[] {
  const entries = written.flatMap((date, row) => {
    if (date === null) return [];
    const asks = openIn(date, { order: null, century: null });
    return [[`${date.form}|${asks.join()}`, row] as const];
  });
  return grouped(entries).map(([, rows]) => {
    const [first] = rows;
    const date = written[first!]!;
    const asks = openIn(date, { order: null, century: null });
    return { form: date.form, asks, example: textOf(values[first!]!).replace(/\s+/gu, " ").trim(), rows };
  });
}

function yearsOf(values: readonly SheetValue[], dates: Rows, written: readonly WrittenDate[]): DateColumn["years"] {
  const years = [
    ...dates.map((row) => calendarDate(Math.floor(values[row] as number)).year),
    ...written.filter(({ isShortYear }) => !isShortYear).map(({ year }) => year),
  ];
  return years.length === 0
    ? null
    : years.reduce<readonly [number, number]>(
        ([least, most], year) => [Math.min(least, year), Math.max(most, year)],
        [years[0]!, years[0]!],
      );
}

/** So many texts of one order alone, and so many real dates, before the suspicion is spoken. */
const TEXTS_THAT_SPEAK = 3;
const DATES_THAT_SPEAK = 5;

/**
 * A program set to month first makes a date of "3/4/2026" (4 March, where 3 April was meant) and leaves "22/10/2026" a
 * text, because there is no 22nd month; set to day first it does the same to dates with the month first. The trace of
 * it: every text can be read in one order only, and every real date of the column falls on the 1st to the 12th. Five
 * dates fall so by chance in (144 / 365)^5 = 1% of columns. It is a suspicion, to be compared with the record.
 */
function exchanged(values: readonly SheetValue[], dates: Rows, { dayFirst, monthFirst }: OrderProof): Rows {
  const isOneOrder = (dayFirst === 0) !== (monthFirst === 0) && dayFirst + monthFirst >= TEXTS_THAT_SPEAK;
  if (!isOneOrder || dates.length < DATES_THAT_SPEAK) return [];
  const dayOf = (row: number): number => calendarDate(Math.floor(values[row] as number)).day;
  if (dates.some((row) => dayOf(row) > 12)) return [];
  return dates.filter((row) => turnedRound(values[row] as number) !== null);
}

export interface MendedDates {
  /** The day number of each row that is to be changed; null: it stays as it is. */
  readonly results: readonly (number | null)[];
  /** Rows with a text that waits for an answer. */
  readonly waiting: Rows;
  /** Texts that are no day in the way that was answered. */
  readonly failed: readonly { readonly reason: NotRead; readonly rows: Rows }[];
  /** Days that somebody should look at, changed now or dates before. */
  readonly doubts: readonly { readonly reason: string; readonly rows: Rows }[];
}

/**
 * @param asOf today as a day number
 * @param called what the column is, for doubts: "last change"; null where its days may lie anywhere
 */
export function mendDates(
  column: DateColumn,
  choices: DateChoices,
  asOf: number,
  called: string | null = null,
): MendedDates {
  const waiting: number[] = [];
  const failed: (readonly [NotRead, number])[] = [];
  const isExchanged = new Set(choices.putRight ? column.exchanged : []);
  const results = column.cells.map((date, row): number | null => {
    if (date === null) return isExchanged.has(row) ? turnedRound(column.values[row] as number) : null;
    const day = dayMeant(date, choices, asOf);
    if (typeof day === "string") failed.push([day, row]);
    else if (day === null) waiting.push(row);
    return typeof day === "number" ? day : null;
  });
  const doubts = results.flatMap((result, row): (readonly [string, number])[] => {
    const day = result ?? column.values[row] ?? null;
    const doubt = called === null || typeof day !== "number" ? null : dateDoubt(called, day, asOf);
    return doubt === null ? [] : [[doubt, row]];
  });
  return {
    results,
    waiting,
    failed: grouped(failed).map(([reason, rows]) => ({ reason, rows })),
    doubts: grouped(doubts).map(([reason, rows]) => ({ reason, rows })),
  };
}
