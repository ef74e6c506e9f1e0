/** Words and figures typed in twenty people's ways: kinds, sizes, lengths, labels; and things that contradict. */
import { dayNumber } from "../../maths/calendar";
import { years } from "./days";
import * as part from "./story";
import type { Tell } from "./story";

const LONG_NOTE =
  "Came from another area without any papers. The letter that was promised has not come; the ward there remembers a tube " +
  "changed in theatre in the spring, the family a change at home, and neither knows what holds it inside. The outer part " +
  "carries no print any more. Two ports, one of them without a cap. It turns freely and has not leaked. Asked the placing " +
  "team twice by telephone and once in writing; they look for the theatre book. Until they answer: nobody draws water from " +
  "either port, nobody pulls, feed goes on as before, and a tube that comes out goes to hospital with nothing put in. Ask again.";

export const words: Tell = (asOf) => ({
  tubes: [
    /* Kind typed as PEG: how it was placed, not how it is held. Device in can be read in two ways. Also the oldest person. */
    {
      ...part.person(asOf, "D-008", years(92.4), 47.3, 100),
      ...part.stoma(asOf, 640, "endoscopy"),
      ...part.bumper(15, 3),
      "Held by": "PEG",
      ...part.device(asOf, 640, "H7401"),
      "Device in": "3/4/24",
      ...part.changedBy("endoscopy", "other medicine"),
      ...part.siteOfLong(asOf, "quiet", 30),
    },
    /* Kind typed as button; length in mm. */
    {
      ...part.person(asOf, "D-009", years(12.1), 33.0, 45),
      ...part.stoma(asOf, 2100, "surgery"),
      ...part.lowProfile(16, 2.3, 5, 10),
      "Held by": "button",
      "Length cm": 23,
      ...part.device(asOf, 34, "G0077"),
      ...part.fit(asOf, 2.0, 2.1, 34, 32.6),
      ...part.carerAtHome,
      ...part.spare(asOf, 16, 2.3, "G0102", 330),
      ...part.site(asOf, "overgrown", 34),
    },
    /* Kind typed as RIG: placed by radiology, held by anything. Stoma made "n/k". */
    {
      ...part.person(asOf, "D-010", years(79.0), 66.1, 60),
      ...part.stoma(asOf, 0, "radiology"),
      "Stoma made": "n/k",
      ...part.longBalloon(14, 5, 7, 4),
      "Held by": "RIG",
      ...part.device(asOf, 66, null),
      ...part.nurseAtHome,
      ...part.siteOfLong(asOf, "quiet", 60),
    },
    /* Kind as initials with a space behind; Device in typed into the future; a spare that has expired; a note that begins like a telephone number. */
    {
      ...part.person(asOf, "D-011", years(66.2), 80.4, 85),
      ...part.stoma(asOf, 720, "radiology"),
      ...part.longBalloon(18, 10, 20, 5),
      "Held by": "BGT ",
      ...part.device(asOf, 47, "J3108"),
      "Device in": dayNumber(2052, 3, 14),
      ...part.nurseAtHome,
      ...part.spare(asOf, 18, null, "J2907", -30),
      ...part.siteOfLong(asOf, "quiet", 47),
      /* The number is one of those that the United Kingdom keeps free for drama. */
      Notes: "+44 1632 960014 is the day centre; ring there before noon.",
    },
    /* A bumper with a fill and a balloon check: a balloon after all, or somebody emptied the wrong port. */
    {
      ...part.person(asOf, "D-012", years(63.9), 74.0, 30),
      ...part.stoma(asOf, 310, "endoscopy"),
      ...part.bumper(20, 4),
      "Fill mL": 5,
      ...part.device(asOf, 310, null),
      ...part.changedBy("endoscopy"),
      ...part.siteOfLong(asOf, "leaking", 18),
    },
    /* Gastrojejunal, and a carer is down as the one who changes it. */
    {
      ...part.person(asOf, "D-013", years(6.3), 17.2, 35),
      ...part.stoma(asOf, 1300, "radiology", "GJ"),
      ...part.lowProfile(16, 2.0, 7, 10),
      ...part.device(asOf, 58, "N6601"),
      ...part.fit(asOf, 1.7, 1.8, 58, 16.9),
      ...part.carerAtHome,
      "Trained for tube out": "hold opening only",
      "Cannot wait": "seizure medicine",
      "Spare at home": "none",
      ...part.site(asOf, "quiet", 35),
    },
    /* A letter that is a needle's gauge, not a French size. */
    {
      ...part.person(asOf, "D-018", years(3.2), 11.9, 4),
      Status: "in hospital",
      ...part.since(asOf, 4),
      ...part.stoma(asOf, 700, "radiology", "GJ"),
      ...part.lowProfile(14, 1.7, 5),
      "Size Fr": "14G",
      ...part.device(asOf, 49, "N6588"),
      ...part.fit(asOf, 1.4, 1.5, 49, 11.6),
      ...part.changedBy("radiology", "seizure medicine, fluid or glucose"),
      "Checked by": "nurse",
      ...part.site(asOf, "quiet", 4),
    },
    /* Two sizes in one cell, a device older than its opening, a date that stands in a letter; and nobody knows how it is held. A note of 600 characters. */
    {
      ...part.person(asOf, "D-019", years(38.7), 51.8, 20),
      ...part.stoma(asOf, 1100, "not known"),
      "Slow healing": "not known",
      "Held by": "not known",
      "Known from": "not known",
      Shape: "long",
      "Size Fr": "12/14",
      ...part.device(asOf, 1160, null),
      "Date set by placing team": "see letter",
      ...part.changedBy("not decided", "not known"),
      "Spare at home": "not known",
      ...part.site(asOf, "not seen", 20),
      Notes: LONG_NOTE,
    },
    /* Size in mm where French is meant. */
    {
      ...part.person(asOf, "D-020", years(60.0), 55.6, 33),
      ...part.stoma(asOf, 96, "radiology", "J"),
      "Held by": "loop",
      "Known from": "record",
      Shape: "long",
      "Size Fr": 4.7,
      ...part.device(asOf, 96, null),
      "Date set by placing team": asOf + 20,
      ...part.booked(asOf, 20),
      ...part.marks(6, 6, 10),
      ...part.changedBy("radiology"),
      ...part.siteOfLong(asOf, "quiet", 33),
    },
  ],
  checks: [
    part.check(asOf, "D-012", 18, 4.8, 5, {
      By: "nurse",
      "How known": "seen",
      Note: "Fluid came from the side port; asked the placing team what this tube is.",
    }),
  ],
});
