import { CHECKDUE } from "../../balloon/checkdue";
import { dateDoubt } from "./date-doubt";
import { fromFunction, type GivenCell } from "./from-function";
import type { Recipe, RowCells, Using } from "./recipe";

const cells: readonly GivenCell[] = [
  { role: "stomaMade", called: "stoma made", missing: "blank or 0" },
  { role: "last", called: "last change", missing: "blank or 0" },
  { role: "lastCheck", called: "last check", missing: "left out" },
];

/** A date to come would put the next check off. */
const doubt = (row: RowCells, _: unknown, { asOf }: Using): string | null =>
  cells.reduce<string | null>((found, { role, called }) => found ?? dateDoubt(called, row[role] ?? null, asOf), null);

export const checkDue: Recipe = {
  key: "checkDue",
  group: "Balloon",
  header: "Check due",
  label: "Check due",
  help: "The day of the next balloon check, never before the first check that a new opening allows. For tubes held by a balloon.",
  caution:
    "Do not empty a balloon in a new opening before the placing team’s date. In a mixed list a tube without a balloon gets a day too: nothing is drawn out of that one.",
  needsKinds: false,
  usesAsOf: false,
  usesDates: true,
  format: "d mmm yyyy",
  words: [],
  ...fromFunction({
    of: CHECKDUE,
    cells,
    numbers: ["Check_First", "Check_Days", "Check_AfterChange"],
    blank: "",
    doubt,
  }),
};
