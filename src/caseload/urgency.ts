/**
 * The one place for the words of *To do*: their order, from the most urgent down, and what each of them asks for. The
 * column, its colours, its hidden key for sorting, and whatever lists rows by urgency stand on it.
 *
 * What can happen at the bedside next stands first; then what makes every date doubtful; then dates and losses of
 * water; then what has to be arranged; then what is arranged. Which words ask for a call today is a clinic setting, no
 * published source; that loss of water is among them: the check card ("call us the same day").
 */

/**
 * act: call today. soon: arrange it within days. missing: mend or ask, no word beside it is a good one. arranged:
 * somebody has seen to it. quiet: no date and no check is due, nothing more.
 */
export type UrgencyClass = "act" | "soon" | "missing" | "arranged" | "quiet";

interface Urgency {
  /** As it stands in the cell; "…" for days or a date that stand there. */
  readonly word: string;
  readonly asks: UrgencyClass;
}

const asks = <const Word extends string>(asks: UrgencyClass, ...words: readonly Word[]) =>
  words.map((word) => ({ word, asks }));

const order = [
  ...asks("act", "balloon empty", "left empty", "above the label", "tight", "tight or stuck"),
  ...asks("act", "further out", "infected", "leaking, opening not mature", "milky fluid"),
  ...asks("act", "nothing came"),
  ...asks("missing", "check settings", "date wrong", "kind not known"),
  ...asks("act", "past limit, not booked"),
  ...asks("soon", "overdue …, not booked", "missed date"),
  ...asks("missing", "no date"),
  ...asks("act", "low twice", "half or less", "balloon: low", "balloon: more than put in"),
  ...asks("soon", "due in …, not booked", "nobody trained, cannot wait"),
  ...asks("missing", "GJ: not by a carer", "J: not by a carer", "bumper: not by a carer"),
  ...asks("soon", "too short", "leaking", "overgrown", "put in not known", "not the agreed fill", "cloudy: ask"),
  ...asks("soon", "balloon: too early"),
  ...asks("missing", "balloon: …"),
  ...asks("soon", "check late", "booked after the limit", "no spare"),
  ...asks("missing", "spare not known"),
  ...asks("soon", "spare expires", "see site again", "measure again", "too long", "loose", "further in"),
  ...asks("soon", "hold too long", "hospital too long", "review the tube"),
  ...asks("soon", "no number to call"),
  /* What contradicts itself does not hide behind a booking. */
  ...asks("missing", "contradictory entries"),
  ...asks("arranged", "past limit, booked …", "overdue, booked …", "booked …"),
  ...asks("missing", "check entries"),
  ...asks("arranged", "in hospital"),
  ...asks("quiet", "nothing due"),
] as const satisfies readonly Urgency[];

export type ToDoWord = (typeof order)[number]["word"];

export const urgencies: readonly Urgency[] = order;

const keys = new Map<string, number>(order.map(({ word }, i) => [word, i + 1]));

/** Its place from the most urgent down, counted from 1. */
export const urgencyKey = (word: ToDoWord): number => keys.get(word)!;

/** The place of a row that has nothing to say: blank, on hold, gone. Behind all others. */
export const NO_URGENCY = order.length + 1;

/** The hidden column of *Tubes in use* that holds the place: sorted by it, rising, the most urgent stands first. */
export const URGENCY = "Urgency";

/** The word before what changes from row to row; all of it where nothing does. */
export const beginningOf = (word: string): string => word.split("…")[0]!;

/** @param text as it stands in *To do*; null where it is none of the words */
export function urgencyOf(text: string): Urgency | null {
  const same = order.find(({ word }) => word === text);
  return same ?? order.find(({ word }) => word.includes("…") && text.startsWith(beginningOf(word))) ?? null;
}

/** All words of a class, as rules for colours take them: one that ends in "…" stands for all that begin so. */
export const wordsThatAsk = (...classes: readonly UrgencyClass[]): readonly string[] =>
  order
    .filter(({ asks }) => classes.includes(asks))
    .map(({ word }) => (word.includes("…") ? `${beginningOf(word)}…` : word));
