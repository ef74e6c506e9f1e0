/**
 * Seven devices, unsorted, with ties and a gap, small enough to work out on paper: a second derivation beside R's.
 *
 *   day     3  3  5  5  9  12  20
 *   failed  y  y  y  n  y  n   y
 */
import { describe, expect, test } from "vitest";
import { dayByWhich, fitFrailty, relativeWear } from "../../../src/maths/frailty";
import { column, tube } from "../caller";

const days = column([9, 3, 5, 3, 12, 5, 20]);
const failed = column(["yes", "yes", "no", "yes", "no", "yes", "yes"]);
const group = column(["a", "a", "a", "b", "b", "b", "a"]);
const Z95 = 1.959963984540054;

describe("the share of the seven still in", () => {
  const rows = tube("LIFETABLE", days, failed) as (number | "")[][];

  test("falls by who failed among those at risk, day by day, as fractions", () => {
    expect(rows.map((row) => row.slice(0, 3))).toEqual([
      [3, 7, 2],
      [5, 5, 1],
      [9, 3, 1],
      [20, 1, 1],
    ]);
    [5 / 7, 4 / 7, 8 / 21, 0].forEach((share, i) => expect(rows[i]![3]).toBeCloseTo(share, 14));
  });

  test("has limits: the share to the power of exp(+-z sqrt(V) / ln share), V by Greenwood", () => {
    const sums = [2 / 35, 2 / 35 + 1 / 20, 2 / 35 + 1 / 20 + 1 / 6];
    sums.forEach((variance, i) => {
      const share = rows[i]![3] as number;
      const swing = Math.exp((Z95 * Math.sqrt(variance)) / Math.log(share));
      expect(rows[i]![4]).toBeCloseTo(share ** (1 / swing), 12);
      expect(rows[i]![5]).toBeCloseTo(share ** swing, 12);
    });
    expect(rows[3]!.slice(4)).toEqual(["", ""]);
  });

  test("is halved on day 9, where it falls from 4/7 to 8/21; a quarter have failed by day 3", () => {
    expect((tube("LIFEQUANTILE", days, failed) as number[][])[0]![0]).toBe(9);
    expect((tube("LIFEQUANTILE", days, failed, 0.25) as number[][])[0]![0]).toBe(3);
    // Exactly 2/7 have failed from day 3 until day 5: the middle.
    expect((tube("LIFEQUANTILE", days, failed, 2 / 7) as number[][])[0]![0]).toBe(4);
  });
});

test("groups a and b compared (log-rank): expected failures of group a day by day, hypergeometric variance", () => {
  const expected = 2 * (4 / 7) + 3 / 5 + 2 / 3 + 1;
  const variance = 2 * (4 / 7) * (3 / 7) * (5 / 6) + (3 / 5) * (2 / 5) + (2 / 3) * (1 / 3);
  const [row] = tube("LIFECOMPARE", days, failed, group) as number[][];
  expect(row![0]).toBeCloseTo((3 - expected) ** 2 / variance, 12);
  expect(row![1]).toBe(1);
});

test("a curve through the seven (Weibull): both derivatives of the likelihood, written out row by row, vanish at the fit", () => {
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

describe("three people's devices, one person against the clinic", () => {
  const [days, person, failed] = [
    [40, 55, 62, 90, 180, 180, 120, 100, 180, 150],
    [0, 0, 0, 0, 1, 1, 1, 2, 2, 2],
    [1, 1, 1, 0, 0, 0, 0, 1, 0, 0],
  ];
  const fit = fitFrailty({
    days: Float64Array.from(days!),
    person: Uint32Array.from(person!),
    failed: Uint8Array.from(failed!),
    people: 3,
  })!;

  /** Likelihood of one person by adding up over the factor z itself, without the closed form of its integral. */
  const integral = (who: number, variance: number, shape: number, scale: number, of: (z: number) => number): number => {
    const a = 1 / variance;
    let sum = 0;
    const step = 0.0005;
    for (let log = -12; log < 4; log += step) {
      const z = Math.exp(log);
      let height = a * log - a * z;
      days!.forEach((day, i) => {
        if (person![i] !== who) return;
        height -= z * (day / scale) ** shape;
        if (failed![i] === 1) height += Math.log((z * shape) / scale) + (shape - 1) * Math.log(day / scale);
      });
      sum += Math.exp(height) * of(z) * step;
    }
    return sum;
  };
  const wholeOf = (variance: number, shape: number, scale: number): number =>
    [0, 1, 2].reduce((sum, who) => sum + Math.log(integral(who, variance, shape, scale, () => 1)), 0);

  test("each spread of people that is tried has the curve that makes the likelihood largest", () => {
    for (const { variance, shape, logScale } of fit.points.filter((_, i) => i % 5 === 3)) {
      const top = wholeOf(variance, shape, Math.exp(logScale));
      for (const [steeper, slower] of [
        [1.01, 1],
        [0.99, 1],
        [1, 1.01],
        [1, 0.99],
        [1.01, 1.01],
        [0.99, 0.99],
      ] as const) {
        expect(wholeOf(variance, shape * steeper, Math.exp(logScale) * slower)).toBeLessThan(top);
      }
    }
  });

  test("the mean factor, and the share of devices that last, are those of the factor's distribution", () => {
    for (const who of [0, 1, 2]) {
      const meanOf = (of: (z: number, point: (typeof fit.points)[number]) => number): number =>
        fit.points
          .filter(({ variance }) => variance > 0.01)
          .reduce((sum, point) => {
            const { variance, shape, logScale, weight } = point;
            const over = (f: (z: number) => number) => integral(who, variance, shape, Math.exp(logScale), f);
            return sum + (weight * over((z) => of(z, point))) / over(() => 1);
          }, 0);
      // The narrowest points are left out of the sum by hand and put in as what they nearly are: z = 1.
      const narrow = fit.points.filter(({ variance }) => variance <= 0.01);
      const rest = narrow.reduce((sum, { weight }) => sum + weight, 0);
      expect(Math.abs(meanOf((z) => z) + rest - relativeWear(fit, who, 0.9).value)).toBeLessThan(0.01);
      const { value } = dayByWhich(fit, who, 0.1, 0.9);
      const lasting = meanOf((z, { shape, logScale }) => Math.exp(-z * (value / Math.exp(logScale)) ** shape));
      const restLasting = narrow.reduce(
        (sum, { weight, shape, logScale }) => sum + weight * Math.exp(-((value / Math.exp(logScale)) ** shape)),
        0,
      );
      expect(Math.abs(lasting + restLasting - 0.9)).toBeLessThan(0.003);
    }
  });

  test("the person with three early failures stands out; somebody without devices wears as the clinic does", () => {
    const [fast, slow, middle] = [0, 1, 2].map((who) => relativeWear(fit, who, 0.9).value);
    expect(fast!).toBeGreaterThan(middle!);
    expect(middle!).toBeGreaterThan(slow!);
    expect(relativeWear(fit, undefined, 0.9).value).toBeCloseTo(1, 12);
  });
});
