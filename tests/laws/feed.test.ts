/** Laws of the feed and water family, with a fixed seed; sums are made a second time, step by step. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { BOLUSPLAN } from "../../src/feed/bolusplan";
import { CATCHUPRATE } from "../../src/feed/catchuprate";
import { DROPRATE } from "../../src/feed/droprate";
import { FEEDGIVES } from "../../src/feed/feedgives";
import { FEEDPLAN } from "../../src/feed/feedplan";
import { FEEDSTEPS } from "../../src/feed/feedsteps";
import { FLUIDGOAL } from "../../src/feed/fluidgoal";
import { FLUSHTOTAL } from "../../src/feed/flushtotal";
import { HANGFILLS } from "../../src/feed/hangfills";
import { PUMPRATE } from "../../src/feed/pumprate";
import { WATERGAP } from "../../src/feed/watergap";
import { call } from "../../src/worksheet/call";
import type { SheetFunction } from "../../src/worksheet/define";
import { CellError, SheetError } from "../../src/worksheet/error";

const options = { seed: 20261125, numRuns: 2000 };
const tenths = (min: number, max: number) => fc.integer({ min: min * 10, max: max * 10 }).map((n) => n / 10);
const whole = (min: number, max: number) => fc.integer({ min, max });
const row = (definition: SheetFunction, ...args: unknown[]) => (call(definition, args) as number[][])[0]!;
const isMultiple = (value: number, step: number) => Math.abs(value / step - Math.round(value / step)) < 1e-6;

describe("rates", () => {
  test("a pump's rate is a whole number of steps, nearest to what is asked, and never above the cap", () => {
    fc.assert(
      fc.property(
        // 2,000 mL an hour is the highest cap that may be given
        whole(50, 2000),
        whole(1, 24),
        fc.constantFrom(0.1, 0.5, 1, 5),
        tenths(1, 400),
        (mL, hours, step, cap) => {
          const asked = mL / hours;
          const free = call(PUMPRATE, [mL, hours, step, 2000]);
          if (asked > 400 + step) expect(call(PUMPRATE, [mL, hours, step])).toBeInstanceOf(SheetError);
          else if (asked < 400 - step) expect(call(PUMPRATE, [mL, hours, step])).toEqual(free);
          const capped = call(PUMPRATE, [mL, hours, step, cap]);
          if (free instanceof SheetError || capped instanceof SheetError) return;
          expect(isMultiple(free as number, step)).toBe(true);
          expect(Math.abs((free as number) - asked)).toBeLessThanOrEqual(step / 2 + 1e-9);
          expect(isMultiple(capped as number, step)).toBe(true);
          expect(capped as number).toBeLessThanOrEqual(cap);
          if ((free as number) <= cap) expect(capped).toBe(free);
          else expect((capped as number) + step).toBeGreaterThan(cap - 1e-9);
        },
      ),
      options,
    );
  });

  test("catching up stays between 0 and the cap, and never gives more than the goal", () => {
    fc.assert(
      fc.property(whole(100, 3000), whole(0, 3500), whole(1, 24), whole(1, 300), (goal, given, hours, cap) => {
        const rate = call(CATCHUPRATE, [goal, given, hours, cap]) as number;
        expect(rate).toBeGreaterThanOrEqual(0);
        expect(rate).toBeLessThanOrEqual(cap);
        expect(given + rate * hours).toBeLessThanOrEqual(Math.max(goal, given) + 1e-6);
      }),
      options,
    );
  });

  test("rising rates: hour by hour the sum of what has run in; the goal comes last and is never passed", () => {
    fc.assert(
      fc.property(whole(5, 60), whole(5, 40), whole(1, 12), whole(60, 150), (start, step, every, goal) => {
        const rows = call(FEEDSTEPS, [start, step, every, goal]) as number[][];
        let hour = 0;
        let rate = start;
        let given = 0;
        for (const [at, mLAnHour, mL] of rows) {
          expect([at, mLAnHour, mL]).toEqual([hour, rate, given]);
          for (let h = 0; h < every; h++) given += rate;
          hour += every;
          rate = Math.min(goal, rate + step);
        }
        expect(rows.at(-1)![1]).toBe(goal);
        expect(rows.filter(([, r]) => r === goal)).toHaveLength(1);
      }),
      options,
    );
  });

  test("drops times minutes are the volume's drops", () => {
    fc.assert(
      fc.property(whole(10, 1000), whole(5, 600), fc.constantFrom(8, 14, 15, 20, 60), (mL, minutes, drops) => {
        const rate = call(DROPRATE, [mL, minutes, drops]);
        if (mL * drops > 200 * minutes) expect(rate).toMatchObject({ code: "#N/A" });
        else expect(((rate as number) * minutes) / drops).toBeCloseTo(mL, 5);
      }),
      options,
    );
  });
});

describe("volumes", () => {
  test("boluses add up, none is too large, and one feed fewer would make them so", () => {
    fc.assert(
      fc.property(tenths(50, 3000), tenths(20, 500), (mL, largest) => {
        const [feeds, each] = row(BOLUSPLAN, mL, largest) as [number, number];
        expect(feeds * each).toBeCloseTo(mL, 6);
        expect(each).toBeLessThanOrEqual(largest + 1e-9);
        if (feeds > 1) expect(mL / (feeds - 1)).toBeGreaterThan(largest);
      }),
      options,
    );
  });

  test("fills cover the hours, none hangs longer than the limit, and one fewer would", () => {
    fc.assert(
      fc.property(whole(5, 200), tenths(1, 24), tenths(1, 48), (rate, hours, limit) => {
        const [fills, each] = row(HANGFILLS, rate, hours, limit) as [number, number];
        expect(fills * each).toBeGreaterThanOrEqual(rate * hours - 1e-6);
        expect(each).toBeLessThanOrEqual(rate * limit + 1e-6);
        expect((fills - 1) * limit).toBeLessThan(hours);
      }),
      options,
    );
  });

  test("flushes counted one by one", () => {
    fc.assert(
      fc.property(
        whole(0, 12),
        whole(0, 100),
        whole(0, 6),
        whole(1, 6),
        whole(1, 60),
        whole(0, 30),
        (routine, mL, rounds, drugs, around, between) => {
          let sum = 0;
          for (let i = 0; i < routine; i++) sum += mL;
          for (let i = 0; i < rounds; i++) {
            sum += around;
            for (let drug = 0; drug < drugs; drug++) if (drug > 0) sum += between;
            sum += around;
          }
          expect(call(FLUSHTOTAL, [routine, mL, rounds, drugs, around, between])).toBe(sum);
        },
      ),
      options,
    );
  });
});

describe("plans", () => {
  test("a plan gives what its own volume gives, and its gap is WATERGAP's", () => {
    fc.assert(
      fc.property(
        whole(300, 3000),
        fc.constantFrom(0.8, 1, 1.2, 1.5, 2),
        whole(4, 24),
        whole(65, 90),
        whole(20, 80),
        whole(500, 3500),
        whole(0, 600),
        (kcal, density, hours, water, protein, goal, flush) => {
          const plan = row(FEEDPLAN, kcal, density, hours, water, protein, goal, flush, 1, "", 1000);
          const [volume, rate, energy, grams, , inAll, still] = plan as [
            number,
            number,
            number,
            number,
            number,
            number,
            number,
          ];
          const gives = row(FEEDGIVES, volume, density, protein, water, 50, flush);
          expect(volume).toBeCloseTo(rate * hours, 9);
          expect([energy, grams, inAll]).toEqual([gives[0], gives[2], gives[4]]);
          expect(still).toBeCloseTo(call(WATERGAP, [goal, volume, water, flush]) as number, 6);
          // Rounding to whole mL an hour moves the energy by no more than half a step.
          expect(Math.abs(energy - kcal)).toBeLessThanOrEqual(0.5 * hours * density + 1e-6);
        },
      ),
      options,
    );
  });

  test("more weight never needs less fluid, and the children's rules are without a jump", () => {
    fc.assert(
      fc.property(tenths(3, 70), fc.constantFrom("Holliday-Segar", "4-2-1", 30), (weight, method) => {
        const at = (kg: number) => call(FLUIDGOAL, [kg, method]) as number;
        const more = Math.min(70, weight + 0.1);
        expect(at(more)).toBeGreaterThanOrEqual(at(weight));
        expect(at(more) - at(weight)).toBeLessThanOrEqual(10 + 1e-6);
      }),
      options,
    );
  });
});

describe("slips", () => {
  const none = ["", null, undefined, "  ", 0, "0", "0%"];
  const unreadable = ["n/k", "?", true, new CellError("#N/A"), -1, 0.83, 1, 1.5, 17, 39.9, 100.1, "83 mL"];
  const isRefused = (definition: SheetFunction, args: readonly unknown[]): boolean => {
    const answer = call(definition, args);
    return (Array.isArray(answer) ? answer[0]![0] : answer) instanceof SheetError;
  };

  test("where feed is given no share of water that is blank, 0 or impossible gives a volume still to give", () => {
    for (const share of [...none, ...unreadable])
      for (const goal of [1, 1800, 20_000])
        for (const feed of [0.1, 500, 1800, 20_000])
          for (const flush of ["", 0, 600]) {
            expect(isRefused(WATERGAP, [goal, feed, share, flush])).toBe(true);
            expect(isRefused(FEEDPLAN, [1800, 1, 24, share, 40, goal, flush])).toBe(true);
            expect(isRefused(FEEDGIVES, [1000, 1, 40, share, 50, flush])).toBe(true);
          }
    for (const share of [...none, 40, 83, 100]) expect(call(WATERGAP, [1800, 0, share, 300])).toBe(1500);
    for (const share of unreadable) expect(isRefused(WATERGAP, [1800, 0, share])).toBe(true);
  });

  test("a plan is given exactly where energy and rate are within its limits, each checked only where it can be", () => {
    fc.assert(
      fc.property(
        whole(1, 9000),
        fc.constantFrom(0.5, 1, 1.5, 2.5, 3.1),
        whole(1, 24),
        fc.oneof(fc.constant(undefined), tenths(1, 120)),
        fc.oneof(fc.constant(undefined), whole(1, 2000)),
        (kcal, density, hours, kg, fastest) => {
          const answer = call(FEEDPLAN, [kcal, density, hours, 80, 0, 1500, 0, 0.1, kg, fastest]);
          const rate = Math.round((kcal / density / hours) * 10) / 10;
          const limit = fastest ?? Math.min(400, 25 * (kg ?? Infinity));
          // At the very edge rounding decides.
          if (Math.abs(rate - limit) < 0.06 || Math.abs(kcal - 200 * (kg ?? Infinity)) < 0.06) return;
          const within = kcal <= 6000 && density <= 3 && kcal <= 200 * (kg ?? Infinity) && rate <= limit && rate >= 0.1;
          expect(!((answer as unknown[][])[0]![0] instanceof SheetError)).toBe(within);
        },
      ),
      options,
    );
  });
});
