/** Dates that are missing, cannot be, or are awkward to count from. */
import { newest, weeks, years } from "./days";
import * as part from "./story";
import type { Tell } from "./story";

export const dates: Tell = (asOf) => {
  const lastOfAugust = newest(8, 31, 20, asOf);
  const leapDay = newest(2, 29, 200, asOf);
  return {
    tubes: [
      /* No Device in: nothing can be said about its change. */
      {
        ...part.person(asOf, "D-001", years(58.3), 71.4, 40),
        ...part.stoma(asOf, 905, "radiology"),
        ...part.longBalloon(16, 10, 20, 4),
        ...part.nurseAtHome,
        "Spare at home": "none",
        ...part.siteOfLong(asOf, "quiet", 40),
        Notes: "Moved here from another service; date of the last change asked for twice.",
      },
      /* A jejunal tube through a bumper tube: no interval is published, the placing team has set the date. */
      {
        ...part.person(asOf, "D-002", years(67.1), 58.2, 75),
        ...part.stoma(asOf, 980, "endoscopy", "GJ"),
        ...part.bumper(15, 4.5),
        ...part.device(asOf, 70, "F5520"),
        "Date set by placing team": asOf + 35,
        ...part.booked(asOf, 35),
        ...part.changedBy("endoscopy"),
        ...part.siteOfLong(asOf, "quiet", 60),
        Notes: "Jejunal tube runs through the bumper tube.",
      },
      /* Nothing amiss. */
      {
        ...part.person(asOf, "D-003", years(9.2), 24.6, 30),
        ...part.stoma(asOf, 1800, "surgery"),
        ...part.lowProfile(14, 2.0, 5),
        ...part.device(asOf, 60, "C4417"),
        ...part.fit(asOf, 1.7, 1.8, 60, 24.1),
        ...part.carerAtHome,
        ...part.spare(asOf, 14, 2.0, "C4502", 410),
        ...part.site(asOf, "quiet", 60),
      },
      /* Nothing amiss: the first tube of somebody whose tube is changed on failure only. */
      {
        ...part.person(asOf, "D-004", years(52.6), 63.0, 50),
        ...part.stoma(asOf, 200, "endoscopy"),
        ...part.bumper(20, 3.5),
        ...part.device(asOf, 200, null),
        ...part.changedBy("endoscopy"),
        ...part.siteOfLong(asOf, "quiet", 50),
      },
      /* 31 August and 6 months: the month reached has no 31st. */
      {
        ...part.person(asOf, "D-005", years(44.8), 60.5, 120),
        ...part.stoma(asOf, 1500, "endoscopy"),
        ...part.lowProfile(16, 3.0, 5, 10),
        "Device in": lastOfAugust,
        /* 28 February, or today where that is over. */
        "Booked for": Math.max(lastOfAugust + 181, asOf),
        Lot: "G0098",
        "Own interval months": 6,
        ...part.fit(asOf, 2.7, 2.9, 120, 60.0),
        ...part.carerAtHome,
        ...part.spare(asOf, 16, 3.0, "G0101", 500),
        ...part.site(asOf, "quiet", 120),
        Notes: "Own interval agreed with the placing team: balloons of earlier tubes held well.",
      },
      /* 29 February and 60 months: the year reached has no such day. */
      {
        ...part.person(asOf, "D-006", years(71.5), 69.2, 90),
        ...part.stoma(asOf, 0, "endoscopy"),
        "Stoma made": leapDay,
        ...part.bumper(18, 4),
        "Device in": leapDay,
        Lot: "H7712",
        "Own interval months": 60,
        ...part.changedBy("endoscopy"),
        ...part.siteOfLong(asOf, "quiet", 90),
        Notes: "First tube. Changed on failure only; agreed to look at it again after 60 months at the latest.",
      },
      /* The opening was made yesterday. */
      {
        ...part.person(asOf, "D-007", weeks(9), 4.35, 2),
        ...part.stoma(asOf, 1, "surgery"),
        "Slow healing": "not known",
        "Held by": "winged",
        "Known from": "record",
        Shape: "long",
        "Size Fr": 12,
        ...part.device(asOf, 1, "W1830"),
        "Date set by placing team": asOf + 41,
        ...part.booked(asOf, 41),
        ...part.marks(4, 4, 8),
        ...part.changedBy("surgery", "fluid or glucose"),
        ...part.ownPlan,
        ...part.siteOfLong(asOf, "quiet", 1),
        "Weight then kg": 4.35,
        Notes: "Stitched to the skin; stays six weeks.",
      },
    ],
  };
};
