/**
 * Seven devices, unsorted, with ties and a gap, small enough to work out on paper: a second derivation beside R's.
 *
 *   day     3  3  5  5  9  12  20
 *   failed  y  y  y  n  y  n   y
 */
import { describe, expect, test } from "vitest";
import { column, tube } from "../caller";

const days = column([9, 3, 5, 3, 12, 5, 20]);
const failed = column(["yes", "yes", "no", "yes", "no", "yes", "yes"]);
const group = column(["a", "a", "a", "b", "b", "b", "a"]);
const Z95 = 1.959963984540054;

describe("life table", () => {
  const rows = tube("LIFETABLE", days, failed) as (number | "")[][];

  test("at risk, failed and share, as fractions", () => {
    expect(rows.map((row) => row.slice(0, 3))).toEqual([
      [3, 7, 2],
      [5, 5, 1],
      [9, 3, 1],
      [20, 1, 1],
    ]);
    [5 / 7, 4 / 7, 8 / 21, 0].forEach((share, i) => expect(rows[i]![3]).toBeCloseTo(share, 14));
  });

  test("limits: the share to the power of exp(+-z sqrt(V) / ln share), V by Greenwood", () => {
    const sums = [2 / 35, 2 / 35 + 1 / 20, 2 / 35 + 1 / 20 + 1 / 6];
    sums.forEach((variance, i) => {
      const share = rows[i]![3] as number;
      const swing = Math.exp((Z95 * Math.sqrt(variance)) / Math.log(share));
      expect(rows[i]![4]).toBeCloseTo(share ** (1 / swing), 12);
      expect(rows[i]![5]).toBeCloseTo(share ** swing, 12);
    });
    expect(rows[3]!.slice(4)).toEqual(["", ""]);
  });

  test("the median is day 9, where the share falls from 4/7 to 8/21; a quarter have failed by day 3", () => {
    expect((tube("LIFEQUANTILE", days, failed) as number[][])[0]![0]).toBe(9);
    expect((tube("LIFEQUANTILE", days, failed, 0.25) as number[][])[0]![0]).toBe(3);
    // Exactly 2/7 have failed from day 3 until day 5: the middle.
    expect((tube("LIFEQUANTILE", days, failed, 2 / 7) as number[][])[0]![0]).toBe(4);
  });
});

test("log-rank: expected failures of group a day by day, hypergeometric variance", () => {
  const expected = 2 * (4 / 7) + 3 / 5 + 2 / 3 + 1;
  const variance = 2 * (4 / 7) * (3 / 7) * (5 / 6) + (3 / 5) * (2 / 5) + (2 / 3) * (1 / 3);
  const [row] = tube("LIFECOMPARE", days, failed, group) as number[][];
  expect(row![0]).toBeCloseTo((3 - expected) ** 2 / variance, 12);
  expect(row![1]).toBe(1);
});

test("Weibull: both derivatives of the likelihood, written out row by row, vanish at the fit", () => {
  const [row] = tube("LIFEWEIBULL", days, failed) as number[][];
  const [shape, , , scale] = row as [number, number, number, number];
  let [byShape, byScale] = [0, 0];
  days.forEach(([day], i) => {
    const z = (day as number) / scale;
    const event = failed[i]![0] === "yes" ? 1 : 0;
    byShape += event * (1 / shape + Math.log(z)) - z ** shape * Math.log(z);
    byScale += (-event * shape) / scale + (shape / scale) * z ** shape;
  });
  expect(Math.abs(byShape)).toBeLessThan(1e-12);
  expect(Math.abs(byScale)).toBeLessThan(1e-12);
});

describe("one person against the caseload", () => {
  /** Failures and days of seven people; the last has worn a device for a short time only. */
  const people = [
    ["P1", 0, 700],
    ["P2", 1, 900],
    ["P3", 6, 800],
    ["P4", 0, 400],
    ["P5", 2, 1000],
    ["P6", 1, 300],
    ["P7", 1, 20],
  ] as const;
  const devices = people.flatMap(([id, failures, all]) =>
    Array.from({ length: failures + 1 }, (_, i) => [id, all / (failures + 1), i < failures ? "yes" : "no"]),
  );
  const lists = [0, 1, 2].map((c) => devices.map((row) => [row[c]]));
  const got = tube("WEARRATIO", column(people.map(([id]) => id)), ...lists) as number[][];

  /** Log-likelihood with all its gamma functions as plain products: gamma(a + x)/gamma(a) = a (a + 1) ... (a + x - 1). */
  const height = (a: number, b: number): number =>
    people.reduce((sum, [, x, t]) => {
      let product = 0;
      for (let j = 0; j < x; j++) product += Math.log(a + j);
      return sum + product + a * Math.log(b / (b + t)) - x * Math.log(b + t);
    }, 0);

  test("shape and rate that lie behind the answers make the likelihood largest", () => {
    // ratio = (a + x)/(b + t) b/a for people 1 and 2 gives a and b back: with r = ratio, b = a m.
    // (1/r0)(a + x0) b = a (b + t0): linear in b for a given a; solved for the a at which person 2 agrees too.
    const rateFor = (a: number, [, x, t]: (typeof people)[number], ratio: number): number =>
      (a * t) / ((a + x) / ratio - a);
    let [low, high] = [0.05, 500];
    const gap = (a: number): number => rateFor(a, people[0], got[0]![0]!) - rateFor(a, people[2], got[2]![0]!);
    for (let i = 0; i < 200; i++) {
      const middle = Math.sqrt(low * high);
      if (gap(middle) < 0 === gap(low) < 0) low = middle;
      else high = middle;
    }
    const a = low;
    const b = rateFor(a, people[0], got[0]![0]!);
    const top = height(a, b);
    for (const [da, db] of [
      [1.001, 1],
      [0.999, 1],
      [1, 1.001],
      [1, 0.999],
      [1.01, 1.01],
      [0.99, 0.99],
    ] as const) {
      expect(height(a * da, b * db)).toBeLessThan(top);
    }
  });

  test("six failures in 800 days stand out; one in 20 days does not yet", () => {
    const all = people.reduce((sum, [, x]) => sum + x, 0) / people.reduce((sum, [, , t]) => sum + t, 0);
    const raw = people.map(([, x, t]) => x / t / all);
    expect(raw[6]!).toBeGreaterThan(raw[2]!);
    expect(got[6]![0]!).toBeLessThan(got[2]![0]!);
  });
});
