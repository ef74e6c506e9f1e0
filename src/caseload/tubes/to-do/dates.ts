/** What makes every date doubtful, and the dates themselves. */
import { formula, type FormulaTemplate } from "../../../columns/formula";
import { CHECK_DATE, KIND_NOT_KNOWN, NO_DATE } from "../../../columns/state-words";
import { AHEAD, MISSED, WRONG } from "../booking";
import { CHECK_SETTINGS } from "../../ready";
import { is, isBlankIn, isOneOf, wordIn } from "../../reading";
import { accesses, holds } from "../../words";
import type { ToDoWord } from "../../urgency";
import type { CaseloadColumn, Slots } from "../../column";
import { keyColumn, anyReads, reads, type Step } from "./step";

const isBooked = (cell: Slots) => is(cell("Booking"), AHEAD);
const isOpen = (cell: Slots) => formula`NOT(OR(${isBooked(cell)},${is(cell("Booking"), MISSED)}))`;

/** A state of the change, and whether a day is booked for it. */
const changeIs = (state: string, word: ToDoWord, booked: boolean, missedToo = true): Step => ({
  word,
  when: (cell) =>
    formula`AND(${is(cell("Change"), state)},${booked ? isBooked(cell) : missedToo ? formula`NOT(${isBooked(cell)})` : isOpen(cell)})`,
});

const kinds = holds.filter((one) => one !== "not known");
const ends = accesses.map((one) => one.toLowerCase());

/**
 * Not known how it is held or where it ends, or something of a balloon stands beside another kind. A date of the placing
 * team's gives such a row a change that is due; it does not say what happens when the tube comes out.
 */
function isOpenKindIn(cell: Slots): FormulaTemplate {
  const held = wordIn(cell("Held by"));
  const isPlain = formula`AND(${isBlankIn(cell("Fill mL"))},${isBlankIn(cell("Most mL"))},NOT(ISNUMBER(${cell("Newest")})))`;
  return formula`NOT(AND(${isOneOf(held, kinds)},${isOneOf(wordIn(cell("Access")), ends)},OR(${is(held, "balloon")},${isPlain})))`;
}

export const datesKey: CaseloadColumn = keyColumn("Dates", [
  anyReads(
    ["Change", "Tract", "Balloon", "Fit", "Mark", "Review", "Missing or contradictory"],
    CHECK_SETTINGS,
    "check settings",
  ),
  {
    word: "date wrong",
    when: (cell) =>
      formula`OR(${is(cell("Change"), CHECK_DATE)},${is(cell("Tract"), CHECK_DATE)},${is(cell("Booking"), WRONG)})`,
  },
  {
    word: KIND_NOT_KNOWN,
    when: (cell) => formula`OR(${is(cell("Change"), KIND_NOT_KNOWN)},${isOpenKindIn(cell)})`,
  },
  changeIs("past limit", "past limit, not booked", false),
  changeIs("overdue", "overdue …, not booked", false, false),
  reads("Booking", MISSED, "missed date"),
  anyReads(["Change", "Tract"], NO_DATE, NO_DATE),
  changeIs("due soon", "due in …, not booked", false),
  {
    /* Past the limit already, a day that is not soon leaves it there. */
    word: "booked after the limit",
    when: (cell) => {
      const until = formula`IF(ISNUMBER(${cell("At the latest")}),${cell("At the latest")},${cell("Change due")})`;
      const from = formula`IF(${is(cell("Change"), "past limit")},As_of+Soon_Days,${until})`;
      return formula`IF(AND(${isBooked(cell)},ISNUMBER(${cell("Due first")})),${cell("Booked for")}>=${from}+1,FALSE)`;
    },
  },
  changeIs("past limit", "past limit, booked …", true),
  changeIs("overdue", "overdue, booked …", true),
  reads("Booking", AHEAD, "booked …"),
]);
