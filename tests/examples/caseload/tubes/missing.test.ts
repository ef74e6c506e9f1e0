/**
 * Missing or contradictory: gaps, and the rows beside them that have none.
 * Words worked out by hand from what the shared template says of them.
 */
import { shownHeaders } from "../../../../src/caseload/headers";
import { NO_URGENCY } from "../../../../src/caseload/urgency";
import { describe, expect, it } from "vitest";
import { day } from "../../../../src/worksheet/dates";
import { AS_OF, bumper, goodBumper, goodCheck, goodTube, tube, tubeOf, word, type Case } from "../one-row";

describe("Missing or contradictory", () => {
  it.each([
    [tube({ "Changed by": "carer", Access: "GJ", Turning: "never" }), "a carer is to change a GJ: never at home"],
    [tube({ "Changed by": "carer", Access: "J", Turning: "never" }), "a carer is to change a J: never at home"],
    [bumper({ "Changed by": "carer" }), "a carer is to change a bumper: not at home"],
    [
      tube({ "Held by": "stitched", "Changed by": "carer", "Fill mL": null, "Most mL": null, Turning: "never" }),
      "carer is to change a device that is not changed at home",
    ],
    [tube({ "Known from": "not known" }), "how it is held: ask where that is known from"],
    [tube({ "Known from": null }), "how it is held: ask where that is known from"],
    [tube({ "Known from": "seen" }), ""],
    [tube({ "Most mL": null }), "a fill without the label's largest volume"],
    [tube({ Site: "oozing" }), "site is no word of the list"],
    [bumper({ "Fill mL": 5 }), "a fill without a balloon"],
    [{ tube: { ...goodBumper }, checks: [goodCheck] }, "a balloon check without a balloon"],
    [tube({ "Fill mL": 8 }), "fill above the label"],
    [tube({ "Length cm": 23 }), "length: rather mm than cm"],
    [tube({ "Size Fr": 4.7 }), "size: rather mm than Fr"],
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
  it.each([
    ["on hold", null, "no date of the status"],
    ["in hospital", null, "no date of the status"],
    ["in hospital", "  ", "no date of the status"],
    ["on hold", AS_OF + 1, "date of the status wrong"],
    ["in hospital", "last week", "date of the status wrong"],
    ["in hospital", AS_OF - 3, ""],
    ["left", null, ""],
    ["active", null, ""],
  ] as const)("%s since %s: %s", (Status, since, says) => {
    const row = tubeOf(tube({ Status, "Status since": since }));
    expect(row["Missing or contradictory"]).toBe(says);
    expect(["", "in hospital", "nothing due"]).toContain(row["To do"]);
  });
  it("leaves a wholly blank row blank everywhere", () => {
    const row = tubeOf({ tube: {}, checks: [] });
    expect(row["Urgency"]).toBe(NO_URGENCY);
    for (const header of shownHeaders.tubes) expect([null, ""], header).toContain(row[header]);
  });
  it("does without groups that were left out", () => {
    const row = tubeOf({ groups: [] });
    expect([row["To do"], row["Missing or contradictory"], row["Change"]]).toEqual(["nothing due", "", "later"]);
  });
});
