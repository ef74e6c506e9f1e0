/** Balloons that lose water, or seem to, or lose none and burst. */
import { years } from "./days";
import * as part from "./story";
import type { Tell } from "./story";

/** Loses 0.3 mL a week, then 0.7 twice: low twice. */
const steadyLeaker: Tell = (asOf) => ({
  tubes: [
    {
      ...part.person(asOf, "D-022", years(4.4), 13.8, 25),
      ...part.stoma(asOf, 1250, "surgery"),
      ...part.lowProfile(14, 2.3, 5),
      ...part.device(asOf, 51, part.BAD_LOT),
      ...part.fit(asOf, 2.0, 2.1, 51, 13.5),
      ...part.carerAtHome,
      ...part.spare(asOf, 14, 2.3, "B2307", 420),
      ...part.site(asOf, "quiet", 51),
    },
  ],
  checks: [44, 37, 30, 23, 16, 9, 2].map((on, i) => part.check(asOf, "D-022", on, i < 5 ? 4.7 : 4.3, 5)),
});

/** Six checks without a drop missing, and a burst two days later: checks do not foretell. */
const sixPerfect: Tell = (asOf) => ({
  tubes: [
    {
      ...part.person(asOf, "D-023", years(11.4), 29.5, 60),
      ...part.stoma(asOf, 2500, "surgery"),
      ...part.lowProfile(14, 2.5, 5),
      ...part.device(asOf, 6, "C4519"),
      ...part.fit(asOf, 2.2, 2.3, 6, 29.4),
      ...part.carerAtHome,
      ...part.spare(asOf, 14, 2.5, "C4519", 600),
      ...part.site(asOf, "quiet", 6),
    },
  ],
  checks: [43, 36, 29, 22, 15, 8].map((on) => part.check(asOf, "D-023", on, 5, 5)),
  changes: [
    {
      ...{ ID: "D-023", Access: "G", "Held by": "balloon", Shape: "low-profile", "Size Fr": 14, "Length cm": 2.5 },
      ...{ "Fill mL": 5, Lot: "C4420", In: asOf - 50, Out: asOf - 6, Reason: "balloon burst", Where: "home" },
      ...{ "Unplanned visit": "no", Nights: 0, "Hours out": 0.5, "Changed by": "carer" },
      ...{ "Position confirmed by": "pH", pH: 3.5 },
      ...{ "New held by": "balloon", "New shape": "low-profile", "New size Fr": 14, "New length cm": 2.5 },
      ...{ "New lot": "C4519", "New fill put in mL": 5, Note: "Water was complete two days before." },
    },
  ],
});

/** Filled above the label: against what was put in it is low, against the label nothing seems to be missing. */
const overFilled: Tell = (asOf) => ({
  tubes: [
    {
      ...part.person(asOf, "D-024", years(29.6), 54.0, 200),
      ...part.stoma(asOf, 3100, "surgery"),
      ...part.lowProfile(14, 2.3, 5),
      ...part.device(asOf, 39, part.BAD_LOT),
      ...part.fit(asOf, 2.0, 2.1, 160, 53.6),
      ...part.carerAtHome,
      ...part.spare(asOf, 14, 2.3, "B2307", 365),
      ...part.site(asOf, "leaking", 39),
    },
  ],
  checks: [
    part.check(asOf, "D-024", 18, 4.8, 5),
    part.check(asOf, "D-024", 11, 4.9, 6, { Note: "Put in a little more because it leaks beside the tube." }),
    part.check(asOf, "D-024", 4, 5.3, 6),
  ],
});

/** Agreed to be filled below the label; and a spare that expires before the change is due. */
const agreedBelowLabel: Tell = (asOf) => ({
  tubes: [
    {
      ...part.person(asOf, "D-025", years(1.17), 8.4, 12),
      ...part.stoma(asOf, 330, "surgery"),
      ...part.lowProfile(12, 1.5, 4, 5),
      ...part.device(asOf, 30, "K1144"),
      ...part.fit(asOf, 1.2, 1.3, 30, 8.2),
      ...part.carerAtHome,
      ...part.spare(asOf, 12, 1.5, "K1098", 25),
      ...part.site(asOf, "quiet", 12),
      Notes: "4 mL agreed with the placing team: retches with 5.",
    },
  ],
  checks: [
    part.check(asOf, "D-025", 16, 4, 4),
    part.check(asOf, "D-025", 9, 3.9, 4),
    part.check(asOf, "D-025", 3, 3.9, 4),
  ],
});

/** Nothing came out. */
const empty: Tell = (asOf) => ({
  tubes: [
    {
      ...part.person(asOf, "D-026", years(76.3), 62.7, 95),
      ...part.stoma(asOf, 860, "radiology"),
      ...part.longBalloon(16, 10, 20, 4.5),
      ...part.device(asOf, 71, "J3111"),
      ...part.nurseAtHome,
      ...part.spare(asOf, 16, null, "J3140", 290),
      ...part.siteOfLong(asOf, "red", 1),
    },
  ],
  checks: [
    part.check(asOf, "D-026", 15, 9.6, 10, { By: "nurse", "How known": "seen" }),
    part.check(asOf, "D-026", 8, 9.4, 10, { By: "nurse", "How known": "seen" }),
    part.check(asOf, "D-026", 1, 0, 10, { By: "nurse", "How known": "seen", Note: "Tube taped to the skin." }),
  ],
});

/** Water was put in, but not written down how much had come out. Weight "?", label "5cc". */
const outNotWritten: Tell = (asOf) => ({
  tubes: [
    {
      ...part.person(asOf, "D-027", years(48.9), 0, 150),
      "Weight kg": "?",
      ...part.stoma(asOf, 1400, "endoscopy"),
      ...part.lowProfile(18, 3.5, 5),
      "Most mL": "5cc",
      ...part.device(asOf, 43, "G0080"),
      ...part.fit(asOf, 3.2, 3.3, 43, 60),
      ...part.nurseAtHome,
      ...part.booked(asOf, 46),
      "Changed by": "nurse in clinic",
      ...part.spare(asOf, 18, 3.5, "G0103", 200),
      ...part.site(asOf, "quiet", 43),
    },
  ],
  checks: [
    part.check(asOf, "D-027", 19, 4.8, 5, { By: "nurse", "How known": "seen" }),
    part.check(asOf, "D-027", 12, null, 5, { By: "other", "How known": "phone" }),
    part.check(asOf, "D-027", 4, 4.9, 5, { By: "nurse", "How known": "seen" }),
  ],
});

export const losses: readonly Tell[] = [steadyLeaker, sixPerfect, overFilled, agreedBelowLabel, empty, outNotWritten];
