/**
 * The state of a check, and what it is compared with.
 * Words worked out by hand from what the shared template says of them.
 */
import { describe, expect, it } from "vitest";
import { day } from "../../../../src/worksheet/dates";
import { AS_OF, check, checksOf, goodTube, worked, type Case, type Cells } from "../one-row";

describe("State of a check", () => {
  const state = (cells: Cells, given: Case = {}) => checksOf({ checks: [check(cells)], ...given })[0]!["State"];
  it.each([
    [{ "Out mL": 0 }, "empty"],
    [{ "Out mL": null }, "not measured"],
    [{ "Out mL": "n/k" }, "not measured"],
    [{ "Out mL": 61 }, "not measured"],
    // SickKids: more than 0.5 mL less than was put in. Exactly 0.5 is not more.
    [{ "Out mL": 4.5 }, "as filled"],
    [{ "Out mL": 4.4 }, "low"],
    [{ "Out mL": 2.5 }, "half or less"],
    [{ "Out mL": 5.5 }, "as filled"],
    [{ "Out mL": 5.6 }, "more than put in"],
    [{ "Out mL": 5, Looked: "milky, yellow or like feed" }, "milky fluid"],
    [{ "Out mL": null, Looked: "milky, yellow or like feed" }, "milky fluid"],
    [{ "Out mL": 6, Looked: "milky, yellow or like feed" }, "milky fluid"],
    [{ "Out mL": 4, Looked: "milky, yellow or like feed" }, "low"],
    [{ "Out mL": 5, Looked: "nothing came" }, "not measured"],
    [{ "Checked on": day("2052-01-01") }, "check date"],
    [{ "Checked on": "3/4/24" }, "check date"],
    [{ ID: "nobody" }, "device not clear"],
    [{ "Put in mL": 0 }, "left empty"],
    [{ "Put in mL": 7.1 }, "above the label"],
    [{ "Put in mL": 2 }, "not the agreed fill"],
    [{ "Put in mL": null }, "put in not known"],
    [{ "Put in mL": 0, "Out mL": 4 }, "low"],
    [{ Looked: "cloudy" }, "cloudy: ask"],
    [{ Looked: "cloudy", "Put in mL": 2 }, "not the agreed fill"],
  ])("%o: %s", (cells, says) => expect(state(cells as Cells)).toBe(says));

  it("expects what was put in last time, else the agreed fill", () => {
    const [first, second, third] = checksOf({
      checks: [
        check({ "Checked on": AS_OF - 17, "Put in mL": 6 }),
        check({ "Checked on": AS_OF - 10, "Out mL": 5, "Put in mL": null }),
        check({ "Checked on": AS_OF - 3, "Out mL": 5 }),
      ],
    });
    expect([first!["Expected mL"], second!["Expected mL"], third!["Expected mL"]]).toEqual([5, 6, 5]);
    // 6 put in, 5 out: 1 mL in 7 days; a fill above 5 mL is low from more than 1 mL on.
    expect([second!["Loss mL"], second!["Loss mL a week"], second!["State"]]).toEqual([1, 1, "put in not known"]);
  });
  it("follows the dates, not the order of the rows", () => {
    const rows = checksOf({ checks: [check({ "Out mL": 4 }), check({ "Checked on": AS_OF - 10, "Put in mL": 4 })] });
    expect(rows[0]!["Expected mL"]).toBe(4);
    expect(rows[0]!["Days since fill"]).toBe(7);
  });
  it("does not carry a fill over from the device before", () => {
    const rows = checksOf({
      checks: [check({ "Checked on": AS_OF - 60, "Put in mL": 8 }), check({ "Checked on": AS_OF - 3 })],
      changes: [{ ID: "T-1", Access: "G", In: AS_OF - 100, Out: AS_OF - 42, "Fill mL": 6 }],
    });
    expect([rows[0]!["Device in"], rows[1]!["Device in"]]).toEqual([AS_OF - 100, AS_OF - 42]);
    expect([rows[0]!["Expected mL"], rows[1]!["Expected mL"]]).toEqual([6, 5]);
    expect(rows[1]!["Days since fill"]).toBe(39);
  });
  it("counts the low ones in a row, over a check without figures", () => {
    const out = (days: number, ml: number | null) => check({ "Checked on": AS_OF - days, "Out mL": ml });
    const rows = checksOf({ checks: [out(30, 5), out(23, 4), out(16, null), out(9, 4), out(2, 4)] });
    expect(rows.map((row) => row["Low in a row"])).toEqual([0, 1, "", 2, 3]);
  });
  it("asks which device where somebody has two", () => {
    const tubes = [goodTube, { ...goodTube, Access: "J" }];
    expect(worked({ tubes }).checks[0]!["State"]).toBe("device not clear");
    expect(worked({ tubes }).tubes.map((row) => row["Balloon"])).toEqual(["device not clear", "device not clear"]);
    const known = worked({ tubes, checks: [check({ Access: "J" })] });
    expect(known.tubes.map((row) => row["Balloon"])).toEqual(["check late", "as filled"]);
  });
  it("takes no identifier for a number, a date or a wildcard", () => {
    for (const ID of ["1E5", "03-04", "007", "*", "?", "~"]) {
      const tubes = [
        { ...goodTube, ID },
        { ...goodTube, ID: "100000" },
        { ...goodTube, ID: "7" },
      ];
      const found = worked({ tubes, checks: [check({ ID, "Out mL": 0 })] });
      expect(found.tubes.map((row) => row["Balloon"])).toEqual(["empty", "check late", "check late"]);
    }
  });
});
