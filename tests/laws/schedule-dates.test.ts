/** Second derivations of the schedule functions with Temporal, and their laws; fixed seed. */
import fc from "fast-check";
import { Temporal } from "temporal-polyfill";
import { expect, test } from "vitest";
import { CHANGEDUE } from "../../src/schedule/changedue";
import { CHANGELOAD } from "../../src/schedule/changeload";
import { DUEDATES } from "../../src/schedule/duedates";
import { NEARESTOPEN } from "../../src/schedule/nearestopen";
import { TRACTSTATE } from "../../src/schedule/tractstate";
import { call } from "../../src/worksheet/call";
import { isoText } from "../../src/worksheet/dates";

const options = { seed: 20261125, numRuns: 1500 };
const serial = fc.integer({ min: 36_526, max: 73_050 }); // 2000 to 2099
const plain = (day: number) => Temporal.PlainDate.from(isoText(day));

test("DUEDATES: the k-th date is k intervals from the first by Temporal, and CHANGEDUE is its first", () => {
  fc.assert(
    fc.property(
      serial,
      fc.integer({ min: 1, max: 24 }),
      fc.constantFrom("months", "weeks", "days"),
      (from, n, unit) => {
        const dates = call(DUEDATES, [from, n, 8, unit]) as number[][];
        dates.forEach(([date], i) => {
          expect(isoText(date!)).toBe(
            plain(from)
              .add({ [unit]: n * (i + 1) })
              .toString(),
          );
        });
        expect(dates[0]![0]).toBe(call(CHANGEDUE, [from, n, unit]));
      },
    ),
    options,
  );
});

const NAMES = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"];

test("NEARESTOPEN: open by Temporal's weekday, and every day passed over is closed", () => {
  fc.assert(
    fc.property(
      serial,
      fc.subarray(NAMES, { maxLength: 6 }),
      fc.array(fc.integer({ min: -10, max: 10 }), { maxLength: 8 }),
      fc.constantFrom("earlier", "later"),
      (date, weekdays, offsets, direction) => {
        const shut = offsets.map((n) => date + n);
        const isClosed = (day: number) => shut.includes(day) || weekdays.includes(NAMES[plain(day).dayOfWeek - 1]!);
        const found = call(NEARESTOPEN, [date, [[...weekdays, ...shut, ""]], direction]) as number;
        expect(isClosed(found)).toBe(false);
        const step = direction === "earlier" ? -1 : 1;
        expect((found - date) * step).toBeGreaterThanOrEqual(0);
        for (let day = date; day !== found; day += step) expect(isClosed(day)).toBe(true);
      },
    ),
    options,
  );
});

test("TRACTSTATE: whole weeks by Temporal; waiting never makes an opening younger; slow healing never better", () => {
  const order = ["immature", "uncertain", "mature by weeks"];
  fc.assert(
    fc.property(serial, fc.integer({ min: 0, max: 190 }), fc.integer({ min: 2, max: 20 }), (made, days, immature) => {
      const mature = immature + 6;
      const word = call(TRACTSTATE, [made, made + days, immature, mature, "no"]) as string;
      const { weeks } = plain(made).until(plain(made + days), { largestUnit: "weeks" });
      expect(word).toBe(weeks < immature ? order[0] : weeks < mature ? order[1] : order[2]);
      const later = call(TRACTSTATE, [made, made + days + 1, immature, mature, "no"]) as string;
      expect(order.indexOf(later)).toBeGreaterThanOrEqual(order.indexOf(word));
      for (const slow of ["yes", "not known", "", undefined]) {
        const answer = call(TRACTSTATE, [made, made + days, immature, mature, slow]);
        expect(answer).toBe(word === "mature by weeks" ? "uncertain" : word);
      }
    }),
    options,
  );
});

test("CHANGELOAD: month by month as counted with Temporal, and the order of tubes never matters", () => {
  const tube = fc.record({ due: fc.integer({ min: 45_600, max: 46_500 }), interval: fc.integer({ min: 1, max: 12 }) });
  fc.assert(
    fc.property(fc.array(tube, { minLength: 1, maxLength: 8 }), serial, (tubes, offset) => {
      const from = 45_900 + (offset % 60);
      const months = 14;
      const load = (list: typeof tubes) =>
        call(CHANGELOAD, [list.map((t) => [t.due]), list.map((t) => [t.interval]), from, months]) as number[][];
      const first = plain(from).with({ day: 1 });
      const monthOf = (date: Temporal.PlainDate) => date.toPlainYearMonth().toString();
      const last = first.add({ months });
      const monthsOf = tubes.map(({ due, interval }) => {
        const found = new Set<string>();
        for (let k = 0; ; k++) {
          const date = plain(due).add({ months: k * interval });
          if (Temporal.PlainDate.compare(date, last) >= 0) return found;
          const isOverdue = k === 0 && Temporal.PlainDate.compare(date, first) < 0;
          found.add(monthOf(isOverdue ? first : date));
        }
      });
      const counted = Array.from({ length: months }, (_, i) => {
        const month = monthOf(first.add({ months: i }));
        return monthsOf.filter((found) => found.has(month)).length;
      });
      expect(load(tubes).map(([, count]) => count)).toEqual(counted);
      expect(load(tubes).map(([month]) => isoText(month!))).toEqual(
        counted.map((_, i) => first.add({ months: i }).toString()),
      );
      expect(load([...tubes].reverse())).toEqual(load(tubes));
    }),
    { ...options, numRuns: 300 },
  );
});
