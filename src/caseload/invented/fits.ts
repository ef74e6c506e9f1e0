/** Lengths, play and marks that no longer fit the person. */
import { years } from "./days";
import * as part from "./story";
import type { Tell } from "./story";

export const fits: Tell = (asOf) => ({
  tubes: [
    /* An infant 18% heavier than when the opening was measured. */
    {
      ...part.person(asOf, "D-033", years(0.75), 7.55, 5),
      ...part.stoma(asOf, 210, "surgery"),
      ...part.lowProfile(12, 1.2, 3, 5),
      ...part.device(asOf, 72, "K1120"),
      ...part.fit(asOf, 0.9, 1.0, 72, 6.4),
      ...part.carerAtHome,
      ...part.spare(asOf, 12, 1.2, "K1120", 350),
      ...part.site(asOf, "quiet", 5),
    },
    /* Sitting below lying: a slip of the reading. Lot that looks like a number, spare of the bad lot. */
    {
      ...part.person(asOf, "D-034", years(13.6), 36.0, 27),
      ...part.stoma(asOf, 1900, "surgery"),
      ...part.lowProfile(14, 2.3, 5),
      ...part.device(asOf, 27, "1E5"),
      ...part.fit(asOf, 2.1, 1.8, 27, 36.0),
      ...part.carerAtHome,
      ...part.spare(asOf, 14, 2.3, part.BAD_LOT, 270),
      ...part.site(asOf, "quiet", 27),
    },
    /* A bumper that stands 2 mm off the skin, 14 months after it went in: may be on its way to be buried. */
    {
      ...part.person(asOf, "D-035", years(74.0), 66.8, 35),
      ...part.stoma(asOf, 426, "endoscopy"),
      ...part.bumper(18, 3.5),
      ...part.marks(3.5, 3.2, 2),
      ...part.device(asOf, 426, "H7690"),
      ...part.changedBy("endoscopy", "other medicine"),
      ...part.siteOfLong(asOf, "tight or stuck", 3),
    },
    /* The mark has moved 2 cm out. */
    {
      ...part.person(asOf, "D-036", years(61.7), 70.3, 55),
      ...part.stoma(asOf, 245, "endoscopy"),
      ...part.bumper(20, 5),
      ...part.marks(5, 3, 18),
      ...part.device(asOf, 245, null),
      ...part.changedBy("endoscopy"),
      ...part.siteOfLong(asOf, "leaking", 6),
    },
  ],
});
