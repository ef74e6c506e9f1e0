/** When and how balloons are checked: too early, twice, on a card, after nine weeks; and what came out. */
import { years } from "./days";
import * as part from "./story";
import type { Tell } from "./story";

/** A balloon emptied on day 10 of a new opening, before the placing team's date. A note that begins with "@". */
const checkedTooEarly: Tell = (asOf) => ({
  tubes: [
    {
      ...part.person(asOf, "D-028", years(70.1), 77.0, 24),
      ...part.stoma(asOf, 24, "radiology"),
      "Slow healing": "yes",
      ...part.longBalloon(14, 5, 7, 3.5),
      ...part.device(asOf, 24, "J3152"),
      ...part.nurseAtHome,
      "Changed by": "radiology",
      "Cannot wait": "insulin",
      "Spare at home": "none",
      ...part.siteOfLong(asOf, "quiet", 14),
      Notes: "@ clinic only: asks that nobody rings at home.",
    },
  ],
  checks: [part.check(asOf, "D-028", 14, 4.7, 5, { By: "nurse", "How known": "seen" })],
});

/** Two checks on one day: the second after a doubtful first. Size as a text; lot of the bad quarter. */
const twiceInOneDay: Tell = (asOf) => ({
  tubes: [
    {
      ...part.person(asOf, "D-029", years(7.2), 19.0, 28),
      ...part.stoma(asOf, 1650, "surgery"),
      ...part.lowProfile(14, 2.3, 5),
      "Size Fr": "14FR",
      ...part.device(asOf, 65, part.BAD_LOT),
      ...part.fit(asOf, 2.0, 2.1, 65, 18.6),
      ...part.carerAtHome,
      ...part.booked(asOf, 25),
      ...part.spare(asOf, 14, 2.3, "B2310", 450),
      ...part.site(asOf, "quiet", 28),
    },
  ],
  checks: [
    part.check(asOf, "D-029", 10, 4.9, 5),
    part.check(asOf, "D-029", 3, 3.9, 5, { Note: "Syringe leaked, will do it again." }),
    part.check(asOf, "D-029", 3, 4.9, 5),
  ],
});

/** The card stays at home; the clinic sees it at visits only. Size as a text, lot that looks like a date, spare of the bad lot. */
const keepsCard: Tell = (asOf) => ({
  tubes: [
    {
      ...part.person(asOf, "D-030", years(10.3), 27.5, 41),
      ...part.stoma(asOf, 2900, "surgery"),
      ...part.lowProfile(14, 2.3, 5),
      "Size Fr": "CH 14",
      ...part.device(asOf, 76, "03-04"),
      ...part.fit(asOf, 2.0, 2.1, 76, 27.0),
      ...part.carerAtHome,
      "Checked by": "carer, keeps card",
      ...part.booked(asOf, 15),
      ...part.spare(asOf, 14, 2.3, part.BAD_LOT, 250),
      ...part.site(asOf, "quiet", 41),
    },
  ],
  checks: [69, 62, 55, 48, 41].map((on, i) =>
    part.check(asOf, "D-030", on, [5, 4.9, 4.9, 4.8, 4.9][i]!, 5, { "How known": "card" }),
  ),
});

/** Nobody checked for nine weeks. */
const nineWeeksGap: Tell = (asOf) => ({
  tubes: [
    {
      ...part.person(asOf, "D-031", years(35.2), 49.9, 110),
      ...part.stoma(asOf, 4200, "surgery"),
      ...part.lowProfile(14, 2.3, 5),
      ...part.device(asOf, 86, part.BAD_LOT),
      ...part.fit(asOf, 2.0, 2.1, 86, 49.5),
      ...part.carerAtHome,
      "Changed by": "nurse at home",
      ...part.booked(asOf, 5),
      "Trained for tube out": "hold opening only",
      ...part.spare(asOf, 14, 2.3, "B2310", 380),
      ...part.site(asOf, "quiet", 86),
    },
  ],
  checks: [
    part.check(asOf, "D-031", 79, 4.9, 5),
    part.check(asOf, "D-031", 72, 4.9, 5),
    part.check(asOf, "D-031", 9, 4.0, 5),
    part.check(asOf, "D-031", 2, 4.8, 5),
  ],
});

/** What came out looked like feed, once. */
const milkyOnce: Tell = (asOf) => ({
  tubes: [
    {
      ...part.person(asOf, "D-032", years(83.6), 58.8, 70),
      ...part.stoma(asOf, 1020, "radiology"),
      ...part.longBalloon(16, 8, 20, 4),
      ...part.device(asOf, 55, "J3118"),
      ...part.nurseAtHome,
      ...part.spare(asOf, 16, null, "J3118", 280),
      ...part.siteOfLong(asOf, "quiet", 13),
    },
  ],
  checks: [
    part.check(asOf, "D-032", 20, 7.8, 8, { By: "nurse", "How known": "seen" }),
    part.check(asOf, "D-032", 13, 7.1, 8, {
      ...{ Looked: "milky, yellow or like feed", By: "nurse", "How known": "seen" },
      Note: "Drawn from the balloon port. Sterile water put in; to be looked at again tomorrow.",
    }),
    part.check(asOf, "D-032", 6, 7.8, 8, { By: "nurse", "How known": "seen" }),
  ],
});

export const checking: readonly Tell[] = [checkedTooEarly, twiceInOneDay, keepsCard, nineWeeksGap, milkyOnce];
