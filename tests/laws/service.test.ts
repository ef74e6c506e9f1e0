/** Laws of the service family. Fixed seed. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { gammaTails } from "../../src/maths/gamma";
import { day } from "../../src/worksheet/dates";
import type { SheetError } from "../../src/worksheet/error";
import { column, tube } from "../examples/caller";

const SEED = 20261127;
const runs = (numRuns: number) => ({ seed: SEED, numRuns });
const START = day("2026-01-01");

describe("days that people had a tube (TUBEDAYS)", () => {
  /** One person's devices one after the other, with gaps, the last perhaps still in; and a period. */
  const history = fc.record({
    first: fc.integer({ min: -200, max: 200 }),
    devices: fc.array(fc.record({ stays: fc.integer({ min: 0, max: 90 }), gap: fc.integer({ min: 0, max: 20 }) }), {
      minLength: 1,
      maxLength: 8,
    }),
    stillIn: fc.boolean(),
    from: fc.integer({ min: -100, max: 300 }),
    length: fc.integer({ min: 0, max: 200 }),
  });
  const devicesOf = ({
    first,
    devices,
    stillIn,
  }: {
    first: number;
    devices: { stays: number; gap: number }[];
    stillIn: boolean;
  }) => {
    let at = START + first;
    return devices.map(({ stays, gap }, i): [number, number | ""] => {
      const put = at;
      at += stays + gap;
      return [put, stillIn && i === devices.length - 1 ? "" : put + stays];
    });
  };
  const total = (devices: readonly [number, number | ""][], from: number, to: number): number => {
    const [put, out] = [column(devices.map(([day]) => day)), column(devices.map(([, day]) => day))];
    return ([tube("TUBEDAYS", put, out, from, to)].flat(2) as number[]).reduce((sum, n) => sum + n, 0);
  };

  test("one person's devices never add up to more than the period, and to each day worn once", () => {
    fc.assert(
      fc.property(history, (one) => {
        const devices = devicesOf(one);
        const [from, to] = [START + one.from, START + one.from + one.length];
        let worn = 0;
        for (let d = from; d <= to; d++) {
          if (devices.some(([put, out]) => put <= d && (out === "" || d < out))) worn++;
        }
        expect(total(devices, from, to)).toBe(worn);
        expect(worn).toBeLessThanOrEqual(to - from + 1);
      }),
      runs(1000),
    );
  });

  test("two periods side by side add up to the whole of both", () => {
    fc.assert(
      fc.property(history, fc.nat({ max: 200 }), (one, cut) => {
        const devices = devicesOf(one);
        const [from, to] = [START + one.from, START + one.from + one.length + 1];
        const middle = Math.min(from + cut, to - 1);
        return total(devices, from, middle) + total(devices, middle + 1, to) === total(devices, from, to);
      }),
      runs(500),
    );
  });

  test.each([
    [["2026-03-10", "2026-03-09", "2026-03-01", "2026-03-31"], "out is before in"],
    [["2026-03-10", "", "2026-03-31", "2026-03-01"], "to is before from"],
    [["2026-03-10", "", "", "2026-03-01"], "from is missing"],
    [["2026-03-10", "", "2026-03-01", ""], "to is missing"],
    [["2026-03-10", "still in", "2026-03-01", "2026-03-31"], "out must be a date"],
  ] as const)("%j: %s", (args, says) => {
    const answer = tube("TUBEDAYS", ...args) as SheetError;
    expect(answer.code).toBe("#VALUE!");
    expect(answer.message).toContain(says);
  });
});

const events = fc.oneof(fc.nat({ max: 60 }), fc.nat({ max: 100_000 }));
const exposure = fc.integer({ min: 1, max: 1_000_000 });
const level = fc.constantFrom(0.5, 0.8, 0.95, 0.999);

