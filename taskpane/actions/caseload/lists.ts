/** The words of the caseload's lists, as its sheets offer them. */
export const lists = {
  Status: ["active", "in hospital", "on hold", "left"],
  Access: ["G", "GJ", "J"],
  "Held by": ["balloon", "bumper", "loop", "winged", "stitched", "catheter", "not known"],
  "Known from": ["record", "label", "seen", "not known"],
  Shape: ["long", "low-profile"],
  "Changed by": ["carer", "nurse at home", "nurse in clinic", "radiology", "endoscopy", "surgery", "not decided"],
  "Trained for tube out": ["put in spare", "hold opening only", "no", "not known"],
  "Own tube-out plan": ["yes", "no"],
  "Spare at home": ["same size", "smaller", "both", "none", "not known"],
  Looked: ["clear", "cloudy", "milky, yellow or like feed", "nothing came"],
  Water: ["fresh", "same put back"],
  By: ["carer", "nurse", "other"],
  "How known": ["seen", "phone", "card"],
  Reason: [
    "planned",
    "balloon burst",
    "balloon leaking",
    "split or broken",
    "came out, balloon empty",
    "came out, balloon full or bumper",
    "blocked",
    "too short or too long",
    "buried or stuck",
    "moved (GJ)",
    "change of type",
    "recall",
    "no longer needed",
    "left",
    "other",
  ],
  Where: ["home", "clinic", "ward", "emergency department", "radiology", "endoscopy", "theatre"],
  "Unplanned visit": ["no", "yes"],
  "Position confirmed by": ["pH", "X-ray or contrast", "other", "not recorded"],
} as const;

export type ListName = keyof typeof lists;
export type WordOf<L extends ListName> = (typeof lists)[L][number];
