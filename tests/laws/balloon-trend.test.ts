/** Sen's published slope and limits, a second derivation of BALLOONTREND, and laws; fixed seed. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { BALLOONDIAMETER } from "../../src/balloon/balloondiameter";
import { BALLOONHALF } from "../../src/balloon/balloonhalf";
import { BALLOONTREND } from "../../src/balloon/balloontrend";
import { theilSen } from "../../src/maths/slope";
import { call } from "../../src/worksheet/call";
import { SheetError } from "../../src/worksheet/error";

const SEED = 20261125;

describe("the slope through measured points (Theil and Sen)", () => {
  const x = [1, 2, 3, 4, 10, 12, 18];
  const y = [9, 15, 19, 20, 45, 55, 78];
  /** Two-sided 93%: R qnorm(0.965). */
  const Z_93 = 1.811910673;

  test("for the points that Sen published is his: 1968, as in the tests of scipy and R deming: slope 4, 93% limits 26/7 and 35/8", () => {
    const { slope, low, high } = theilSen(x, y, Z_93)!;
    expect(slope).toBe(4);
    expect(low).toBeCloseTo(26 / 7, 12);
    expect(high).toBeCloseTo(35 / 8, 12);
  });

  test("has limits at the ranks worked out by hand for 20 points and 95%: Kendall's variance 20 x 19 x 45 / 18 = 950; (190 -+ 60.41) / 2: 64th and 127th", () => {
    const days = Array.from({ length: 20 }, (_, i) => i);
    const doubling = days.map((day) => 2 ** day);
    const slopes = days.flatMap((i) => days.filter((j) => j > i).map((j) => (2 ** j - 2 ** i) / (j - i)));
    slopes.sort((a, b) => a - b);
    expect(new Set(slopes).size).toBe(190);
    const { low, high } = theilSen(days, doubling, 1.959963985)!;
    expect([low, high]).toEqual([slopes[63], slopes[126]]);
  });

  test("is the same for points in another order, shifted, or in other units", () => {
    const base = theilSen(x, y, Z_93)!;
    const order = [4, 0, 6, 2, 5, 1, 3];
    expect(
      theilSen(
        order.map((i) => x[i]!),
        order.map((i) => y[i]!),
        Z_93,
      ),
    ).toEqual(base);
    const moved = theilSen(
      x.map((v) => 7 * v + 100),
      y.map((v) => v - 50),
      Z_93,
    )!;
    expect(moved.slope).toBeCloseTo(base.slope / 7, 12);
    expect(moved.high).toBeCloseTo(base.high / 7, 12);
  });

  test("lies in the whole range of slopes in as many cases as all orders give: it covers 67% with 3 points, 92% with 4, 98% with 5: counted from all orders", () => {
    const orders = (n: number): number[][] =>
      n === 0
        ? [[]]
        : orders(n - 1).flatMap((order) =>
            Array.from({ length: n }, (_, i) => [...order.slice(0, i), n, ...order.slice(i)]),
          );
    // Under no slope every order of the values is as likely; 0 lies outside only where all slopes have one sign.
    const covered = [3, 4, 5].map((n) => {
      const all = orders(n);
      const inside = all.filter((order) => {
        const slopes = order.flatMap((a, i) => order.slice(i + 1).map((b, j) => (b - a) / (j + 1)));
        return Math.min(...slopes) < 0 && Math.max(...slopes) > 0;
      });
      return inside.length / all.length;
    });
    expect(covered[0]).toBeCloseTo(0.67, 2);
    expect(covered[1]).toBeCloseTo(0.92, 2);
    expect(covered[2]).toBeCloseTo(0.98, 2);
  });

  test("is not there where all points are of one day; pairs of one day are left out", () => {
    expect(theilSen([3, 3, 3], [1, 2, 3], Z_93)).toBeUndefined();
    expect(theilSen([0, 0, 1], [0, 10, 4], Z_93)!.slope).toBe((4 + -6) / 2);
  });
});

/** Checks of one balloon: days apart, water lost until each check, water put in. */
const checksOf = (least: number) =>
  fc
    .array(
      fc.record({
        gap: fc.integer({ min: 1, max: 20 }),
        loss: fc.integer({ min: -3, max: 20 }).map((n) => n / 10),
        putIn: fc.integer({ min: 40, max: 60 }).map((n) => n / 10),
      }),
      { minLength: least, maxLength: 12 },
    )
    .map((rows) => {
      let day = 46_000;
      return rows.map(({ gap, loss, putIn }, i) => {
        day += gap;
        const before = i === 0 ? putIn : rows[i - 1]!.putIn;
        return { date: day, out: Math.max(0, Math.round((before - loss) * 10) / 10), putIn };
      });
    });

