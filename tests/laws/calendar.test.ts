/**
 * Calendar arithmetic against an independent implementation: the Temporal polyfill, whose rule for month addition
 * ("constrain") is OpenFormula's EDATE too.
 */
import { Temporal } from "temporal-polyfill";
import { describe, expect, test } from "vitest";
import { shortOrLong } from "../budget";
import { addMonths, calendarDate, dayNumber, FIRST_DAY, LAST_DAY, weekday } from "../../src/maths/calendar";

const YEARS = 400;
/** 1 March 1900 is day 61; 400 years of the Gregorian calendar are 146,097 days. */
const start = new Temporal.PlainDate(1900, 3, 1);
const DAYS = 146_097;
/**
 * Where adding months can differ: years around one that would be a leap year but for its century, and around one that is
 * although it ends a century. `npm run endurance` walks through all 400 years.
 */
const STRETCHES = shortOrLong(
  [
    [1996, 2004],
    [2096, 2104],
  ],
  [[1900, 1900 + YEARS - 1]],
);
const firstOf = (year: number) => (year === 1900 ? FIRST_DAY : dayNumber(year, 1, 1));

describe("every day of 400 years", () => {
  test("day numbers, calendar dates and weekdays agree with Temporal and come back", () => {
    let date = start;
    for (let serial = FIRST_DAY; serial < FIRST_DAY + DAYS; serial++) {
      const { year, month, day } = calendarDate(serial);
      if (year !== date.year || month !== date.month || day !== date.day || dayNumber(year, month, day) !== serial) {
        expect.fail(`day ${serial} is ${date.toString()}, not ${year}-${month}-${day}`);
      }
      if (weekday(serial) !== date.dayOfWeek % 7) expect.fail(`${date.toString()} has another weekday`);
      date = date.add({ days: 1 });
    }
    expect(date.toString()).toBe(start.add({ years: YEARS }).toString());
  });

  // Twelve lengths suffice: the rule depends on month, day and leap year, and every pair of months occurs.
  test.each([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 18, 24, 60])("plus %i months agrees with Temporal", (months) => {
    for (const [from, until] of STRETCHES) monthsAgree(months, firstOf(from!), firstOf(until! + 1));
  });
});

function monthsAgree(months: number, first: number, end: number): void {
  let date = start.add({ days: first - FIRST_DAY });
  for (let serial = first; serial < end; serial++) {
    const want = date.add({ months }, { overflow: "constrain" });
    const got = calendarDate(addMonths(serial, months));
    if (got.year !== want.year || got.month !== want.month || got.day !== want.day) {
      expect.fail(`${date.toString()} plus ${months} months is ${want.toString()}, not ${JSON.stringify(got)}`);
    }
    date = date.add({ days: 1 });
  }
}

test("the first and last day are those of spreadsheets (ECMA-376 part 1, 18.17.4: 31 December 9999 is 2958465)", () => {
  expect(calendarDate(FIRST_DAY)).toEqual({ year: 1900, month: 3, day: 1 });
  expect(calendarDate(LAST_DAY)).toEqual({ year: 9999, month: 12, day: 31 });
});
