/**
 * Change: when a device is due and how long it may stay.
 * Words worked out by hand from what the shared template says of them.
 */
import { describe, expect, it } from "vitest";
import { day } from "../../../../src/worksheet/dates";
import { AS_OF, bumper, tube, word } from "../one-row";

describe("Change", () => {
  it.each([
    // 3 months from 26 August 2026 is today: due soon, and from 25 August yesterday: overdue.
    [tube({ "Device in": day("2026-08-26") }), "due soon"],
    [tube({ "Device in": day("2026-08-25") }), "overdue"],
    // 3 months from 10 September is 10 December, 14 days ahead; from 11 September 15 days.
    [tube({ "Device in": day("2026-09-10") }), "due soon"],
    [tube({ "Device in": day("2026-09-11") }), "later"],
    // 6 months from 25 May is 25 November.
    [tube({ "Device in": day("2026-05-25") }), "past limit"],
    [tube({ "Device in": day("2026-05-26") }), "overdue"],
    [tube({ "Device in": "3/4/24" }), "check date"],
    [tube({ "Device in": day("2052-01-01") }), "check date"],
    [tube({ "Device in": day("2022-02-28") }), "check date"],
    [tube({ "Device in": null }), "no date"],
    [tube({ "Held by": "PEG" }), "kind not known"],
    [tube({ "Held by": "button" }), "kind not known"],
    [tube({ "Held by": "RIG" }), "kind not known"],
    [tube({ Access: null }), "kind not known"],
    [tube({ "Held by": "stitched" }), "no date"],
    [tube({ "Held by": "stitched", "Date set by placing team": AS_OF + 5 }), "due soon"],
    // A jejunal tube through a bumper tube: no published interval, so a date is missing.
    [bumper({ Access: "GJ" }), "no date"],
    // 24 months from 1 December 2024: in 5 days.
    [bumper({ "Device in": day("2024-12-01") }), "due soon"],
    [bumper({ "Device in": day("2024-11-25") }), "past limit"],
  ])("%o: %s", (one, says) => expect(word("Change", one)).toBe(says));

  it("takes the own interval before the clinic's, and the placing team's date before both", () => {
    // 8 weeks are not asked for; 2 months from 15 October are 15 December.
    expect(word("Change due", tube({ "Own interval months": 2 }))).toBe(day("2026-12-15"));
    expect(word("Change due", tube({ "Own interval months": 2, "Date set by placing team": AS_OF + 1 }))).toBe(
      AS_OF + 1,
    );
    // 9 months of its own lie behind the clinic's limit of 6.
    expect(word("At the latest", tube({ "Own interval months": 9 }))).toBe(day("2027-07-15"));
  });
  it("clips to the month's end", () => {
    // OpenFormula EDATE and Temporal: 30 November 2025 + 3 months; 31 August 2025 + 6 months: the last of February.
    expect(word("Change due", tube({ "Device in": day("2025-11-30") }))).toBe(day("2026-02-28"));
    expect(word("At the latest", tube({ "Device in": day("2025-08-31") }))).toBe(day("2026-02-28"));
    expect(word("Change due", tube({ "Device in": day("2024-02-29"), "Own interval months": 12 }))).toBe(
      day("2025-02-28"),
    );
  });
  it("says nothing of somebody who is away, on hold or gone", () => {
    for (const Status of ["in hospital", "on hold", "left"]) expect(word("Change", tube({ Status }))).toBe("");
    expect(word("To do", tube({ Status: "in hospital" }))).toBe("in hospital");
    expect(word("To do", tube({ Status: "left" }))).toBe("");
  });
});
