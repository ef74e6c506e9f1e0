import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { requests } from "../../../taskpane/workbook/excel/rows";

describe("rows written together", () => {
  it("are each row once and in order, hidden ones alone, never too many at a time", () => {
    const rows = fc.array(fc.tuple(fc.boolean(), fc.integer({ min: 1, max: 700 })), { minLength: 1, maxLength: 40 });
    fc.assert(
      fc.property(rows, fc.nat(1_000), (stretches, top) => {
        const hidden = stretches.flatMap(([isHidden, length]) => new Array<boolean>(length).fill(isHidden));
        let next = top;
        for (const request of requests(top, hidden)) {
          expect(request.length).toBeLessThanOrEqual(100);
          expect(request.reduce((sum, run) => sum + run.rows, 0)).toBeLessThanOrEqual(500);
          for (const run of request) {
            expect(run.top).toBe(next);
            next += run.rows;
            const some = hidden.slice(run.top - top, run.top - top + run.rows);
            expect(run.rows === 1 || !some.includes(true)).toBe(true);
          }
        }
        expect(next).toBe(top + hidden.length);
      }),
      { seed: 20_260_514, numRuns: 200 },
    );
  });
});
