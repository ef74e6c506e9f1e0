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
    [[check({}), check({ "Checked on": day("2052-01-01"), "Out mL": 0 })], {}, "device not clear"],
    [[check({})], { "Held by": "bumper" }, ""],
    // What is left in the balloon after the check. Agreed are 5 mL, the label's largest volume is 7.
    [[check({ "Put in mL": 0 })], {}, "left empty"],
    [[check({ "Out mL": 4, "Put in mL": 0 })], {}, "left empty"],
    [[check({ "Out mL": 0, "Put in mL": 0 })], {}, "empty"],
    [[check({ "Put in mL": 12 })], { "Most mL": 8 }, "above the label"],
    [[check({ "Out mL": 2, "Put in mL": 7.1 })], {}, "above the label"],
    [[check({ "Put in mL": 8 })], { "Most mL": null }, "not the agreed fill"],
    [[check({ "Put in mL": 2 })], {}, "not the agreed fill"],
    // SickKids: more than 0.5 mL. Exactly 0.5 is not more.
    [[check({ "Put in mL": 4.4 })], {}, "not the agreed fill"],
    [[check({ "Put in mL": 4.5 })], {}, "as filled"],
    [[check({ "Put in mL": 5.5 })], {}, "as filled"],
    [[check({ "Put in mL": null })], {}, "put in not known"],
    [[check({ "Put in mL": "5cc" })], {}, "put in not known"],
    [[check({ "Put in mL": -1 })], {}, "put in not known"],
    [[check({ "Out mL": 4, "Put in mL": null })], {}, "low"],
    [[check({ Looked: "cloudy" })], {}, "cloudy: ask"],
    [[check({ Looked: "cloudy", "Out mL": 4 })], {}, "low"],
    // The newest check counts: 0 put in three weeks ago, and 5 since.
    [[check({ "Checked on": AS_OF - 24, "Put in mL": 0 }), check({ "Out mL": 5 })], {}, "not measured"],
    [[check({})], { Status: "on hold" }, ""],
  ] as const)("%o %o: %s", (checks, cells, says) => expect(balloon(checks, cells)).toBe(says));
});
