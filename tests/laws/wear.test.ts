/** Laws of the wear family, over random lists of devices. Fixed seed. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { SheetError } from "../../src/worksheet/error";
import { column, tube } from "../examples/caller";

const SEED = 20261126;
const runs = (numRuns: number) => ({ seed: SEED, numRuns });

interface Device {
  readonly id: string;
  readonly days: number;
  readonly failed: boolean;
}
const device: fc.Arbitrary<Device> = fc.record({
  id: fc.constantFrom("A", "B", "C", "D", "E", "F"),
  days: fc.oneof(fc.integer({ min: 1, max: 400 }), fc.constantFrom(30, 90, 90.5, 180)),
  failed: fc.boolean(),
});
const devices = fc.array(device, { minLength: 1, maxLength: 40 });

const lists = (all: readonly Device[]): [unknown[][], unknown[][]] => [
  column(all.map(({ days }) => days)),
  column(all.map(({ failed }) => (failed ? "yes" : "no"))),
];
const groups = (all: readonly Device[]) => column(all.map(({ id }) => id));

/** Every function of the family on one list. */
const asked: Readonly<Record<string, (all: readonly Device[]) => unknown>> = {
  LIFETABLE: (all) => tube("LIFETABLE", ...lists(all)),
  LIFEQUANTILE: (all) => tube("LIFEQUANTILE", ...lists(all), column([0.1, 0.5, 0.8])),
  LIFECOMPARE: (all) => tube("LIFECOMPARE", ...lists(all), groups(all)),
  LIFEWEIBULL: (all) => tube("LIFEWEIBULL", ...lists(all)),
  FAILBY: (all) => tube("FAILBY", ...lists(all), 0.1),
  WEARRATIO: (all) => tube("WEARRATIO", column("ABCDEF"), groups(all), ...lists(all)),
  FAILBYID: (all) => tube("FAILBYID", column("ABCDEF"), groups(all), ...lists(all), 0.2),
  AGEREPLACE: (all) => tube("AGEREPLACE", ...lists(all), 4),
  LOTSIGNAL: (all) => tube("LOTSIGNAL", column("ABCDEF"), groups(all), ...lists(all), 50),
  UNPLANNED: (all) => tube("UNPLANNED", column([10, 60, 200]), column([30, 90]), ...lists(all)),
  NOSPARE: (all) => tube("NOSPARE", column([10, 60, 200]), 14, ...lists(all)),
};

const isSame = (a: unknown, b: unknown, within: number): boolean => {
  const [left, right] = [[a].flat(2), [b].flat(2)];
  return (
    left.length === right.length &&
    left.every((x, i) => {
      const y = right[i];
      if (x instanceof SheetError) return y instanceof SheetError && x.code === y.code && x.message === y.message;
      if (typeof x !== "number" || typeof y !== "number") return x === y;
      return Math.abs(x - y) <= within * Math.max(1e-9, Math.abs(x), Math.abs(y));
    })
  );
};

describe.each(Object.entries(asked))("%s", (_, ask) => {
  test("gives the same for a list in another order", () => {
    const shuffled = devices.chain((all) =>
      fc.tuple(fc.constant(all), fc.shuffledSubarray(all, { minLength: all.length })),
    );
    fc.assert(
      fc.property(shuffled, ([all, other]) => isSame(ask(all), ask(other), 1e-7)),
      runs(400),
    );
  });
});

describe.each(["LIFETABLE", "LIFEQUANTILE", "LIFEWEIBULL"])("%s", (name) => {
  test("gives the same for a list with blank rows, however a host sends them", () => {
    fc.assert(
      fc.property(devices, fc.constantFrom<unknown>("", null, 0, " "), (all, blank) => {
        const [days, failed] = lists(all);
        return isSame(
          tube(name, days, failed),
          tube(name, [[blank], ...days, [blank]], [[blank], ...failed, [blank]]),
          1e-12,
        );
      }),
      runs(300),
    );
  });
});

describe("days counted in another unit of time", () => {
  const scaled = (all: readonly Device[], by: number): Device[] => all.map((one) => ({ ...one, days: one.days * by }));
  const unit = fc.constantFrom(1 / 7, 12 / 365.25, 24, 86400);

  test("leave shares, tests and shapes, and multiply days and limits", () => {
    fc.assert(
      fc.property(devices, unit, (all, by) => {
        const other = scaled(all, by);
        const inUnit = (answer: unknown, columns: readonly number[]): unknown =>
          Array.isArray(answer)
            ? answer.map((row: unknown[]) =>
                row.map((x, i) => (columns.includes(i) && typeof x === "number" ? x * by : x)),
              )
            : answer;
        expect(isSame(inUnit(asked.LIFETABLE!(all), [0]), asked.LIFETABLE!(other), 1e-9)).toBe(true);
        expect(isSame(inUnit(asked.LIFEQUANTILE!(all), [0, 1, 2]), asked.LIFEQUANTILE!(other), 1e-9)).toBe(true);
        expect(isSame(asked.LIFECOMPARE!(all), asked.LIFECOMPARE!(other), 1e-9)).toBe(true);
        expect(isSame(inUnit(asked.LIFEWEIBULL!(all), [3, 4, 5]), asked.LIFEWEIBULL!(other), 1e-7)).toBe(true);
        expect(isSame(inUnit(asked.FAILBY!(all), [0, 1]), asked.FAILBY!(other), 1e-7)).toBe(true);
        expect(isSame(asked.WEARRATIO!(all), asked.WEARRATIO!(other), 1e-6)).toBe(true);
      }),
      runs(200),
    );
  });
});

