/** Plans: booked and not booked, missed, own intervals, dates set by others. */
import { years } from "./days";
import * as part from "./story";
import type { Tell } from "./story";

export const plans: Tell = (asOf) => ({
  tubes: [
    /* Overdue, and booked. */
    {
      ...part.person(asOf, "D-037", years(2.3), 10.6, 40),
      "Booked for": asOf + 6,
      ...part.stoma(asOf, 600, "surgery"),
      ...part.lowProfile(12, 1.7, 4, 5),
      ...part.device(asOf, 112, "K1066"),
      ...part.fit(asOf, 1.4, 1.5, 112, 10.1),
      ...part.carerAtHome,
      "Changed by": "nurse in clinic",
      ...part.spare(asOf, 12, 1.7, "K1066", 220),
      ...part.site(asOf, "quiet", 40),
    },
    /* Overdue, and not booked. */
    {
      ...part.person(asOf, "D-038", years(57.4), 82.1, 130),
      ...part.stoma(asOf, 1150, "endoscopy"),
      ...part.longBalloon(20, 15, 20, 5.5),
      ...part.device(asOf, 128, "J3066"),
      ...part.nurseAtHome,
      "Checked by": "not arranged",
      ...part.site(asOf, "not seen", 130),
    },
    /* Overdue, and in hospital: the ward may change it, or may not know. */
    {
      ...part.person(asOf, "D-039", years(15.3), 41.2, 9),
      Status: "in hospital",
      ...part.since(asOf, 9),
      ...part.stoma(asOf, 830, "endoscopy"),
      ...part.bumper(15, 3),
      ...part.device(asOf, 830, null),
      ...part.changedBy("endoscopy", "seizure medicine"),
      ...part.site(asOf, "not seen", 9),
    },
    /* The booked day has passed, and nothing was recorded. */
    {
      ...part.person(asOf, "D-040", years(4.1), 13.0, 20),
      "Booked for": asOf - 4,
      ...part.stoma(asOf, 1010, "radiology", "GJ"),
      ...part.lowProfile(14, 1.7, 5),
      ...part.device(asOf, 98, "N6570"),
      ...part.fit(asOf, 1.4, 1.5, 98, 12.6),
      ...part.changedBy("radiology", "fluid or glucose"),
      "Checked by": "nurse",
      ...part.site(asOf, "quiet", 20),
    },
    /* Own interval of eight weeks; size typed with a decimal comma. */
    {
      ...part.person(asOf, "D-043", years(3.4), 12.4, 33),
      "Booked for": asOf + 12,
      ...part.stoma(asOf, 880, "surgery"),
      ...part.lowProfile(14, 2.0, 5),
      "Size Fr": "14,0",
      ...part.device(asOf, 45, "C4490"),
      "Own interval months": 2,
      ...part.fit(asOf, 1.7, 1.8, 45, 12.1),
      ...part.carerAtHome,
      ...part.spare(asOf, 14, 2.0, "C4490", 310),
      ...part.site(asOf, "quiet", 33),
      Notes: "Own interval: 8 weeks, agreed with the surgical clinic. Entered as 2 months.",
    },
    /* The placing team has set the date. */
    {
      ...part.person(asOf, "D-044", years(55.5), 59.7, 18),
      ...part.stoma(asOf, 62, "radiology"),
      "Slow healing": "yes",
      "Held by": "loop",
      "Known from": "record",
      Shape: "long",
      "Size Fr": 12,
      ...part.device(asOf, 62, "W1795"),
      "Date set by placing team": asOf + 28,
      ...part.booked(asOf, 28),
      ...part.marks(4, 4, 9),
      ...part.changedBy("radiology"),
      ...part.siteOfLong(asOf, "quiet", 18),
    },
  ],
});
