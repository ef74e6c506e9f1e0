/** What is worked out once for a whole sheet stays so: formulas on every row, in one call or in many, ask for it again. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { BALLOONHALF } from "../../src/balloon/balloonhalf";
import { BALLOONTREND } from "../../src/balloon/balloontrend";
import { countByDay, kaplanMeier, lifeQuantile } from "../../src/maths/survival";
import { call } from "../../src/worksheet/call";
import { rememberEach, rememberLast } from "../../src/worksheet/remember";
import type { NumberColumn } from "../../src/worksheet/rows";

/** A column that counts how often its cells are looked at. */
function watched(cells: readonly number[]): { readonly column: NumberColumn; readonly looks: () => number } {
  let looks = 0;
  const values = new Proxy(Float64Array.from(cells), {
    get(target, key) {
      if (typeof key === "string" && /^\d+$/.test(key)) looks += 1;
      return Reflect.get(target, key, target) as unknown;
    },
  });
  return { column: { rows: cells.length, columns: 1, values }, looks: () => looks };
}

describe("answers for each key", () => {
  test("are worked out once, and again after more keys came than are kept", () => {
    const worked: number[] = [];
    const twice = rememberEach((key: number) => {
      worked.push(key);
      return `${2 * key}`;
    });
    expect([twice(1), twice(2), twice(1), twice(2)]).toEqual(["2", "4", "2", "4"]);
    expect(worked).toEqual([1, 2]);
    for (let key = 3; key <= 10_001; key++) twice(key);
    expect(twice(1)).toBe("2");
    expect(worked.filter((key) => key === 1)).toHaveLength(2);
  });
});

describe("the last answer", () => {
  test("is found by identity for every further row, also when the same cells came in as new arrays", () => {
    let worked = 0;
    const sum = rememberLast((column: NumberColumn) => {
      worked += 1;
      return column.rows;
    });
    const first = watched([1, 2, 3]);
    const again = watched([1, 2, 3]);
    sum(first.column);
    for (let row = 0; row < 100; row++) sum(again.column);
    expect(worked).toBe(1);
    // Compared once with the first; not once for each row.
    expect(again.looks()).toBe(3);
    sum(watched([1, 2, 4]).column);
    expect(worked).toBe(2);
  });
});

describe("a row gives what it would give alone", () => {
  const day = fc.integer({ min: 46_000, max: 46_200 });
  const volume = fc.integer({ min: 30, max: 60 }).map((n) => n / 10);
  const list = fc.array(fc.tuple(day, volume, fc.integer({ min: 0, max: 4 })), { minLength: 5, maxLength: 40 });

  test("BALLOONTREND of many people: as of the checks of each", () => {
    fc.assert(
      fc.property(list, (checks) => {
        const columns = (rows: typeof checks) => [
          rows.map(([d]) => [d]),
          rows.map(([, v]) => [v]),
          rows.map(() => [5]),
        ];
        const people = [0, 1, 2, 3, 4, 5];
        const ids = checks.map(([, , who]) => [`P${who}`]);
        const asked = people.map((who) => [`P${who}`]);
        const together = call(BALLOONTREND, [...columns(checks), ids, asked]) as unknown[][];
        people.forEach((who, i) => {
          const own = checks.filter(([, , other]) => other === who);
          if (own.length > 0) expect(together[i]).toEqual((call(BALLOONTREND, columns(own)) as unknown[][])[0]);
        });
        // The same cells as new arrays, as a host hands them over.
        expect(call(BALLOONTREND, [...columns(checks), ids, asked])).toEqual(together);
      }),
      { seed: 20261130, numRuns: 200 },
    );
  });

  test("BALLOONHALF of a column of fills: as of each fill", () => {
    fc.assert(
      fc.property(list, (checks) => {
        const columns = [checks.map(([d]) => [d]), checks.map(([, v]) => [v]), checks.map(() => [5])];
        const fills = [3, 4.5, 5, 10];
        const alone = fills.map((fill) => [call(BALLOONHALF, [...columns, fill])]);
        expect(call(BALLOONHALF, [...columns, fills.map((fill) => [fill])])).toEqual(alone);
      }),
      { seed: 20261130, numRuns: 200 },
    );
  });
});

test("the day by which a share has failed is the first on which the curve or limit has fallen so far", () => {
  const tolerance = Math.sqrt(Number.EPSILON); // as in R's quantile.survfit
  const device = fc.record({ day: fc.integer({ min: 1, max: 60 }), failed: fc.constantFrom(0, 1) });
  fc.assert(
    fc.property(
      fc.array(device, { minLength: 1, maxLength: 80 }),
      fc.array(
        fc.integer({ min: 1, max: 100 }).map((n) => n / 100),
        { minLength: 1, maxLength: 5 },
      ),
      (devices, shares) => {
        const curve = kaplanMeier(
          countByDay({
            days: Float64Array.from(devices, ({ day }) => day),
            failed: Uint8Array.from(devices, ({ failed }) => failed),
          }),
          0.95,
        );
        const byWalking = (share: number, values: Float64Array): number | undefined => {
          const level = 1 - share;
          const reached = values.findIndex((left) => left <= level + tolerance);
          if (reached < 0) return undefined;
          if (values[reached]! < level - tolerance) return curve.day[reached];
          const passed = values.findIndex((left) => left < level - tolerance);
          return (curve.day[reached]! + (curve.day[passed] ?? curve.lastDay)) / 2;
        };
        for (const share of shares)
          expect(lifeQuantile(curve, share)).toEqual({
            day: byWalking(share, curve.working),
            low: byWalking(share, curve.low),
            high: byWalking(share, curve.high),
          });
      },
    ),
    { seed: 20261130, numRuns: 2000 },
  );
});