describe("how often something happens (RATE)", () => {
  test("its limits hold the rate and cut off exactly their tails (Garwood's definition)", () => {
    fc.assert(
      fc.property(events, exposure, level, (n, days, confidence) => {
        const [[rate, low, high]] = tube("RATE", n, days, 1, confidence) as [[number, number, number]];
        expect(low).toBeLessThanOrEqual(rate);
        expect(high).toBeGreaterThan(rate);
        const tail = (1 - confidence) / 2;
        // At least n where low is expected; at most n where high is.
        if (n > 0) expect(gammaTails(n, low * days).lower / tail).toBeCloseTo(1, 8);
        expect(gammaTails(n + 1, high * days).upper / tail).toBeCloseTo(1, 8);
      }),
      runs(500),
    );
  });
  test("more events, or fewer days, give a higher rate with higher limits; per is a unit only", () => {
    fc.assert(
      fc.property(events, exposure, (n, days) => {
        const [one] = tube("RATE", n, days) as number[][];
        const [more] = tube("RATE", n + 1, days) as number[][];
        const [other] = tube("RATE", n, days, 365.25) as number[][];
        one!.forEach((x, i) => {
          expect(more![i]!).toBeGreaterThan(x);
          expect(other![i]!).toBeCloseTo(x * 0.36525, 6);
        });
      }),
      runs(500),
    );
  });
});

describe("how many times as high one rate is as another (RATERATIO)", () => {
  type Answer = [[number | "" | SheetError, number, number | "", number]];
  const number = (x: unknown): number => (x === "" ? Infinity : (x as number));

  test("the limits hold the ratio; A and B changed over give one over it with the same p; days only matter in proportion", () => {
    fc.assert(
      fc.property(events, exposure, events, exposure, level, (a, daysA, b, daysB, confidence) => {
        fc.pre(a + b > 0);
        const [[ratio, low, high, p]] = tube("RATERATIO", a, daysA, b, daysB, confidence) as Answer;
        expect(number(low)).toBeLessThanOrEqual(number(ratio) * (1 + 1e-12));
        expect(number(high)).toBeGreaterThanOrEqual(number(ratio) * (1 - 1e-12));
        expect(p).toBeGreaterThanOrEqual(0);
        expect(p).toBeLessThanOrEqual(1);
        const [[, otherLow, otherHigh, otherP]] = tube("RATERATIO", b, daysB, a, daysA, confidence) as Answer;
        expect(Math.abs(1 / number(otherHigh) / number(low) - 1) < 1e-8 || low === 0).toBe(true);
        expect(Math.abs(1 / number(otherLow) / number(high) - 1) < 1e-8 || high === "").toBe(true);
        expect(Math.abs(p - otherP)).toBeLessThan(1e-8);
        const [same] = tube("RATERATIO", a, daysA * 8, b, daysB * 8, confidence) as Answer;
        expect(same).toEqual([ratio, low, high, p]);
      }),
      runs(500),
    );
  });
  test("p is the sum over all splits that are not more likely, counted one by one", () => {
    fc.assert(
      fc.property(
        fc.nat({ max: 25 }),
        fc.nat({ max: 25 }),
        fc.integer({ min: 1, max: 50 }),
        fc.integer({ min: 1, max: 50 }),
        (a, b, daysA, daysB) => {
          const n = a + b;
          fc.pre(n > 0);
          const share = daysA / (daysA + daysB);
          const chances = Array.from({ length: n + 1 }, (_, k) => {
            let chance = 1;
            for (let i = 1; i <= k; i++) chance *= ((n - k + i) / i) * share;
            return chance * (1 - share) ** (n - k);
          });
          const sum = chances.filter((chance) => chance <= chances[a]! * (1 + 1e-7)).reduce((x, y) => x + y, 0);
          const [[, , , p]] = tube("RATERATIO", a, daysA, b, daysB) as Answer;
          expect(Math.abs(p - Math.min(1, sum))).toBeLessThan(1e-10);
        },
      ),
      runs(500),
    );
  });
  test("where nothing happened in either, that is said and no ratio given", () => {
    const [[answer]] = tube("RATERATIO", 0, 10, 0, 20) as Answer;
    expect((answer as SheetError).message).toContain("no event on either side");
    expect((answer as SheetError).code).toBe("#N/A");
  });
});

