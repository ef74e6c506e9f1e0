/** STOCKSIZE against a second derivation over every size and stock. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { STOCKSIZE } from "../../../src/sizes/stocksize";
import { call } from "../../../src/worksheet/call";
import type { SheetError } from "../../../src/worksheet/error";

const size = fc.integer({ min: 10, max: 60 }).map((n) => n / 2);

test("what comes out is in stock, on the right side, and nothing in stock is nearer", () => {
  fc.assert(
    fc.property(
      size,
      fc.array(size, { minLength: 1, maxLength: 8 }),
      fc.constantFrom("same or smaller", "same or larger", "nearest", "next smaller"),
      (wanted, stock, pick) => {
        const fits = stock.filter((s) =>
          pick === "same or smaller"
            ? s <= wanted
            : pick === "same or larger"
              ? s >= wanted
              : pick === "nearest" || s < wanted,
        );
        const away = Math.min(...fits.map((s) => Math.abs(s - wanted)));
        const best = Math.min(...fits.filter((s) => Math.abs(s - wanted) === away));
        const found = call(STOCKSIZE, [wanted, stock.map((s) => [s]), pick]);
        if (away <= 4) expect(found).toBe(best);
        else expect((found as SheetError).code).toBe("#N/A");
      },
    ),
    { seed: 20261125, numRuns: 3000 },
  );
});

test("stock may be written as on the tubes", () => {
  expect(call(STOCKSIZE, ["CH 14", [["12 Fr"], ["14,0"], [""], [null]]])).toBe(14);
});
