/** Published data and values for the wear family; each file in check-values/ names its source. */
import { describe, expect, test } from "vitest";
import { relativeWear, type Frailty } from "../../src/maths/frailty";
import { countByDay } from "../../src/maths/survival";
import { fitWeibull, weibullLogQuantile } from "../../src/maths/weibull";
import { column, tube } from "./caller";
import asthma from "./check-values/asthma.json";
import freireich from "./check-values/freireich.json";
import nist from "./check-values/nist-weibull.json";

const near = (got: unknown, want: number, within: number): void => {
  expect(typeof got).toBe("number");
  expect(Math.abs((got as number) - want)).toBeLessThanOrEqual(within * Math.max(1, Math.abs(want)));
};

describe(freireich.source, () => {
  test.each(["sixmp", "placebo"] as const)("%s: life table", (arm) => {
    const { time, status, table, limits } = freireich[arm];
    const rows = tube("LIFETABLE", column(time), column(status)) as unknown[][];
    expect(rows).toHaveLength(table.time.length);
    rows.forEach((row, i) => {
      expect(row.slice(0, 3)).toEqual([table.time[i], table.n_risk[i], table.n_event[i]]);
      near(row[3], table.surv[i]!, 1e-9);
      if (table.surv[i] === 0) expect(row.slice(4)).toEqual(["", ""]);
      else [limits.lo[i], limits.hi[i]].forEach((want, k) => near(row[4 + k], want!, 1e-9));
    });
  });

  test.each(["sixmp", "placebo"] as const)("%s: quantiles with log-log limits", (arm) => {
    const { time, status, quantiles } = freireich[arm];
    const got = tube("LIFEQUANTILE", column(time), column(status), column(quantiles.p));
    expect(got).toEqual(
      quantiles.p.map((_, i) => [quantiles.q[i], quantiles.lo[i], quantiles.hi[i]].map((x) => x ?? "")),
    );
  });

  test("published: log-rank 16.79; medians 23 and 8", () => {
    const { sixmp, placebo, logrank } = freireich;
    const days = column([...sixmp.time, ...placebo.time]);
    const failed = column([...sixmp.status, ...placebo.status]);
    const group = column(days.map((_, i) => (i < sixmp.time.length ? "6-MP" : "placebo")));
    const [[chiSquare, free, p]] = tube("LIFECOMPARE", days, failed, group) as [[number, number, number]];
    expect(chiSquare.toFixed(2)).toBe("16.79");
    near(chiSquare, logrank.chisq, 1e-10);
    expect(free).toBe(1);
    near(p / logrank.p, 1, 1e-10);
  });

  test("Weibull of the 6-MP arm", () => {
    const { time, status } = freireich.sixmp;
    const [row] = tube("LIFEWEIBULL", column(time), column(status)) as number[][];
    near(row![0], freireich.weibull_sixmp.shape, 1e-7);
    near(row![3], freireich.weibull_sixmp.scale, 1e-7);
  });
});

describe(nist.source, () => {
  const [days, failed] = [column(nist.time), column(nist.status)];
  const fit = fitWeibull(countByDay({ days: Float64Array.from(nist.time), failed: Uint8Array.from(nist.status) }))!;

  test("the handbook's digits, to its optimiser's 1e-5", () => {
    const [row] = tube("LIFEWEIBULL", days, failed) as number[][];
    near(row![0]! / 1.7208, 1, 1e-5);
    near(row![3]! / 606.528, 1, 1e-5);
  });

  test("the exact optimum, its limits and standard errors", () => {
    const [row] = tube("LIFEWEIBULL", days, failed) as number[][];
    const wanted = [nist.shape, ...nist.shape_ci95, nist.scale, ...nist.scale_ci95];
    wanted.forEach((want, i) => near(row![i], want, 1e-10));
    near(Math.sqrt(fit.variance.logScale), nist.se_mu, 1e-10);
    near(Math.sqrt(fit.variance.logShape), nist.se_log_sigma, 1e-10);
    near(-fit.variance.covariance, nist.cov_mu_logsigma, 1e-10);
  });

  test.each(nist.quantiles)("day by which $p have failed", ({ p, t, se_log, lo95 }) => {
    const quantile = weibullLogQuantile(fit, p);
    near(Math.exp(quantile.log) / t, 1, 1e-10);
    near(quantile.error, se_log, 1e-10);
    const [row] = tube("FAILBY", days, failed, p, 0.975) as number[][];
    near(row![0]! / t, 1, 1e-10);
    near(row![1]! / lo95, 1, 1e-10);
    expect(row![2]).toBe(nist.events);
  });
});

/** A person whose events are Poisson, their rate gamma: one point of the frailty model with a constant hazard. */
function posterior([shape, rate]: readonly [number, number], events: number, exposure: number) {
  const mean = shape / rate;
  const hazard = Float64Array.of(exposure * mean);
  const fit: Frailty = {
    points: [{ variance: 1 / shape, shape: 1, logScale: 0, weight: 1, hazard }],
    failures: Uint32Array.of(events),
    devices: Uint32Array.of(1),
  };
  const { value, low, high } = relativeWear(fit, 0, 0.95);
  return { mean: value * mean, low: low * mean, high: high * mean };
}

test(asthma.source, () => {
  const prior = asthma.prior as [number, number];
  const year = posterior(prior, asthma.y, asthma.exposure);
  near(year.mean, asthma.mean, 1e-11);
  near(year.low, asthma.q[0]!, 1e-11);
  near(year.high, asthma.q[2]!, 1e-11);
  const decade = posterior(prior, asthma.ten_year.y, asthma.ten_year.exposure);
  near(decade.mean, asthma.ten_year.mean, 1e-11);
  near(decade.low, asthma.ten_year.q[0]!, 1e-11);
});
