/** Published and tabulated values for rates and charts; each file in check-values/ names its source. */
import { describe, expect, test } from "vitest";
import { column, tube } from "./caller";
import garwood from "./check-values/garwood.json";
import uChart from "./check-values/u-chart.json";

const near = (got: unknown, want: number, within: number): void => {
  expect(typeof got).toBe("number");
  expect(Math.abs((got as number) - want)).toBeLessThanOrEqual(within * Math.max(1, Math.abs(want)));
};

describe(garwood.source, () => {
  test.each(garwood.n.map((n, i) => [n, garwood.lo[i]!, garwood.hi[i]!] as const))("%i events", (n, lo, hi) => {
    const [[rate, low, high]] = tube("RATE", n, 1, 1) as [[number, number, number]];
    expect(rate).toBe(n);
    near(low, lo, 1e-11);
    near(high, hi, 1e-11);
  });

  test("spot values of the pages: 25 events at 90% and 99%", () => {
    expect((tube("RATE", 25, 1, 1, 0.9) as number[][])[0]!.map((x) => x.toFixed(2))).toEqual([
      "25.00",
      "17.38",
      "34.92",
    ]);
    expect((tube("RATE", 25, 1, 1, 0.99) as number[][])[0]!.map((x) => x.toFixed(2))).toEqual([
      "25.00",
      "14.00",
      "41.00",
    ]);
  });
});

describe("rates per 1,000 tube-days", () => {
  test("7 events in 4,380 days (R poisson.test)", () => {
    const [row] = tube("RATE", 7, 4380) as number[][];
    [1.59817351598, 0.6425486419, 3.2928482561].forEach((want, i) => near(row![i], want, 1e-10));
  });

  /** facts: DeRaddo 2019, 31,378 device-days; Spanish home service, 112 episodes in 2,760 days. */
  test.each([
    [202, 31378, "6.44"],
    [63, 31378, "2.01"],
    [3, 31378, "0.10"],
    [112, 2760, "40.58"],
  ])("published counts: %i events in %i days", (events, days, rate) => {
    expect((tube("RATE", events, days) as number[][])[0]![0]!.toFixed(2)).toBe(rate);
  });
});

test(uChart.source, () => {
  const rows = tube("RATECHART", column(uChart.x), column(uChart.x.map(() => uChart.n)), 1) as unknown[][];
  rows.forEach(([rate, centre, lower, upper, signal], i) => {
    near(rate, uChart.x[i]! / uChart.n, 1e-15);
    near(centre, uChart.ubar, 1e-11);
    near(lower, uChart.lcl, 1e-10);
    near(upper, uChart.ucl, 1e-11);
    expect(signal).toBe("");
  });
});
