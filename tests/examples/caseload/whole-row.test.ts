/**
 * A row in which nothing is missing, in the words of all its columns.
 * Words worked out by hand from what the shared template says of them.
 */
import { describe, expect, it } from "vitest";
import { day } from "../../../src/worksheet/dates";
import { AS_OF, bumper, tubeOf } from "./one-row";

describe("a row in which nothing is missing", () => {
  it("reads so", () => {
    const row = tubeOf({});
    expect(row["Missing or contradictory"]).toBe("");
    expect([row["To do"], row["Change"], row["Tract"], row["Balloon"], row["Fit"]]).toEqual([
      ...["nothing due", "later", "mature by weeks", "as filled", "in range"],
    ]);
    // Device in 15 October 2026; 3 and 6 months: Northern Care Alliance, RCH Melbourne, ESPGHAN.
    expect([row["Change due"], row["At the latest"]]).toEqual([day("2027-01-15"), day("2027-04-15")]);
    expect(row["Days left"]).toBe(50);
    expect([row["Age"], row["First tube"], row["Check due"]]).toEqual([46, "no", AS_OF + 4]);
  });
  it("reads so for a long bumper tube", () => {
    const row = tubeOf(bumper({}));
    expect([row["Missing or contradictory"], row["To do"], row["Change"]]).toEqual([
      "",
      "nothing due",
      "no set change",
    ]);
    expect([row["Fit"], row["Mark"], row["Balloon"]]).toEqual(["in range", "same mark", ""]);
    // Clinic setting from Siau 2018: 24 months.
    expect(row["At the latest"]).toBe(day("2028-10-15"));
  });
});
