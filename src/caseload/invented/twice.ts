/** Identifiers that stand in two rows: rightly, wrongly, and spelt in two ways. */
import { years } from "./days";
import * as part from "./story";
import type { Tell } from "./story";

export const twice: Tell = (asOf) => ({
  tubes: [
    /* One child, two rows: somebody typed a new row after the change, with another spelling. Spare a size smaller. */
    {
      ...part.person(asOf, "D-017", years(5.2), 15.1, 150),
      ...part.stoma(asOf, 1400, "surgery"),
      ...part.lowProfile(14, 2.0, 5),
      ...part.device(asOf, 150, "C4371"),
      ...part.fit(asOf, 1.7, 1.8, 150, 15.1),
      ...part.carerAtHome,
      ...part.spare(asOf, 12, 2.0, "K1010", 160, "smaller"),
      ...part.site(asOf, "quiet", 150),
    },
    {
      ...part.person(asOf, "d-017 ", years(5.2), 15.4, 52),
      ...part.stoma(asOf, 1400, "surgery"),
      ...part.lowProfile(14, 2.0, 5),
      ...part.device(asOf, 52, "C4466"),
      ...part.fit(asOf, 1.7, 1.8, 52, 15.4),
      ...part.carerAtHome,
      ...part.spare(asOf, 14, 2.0, "C4466", 400),
      ...part.site(asOf, "quiet", 52),
    },
    /* One person, two devices, told apart by Access: as it should be. */
    {
      ...part.person(asOf, "D-045", years(49.3), 57.5, 26),
      ...part.stoma(asOf, 690, "surgery"),
      ...part.longBalloon(18, 10, 20, 4),
      ...part.device(asOf, 61, "J3120"),
      ...part.nurseAtHome,
      "Cannot wait": "insulin, other medicine",
      ...part.ownPlan,
      ...part.spare(asOf, 18, null, "J3120", 300),
      ...part.siteOfLong(asOf, "quiet", 26),
      Notes: "Stomach drained through this one, feed goes into the other.",
    },
    {
      ...part.person(asOf, "D-045", years(49.3), 57.5, 26),
      ...part.stoma(asOf, 690, "surgery", "J"),
      ...part.longBalloon(14, 3, 5, 6),
      ...part.device(asOf, 88, "J3079"),
      "Booked for": asOf + 5,
      ...part.changedBy("radiology", "insulin, other medicine"),
      ...part.ownPlan,
      "Checked by": "nurse",
      ...part.siteOfLong(asOf, "quiet", 26),
    },
    /* The same person and the same access twice: the old row was never taken out. */
    {
      ...part.person(asOf, "D-046", years(68.8), 64.9, 80),
      ...part.stoma(asOf, 740, "endoscopy"),
      ...part.bumper(15, 3.5),
      ...part.device(asOf, 720, null),
      ...part.booked(asOf, 6),
      ...part.changedBy("endoscopy"),
      ...part.siteOfLong(asOf, "quiet", 210),
    },
    {
      ...part.person(asOf, "D-046", years(68.8), 66.0, 80),
      ...part.stoma(asOf, 740, "endoscopy"),
      ...part.bumper(18, 3.5),
      ...part.device(asOf, 205, "H7733"),
      ...part.booked(asOf, 150),
      ...part.changedBy("endoscopy"),
      ...part.siteOfLong(asOf, "quiet", 80),
    },
  ],
  checks: [
    ...[73, 66, 59].map((on) => part.check(asOf, "D-017", on, 4.9, 5)),
    ...[31, 24, 17, 10, 3].map((on) => part.check(asOf, "d-017 ", on, 4.8, 5)),
    ...[19, 12, 5].map((on) =>
      part.check(asOf, "D-045", on, 9.8, 10, { Access: "G", By: "nurse", "How known": "seen" }),
    ),
    ...[19, 12, 5].map((on) =>
      part.check(asOf, "D-045", on, 2.9, 3, { Access: "J", By: "nurse", "How known": "seen" }),
    ),
  ],
  changes: [
    {
      ...{ ID: "D-017", Access: "G", "Held by": "balloon", Shape: "low-profile", "Size Fr": 14, "Length cm": 2 },
      ...{ "Fill mL": 5, Lot: "C4371", In: asOf - 150, Out: asOf - 52, Reason: "planned", Where: "clinic" },
      ...{ "Unplanned visit": "no", Nights: 0, "Changed by": "nurse in clinic", "Position confirmed by": "pH", pH: 4 },
      ...{ "New held by": "balloon", "New shape": "low-profile", "New size Fr": 14, "New length cm": 2 },
      ...{ "New lot": "C4466", "New fill put in mL": 5 },
    },
  ],
});
