/** The words of the lists, each worked out by hand from what the shared template says of it. Today is 26 November 2026. */
import { describe, expect, it } from "vitest";
import { day } from "../../../src/worksheet/dates";
import { AS_OF, checksOf, goodBumper, goodCheck, goodTube, tubeOf, worked, type Case, type Cells } from "./one-row";

const word = (header: string, one: Case) => tubeOf(one)[header];
const tube = (cells: Cells): Case => ({ tube: { ...goodTube, ...cells } });
const bumper = (cells: Cells): Case => ({ tube: { ...goodBumper, ...cells }, checks: [] });
const check = (cells: Cells): Cells => ({ ...goodCheck, ...cells });

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
    [{ ID: "nobody" }, "which device?"],
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
    expect([second!["Loss mL"], second!["Loss mL a week"], second!["State"]]).toEqual([1, 1, "as filled"]);
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
    expect(worked({ tubes }).checks[0]!["State"]).toBe("which device?");
    expect(worked({ tubes }).tubes.map((row) => row["Balloon"])).toEqual(["which device?", "which device?"]);
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

describe("Tract, Fit, Mark", () => {
  it.each([
    // ACI/GENCA: under 6 weeks, under 12 weeks.
    ["Tract", tube({ "Stoma made": AS_OF - 41, "Device in": AS_OF - 41 }), "immature"],
    ["Tract", tube({ "Stoma made": AS_OF - 42, "Device in": AS_OF - 42 }), "uncertain"],
    ["Tract", tube({ "Stoma made": AS_OF - 84 }), "mature by weeks"],
    ["Tract", tube({ "Stoma made": AS_OF - 83 }), "uncertain"],
    ["Tract", tube({ "Slow healing": "yes" }), "uncertain"],
    ["Tract", tube({ "Slow healing": null }), "uncertain"],
    ["Tract", tube({ "Stoma made": null }), "no date"],
    ["Tract", tube({ "Stoma made": AS_OF + 1 }), "check date"],
    // One of the two days is wrong, perhaps that of the opening.
    ["Tract", tube({ "Stoma made": AS_OF - 90, "Device in": AS_OF - 91 }), "check date"],
    ["Tract", tube({ "Stoma made": AS_OF - 90, "Device in": AS_OF - 90 }), "mature by weeks"],
    // Mean 2.05 and 0.2 slack: 2.25. Larger reading 2.1 and 0.5: 2.6.
    ["Fit", tube({ "Length cm": 2 }), "too short"],
    ["Fit", tube({ "Length cm": 2.6 }), "in range"],
    ["Fit", tube({ "Length cm": 2.7 }), "too long"],
    ["Fit", tube({ "Lying cm": 2.1, "Sitting cm": 1.8 }), "read again"],
    ["Fit", tube({ "Weight then kg": 54 }), "measure again"],
    ["Fit", tube({ "Sitting cm": null }), "not measured"],
    ["Fit", tube({ "Measured on": null }), "measure again"],
    // Leeds 5 mm, ESGE 20 mm.
    ["Fit", bumper({ "Play mm": 2 }), "tight"],
    ["Fit", bumper({ "Play mm": 5 }), "in range"],
    ["Fit", bumper({ "Play mm": 21 }), "loose"],
    // The play of the tube before says nothing of this one.
    ["Fit", bumper({ "Measured on": AS_OF - 43 }), "measure again"],
    ["Fit", bumper({ "Measured on": AS_OF - 43, "Play mm": 2 }), "tight"],
    ["Fit", bumper({ "Device in": null }), "measure again"],
    ["Mark", bumper({ "Mark now cm": 2 }), "further out"],
    ["Mark", bumper({ "Mark now cm": 0 }), "further out"],
    ["Mark", bumper({ "Mark now cm": 3 }), "same mark"],
    ["Mark", bumper({ "Mark now cm": 6 }), "further in"],
    ["Mark", tube({}), ""],
  ])("%s %o: %s", (header, one, says) => expect(word(header, one)).toBe(says));
});

