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
    // What is left in the balloon.
    [{ checks: [check({ "Put in mL": 0 })] }, "left empty"],
    [{ ...tube({ "Most mL": 8 }), checks: [check({ "Put in mL": 12 })] }, "above the label"],
    [{ checks: [check({ "Put in mL": 2 })] }, "not the agreed fill"],
    [{ checks: [check({ "Put in mL": null })] }, "put in not known"],
    [{ checks: [check({ Looked: "cloudy" })] }, "cloudy: ask"],
    [tube({ "Most mL": null }), "check entries"],
    [{ ...tube({ "Device in": day("2026-08-20") }), checks: [check({ "Put in mL": 0 })] }, "left empty"],
    // The site. 14 days: Site_Act, a clinic setting without a source.
    [tube({ Site: "tight or stuck", "Site seen on": AS_OF - 1 }), "tight or stuck"],
    [tube({ Site: "Tight or stuck ", "Site seen on": AS_OF - 900 }), "tight or stuck"],
    [
      bumper({ "Device in": AS_OF - 420, Site: "tight or stuck", "Site seen on": AS_OF - 1, "Measured on": AS_OF - 5 }),
      "tight or stuck",
    ],
    [tube({ Site: "infected", "Site seen on": AS_OF }), "infected"],
    [tube({ Site: "infected", "Site seen on": AS_OF - 14 }), "infected"],
    [tube({ Site: "infected", "Site seen on": AS_OF - 15 }), "see site again"],
    [tube({ Site: "infected" }), "infected"],
    [tube({ Site: "infected", "Site seen on": AS_OF + 3 }), "infected"],
    [tube({ Site: "infected", "Site seen on": "n/k" }), "infected"],
    [{ ...tube({ Site: "infected", "Site seen on": AS_OF - 15 }), settings: { Site_Act: null } }, "infected"],
    [{ ...tube({ Site: "infected", "Site seen on": AS_OF - 15 }), settings: { Site_Act: 42 } }, "infected"],
    [tube({ Site: "leaking", "Site seen on": AS_OF - 3 }), "leaking"],
    [tube({ Site: "leaking", "Slow healing": "yes" }), "leaking, opening not mature"],
    [tube({ Site: "leaking", "Stoma made": AS_OF - 60 }), "leaking, opening not mature"],
    [tube({ Site: "leaking", "Stoma made": null }), "leaking, opening not mature"],
    [tube({ Site: "overgrown", "Site seen on": AS_OF - 3 }), "overgrown"],
    [tube({ Site: "red", "Site seen on": AS_OF - 3 }), "see site again"],
    [tube({ Site: "not seen" }), "nothing due"],
    ...(["red", "overgrown", "leaking", "infected", "not seen", null] as const).map(
      (Site) =>
        [
          bumper({ "Device in": AS_OF - 420, Site, "Site seen on": AS_OF - 15, "Measured on": AS_OF - 5 }),
          { red: "see site again", infected: "see site again", overgrown: "overgrown", leaking: "leaking" }[
            Site as string
          ] ?? "review the tube",
        ] as const,
    ),
    // Nobody trained, no plan, and something that cannot wait.
    ...(["insulin", "seizure medicine", "fluid or glucose", "other medicine, insulin"] as const).map(
      (cannot) =>
        [
          tube({ "Trained for tube out": "no", "Own tube-out plan": "no", "Cannot wait": cannot }),
          "nobody trained, cannot wait",
        ] as const,
    ),
    [tube({ "Cannot wait": "insulin" }), "nobody trained, cannot wait"],
    [tube({ "Trained for tube out": "not known", "Cannot wait": "insulin" }), "nobody trained, cannot wait"],
    [tube({ "Trained for tube out": "put in spare", "Cannot wait": "insulin" }), "nothing due"],
    [tube({ "Trained for tube out": "hold opening only", "Cannot wait": "insulin" }), "nothing due"],
    [tube({ "Own tube-out plan": "yes", "Cannot wait": "insulin" }), "nothing due"],
    [tube({ "Cannot wait": "other medicine" }), "nothing due"],
    [tube({ "Cannot wait": "insulin", "Device in": day("2026-08-20") }), "overdue 6 days, not booked"],
    // Milky fluid stands before dates.
    [
      {
        ...tube({ "Device in": day("2026-05-25") }),
        checks: [check({ Looked: "milky, yellow or like feed" })],
      },
      "milky fluid",
    ],
    // A carer who is to change what ends in the bowel, or a bumper.
    [tube({ Access: "GJ", Turning: "never", "Changed by": "carer" }), "GJ: not by a carer"],
    [tube({ Access: "j", Turning: "never", "Changed by": "Carer" }), "J: not by a carer"],
    [bumper({ "Changed by": "carer" }), "bumper: not by a carer"],
    // A bumper with a check, or with a balloon's volume, is one or the other.
    [{ ...bumper({}), checks: [goodCheck] }, "kind not known"],
    [bumper({ "Most mL": 5 }), "kind not known"],
    [tube({ "Known from": "not known" }), "check entries"],
    // A tube in the bowel that is due and not booked, and was not measured lately.
    [
      tube({ Access: "GJ", Turning: "never", "Device in": day("2026-09-10"), "Measured on": day("2024-09-10") }),
      "due in 14 days, not booked",
    ],
    [
      tube({ Access: "J", Turning: "never", "Device in": day("2026-09-10"), "Measured on": null }),
      "due in 14 days, not booked",
    ],
    // What came out, in words that the list does not have: never as filled.
    ...(["milky", "Yellow", "like feed", "FEED"] as const).map(
      (Looked) => [{ checks: [check({ Looked })] }, "milky fluid"] as const,
    ),
    [{ checks: [check({ Looked: "brown" })] }, "cloudy: ask"],
    [{ checks: [check({ Looked: 7 })] }, "cloudy: ask"],
    [{ checks: [check({ Looked: "Clear " })] }, "nothing due"],
    [{ checks: [check({ Looked: "  " })] }, "nothing due"],
    // A site in words that the list does not have was not seen to be quiet.
    [tube({ Site: "pus" }), "see site again"],
    [tube({ Site: "stuck", "Booked for": day("2026-12-12") }), "see site again"],
    [tube({ Site: "Quiet " }), "nothing due"],
    // What cannot wait, in shorter words.
    ...(["seizure meds", "fluids", "Glucose", "insulin pump"] as const).map(
      (cannot) => [tube({ "Cannot wait": cannot }), "nobody trained, cannot wait"] as const,
    ),
    // A day that somebody set, or booked, does not say how it is held, nor where it ends.
    ...(
      [
        ...(["bumper", "loop", "winged", "stitched", "catheter"] as const).map((held) => [held, 5, "kind not known"]),
        // Somebody checked a balloon and nothing was in it, whatever the row says of how it is held.
        ...(["bumper", "loop", "winged", "stitched", "catheter"] as const).map((held) => [held, 0, "balloon empty"]),
        ...(["not known", "PEG", " ", null] as const).map((held) => [held, 0, "balloon empty"]),
        ...(["not known", "PEG", " ", null] as const).map((held) => [held, 5, "kind not known"]),
      ] as [string | null, number, string][]
    ).map(
      ([held, out, says]) =>
        [
          {
            ...tube({
              ...{ "Held by": held, Turning: "never", "Date set by placing team": AS_OF + 60 },
              "Booked for": day("2026-12-12"),
            }),
            checks: [check({ "Out mL": out })],
          },
          says,
        ] as const,
    ),
    [{ ...tube({ "Held by": "PEG" }), checks: [check({ "Put in mL": 0 })] }, "left empty"],
    // Next to nothing is nothing: at most the loss to act on (0.5 mL up to 5 mL; clinic setting, no published source).
    [{ checks: [check({ "Put in mL": 0.1 })] }, "left empty"],
    [{ checks: [check({ "Put in mL": 0.5 })] }, "left empty"],
    [{ checks: [check({ "Put in mL": 0.6 })] }, "not the agreed fill"],
    // Nothing came out and nobody could say how much was in it: the check card asks for a call on the same day.
    [{ checks: [check({ "Out mL": null, Looked: "nothing came" })] }, "nothing came"],
    // Without an agreed fill two figures that agree say nothing.
    [
      { ...tube({ "Fill mL": null }), checks: [check({ "Checked on": AS_OF - 10 }), goodCheck] },
      "balloon: not measured",
    ],
    // Nobody is trained: what cannot wait has to be known.
    [tube({ "Cannot wait": null }), "check entries"],
    [tube({ "Cannot wait": " Not known" }), "check entries"],
    [tube({ "Cannot wait": null, "Trained for tube out": "put in spare" }), "nothing due"],
    [tube({ "Cannot wait": null, "Own tube-out plan": "yes" }), "nothing due"],
    // A contradiction does not hide behind a booking; what is only missing does.
    [tube({ "Spare Fr": 16, "Booked for": AS_OF + 16 }), "contradictory entries"],
    [tube({ "Spare lot": null, "Booked for": AS_OF + 16 }), "booked 12 Dec"],
    [bumper({ "Most mL": 5, "Date set by placing team": AS_OF + 60 }), "kind not known"],
    [tube({ Access: null, "Date set by placing team": AS_OF + 60, "Booked for": AS_OF + 16 }), "kind not known"],
    [bumper({ "Held by": "loop", "Date set by placing team": AS_OF + 60, "Booked for": AS_OF + 16 }), "booked 12 Dec"],
    // Past its limit: a day that is not soon (Soon_Days, 14) is no answer to that.
    [tube({ "Device in": day("2026-05-25"), "Booked for": AS_OF + 14 }), "past limit, booked 10 Dec"],
    [tube({ "Device in": day("2026-05-25"), "Booked for": AS_OF + 15 }), "booked after the limit"],
    // On hold, in hospital: 28 days, clinic settings without a source.
    [tube({ Status: "on hold", "Status since": AS_OF - 28 }), ""],
    [tube({ Status: "on hold", "Status since": AS_OF - 29 }), "hold too long"],
    [tube({ Status: "in hospital", "Status since": AS_OF - 28 }), "in hospital"],
    [tube({ Status: "in hospital", "Status since": AS_OF - 29 }), "hospital too long"],
    [tube({ Status: "left", "Status since": AS_OF - 400 }), ""],
    [{ ...tube({ Status: "on hold", "Status since": AS_OF - 9 }), settings: { Hold_Days: null } }, "check settings"],
    [{ ...tube({ Status: "in hospital", "Status since": AS_OF }), settings: { Hospital_Days: 0 } }, "check settings"],
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
