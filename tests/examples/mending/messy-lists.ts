/**
 * Three lists of invented people as twenty people type them, and what each cell means: known from how it is made, never
 * from our own reader.
 */
import { Temporal } from "temporal-polyfill";

/** A cell as it is typed, and what it means. */
export interface Typed<T> {
  readonly cell: string | number | null;
  readonly means: T | null;
  /** What must be said before it is known. */
  readonly asks?: "order" | "century" | "both" | "size";
}

/** Days since 30 December 1899, as spreadsheets count from 1 March 1900 on (ECMA-376 part 1, 18.17.4). */
export const serialOf = (date: Temporal.PlainDate): number =>
  Temporal.PlainDate.from("1899-12-30").until(date, { largestUnit: "days" }).days;

const two = (n: number): string => String(n).padStart(2, "0");
const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];
const MONATE = [
  "Januar",
  "Februar",
  "März",
  "April",
  "Mai",
  "Juni",
  "Juli",
  "August",
  "September",
  "Oktober",
  "November",
  "Dezember",
];

type Writer = (date: Temporal.PlainDate) => string | number;
const figures =
  (mark: string, isShort = false): Writer =>
  ({ day, month, year }) =>
    [two(day), two(month), isShort ? two(year % 100) : year].join(mark);
const inWords: Writer = ({ day, month, year }) => `${day} ${MONTHS[month - 1]} ${year}`;
const inWorten: Writer = ({ day, month, year }) => `${day}. ${MONATE[month - 1]} ${year}`;

/** Day first, in every list. */
function written(date: Temporal.PlainDate, writer: Writer, isShort = false): Typed<number> {
  const cell = writer(date);
  const means = serialOf(date);
  const isFigures = typeof cell === "string" && !/\p{L}/u.test(cell) && !/^\d{4}-/.test(cell);
  const isOpen = isFigures && date.day <= 12 && date.day !== date.month;
  const asks = isOpen ? (isShort ? "both" : "order") : isShort ? "century" : undefined;
  return { cell, means, ...(asks && { asks }) };
}

/** 2023 to 2026, spread over days and months. */
const dateOf = (i: number): Temporal.PlainDate =>
  Temporal.PlainDate.from({ year: 2023 + (i % 4), month: 1 + ((i * 5) % 12), day: 1 + ((i * 11) % 28) });

const no = (cell: string | null): Typed<never> => ({ cell, means: null });

export interface MessyRow {
  readonly id: string;
  readonly last: Typed<number>;
  readonly kind: string;
  readonly size: Typed<number>;
}

const KINDS = ["Balloon", "balloon ", "BGT", "Bumper adult", "GJ", "PEG", ""];
const ARTEN = ["Ballon", "BALLON", "BGT", "Bumper adult", "PEG-J", "PEG"];

const SIZES: readonly Typed<number>[] = [
  { cell: 14, means: 14 },
  { cell: "14 Fr", means: 14 },
  { cell: "CH16", means: 16 },
  { cell: "12,0", means: 12 },
  { cell: "FG 18", means: 18 },
  { cell: "14G", means: 14, asks: "size" },
  { cell: "12/14", means: 12, asks: "size" },
  no(null),
];

const list = (
  rows: number,
  prefix: string,
  kinds: readonly string[],
  last: (i: number) => Typed<number>,
): readonly MessyRow[] =>
  Array.from({ length: rows }, (_, i) => ({
    id: `${prefix}-${i + 1}`,
    last: last(i),
    kind: kinds[i % kinds.length]!,
    size: SIZES[i % SIZES.length]!,
  }));

/** 60 rows, English headings: days and months in figures and in words, two-figure years, a letter. */
export const english = list(60, "D", KINDS, (i) => {
  const date = dateOf(i);
  const ways: readonly (() => Typed<number>)[] = [
    () => ({ cell: serialOf(date), means: serialOf(date) }),
    () => written(date, figures("/")),
    () => written(date, inWords),
    () => written(date, figures("/", true), true),
    () => written(date, (day) => day.toString()),
    () => no(i % 12 === 5 ? "see letter" : null),
  ];
  return ways[i % ways.length]!();
});
export const ENGLISH_HEADERS = ["ID", "Kind", "Size", "Last change", "Notes"];

/** 40 rows, German headings: points between, months in German. */
export const german = list(40, "P", ARTEN, (i) => {
  const date = dateOf(i + 3);
  const ways: readonly (() => Typed<number>)[] = [
    () => written(date, figures(".")),
    () => written(date, inWorten),
    () => written(date, figures(".", true), true),
    () => no(i % 8 === 3 ? "Brief" : null),
  ];
  return ways[i % ways.length]!();
});
export const GERMAN_HEADERS = ["Kennung", "Sondenart", "Größe", "Letzter Wechsel", "Bemerkungen"];

/** 2,000 rows: the same messes, many times. */
export const long = list(2_000, "L", KINDS, (i) => {
  const date = dateOf(i);
  return [
    () => ({ cell: serialOf(date), means: serialOf(date) }),
    () => written(date, figures("/")),
    () => written(date, figures("-")),
    () => written(date, inWords),
  ][i % 4]!();
});

/** As rows of a sheet under its headings. */
export const cellsOf = (rows: readonly MessyRow[]): (string | number | null)[][] =>
  rows.map(({ id, last, kind, size }) => [id, kind, size.cell, last.cell, null]);