describe("To do", () => {
  it.each([
    [tube({ "Stoma made": "n/k" }), "date wrong"],
    [tube({ "Booked for": "next week" }), "date wrong"],
    [tube({ "Held by": "PEG" }), "kind not known"],
    [tube({ "Device in": day("2026-05-25") }), "past limit, not booked"],
    [tube({ "Device in": day("2026-08-25") }), "overdue 1 day, not booked"],
    [tube({ "Device in": day("2026-08-20") }), "overdue 6 days, not booked"],
    [tube({ "Device in": day("2026-08-20"), "Booked for": AS_OF - 1 }), "missed date"],
    [tube({ "Spare at home": "none" }), "no spare"],
    [tube({ "Spare at home": null }), "spare not known"],
    [tube({ "Spare expires": AS_OF + 89 }), "spare expires"],
    [tube({ "Weight then kg": 54 }), "measure again"],
    [tube({ "Device in": day("2026-09-10"), "Measured on": day("2026-09-10") }), "due in 14 days, not booked"],
    [tube({ "Booked for": day("2026-12-12") }), "booked 12 Dec"],
    [tube({ "Booked for": day("2027-01-02") }), "booked 2 Jan 2027"],
    // At the latest 15 April 2027, 6 months after 15 October 2026: a booking that keeps to it, one that does not.
    [tube({ "Booked for": day("2027-04-15") }), "booked 15 Apr 2027"],
    [tube({ "Booked for": day("2027-04-16") }), "booked after the limit"],
    [
      tube({ "Date set by placing team": day("2027-05-01"), "Booked for": day("2027-05-02") }),
      "booked after the limit",
    ],
    [{ tube: { ...goodBumper, "Fill mL": 5 }, checks: [] }, "kind not known"],
    [tube({ "Size Fr": null }), "check entries"],
    [{ settings: { Call_Day: null } }, "no number to call"],
    [{ settings: { Lim_Balloon_G: null } }, "check settings"],
    [{ ...bumper({}), settings: { Lim_Bumper_Adult: null } }, "check settings"],
    [{ checks: [check({ "Out mL": 0 })] }, "balloon empty"],
    [{ checks: [check({ "Out mL": 4 })] }, "balloon: low"],
    [bumper({ "Play mm": 2 }), "tight"],
    [bumper({ "Mark now cm": 2 }), "further out"],
    // Rev_Bumper_Adult: 12 months after it came in, or after the site was seen. A clinic setting without a source.
    [bumper({ "Device in": day("2025-11-26"), "Measured on": AS_OF - 5 }), "nothing due"],
    [bumper({ "Device in": day("2025-11-25"), "Measured on": AS_OF - 5 }), "review the tube"],
    [bumper({ "Device in": day("2025-11-25"), "Measured on": AS_OF - 5, "Site seen on": AS_OF - 9 }), "nothing due"],
    [
      bumper({ "Device in": day("2025-11-25"), "Measured on": AS_OF - 5, "Site seen on": AS_OF + 9 }),
      "review the tube",
    ],
    [{ ...bumper({}), settings: { Rev_Bumper_Adult: null } }, "check settings"],
  ] as const)("%o: %s", (one, says) => expect(word("To do", one as Case)).toBe(says));
  it.each([
    [tube({ "Stoma made": "n/k" })],
    [tube({ "Booked for": "next week" })],
    [tube({ "Device in": day("2026-05-25") })],
    [tube({ "Device in": day("2026-08-20") })],
    [tube({ "Device in": day("2026-08-20"), "Booked for": AS_OF - 1 })],
    [tube({ "Date set by placing team": day("2052-01-01") })],
    [tube({ "Stoma made": null })],
    [tube({ Access: null })],
    [{ settings: { Call_Day: null } }],
  ] as const)("%o with an empty balloon: the tube can fall out at any moment, whatever else is amiss", (one) => {
    expect(word("To do", { ...(one as Case), checks: [check({ "Out mL": 0 })] })).toBe("balloon empty");
  });
  it("says that settings are to be looked at before everything that stands on them, an empty balloon too", () => {
    const checks = [check({ "Out mL": 0 })];
    expect(word("To do", { settings: { Lim_Balloon_G: null }, checks })).toBe("check settings");
    expect(word("To do", { settings: { Volume_Most: null }, checks })).toBe("check settings");
  });
  it.each([
    [tube({ "Spare at home": "none" }), "no spare"],
    [tube({ "Spare at home": null }), "spare not known"],
    [tube({ "Spare expires": AS_OF + 89 }), "spare expires"],
    [tube({ "Weight then kg": 54 }), "measure again"],
    [tube({ "Length cm": 2.7 }), "too long"],
    [bumper({ "Mark now cm": 6 }), "further in"],
    [tube({ "Device in": day("2026-09-10"), "Measured on": day("2026-09-10") }), "due in 14 days, not booked"],
    // What says that somebody has seen to it, or asks for less, stands behind the number that is missing.
    [tube({ "Booked for": day("2026-12-12") }), "no number to call"],
    [tube({ "Size Fr": null }), "no number to call"],
    [bumper({ "Device in": day("2025-11-25"), "Measured on": AS_OF - 5 }), "no number to call"],
    [tube({}), "no number to call"],
  ] as const)("without a number to call, the same on every row: %o: %s", (one, says) => {
    expect(word("To do", { ...(one as Case), settings: { Call_Day: null } })).toBe(says);
  });
  it("shows a date that is booked although it is overdue", () => {
    const one = {
      tube: { ...goodTube, "Device in": day("2026-08-20"), "Booked for": AS_OF + 6, "Measured on": day("2026-08-20") },
      checks: [goodCheck],
    };
    expect(word("To do", one)).toBe("overdue, booked 2 Dec");
  });
});

