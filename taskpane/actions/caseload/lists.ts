/** The words of the caseload's lists, by the headers of their columns. */
import type { ShownHeader } from "../../../src/caseload/headers";
import * as words from "../../../src/caseload/words";

export const lists = {
  Status: words.statuses,
  Access: words.accesses,
  "Slow healing": words.yesNoNotKnown,
  "Held by": words.holds,
  "Known from": words.knownFrom,
  Shape: words.shapes,
  "Changed by": words.changers,
  "Trained for tube out": words.trained,
  "Own tube-out plan": ["yes", "no"],
  "Spare at home": words.spares,
  Looked: words.looks,
  Water: words.waters,
  By: words.checkers,
  "How known": words.howKnown,
  Reason: words.reasons.map(({ word }) => word),
  Where: words.places,
  "Unplanned visit": ["no", "yes"],
  "Position confirmed by": words.confirmedBy,
} as const satisfies Partial<Record<ShownHeader, readonly string[]>>;

export type ListName = keyof typeof lists;
export type WordOf<L extends ListName> = (typeof lists)[L][number];
