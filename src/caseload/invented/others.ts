/** People who have left, one on hold, and a catheter that keeps an opening open. */
import type { CaseloadRow } from "../rows";
import { years } from "./days";
import * as part from "./story";
import type { Tell } from "./story";

/** The device of somebody who has left, as it came out of the list. */
const gone = (tube: CaseloadRow, out: number, reason: string, more: CaseloadRow): CaseloadRow => ({
  ...{
    ID: tube.ID!,
    Access: tube.Access!,
    "Held by": tube["Held by"]!,
    Shape: tube.Shape!,
    "Size Fr": tube["Size Fr"]!,
  },
  ...{ "Fill mL": tube["Fill mL"] ?? null, Lot: tube.Lot!, In: tube["Device in"]!, Out: out, Reason: reason },
  ...{ "Unplanned visit": "no", Nights: 0 },
  ...more,
});

export const others: Tell = (asOf) => {
  const grownUp: CaseloadRow = {
    ...part.person(asOf, "D-014", years(16.4), 48.0, 160),
    Status: "left",
    ...part.stoma(asOf, 620, "endoscopy"),
    ...part.bumper(15, 3),
    ...part.device(asOf, 620, "H7421"),
    ...part.changedBy("endoscopy"),
    ...part.site(asOf, "quiet", 160),
    Notes: "Eats and drinks enough; tube taken out, opening closed.",
  };
  const movedAway: CaseloadRow = {
    ...part.person(asOf, "D-015", years(41.0), 73.5, 140),
    Status: "left",
    ...part.stoma(asOf, 1300, "radiology"),
    ...part.longBalloon(16, 10, 20, 4),
    ...part.device(asOf, 132, "J3040"),
    ...part.nurseAtHome,
    ...part.site(asOf, "quiet", 140),
    Notes: "Moved to another area; papers sent with the person.",
  };
  const died: CaseloadRow = {
    ...part.person(asOf, "D-016", years(86.9), 52.2, 230),
    Status: "left",
    ...part.stoma(asOf, 505, "endoscopy"),
    ...part.bumper(18, 4),
    ...part.device(asOf, 505, "H7588"),
    ...part.changedBy("endoscopy"),
    ...part.site(asOf, "quiet", 230),
    Notes: "Died of the illness.",
  };
  return {
    tubes: [
      grownUp,
      movedAway,
      died,
      /* On hold: abroad with the family. The note begins like a formula. */
      {
        ...part.person(asOf, "D-021", years(8.5), 20.5, 64),
        Status: "on hold",
        ...part.since(asOf, 64),
        ...part.stoma(asOf, 1220, "radiology", "GJ"),
        ...part.lowProfile(16, 2.0, 7, 10),
        ...part.device(asOf, 64, "N6593"),
        ...part.fit(asOf, 1.7, 1.8, 64, 20.5),
        ...part.changedBy("radiology", "other medicine"),
        "Checked by": "carer, keeps card",
        ...part.site(asOf, "quiet", 64),
        Notes: "=abroad with the family until further notice",
      },
      /* A urinary catheter, put in when the balloon had gone; twelve days now, longer than a stop-gap should be. */
      {
        ...part.person(asOf, "D-047", years(81.2), 60.1, 12),
        ...part.stoma(asOf, 780, "radiology"),
        "Held by": "catheter",
        "Known from": "seen",
        Shape: "long",
        "Size Fr": 14,
        ...part.device(asOf, 12, "U0419"),
        "Date set by placing team": asOf + 3,
        ...part.booked(asOf, 3),
        ...part.marks(5, 5, 10),
        ...part.changedBy("radiology", "not known"),
        ...part.siteOfLong(asOf, "quiet", 5),
        Notes: "Not fed through the catheter; it only holds the opening.",
      },
    ],
    changes: [
      gone(grownUp, asOf - 75, "no longer needed", { Where: "endoscopy", "Changed by": "endoscopy" }),
      gone(movedAway, asOf - 20, "left", {}),
      gone(died, asOf - 110, "left", {}),
      {
        ...{ ID: "D-047", Access: "G", "Held by": "balloon", Shape: "long", "Size Fr": 16, "Fill mL": 8, Lot: "J3091" },
        ...{ In: asOf - 74, Out: asOf - 12, Reason: "came out, balloon empty", Where: "emergency department" },
        ...{ "Unplanned visit": "yes", Nights: 0, "Hours out": 6 },
        ...{ "Position confirmed by": "X-ray or contrast", "New held by": "catheter", "New shape": "long" },
        ...{ "New size Fr": 14, "New lot": "U0419", Note: "The 16 would not pass any more." },
      },
    ],
  };
};
