/** The clinic's list with whose device each was: the frailty model behind a person's wear. */
import { fitFrailty, type Frailty } from "../maths/frailty";
import { argument, notAvailable, SheetError } from "../worksheet/error";
import { reading } from "../worksheet/parameters";
import { rememberLast } from "../worksheet/remember";
import { sameText, textColumn, type NumberColumn, type TextColumn } from "../worksheet/rows";
import { lifetimes, tooFew } from "./devices";

export const ownedBy = () => ({
  id: reading("The person, or a column of people", {}, (cell) => (cell === 0 ? null : sameText(cell))),
  ids: textColumn("Whose device it was, one row a device"),
});

export interface Wearers {
  /** Each identifier's place in the fit. */
  readonly places: ReadonlyMap<string, number>;
  readonly fit: Frailty;
}

export const unknownPerson = notAvailable([argument("id"), " does not stand in ", argument("ids")]);
const onePerson = notAvailable("needs the devices of at least 2 people");
const noFit = notAvailable("needs failures on different days to fit a curve");

/** The model fitted to a list; a sentence where the list is too short to say anything from. */
export const wearersOf = rememberLast(
  (ids: TextColumn, days: NumberColumn, failed: NumberColumn): Wearers | SheetError => {
    const lives = lifetimes({ ids, days, failed });
    if (lives instanceof SheetError) return lives;
    const places = new Map<string, number>();
    const person = Uint32Array.from(lives.rows, (row) => {
      const name = ids.values[row]!;
      const known = places.get(name);
      if (known !== undefined) return known;
      places.set(name, places.size);
      return places.size - 1;
    });
    if (places.size < 2) return onePerson;
    const failures = lives.failed.reduce((sum, one) => sum + one, 0);
    const few = tooFew(failures, lives.days.length);
    if (few) return few;
    const fit = fitFrailty({ days: lives.days, failed: lives.failed, person, people: places.size });
    return fit ? { places, fit } : noFit;
  },
);

/** How the model decides, said in the help of both functions that rest on it. */
export const frailtyInWords =
  "All people share one Weibull curve; each has a factor of wear of their own (gamma frailty). How far people differ is " +
  "not known from a small clinic, so the answer is an average over spreads, weighted by how well each explains the list. " +
  "The less is known of a person, the more is drawn towards the clinic's mean: one early burst makes nobody a fast wearer.";
