/** Tails and quantiles against R's, and against closed forms where there are any. */
import { describe, expect, test } from "vitest";
import { betaLower, betaQuantileOdds } from "../../../src/maths/beta";
import { gammaTails, gammaUpper, halfDeviance, logGamma } from "../../../src/maths/gamma";
import { gammaQuantile } from "../../../src/maths/gamma-quantile";
import { normalQuantile, normalUpper } from "../../../src/maths/normal";
import { poissonAtMost, rateRatio } from "../../../src/maths/poisson";
import { chisq, gamma, normal, poisson } from "../check-values/distributions.json";

const near = (got: number, want: number, within: number): void =>
  expect(Math.abs(got - want)).toBeLessThanOrEqual(within * Math.abs(want));

describe("the gamma distribution, behind limits of rates and days", () => {
  test.each(gamma.lgamma)("has R's ln gamma($x)", ({ x, v }) =>
    expect(Math.abs(logGamma(x) - v)).toBeLessThanOrEqual(1e-11 * Math.max(1, Math.abs(v))),
  );
  test.each(gamma.P)("has R's tails on both sides of $x for shape $a", ({ a, x, P, Q }) => {
    near(gammaTails(a, x).lower, P, 1e-11);
    near(gammaUpper(a, x), Q, 1e-11);
  });
  test.each(gamma.qgamma)("has R's quantile of $p for shape $shape", ({ p, shape, q }) =>
    near(gammaQuantile(p, shape), q, 1e-11),
  );
  test.each(chisq.rows)("gives R's chi-square quantiles with $df degrees of freedom", ({ df, q }) =>
    chisq.p.forEach((p, i) => near(2 * gammaQuantile(p, df / 2), q[i]!, 1e-11)),
  );

  test("with shape 1 is the exponential distribution, in both tails and far out", () => {
    for (const p of [1e-300, 1e-20, 1e-6, 0.3, 0.5, 0.9, 0.999999]) {
      near(gammaQuantile(p, 1), -Math.log1p(-p), 1e-12);
      near(gammaQuantile(p, 1, "upper"), -Math.log(p), 1e-12);
    }
  });
  test("keeps its digits for shapes of millions", () => {
    near(gammaQuantile(0.005, 1e6), 997426.04902124, 1e-13);
    near(gammaQuantile(0.05, 1e8), 99983552.03226459, 1e-15);
    near(gammaTails(9e5, 893342.6552443845).lower, 1.0000000000609533e-12, 1e-12);
  });
  test("goes to the ends at chances of 0 and 1", () => {
    expect([gammaQuantile(0, 3), gammaQuantile(1, 3)]).toEqual([0, Infinity]);
    expect([gammaQuantile(0, 3, "upper"), gammaQuantile(1, 3, "upper")]).toEqual([Infinity, 0]);
    expect([gammaTails(3, 0).lower, gammaUpper(3, Infinity)]).toEqual([0, 0]);
    expect(gammaQuantile(0.05, 0.001)).toBe(0); // exp(-2995) is below the smallest number
  });
  test("has a deviance with all its digits where the events are nearly as expected", () => {
    // a ln(a/x) + x - a with x = a (1 + d) is a (d^2/2 - d^3/3 + ...)
    const d = 2 ** -20;
    near(halfDeviance(1000, 1000 * (1 + d)), 1000 * (d ** 2 / 2 - d ** 3 / 3 + d ** 4 / 4), 1e-15);
  });
});

describe("the normal distribution, behind limits of slopes and shares", () => {
  test("has R's quantiles", () => normal.p.forEach((p, i) => near(normalQuantile(p), normal.z[i]!, 1e-11)));
  test("is its own mirror image and inverts its tail, far out too", () => {
    for (const p of [1e-300, 1e-30, 0.001, 0.2, 0.499]) {
      near(normalUpper(-normalQuantile(p)), p, 1e-12);
      if (p > 1e-10) near(normalQuantile(1 - p), -normalQuantile(p), 1e-9);
    }
    expect(normalQuantile(0.5)).toBe(0);
    expect([normalQuantile(0), normalQuantile(1)]).toEqual([-Infinity, Infinity]);
  });
});

describe("the beta distribution, behind two rates compared", () => {
  test("is a power where either shape is 1, and turns over with its shapes", () => {
    for (const x of [1e-12, 0.2, 0.5, 0.9]) {
      near(betaLower(1, 7, x), -Math.expm1(7 * Math.log1p(-x)), 1e-13);
      near(betaLower(3.5, 1, x), x ** 3.5, 1e-13);
      near(betaLower(4, 9, x) + betaLower(9, 4, 1 - x), 1, 1e-14);
    }
  });
  test("comes back to the chance from the odds found for it", () => {
    for (const [a, b] of [
      [1, 1],
      [0.5, 300],
      [40, 3],
      [1e6, 1e6],
    ] as const) {
      for (const p of [1e-6, 0.025, 0.5]) {
        const odds = betaQuantileOdds(p, a, b);
        near(betaLower(a, b, odds / (1 + odds), 1 / (1 + odds)), p, 1e-9);
      }
    }
  });
});

/* The table has 12 digits: half of the last one is up to 5e-12 of the value. */
describe("the Poisson distribution, behind counts of a month", () => {
  test.each(poisson)("has R's chances of at most so many where $lambda are expected", ({ lambda, cdf }) =>
    cdf.forEach((want, k) => near(poissonAtMost(k, lambda), want, 5.1e-12)),
  );
});

describe("two rates compared", () => {
  // R 4.2.2: poisson.test(c(a, b), c(days a, days b)): p.value, conf.int
  test.each([
    [150, 1000, 200, 900, 0.000264777492805889, 0.54252948500854, 0.838343416137849],
    [900, 5000, 20, 300, 3.33664195971143e-7, 1.73773078054175, 4.44173896647861],
    [3, 9000, 400, 7e5, 0.501423413444889, 0.119791303108976, 1.71707601394979],
    [300, 1000, 5, 20, 1, 0.508539664829349, 3.72266487915267],
    [0, 4000, 110, 30000, 1.85460480367688e-6, 0, 0.255779352124807],
    [1e6, 1e6, 1001000, 1e6, 0.480049390990016, 0.996235487901482, 1.00177418610286],
    [2000, 10, 1, 0.001, 0.181342925826598, 0.0358550458589271, 7.90347783014583],
    [180, 1000, 100, 700, 0.0684130325578113, 0.981344510130537, 1.62548840479238],
  ])("have R's p and limits: %s in %s days and %s in %s", (a, daysA, b, daysB, p, low, high) => {
    const [found, mirrored] = [rateRatio(a, daysA, b, daysB, 0.95), rateRatio(b, daysB, a, daysA, 0.95)];
    near(found.p, p, 1e-9);
    near(mirrored.p, p, 1e-9);
    near(found.low, low, 1e-10);
    near(found.high, high, 1e-10);
  });
  test("so different that numbers cannot tell p are not taken for alike", () => {
    // R 4.2.2 gives 4.4e-323, the last numbers there are
    expect(rateRatio(84434, 16537, 37187, 5711, 0.95).p).toBeLessThan(1e-300);
  });
});
