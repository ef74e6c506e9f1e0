/**
 * Mending never guesses. Texts are made by the browser's own way of writing dates (Intl), which knows nothing of ours, and
 * by chance.
 */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { shortOrLong } from "../budget";
import { calendarDate, daysInMonth } from "../../src/maths/calendar";
import { mendDates, NOTHING_SAID, readDateColumn, type DateChoices } from "../../src/mending/dates";
import { dayMeant, readWrittenDate, type DateAnswers } from "../../src/mending/written-date";
import { mendSizes, sizeWordings } from "../../src/mending/sizes";
import { FRTOMM } from "../../src/sizes/frtomm";
import { call } from "../../src/worksheet/call";
import { day } from "../../src/worksheet/dates";
import { CellError } from "../../src/worksheet/error";

const runs = (numRuns: number) => ({ seed: 20261130, numRuns: shortOrLong(numRuns, numRuns * 20) });
const TODAY = day("2026-11-30");
/** 1 January 1901 to 31 December 2100: of 1900 a part is not counted by spreadsheets. */
const serials = fc.integer({ min: 367, max: 73414 });
const utc = (serial: number): Date => new Date(Date.UTC(1899, 11, 30) + serial * 86_400_000);
const answers: fc.Arbitrary<DateAnswers> = fc.record({
  order: fc.constantFrom(null, "day first" as const, "month first" as const),
  century: fc.constantFrom(null, "2000s" as const, "up to today" as const),
});

describe("dates", () => {
  test.each(["en-GB", "en-US", "de-DE", "de-AT", "fr-FR", "es-ES", "nl-NL", "it-IT"])(
    "with the month in words, as %s writes them, are read as the day that was meant",
    (locale) => {
      const styles: Intl.DateTimeFormatOptions[] = [
        { day: "numeric", month: "long", year: "numeric" },
        { day: "numeric", month: "short", year: "numeric" },
        { weekday: "long", day: "numeric", month: "long", year: "numeric" },
      ];
      const formats = styles.map((style) => new Intl.DateTimeFormat(locale, { ...style, timeZone: "UTC" }));
      fc.assert(
        fc.property(serials, fc.constantFrom(...formats), answers, (serial, format, said) => {
          const text = format.format(utc(serial));
          const date = readWrittenDate(text);
          expect(typeof date === "string" ? `${text}: ${date}` : dayMeant(date, said, TODAY)).toBe(serial);
        }),
        runs(200),
      );
    },
  );

  test("in figures are the day in the order that was said, and none before it is said", () => {
    fc.assert(
      fc.property(serials, fc.constantFrom("/", ".", "-", ". ", " "), answers, (serial, mark, said) => {
        const { year, month, day: date } = calendarDate(serial);
        const text = [date, month, year].join(mark);
        const read = readWrittenDate(text);
        if (typeof read === "string") throw new Error(`${text}: ${read}`);
        const meant = dayMeant(read, said, TODAY);
        if (date > 12 || date === month) expect(meant).toBe(serial);
        else if (said.order === null) expect(meant).toBeNull();
        else if (said.order === "day first") expect(meant).toBe(serial);
        else expect(calendarDate(meant as number)).toEqual({ year, month: date, day: month });
      }),
      runs(2000),
    );
  });

  test("with two figures for the year wait for the century, and then are in it", () => {
    fc.assert(
      fc.property(serials, answers, (serial, said) => {
        const { year, month, day: date } = calendarDate(serial);
        const read = readWrittenDate(
          `${date} ${utc(serial).toLocaleString("en-GB", { month: "long", timeZone: "UTC" })} ${String(year).slice(2)}`,
        );
        if (typeof read === "string") throw new Error(read);
        const meant = dayMeant(read, said, TODAY);
        if (said.century === null) {
          expect(meant).toBeNull();
          return;
        }
        if (typeof meant !== "number") {
          expect([date, month]).toEqual([29, 2]);
          return;
        }
        const found = calendarDate(meant);
        expect([found.month, found.day, found.year % 100]).toEqual([month, date, year % 100]);
        if (said.century === "2000s") expect(Math.floor(found.year / 100)).toBe(20);
        else if (meant > TODAY) throw new Error("a day after today");
      }),
      runs(1000),
    );
  });

  const hostile = fc.oneof(
    fc.string({ unit: "binary", maxLength: 70 }),
    fc.stringMatching(/^[0-9/.\- :aprilmT?',]{0,24}$/),
    fc.double(),
    fc.boolean(),
    fc.constant(null),
    fc.constant(new CellError("#REF!")),
  );
  const choices: fc.Arbitrary<DateChoices> = fc
    .tuple(answers, fc.boolean())
    .map(([said, putRight]) => ({ ...said, putRight }));

  test("of hostile cells: each row is changed, waits, fails, is unread, blank or a date, and never two of these", () => {
    fc.assert(
      fc.property(fc.array(hostile, { maxLength: 30 }), choices, (values, said) => {
        const column = readDateColumn(values);
        const { results, waiting, failed } = mendDates(column, said, TODAY, "last change");
        const told = new Map<number, number>();
        const tell = (rows: readonly number[]) => rows.forEach((row) => told.set(row, (told.get(row) ?? 0) + 1));
        tell(column.dates);
        tell(column.unread.flatMap(({ rows }) => rows));
        tell(waiting);
        tell(failed.flatMap(({ rows }) => rows));
        tell(results.flatMap((result, row) => (result === null || column.dates.includes(row) ? [] : [row])));
        expect(told.size + column.blank).toBe(values.length);
        expect([...told.values()].every((times) => times === 1)).toBe(true);
        for (const result of results) {
          if (result === null) continue;
          const { year, month, day: date } = calendarDate(result);
          expect(Number.isInteger(result) && date <= daysInMonth(year, month)).toBe(true);
        }
      }),
      runs(1500),
    );
  });

  test("nothing said changes no text that may be two days, and no real date", () => {
    fc.assert(
      fc.property(fc.array(hostile, { maxLength: 30 }), (values) => {
        const column = readDateColumn(values);
        const { results } = mendDates(column, NOTHING_SAID, TODAY);
        for (const { asks, rows } of column.wordings)
          if (asks.length > 0) for (const row of rows) expect(results[row]).toBeNull();
        for (const row of column.dates) expect(results[row]).toBeNull();
      }),
      runs(1500),
    );
  });
});

describe("sizes", () => {
  const cells = fc.oneof(
    fc.stringMatching(/^(fr|ch|FG|peg)? ?[0-9]{1,2}([.,][0-9])? ?(fr|FR|mm|G|\?|\/14)?$/),
    fc.string({ maxLength: 12 }),
    fc.double({ min: -5, max: 90, noNaN: true }),
    fc.constant(null),
    fc.constant(new CellError("#N/A")),
  );

  test("a number that is put in gives the same millimetres as the text that stood there", () => {
    fc.assert(
      fc.property(fc.array(cells, { maxLength: 20 }), (values) => {
        mendSizes(values.length, sizeWordings(values), {}).forEach((result, row) => {
          if (result !== null) expect(call(FRTOMM, [result])).toEqual(call(FRTOMM, [values[row]]));
          else if (typeof values[row] === "string") {
            const before = call(FRTOMM, [values[row]]);
            expect(typeof before === "number" ? `${String(values[row])} was left` : "not read").toBe("not read");
          }
        });
      }),
      runs(1500),
    );
  });
});
