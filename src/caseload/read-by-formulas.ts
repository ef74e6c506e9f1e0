/**
 * Lists on the settings sheet that the formulas of the other sheets look things up in: a rule that would be a long chain of
 * IFs in every row stands there once, where it can be read from the top down.
 */
import type { CellDescription } from "./book";
import { DATE } from "./column";
import { kindMonths } from "./tubes/kind";
import { toDoLines } from "./tubes/to-do/when";

type Part = Pick<CellDescription, "value" | "formula" | "look" | "format">;

interface ReadByFormulas {
  readonly heading: readonly string[];
  readonly rows: readonly (readonly Part[])[];
  /** Names, and which column of the list they stand for, counted from 0. */
  readonly lists: Readonly<Record<string, number>>;
}

const worked = (formula: string, format?: string): Part => ({ formula, look: "computed", ...(format && { format }) });

/** MATCH among two rising days gives 1 from the first on and before the second. */
const daysBetween = (heading: string, name: string, from: string, before: string): ReadByFormulas => ({
  heading: [heading],
  rows: [
    [{ value: "From" }, worked(from, DATE)],
    [{ value: "Before" }, worked(before, DATE)],
  ],
  lists: { [name]: 1 },
});

export const readByFormulas: readonly ReadByFormulas[] = [
  daysBetween("A day that is past", "Days_Past", "Day_Oldest", "As_of+1"),
  daysBetween("A day that may lie ahead", "Days_Ahead", "Day_Oldest", "Day_Farthest+1"),
  daysBetween("A birth date", "Days_Born", "Day_Birth", "As_of+1"),
  {
    heading: ["Months, by the kind of device", "Due after", "At the latest"],
    rows: kindMonths.map(({ kind, due, latest }) => [{ value: kind }, worked(due), worked(latest)]),
    lists: { Kind_List: 0, Kind_Due: 1, Kind_Latest: 2 },
  },
  {
    heading: ["What a row reads, the most urgent first", "What To do says", "What that asks for", "Place"],
    rows: toDoLines.map(({ when, says, asks, place }) => [when, says, asks, place].map((value) => ({ value }))),
    lists: { ToDo_When: 0, ToDo_Says: 1, ToDo_Place: 3 },
  },
];