describe("Missing or contradictory", () => {
  it.each([
    [
      tube({ "Changed by": "carer", Access: "GJ", Turning: "never" }),
      "carer is to change a device that is not changed at home",
    ],
    [bumper({ "Fill mL": 5 }), "a fill without a balloon"],
    [{ tube: { ...goodBumper }, checks: [goodCheck] }, "a balloon check without a balloon"],
    [tube({ "Fill mL": 8 }), "fill above the label"],
    [tube({ "Length cm": 23 }), "length: mm instead of cm?"],
    [tube({ "Size Fr": 4.7 }), "size: mm instead of Fr?"],
    [tube({ "Weight then kg": 49 }), "weight has jumped"],
    [tube({ "Weighed on": day("2025-11-25") }), "weight is old"],
    [tube({ "Weighed on": day("2025-11-26") }), ""],
    [tube({ "Held by": "catheter", "Fill mL": null, "Most mL": null }), "catheter longer in than a stop-gap"],
    [tube({ "Lying cm": 2.1, "Sitting cm": 1.8 }), "sitting below lying"],
    [tube({ "Booked for": AS_OF - 1 }), "booked date passed"],
    [tube({ "Spare lot": null }), "no lot of the spare"],
    [tube({ "Spare Fr": 16 }), "the spare is not of the tube's size"],
    [tube({ "Spare Fr": 12 }), "the spare is not of the tube's size"],
    [tube({ "Spare at home": "smaller", "Spare Fr": 16 }), "the spare is not of the tube's size"],
    [tube({ "Spare at home": "smaller", "Spare Fr": 12, "Spare cm": 2.3 }), ""],
    [tube({ "Spare at home": "both", "Spare cm": 2.2 }), "the spare is not of the tube's size"],
    [tube({ "Spare Fr": 14, "Spare cm": 2.3 }), ""],
    [tube({ "Device in": day("2022-02-01") }), "device in before the stoma was made"],
    // The limit of a balloon in the stomach is 6 months: ESPGHAN 2021, Great Ormond Street.
    [tube({ "Own interval months": 6 }), ""],
    [tube({ "Own interval months": 7 }), "agreed later than the clinic's limit for balloons"],
    [tube({ "Date set by placing team": day("2027-04-15") }), ""],
    [tube({ "Date set by placing team": day("2027-04-16") }), "agreed later than the clinic's limit for balloons"],
    [{ tubes: [goodTube, { ...goodTube, ID: "t-1 " }], checks: [] }, "same ID and access twice"],
    [tube({ Access: "GJ", Turning: "weekly", "Changed by": "radiology" }), "turning: must be never"],
    [
      { tube: { ...goodTube, "Stoma made": AS_OF - 30, "Device in": AS_OF - 30 } },
      "checked before the first-check date",
    ],
    [tube({ Status: null }), "no status"],
  ] as const)("%o: %s", (one, says) => {
    const found = word("Missing or contradictory", one as Case) as string;
    if (says === "") expect(found).toBe("");
    else expect(found.split("; ")).toContain(says);
  });
  it("leaves a wholly blank row blank everywhere", () => {
    const row = tubeOf({ tube: {}, checks: [] });
    expect(Object.values(row).every((value) => value === null || value === "")).toBe(true);
  });
  it("does without groups that were left out", () => {
    const row = tubeOf({ groups: [] });
    expect([row["To do"], row["Missing or contradictory"], row["Change"]]).toEqual(["nothing due", "", "later"]);
  });
});

describe("Changes", () => {
  const change = (cells: Cells) => worked({ changes: [{ ID: "T-1", Access: "G", ...cells }] }).changes[0]!;
  it("counts days, failures and unplanned changes", () => {
    const row = change({ In: day("2026-01-31"), Out: day("2026-03-01"), Reason: "Balloon burst" });
    // February 2026 has 28 days.
    expect([row["Days in place"], row["Failed"], row["Unplanned"]]).toEqual([29, "yes", "yes"]);
    const planned = change({ In: AS_OF, Out: AS_OF - 1, Reason: "planned" });
    expect([planned["Days in place"], planned["Failed"], planned["Unplanned"]]).toEqual(["", "no", "no"]);
    expect(change({ Reason: "*" })["Failed"]).toBe("not known");
  });
});