describe("months of a clinic on a chart (RATECHART)", () => {
  const months = fc.array(fc.tuple(fc.nat({ max: 30 }), fc.integer({ min: 1, max: 5000 })), {
    minLength: 1,
    maxLength: 30,
  });
  type Row = [number, number, number, number, string];
  const chart = (rows: readonly (readonly [unknown, unknown])[], per = 1000): Row[] =>
    tube("RATECHART", column(rows.map(([n]) => n)), column(rows.map(([, d]) => d)), per) as Row[];

  /** Chance of at most n where `mean` are expected, by the definition. */
  const atMost = (n: number, mean: number): number => {
    let [term, sum] = [Math.exp(-mean), 0];
    for (let k = 0; k <= n; k++) {
      sum += term;
      term *= mean / (k + 1);
    }
    return sum;
  };

  test("a month with 3 events where 0.375 are expected is no signal: its chance is 0.7%, five times the limit's (R ppois)", () => {
    expect(1 - atMost(2, 0.375)).toBeCloseTo(0.006652, 6);
    const rows = chart([
      [3, 1000],
      [0, 7000],
    ]);
    expect(rows.map((row) => row[4])).toEqual(["", ""]);
  });

  test("the limits lie round the centre, signals outside them, and months in another order give the same", () => {
    fc.assert(
      fc.property(months, (rows) => {
        const answer = chart(rows);
        const turned = chart([...rows].reverse()).reverse();
        answer.forEach(([rate, centre, lower, upper, signal], i) => {
          expect(lower).toBeGreaterThanOrEqual(0);
          expect(lower).toBeLessThanOrEqual(centre);
          expect(upper).toBeGreaterThanOrEqual(centre);
          if (signal === "above limits") expect(rate).toBeGreaterThan(upper);
          else if (signal === "below limits") expect(rate).toBeLessThan(lower);
          else expect(rate >= lower - 1e-9 && rate <= upper + 1e-9).toBe(true);
          // The chances beyond the limits, added up term by term.
          const [, days] = rows[i]!;
          const expected = (centre * days) / 1000;
          const most = Math.round((upper * days) / 1000);
          const least = Math.round((lower * days) / 1000);
          expect(1 - atMost(most, expected)).toBeLessThanOrEqual(0.00135 + 1e-9);
          if (most > 0) expect(1 - atMost(most - 1, expected)).toBeGreaterThan(0.00135 - 1e-9);
          if (least > 0) expect(atMost(least - 1, expected)).toBeLessThan(0.00135 + 1e-9);
          expect(atMost(least, expected)).toBeGreaterThanOrEqual(0.00135 - 1e-9);
          turned[i]!.forEach((x, k) =>
            typeof x === "number" ? expect(x).toBeCloseTo(answer[i]![k] as number, 9) : expect(x).toBe(signal),
          );
        });
      }),
      runs(400),
    );
  });
  test("a month in which nobody had a tube gives a blank row and changes no other", () => {
    fc.assert(
      fc.property(months, fc.constantFrom<unknown>("", null, 0), (rows, blank) => {
        const answer = chart([...rows, ["", blank], [3, blank]]);
        expect(answer.slice(0, rows.length)).toEqual(chart(rows));
        expect(answer.slice(rows.length)).toEqual([
          ["", "", "", "", ""],
          ["", "", "", "", ""],
        ]);
      }),
      runs(200),
    );
  });
  test("a month without a count of events is a fault, not a month without events", () => {
    expect(
      (
        chart([
          [1, 100],
          ["", 100],
        ]) as unknown as SheetError
      ).message,
    ).toBe("events is missing in row 2");
  });
});