type Check = { readonly date: number; readonly out: number; readonly putIn: number };
const args = (checks: readonly Check[]): unknown[] => [
  checks.map((c) => [c.date]),
  checks.map((c) => [c.out]),
  checks.map((c) => [c.putIn]),
];
const trend = (checks: readonly Check[]): unknown[] => (call(BALLOONTREND, args(checks)) as unknown[][])[0]!;

describe("water that a balloon loses in a week (BALLOONTREND)", () => {
  test("is the median of all pairs' slopes of the summed loss, in mL a week: a second derivation", () => {
    fc.assert(
      fc.property(checksOf(3), (checks) => {
        const sums = checks.map((_, i) =>
          checks.slice(1, i + 1).reduce((sum, check, j) => sum + checks[j]!.putIn - check.out, 0),
        );
        const slopes = checks
          .flatMap((a, i) => checks.slice(i + 1).map((b, j) => (7 * (sums[i + 1 + j]! - sums[i]!)) / (b.date - a.date)))
          .sort((a, b) => a - b);
        const half = slopes.length / 2;
        const median = (slopes[Math.ceil(half) - 1]! + slopes[Math.floor(half)]!) / 2;
        const [loss, low, high, used] = trend(checks);
        expect(loss).toBeCloseTo(median, 7);
        expect(used).toBe(checks.length);
        if (checks.length < 5) {
          expect([low, high]).toEqual(["", ""]);
          return;
        }
        expect(low as number).toBeLessThanOrEqual(loss as number);
        expect(high as number).toBeGreaterThanOrEqual(loss as number);
      }),
      { seed: SEED, numRuns: 1000 },
    );
  });

  test("is the same with rows in another order, with blank rows, and beside other people's checks", () => {
    fc.assert(
      fc.property(
        checksOf(3),
        checksOf(3),
        fc.array(fc.nat(), { minLength: 40, maxLength: 40 }),
        (own, others, keys) => {
          const rows = [
            ...own.map((c) => ({ ...c, id: "D-001" })),
            ...others.map((c) => ({ ...c, id: "D-002" })),
            { date: 0, out: 0, putIn: 0, id: 0 },
            { date: "", out: "", putIn: "", id: "" },
          ];
          const mixed = rows.map((row, i) => ({ row, key: keys[i]! })).sort((a, b) => a.key - b.key);
          const columns = (["date", "out", "putIn", "id"] as const).map((name) => mixed.map(({ row }) => [row[name]]));
          const answer = call(BALLOONTREND, [...columns, [["d-001 "], ["D-002"]]]) as unknown[][];
          expect(answer).toEqual([trend(own), trend(others)]);
        },
      ),
      { seed: SEED, numRuns: 500 },
    );
  });

  test("a check without what was put in is refused by its row", () => {
    const [row] = call(BALLOONTREND, [
      [[46_000], [46_007]],
      [[5], [4]],
      [[5], [""]],
    ]) as unknown[][];
    expect((row![0] as SheetError).message).toBe("in is missing in row 2");
  });
});

describe("the day on which a balloon is down to half, or another share (BALLOONHALF)", () => {
  test("is never later for a larger share, nor for a smaller last fill, and never before the last check", () => {
    const day = (checks: readonly Check[], share: number) => {
      const answer = call(BALLOONHALF, [...args(checks), 5, share]);
      return answer instanceof SheetError ? undefined : (answer as number);
    };
    let dates = 0;
    fc.assert(
      fc.property(checksOf(5), (checks) => {
        const last = checks.at(-1)!;
        const half = day(checks, 0.5);
        if (half === undefined) return;
        dates += 1;
        expect(day(checks, 0.8)!).toBeLessThanOrEqual(half);
        expect(half).toBeGreaterThanOrEqual(last.date);
        const less = [...checks.slice(0, -1), { ...last, putIn: last.putIn - 1 }];
        expect(day(less, 0.5)!).toBeLessThanOrEqual(half);
      }),
      { seed: SEED, numRuns: 1000 },
    );
    expect(dates).toBeGreaterThan(300);
  });
});

describe("how wide a filled balloon is (BALLOONDIAMETER)", () => {
  test("turned round: the ring between sphere and shaft has the volume that was put in", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 60, noNaN: true }), fc.integer({ min: 5, max: 36 }), (volume, size) => {
        const radius = (call(BALLOONDIAMETER, [volume, size]) as number) / 2;
        const shaft = size / 6;
        // By shells: the integral of 4 pi r sqrt(R^2 - r^2) from the shaft to R.
        const steps = 20_000;
        let sum = 0;
        for (let i = 0; i < steps; i++) {
          const r = shaft + ((radius - shaft) * (i + 0.5)) / steps;
          sum += 4 * Math.PI * r * Math.sqrt(Math.max(0, radius * radius - r * r));
        }
        expect((sum * (radius - shaft)) / steps / 1000 / volume).toBeCloseTo(1, 3);
      }),
      { seed: SEED, numRuns: 100 },
    );
  });
});
