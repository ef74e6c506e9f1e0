/**
 * Balloon: what the newest check says of the device now in.
 * Words worked out by hand from what the shared template says of them.
 */
import { describe, expect, it } from "vitest";
import { day } from "../../../../src/worksheet/dates";
import { AS_OF, check, goodTube, word, type Cells } from "../one-row";

describe("Balloon", () => {
  const balloon = (checks: readonly Cells[], cells: Cells = {}) =>
    word("Balloon", { tube: { ...goodTube, ...cells }, checks });
  it.each([
    [[check({ "Out mL": 0 })], {}, "empty"],
    [[check({ "Out mL": 2 })], {}, "half or less"],
    [[check({ "Checked on": AS_OF - 10, "Out mL": 4 }), check({ "Out mL": 4 })], {}, "low twice: plan change"],
    [[check({ "Out mL": 4 })], {}, "low"],
    [[check({ "Out mL": 7.5 })], {}, "more than put in"],
    // Cambridge: not before day 28 of the opening.
    [[check({})], { "Stoma made": AS_OF - 30, "Device in": AS_OF - 30 }, "too early"],
    [[check({ "Out mL": null })], {}, "not measured"],
    // Checked 11 days ago: due 4 days ago, and 3 days of grace.
    [[check({ "Checked on": AS_OF - 11 })], {}, "check late"],
    [[check({ "Checked on": AS_OF - 10 })], {}, "as filled"],
    [[], { "Checked by": "carer, keeps card" }, "kept at home"],
    [[], { "Device in": AS_OF - 2 }, "no check yet"],
    [[], {}, "check late"],
    // A check from before the device came in was another balloon's.
    [[check({ "Checked on": AS_OF - 50 })], {}, "check late"],
    [[check({}), check({ "Checked on": day("2052-01-01"), "Out mL": 0 })], {}, "which device?"],
    [[check({})], { "Held by": "bumper" }, ""],
  ] as const)("%o %o: %s", (checks, cells, says) => expect(balloon(checks, cells)).toBe(says));
});
