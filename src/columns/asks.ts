/**
 * What a word of our columns asks for in somebody's own list, as the words of the ready-made caseload do there
 * (caseload/urgency.ts): the two are coloured alike. A word that stands in no list here asks to be looked at.
 */
import {
  BALLOON_NOT_KNOWN,
  CHECK_DATE,
  KIND_NOT_KNOWN,
  NO_BALLOON,
  NO_DATE,
  NO_SET_CHANGE,
  NO_SETTING,
} from "./state-words";

/** act: call today. soon: within days. missing: mend or ask. quiet: nothing of this is due, and no more than that. */
export type Asks = "act" | "soon" | "missing" | "quiet";

export const wordsThatAsk = {
  act: [
    ...["past limit", "overdue", "immature"],
    ...["empty", "half or less", "low", "more than put in"],
    ...["too short", "tight", "further out"],
  ],
  soon: ["due soon", "uncertain", "too long", "loose", "further in"],
  missing: [CHECK_DATE, NO_DATE, KIND_NOT_KNOWN, BALLOON_NOT_KNOWN, NO_SETTING, "not measured"],
  quiet: ["later", NO_SET_CHANGE, NO_BALLOON, "mature by weeks", "as filled", "in range", "same mark"],
} as const satisfies Readonly<Record<Asks, readonly string[]>>;

const asked = new Map<string, Asks>(
  (Object.entries(wordsThatAsk) as [Asks, readonly string[]][]).flatMap(([asks, words]) =>
    words.map((word) => [word, asks] as const),
  ),
);

/** @param word as our columns show it; one that is none of theirs (an error, somebody's own) is missing */
export const asksOf = (word: string): Asks => asked.get(word) ?? "missing";
