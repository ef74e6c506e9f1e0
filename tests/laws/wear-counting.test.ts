/** Whole days are counted, other days sorted: two ways to one table. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { countByDay } from "../../src/maths/survival";

const devices = fc.array(fc.record({ day: fc.integer({ min: 1, max: 40 }), failed: fc.boolean() }), { minLength: 1 });

test("half a day more for every device changes no count", () => {
  fc.assert(
    fc.property(devices, (list) => {
      const failed = Uint8Array.from(list, (one) => Number(one.failed));
      const counted = countByDay({ days: Float64Array.from(list, (one) => one.day), failed });
      const sorted = countByDay({ days: Float64Array.from(list, (one) => one.day + 0.5), failed });
      expect({ ...counted, days: counted.days.map((day) => day + 0.5) }).toEqual(sorted);
    }),
    { seed: 20261126, numRuns: 500 },
  );
});

test("days beyond those that are counted are sorted, to the same counts", () => {
  const failed = Uint8Array.of(1, 0, 1, 1);
  const { days, ended } = countByDay({ days: Float64Array.of(110_001, 5, 5, 110_000), failed });
  expect([...days]).toEqual([5, 110_000, 110_001]);
  expect([...ended]).toEqual([2, 1, 1]);
});
