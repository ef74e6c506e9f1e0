/** Two people whose devices did not last: nine devices in two years, and two short-lived ones. */
import type { CaseloadRow } from "../rows";
import { years } from "./days";
import * as part from "./story";
import type { Tell } from "./story";

const home = {
  "Unplanned visit": "no",
  Nights: 0,
  "Changed by": "carer",
  "Position confirmed by": "pH",
  Where: "home",
};

/** Devices one after the other up to the one in use; a life is days in place and why it ended, newest first. */
function inTurn(
  asOf: number,
  id: string,
  kit: CaseloadRow,
  since: number,
  lives: readonly (readonly [days: number, reason: string, lot: string, more: CaseloadRow])[],
): CaseloadRow[] {
  let out = since;
  return lives.map(([days, reason, lot, more], i) => {
    const end = out;
    out += days;
    return {
      ...{ ID: id, Access: "G", "Held by": "balloon", Shape: "low-profile" },
      ...{ "Size Fr": kit["Size Fr"]!, "Length cm": kit["Length cm"]!, "Fill mL": kit["Fill mL"]!, Lot: lot },
      ...{ In: asOf - out, Out: asOf - end, Reason: reason },
      ...more,
      ...{ "New held by": "balloon", "New shape": "low-profile", "New size Fr": kit["Size Fr"]! },
      ...{ "New length cm": kit["Length cm"]!, "New fill put in mL": kit["Fill mL"]! },
      "New lot": i === 0 ? null : lives[i - 1]![2],
    };
  });
}

export const wear: Tell = (asOf) => {
  const fast = part.lowProfile(14, 2.3, 5);
  const brief = part.lowProfile(12, 1.5, 3, 5);
  return {
    tubes: [
      /* Nine devices in two years: wears them fast, whatever chance does. */
      {
        ...part.person(asOf, "D-041", years(6.1), 18.4, 31),
        ...part.stoma(asOf, 1700, "surgery"),
        ...fast,
        ...part.device(asOf, 31, part.BAD_LOT),
        ...part.fit(asOf, 2.0, 2.1, 31, 18.4),
        ...part.carerAtHome,
        "Cannot wait": "other medicine",
        ...part.spare(asOf, 14, 2.3, "B2310", 430),
        ...part.site(asOf, "quiet", 31),
        Notes: "Goes through balloons quickly; yeast seen on two of them.",
      },
      /* Two that did not last, and nothing else known: too little to say anything of the person. Label with a range. */
      {
        ...part.person(asOf, "D-042", years(1.7), 9.6, 15),
        ...part.stoma(asOf, 260, "surgery"),
        ...brief,
        "Most mL": "3-5 mL",
        ...part.device(asOf, 21, "K1150"),
        ...part.fit(asOf, 1.2, 1.3, 21, 9.5),
        ...part.carerAtHome,
        ...part.booked(asOf, 66),
        ...part.spare(asOf, 12, 1.5, "K1150", 520),
        ...part.site(asOf, "quiet", 15),
        Notes: "Moved here two months ago; earlier devices not known.",
      },
    ],
    changes: [
      ...inTurn(asOf, "D-041", fast, 31, [
        [81, "balloon burst", "C4431", { ...home, "Hours out": 0.5, pH: 4 }],
        [64, "balloon leaking", "C4388", { ...home, pH: 3.5 }],
        [92, "balloon burst", "C4340", { ...home, "Hours out": 1, pH: 4 }],
        [71, "balloon burst", "C4299", { ...home, "Hours out": 0.2, pH: 4.5 }],
        [88, "planned", "C4262", { ...home, Where: "clinic", "Changed by": "nurse in clinic", pH: 4 }],
        [60, "balloon burst", "C4201", { ...home, "Hours out": 0.5, pH: 3 }],
        [95, "balloon leaking", "C4155", { ...home, pH: 4 }],
        [77, "balloon burst", "C4127", { ...home, "Hours out": 2, pH: 4 }],
        [70, "planned", "C4090", { ...home, Where: "clinic", "Changed by": "nurse in clinic", pH: 3.5 }],
      ]),
      ...inTurn(asOf, "D-042", brief, 21, [
        [19, "balloon burst", "K1132", { ...home, "Hours out": 1.5, pH: 4 }],
        [
          26,
          "came out, balloon empty",
          "K1127",
          {
            ...{ "Unplanned visit": "yes", Nights: 1, "Hours out": 5, Where: "emergency department" },
            ...{ "Changed by": "radiology", "Position confirmed by": "X-ray or contrast" },
            Note: "Opening had narrowed; a smaller tube held it open overnight.",
          },
        ],
      ]),
    ],
  };
};