describe("the share of devices still in (LIFETABLE)", () => {
  test("falls from day to day, stays within its limits, and these within 0 and 1", () => {
    fc.assert(
      fc.property(devices, fc.constantFrom(0.5, 0.9, 0.999999), (all, level) => {
        const rows = tube("LIFETABLE", ...lists(all), level);
        if (rows instanceof SheetError) return rows.code === "#N/A" && all.every(({ failed }) => !failed);
        let before = 1;
        return (rows as number[][]).every(([, atRisk, failed, share, low, high]) => {
          const falls = share! < before && failed! <= atRisk!;
          before = share!;
          if (share === 0) return falls && String(low) === "" && String(high) === "";
          return falls && 0 <= low! && low! <= share! && share! <= high! && high! <= 1;
        });
      }),
      runs(500),
    );
  });

  test("is what is left of them when every device has failed", () => {
    fc.assert(
      fc.property(devices, (all) => {
        const rows = tube("LIFETABLE", ...lists(all.map((one) => ({ ...one, failed: true })))) as number[][];
        return rows.every(
          ([day, , , share]) => Math.abs(share! - all.filter(({ days }) => days > day!).length / all.length) < 1e-12,
        );
      }),
      runs(300),
    );
  });
});

describe("the day by which a share of devices has failed (LIFEQUANTILE)", () => {
  const quantile = (all: readonly Device[], share: number, level = 0.95): readonly number[] =>
    (tube("LIFEQUANTILE", ...lists(all), share, level) as (number | "")[][])[0]!.map((x) => (x === "" ? Infinity : x));

  test("never comes earlier for a larger share; its limits hold it, and more confidence makes them wider", () => {
    fc.assert(
      fc.property(devices, fc.integer({ min: 1, max: 98 }), (all, percent) => {
        const [day, low, high] = quantile(all, percent / 100) as [number, number, number];
        const [later] = quantile(all, (percent + 1) / 100) as [number];
        const [, wideLow, wideHigh] = quantile(all, percent / 100, 0.99) as [number, number, number];
        expect(later).toBeGreaterThanOrEqual(day);
        if (Number.isFinite(low) && Number.isFinite(day)) expect(low).toBeLessThanOrEqual(day);
        expect(high).toBeGreaterThanOrEqual(day);
        expect(wideHigh).toBeGreaterThanOrEqual(high);
        if (Number.isFinite(low) && Number.isFinite(wideLow)) expect(wideLow).toBeLessThanOrEqual(low);
      }),
      runs(500),
    );
  });
});

describe("the day by which a share of devices fails on a fitted curve (FAILBY)", () => {
  const many = fc.array(device, { minLength: 25, maxLength: 60 });

  test("is never earlier where more risk is taken; the lower limit is never above the day; more confidence lowers it", () => {
    let estimated = 0;
    fc.assert(
      fc.property(many, fc.integer({ min: 1, max: 98 }), (all, percent) => {
        const rows = tube("FAILBY", ...lists(all), column([percent / 100, (percent + 1) / 100])) as (
          number | SheetError
        )[][];
        if (rows[0]![0] instanceof SheetError) return;
        estimated++;
        const sure = (tube("FAILBY", ...lists(all), percent / 100, 0.99) as number[][])[0]!;
        const [[day, low, failures], [later]] = rows as [[number, number, number], [number]];
        expect(later).toBeGreaterThanOrEqual(day);
        expect(low).toBeLessThanOrEqual(day);
        expect(sure[1]!).toBeLessThanOrEqual(low);
        expect(failures).toBe(all.filter(({ failed }) => failed).length);
      }),
      runs(300),
    );
    expect(estimated).toBeGreaterThan(150);
  });
});

describe("groups of devices compared (LIFECOMPARE)", () => {
  test("do not hang on their names; p lies in 0 to 1, and twice the same list does not differ", () => {
    fc.assert(
      fc.property(devices, (all) => {
        const renamed = all.map((one) => ({
          ...one,
          id: { A: "zz", B: "14 Fr", C: "7", D: "q", E: "x", F: "y" }[one.id]!,
        }));
        expect(isSame(asked.LIFECOMPARE!(all), asked.LIFECOMPARE!(renamed), 1e-9)).toBe(true);
        const [[chiSquare, , p]] = asked.LIFECOMPARE!(all) as [[number | SheetError, number, number]];
        if (typeof chiSquare === "number") {
          expect(chiSquare).toBeGreaterThanOrEqual(0);
          expect(p).toBeGreaterThanOrEqual(0);
          expect(p).toBeLessThanOrEqual(1);
        }
        const twice = [...all.map((one) => ({ ...one, id: "A" })), ...all.map((one) => ({ ...one, id: "B" }))];
        const [[same]] = asked.LIFECOMPARE!(twice) as [[number | SheetError]];
        if (typeof same === "number") expect(same).toBeLessThan(1e-12);
      }),
      runs(300),
    );
  });
});

