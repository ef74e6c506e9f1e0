import { expect, test } from "vitest";
import { day } from "../../../src/worksheet/dates";
import { dateText, dayNumberOf, untilMidnight } from "../../../taskpane/ui/parts/dates";

test("the clock's day and the cells' day are the same day", () => {
  expect(dayNumberOf(new Date(2026, 4, 14, 0, 0, 1))).toBe(day("2026-05-14"));
  expect(dayNumberOf(new Date(2026, 4, 14, 23, 59, 59))).toBe(day("2026-05-14"));
});

test("a date on screen follows the host's language and cannot be turned round", () => {
  expect(dateText(day("2026-04-03"), "en-GB")).toBe("3 Apr 2026");
  expect(dateText(day("2026-04-03"), "en-US")).toBe("Apr 3, 2026");
  expect(dateText(day("2026-04-03"), "de-DE")).toBe("3. Apr. 2026");
  // What a browser named as its language on a bare Linux machine: no locale at all.
  expect(dateText(day("2026-04-03"), "en-US@posix")).toBe("3 Apr 2026");
  expect(dateText(day("2026-04-03") + 0.99, "en-GB")).toBe("3 Apr 2026");
});

test("midnight is never in the past", () => {
  expect(untilMidnight(new Date(2026, 11, 31, 23, 59, 0))).toBe(60_000);
  expect(untilMidnight(new Date(2026, 11, 31, 0, 0, 0))).toBe(86_400_000);
});
