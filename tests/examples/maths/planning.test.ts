/** Age replacement, sequential tests and counts to come: published and twice worked-out values, and other ways to them. */
import { describe, expect, test } from "vitest";
import { leastCostLogAge, meanStay } from "../../../src/maths/age-replacement";
import { criticalValue, logRatio, signalChance } from "../../../src/maths/max-sprt";
import { notExceeded } from "../../../src/maths/poisson-binomial";

describe("age replacement (Barlow and Proschan 1965)", () => {
  test.each([
    [3, 147.58],
    [5, 102.13],
    [10, 67.29],
  ])("shape 2, scale 200, an unplanned change %d times as dear: day %d (R, optimize over integrate)", (ratio, day) => {
    expect(Math.abs(200 * Math.exp(leastCostLogAge(2, ratio)!) - day)).toBeLessThan(0.005);
  });

  test("shape 1 and below: no planned change pays", () => {
    for (const shape of [1, 0.999, 0.3]) expect(leastCostLogAge(shape, 5)).toBeUndefined();
  });

  test("at the day the cost is least: costs by adding up the survival, day by day", () => {
    for (const [shape, ratio] of [
      [1.3, 4],
      [2, 3],
      [3.5, 20],
    ] as const) {
      const cost = (age: number): number => {
        let stay = 0;
        const step = age / 20_000;
        for (let i = 0; i < 20_000; i++) stay += Math.exp(-(((i + 0.5) * step) ** shape)) * step;
        const lasting = Math.exp(-(age ** shape));
        return (lasting + ratio * (1 - lasting)) / stay;
      };
      const best = Math.exp(leastCostLogAge(shape, ratio)!);
      for (const by of [0.98, 1.02, 0.7, 1.5]) expect(cost(best * by)).toBeGreaterThan(cost(best));
    }
  });

  test("mean stay of a device that is never changed is the distribution's mean", () => {
    // shape 1: 1; shape 2: the root of pi over 2
    expect(meanStay(1, 100)).toBeCloseTo(1, 12);
    expect(meanStay(2, 100)).toBeCloseTo(Math.sqrt(Math.PI) / 2, 12);
  });
});

describe("maximised sequential probability ratio test", () => {
  test.each([
    [1, 2.853937],
    [2, 3.046977],
    [5, 3.297183],
    [10, 3.467952],
    [20, 3.628123],
  ])("Kulldorff and others 2011, level 0.05, %d expected: %d", (total, published) => {
    expect(criticalValue(total, 0.05, 1)).toBeCloseTo(published, 5);
  });

  test("false signals come as often as the level says: events drawn one after the other (fixed seed)", () => {
    let seed = 20261130;
    const random = (): number => {
      seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0;
      return (seed + 0.5) / 2 ** 32;
    };
    const [total, least, runs] = [8, 4, 20_000];
    const critical = criticalValue(total, 0.1, least);
    let signals = 0;
    for (let run = 0; run < runs; run++) {
      let [expected, seen] = [0, 0];
      for (;;) {
        expected -= Math.log(random());
        if (expected > total) break;
        seen++;
        if (seen < least || logRatio(seen, expected) < critical) continue;
        signals++;
        break;
      }
    }
    // Within four standard errors of a share of 0.1.
    expect(Math.abs(signals / runs - 0.1)).toBeLessThan(4 * Math.sqrt((0.1 * 0.9) / runs));
  });

  test("a higher value signals less; a longer watch signals more", () => {
    expect(signalChance(4, 10, 4)).toBeLessThan(signalChance(3, 10, 4));
    expect(signalChance(3, 20, 4)).toBeGreaterThan(signalChance(3, 10, 4));
  });

  test("no more than expected is no ratio", () => {
    expect(logRatio(3, 3)).toBe(0);
    expect(logRatio(2, 3)).toBe(0);
    expect(logRatio(6, 3)).toBeCloseTo(6 * Math.log(2) - 3, 14);
  });
});

describe("how many of some (Hong 2013)", () => {
  /** All outcomes, each as a pattern of bits. */
  function byEnumeration(chances: readonly number[], share: number): number {
    const happens = new Float64Array(chances.length + 1);
    for (let outcome = 0; outcome < 2 ** chances.length; outcome++) {
      let [chance, count] = [1, 0];
      chances.forEach((p, i) => {
        const isSo = (outcome >> i) & 1;
        chance *= isSo ? p : 1 - p;
        count += isSo;
      });
      happens[count]! += chance;
    }
    let sum = 0;
    return happens.findIndex((chance) => (sum += chance) >= share);
  }
  const lists = [[0.5], [0.1, 0.9], [0.2, 0.2, 0.2], [0, 1, 0.3], Array.from({ length: 13 }, (_, i) => (i * i) / 200)];

  test.each(lists)("as by adding up all outcomes", (...chances) => {
    for (const share of [0.05, 0.33, 0.5, 0.77, 0.9, 0.99]) {
      expect(notExceeded(chances, share)).toBe(byEnumeration(chances, share));
    }
  });

  test("nobody: none", () => expect(notExceeded([], 0.9)).toBe(0));
});