describe("one person against the clinic (WEARRATIO and FAILBYID)", () => {
  const clinic = fc.array(device, { minLength: 20, maxLength: 60 });

  test("the limits hold what they are about; the clinic's counts decide whether anything is said", () => {
    let told = 0;
    fc.assert(
      fc.property(clinic, (all) => {
        const people = [...new Set(all.map(({ id }) => id))];
        const failures = all.filter(({ failed }) => failed).length;
        const rows = tube("FAILBYID", column(people), groups(all), ...lists(all), 0.1) as (number | SheetError)[][];
        const ratios = tube("WEARRATIO", column(people), groups(all), ...lists(all)) as (number | SheetError)[][];
        rows.forEach(([day, low, high, wear, wearLow, wearHigh, devices, failed], i) => {
          if (day instanceof SheetError) {
            const says = people.length < 2 ? "2 people" : failures < 8 ? "too few to say" : "different days";
            expect(day.message).toContain(says);
            expect((ratios[i]![0] as SheetError).message).toContain(says);
            return;
          }
          told++;
          expect(low).toBeLessThan(day!);
          expect(day).toBeLessThan(high as number);
          expect(wearLow).toBeLessThan(wear as number);
          expect(wear).toBeLessThan(wearHigh as number);
          expect(ratios[i]).toEqual([wear, wearLow, wearHigh]);
          const own = all.filter(({ id }) => id === people[i]);
          expect([devices, failed]).toEqual([own.length, own.filter((one) => one.failed).length]);
          if (own.every((one) => !one.failed)) expect(wear).toBeLessThanOrEqual(1);
        });
      }),
      runs(150),
    );
    expect(told).toBeGreaterThan(300);
  });

  test("another device that failed never makes a person's wear less, nor the day later", () => {
    fc.assert(
      fc.property(clinic, fc.integer({ min: 1, max: 300 }), (all, days) => {
        const more = [...all, { id: "A", days, failed: true }];
        const still = [...all, { id: "A", days, failed: false }];
        const [[failed]] = asked.WEARRATIO!(more) as [[number | SheetError]];
        const [[lasting]] = asked.WEARRATIO!(still) as [[number | SheetError]];
        if (failed instanceof SheetError || lasting instanceof SheetError) return;
        expect(failed).toBeGreaterThan(lasting);
      }),
      runs(150),
    );
  });
});

describe("the day that costs least (AGEREPLACE)", () => {
  test("is never later where an unplanned change is dearer; planned and unplanned are what fails before it", () => {
    let told = 0;
    fc.assert(
      fc.property(fc.array(device, { minLength: 25, maxLength: 60 }), fc.integer({ min: 2, max: 30 }), (all, ratio) => {
        const rows = tube("AGEREPLACE", ...lists(all), column([ratio, ratio + 1])) as (number | SheetError)[][];
        const [[day, share, planned, unplanned, low, high], [earlier]] = rows as [number[], number[]];
        if ((rows[0]![0] as unknown) instanceof SheetError) return;
        told++;
        expect(earlier).toBeLessThan(day!);
        expect(low).toBeLessThan(day!);
        expect(high).toBeGreaterThan(day!);
        expect(unplanned! / (planned! + unplanned!)).toBeCloseTo(share!, 10);
      }),
      runs(150),
    );
    expect(told).toBeGreaterThan(20);
  });
});

describe("changes that nobody planned, and no spare for them (UNPLANNED and NOSPARE)", () => {
  test("are never fewer for a longer time ahead; the number for one device is its chance", () => {
    fc.assert(
      fc.property(fc.array(device, { minLength: 25, maxLength: 60 }), fc.integer({ min: 0, max: 300 }), (all, age) => {
        const chances = tube("NOSPARE", age, column([7, 30, 200]), ...lists(all)) as (number | SheetError)[][];
        if (chances[0]![0] instanceof SheetError) return;
        const [week, month, far] = chances.map(([chance]) => chance as number) as [number, number, number];
        expect(week).toBeGreaterThan(0);
        expect(month).toBeGreaterThan(week);
        expect(far).toBeGreaterThan(month);
        expect(far).toBeLessThanOrEqual(1);
        for (const [window, chance] of [
          [30, month],
          [200, far],
        ] as const) {
          const one = tube("UNPLANNED", column([age]), window, ...lists(all), Math.max(1e-6, 1 - chance - 1e-6));
          if (chance < 0.999 && chance > 0.001) expect(one).toBe(0);
          const more = tube("UNPLANNED", column([age]), window, ...lists(all), Math.min(0.999, 1 - chance + 1e-6));
          if (chance < 0.999 && chance > 0.001) expect(more).toBe(1);
        }
      }),
      runs(150),
    );
  });
});
