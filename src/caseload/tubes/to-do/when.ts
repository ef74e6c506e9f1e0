/**
 * What a row reads, and what *To do* then says: the list that stands on the settings sheet, from the most urgent down. Where
 * it begins with the header of a column, that column reads so; the others are put together in columns.ts.
 */
import { urgencies, type ToDoWord, type UrgencyClass } from "../../urgency";

const each = (before: string, ...words: readonly string[]): readonly string[] => words.map((word) => before + word);

const whens: Readonly<Record<ToDoWord, readonly string[]>> = {
  "balloon empty": ["Balloon: empty"],
  "left empty": ["Balloon: left empty"],
  "above the label": ["Balloon: above the label"],
  tight: ["Fit: tight"],
  "tight or stuck": ["Site: tight or stuck"],
  "further out": ["Mark: further out"],
  infected: ["Site: infected"],
  "leaking, opening not mature": ["Site: leaking, not mature"],
  "milky fluid": ["Balloon: milky fluid"],
  "nothing came": ["Balloon: nothing came"],
  "check settings": [
    ...["Change", "Tract", "Balloon", "Fit", "Mark", "Review", "Missing"].map((h) => `${h}: check settings`),
    "hold: check settings",
    "hospital: check settings",
  ],
  "date wrong": ["Change: check date", "Tract: check date", "Booking: wrong"],
  "kind not known": ["Kind: not known"],
  "past limit, not booked": each("Change: past limit, ", "not booked", "missed", "wrong"),
  "overdue …, not booked": each("Change: overdue, ", "not booked", "wrong"),
  "missed date": ["Booking: missed"],
  "no date": ["Change: no date", "Tract: no date"],
  "low twice": ["Balloon: low twice: plan change"],
  "half or less": ["Balloon: half or less"],
  "balloon: low": ["Balloon: low"],
  "balloon: more than put in": ["Balloon: more than put in"],
  "due in …, not booked": each("Change: due soon, ", "not booked", "missed", "wrong"),
  "nobody trained, cannot wait": ["Nobody trained: cannot wait"],
  "GJ: not by a carer": ["carer changes: gj"],
  "J: not by a carer": ["carer changes: j"],
  "bumper: not by a carer": ["carer changes: bumper"],
  "too short": ["Fit: too short"],
  leaking: ["Site: leaking"],
  overgrown: ["Site: overgrown"],
  "put in not known": ["Balloon: put in not known"],
  "not the agreed fill": ["Balloon: not the agreed fill"],
  "cloudy: ask": ["Balloon: cloudy: ask"],
  "balloon: too early": ["Balloon: too early"],
  "balloon: …": each("Balloon: ", "no date", "check date", "not measured", "device not clear"),
  "check late": ["Balloon: check late", "Check due: late"],
  "booked after the limit": ["Booking: booked late"],
  "no spare": ["balloon g, spare: none"],
  "spare not known": ["balloon g, spare: not known"],
  "spare expires": ["Spare expires: soon"],
  "see site again": each("Site: ", "red", "infected, long ago", "other"),
  "measure again": [
    ...each("Fit: ", "measure again", "read again", "not measured"),
    ...each("Mark: ", "measure again", "not measured"),
  ],
  "too long": ["Fit: too long"],
  loose: ["Fit: loose"],
  "further in": ["Mark: further in"],
  "hold too long": ["hold: too long"],
  "hospital too long": ["hospital: too long"],
  "review the tube": ["Review: review the tube"],
  /* The line above each list says it, on no row. */
  "no number to call": [],
  "past limit, booked …": ["Change: past limit, booked"],
  "overdue, booked …": ["Change: overdue, booked"],
  "booked …": ["Booking: booked"],
  "contradictory entries": ["Entries: contradictory"],
  "check entries": ["Missing: something"],
  "in hospital": ["hospital: known"],
  "nothing due": ["none of these"],
};

interface Line {
  readonly when: string;
  readonly says: string;
  readonly asks: UrgencyClass;
  /** The place of its words in the order of urgency, counted from 1. */
  readonly place: number;
}

export const toDoLines: readonly Line[] = urgencies.flatMap(({ word, asks }, i) =>
  whens[word as ToDoWord].map((when) => ({ when, says: word, asks, place: i + 1 })),
);
