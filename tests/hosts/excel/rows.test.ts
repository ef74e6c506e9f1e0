import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { requests } from "../../../taskpane/workbook/excel/steps/rows";

describe("rows written together", () => {
  it("are each row once and in order, hidden ones alone, never too many at a time", () => {
    const rows = fc.array(fc.tuple(fc.boolean(), fc.integer({ min: 1, max: 700 })), { minLength: 1, maxLength: 40 });
    fc.assert(
      fc.property(rows, fc.nat(1_000), (stretches, top) => {
        const hidden = stretches.flatMap(([isHidden, length]) => new Array<boolean>(length).fill(isHidden));
        const together = requests(top, hidden);
        const runs = together.flat();
        const isWrong = together.filter(
          (request) => request.length > 100 || request.reduce((sum, run) => sum + run.rows, 0) > 500,
        );
        const hasHidden = runs.filter(
          (run) => run.rows > 1 && hidden.slice(run.top - top, run.top - top + run.rows).includes(true),
        );
        expect([isWrong, hasHidden]).toEqual([[], []]);
        const ends = runs.map((run) => run.top + run.rows);
        expect(runs.map((run) => run.top)).toEqual([top, ...ends.slice(0, -1)]);
        expect(ends.at(-1)).toBe(top + hidden.length);
      }),
      { seed: 20_260_514, numRuns: 200 },
    );
  });
});
