/** To do: the most urgent single thing. Words worked out by hand from what the shared template says of them. */
import { describe, expect, it } from "vitest";
import { day } from "../../../../src/worksheet/dates";
import { AS_OF, bumper, check, goodBumper, goodCheck, goodTube, tube, word, type Case } from "../one-row";

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
    [{ settings: { Lim_Balloon_G: null } }, "check settings"],
    [{ ...bumper({}), settings: { Lim_Bumper_Adult: null } }, "check settings"],
    [{ checks: [check({ "Out mL": 0 })] }, "balloon empty"],
    [{ checks: [check({ "Out mL": 4 })] }, "balloon: low"],
    [bumper({ "Play mm": 2 }), "tight"],
    [bumper({ "Mark now cm": 2 }), "further out"],
    // Rev_Bumper_Adult: 12 months after it came in, or after the site was seen. A clinic setting without a source.
    [bumper({ "Device in": day("2025-11-26"), "Measured on": AS_OF - 5 }), "nothing due"],
    [bumper({ "Device in": day("2025-11-25"), "Measured on": AS_OF - 5 }), "review the tube"],
    [
      bumper({ "Device in": day("2025-11-25"), "Measured on": AS_OF - 5, Site: "quiet", "Site seen on": AS_OF - 9 }),
      "nothing due",
    ],
    [
      bumper({ "Device in": day("2025-11-25"), "Measured on": AS_OF - 5, Site: "quiet", "Site seen on": AS_OF + 9 }),
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
  it("says what can happen at the bedside next before settings that spoil the dates", () => {
    const checks = [check({ "Out mL": 0 })];
    expect(word("To do", { settings: { Lim_Balloon_G: null }, checks })).toBe("balloon empty");
    expect(word("To do", { settings: { Volume_Most: null }, checks })).toBe("balloon empty");
    expect(word("To do", { settings: { Volume_Most: null } })).toBe("check settings");
  });
  it.each([
    [tube({ "Spare at home": "none" }), "no spare"],
    [tube({ "Booked for": day("2026-12-12") }), "booked 12 Dec"],
    [tube({ "Size Fr": null }), "check entries"],
    [tube({}), "nothing due"],
  ] as const)(
    "is the same without a number to call, which is missing once and not on every row: %o: %s",
    (one, says) => {
      expect(word("To do", { ...(one as Case), settings: { Call_Day: null } })).toBe(says);
    },
  );
  it("shows a date that is booked although it is overdue", () => {
    const one = {
      tube: { ...goodTube, "Device in": day("2026-08-20"), "Booked for": AS_OF + 6, "Measured on": day("2026-08-20") },
      checks: [goodCheck],
    };
    expect(word("To do", one)).toBe("overdue, booked 2 Dec");
  });
});
