/** What makes every date doubtful, and the dates themselves. */
import { formula } from "../../../columns/formula";
import { CHECK_DATE, KIND_NOT_KNOWN, NO_DATE } from "../../../columns/state-words";
import { AHEAD, MISSED, WRONG } from "../booking";
import { CHECK_SETTINGS } from "../../ready";
import { is, isNumber } from "../../reading";
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
  holds: (at) => {
    if (at("Change") !== state) return false;
    if (booked) return at("Booking") === AHEAD;
    return at("Booking") !== AHEAD && (missedToo || at("Booking") !== MISSED);
  },
});

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
    holds: (at) => at("Change") === CHECK_DATE || at("Tract") === CHECK_DATE || at("Booking") === WRONG,
  },
  reads("Change", KIND_NOT_KNOWN, KIND_NOT_KNOWN),
  changeIs("past limit", "past limit, not booked", false),
  changeIs("overdue", "overdue …, not booked", false, false),
  reads("Booking", MISSED, "missed date"),
  anyReads(["Change", "Tract"], NO_DATE, NO_DATE),
  changeIs("due soon", "due in …, not booked", false),
  {
    word: "booked after the limit",
    when: (cell) => {
      const until = formula`IF(ISNUMBER(${cell("At the latest")}),${cell("At the latest")},${cell("Change due")})`;
      return formula`IF(AND(${isBooked(cell)},ISNUMBER(${cell("Due first")}),NOT(${is(cell("Change"), "past limit")})),${cell("Booked for")}>=${until}+1,FALSE)`;
    },
    holds: (at) => {
      const [booked, due, latest] = [at("Booked for"), at("Change due"), at("At the latest")];
      const until = isNumber(latest) ? latest : due;
      return (
        at("Booking") === AHEAD &&
        at("Change") !== "past limit" &&
        isNumber(until) &&
        isNumber(booked) &&
        booked >= until + 1
      );
    },
  },
  changeIs("past limit", "past limit, booked …", true),
  changeIs("overdue", "overdue, booked …", true),
  reads("Booking", AHEAD, "booked …"),
]);
