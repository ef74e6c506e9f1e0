/** What has to be arranged: checks, spares, measurements, reviews, entries to mend. */
import { ABOVE_LABEL, CLOUDY, LEFT_EMPTY, MILKY, NOT_AGREED_FILL, PUT_IN_NOT_KNOWN } from "../../checks/words";
import { formula, type FormulaTemplate } from "../../../columns/formula";
import { CHECK_SETTINGS } from "../../ready";
import { is, isOneOf, wordIn } from "../../reading";
import { sparesThere } from "../../words";
import { CHECK_LATE, KEPT_AT_HOME, LOW_TWICE, NO_CHECK_YET } from "../balloon";
import { MEASURE_AGAIN, READ_AGAIN } from "../fit";
import { REVIEW } from "../review";
import type { Slots } from "../../column";
import { keyColumn, reads, readsOneOf } from "./step";

/** Balloon words that say nothing here, or that have a word of their own. */
const ownWords = [
  ...["as filled", KEPT_AT_HOME, NO_CHECK_YET, CHECK_LATE, CHECK_SETTINGS],
  ...[LEFT_EMPTY, ABOVE_LABEL, PUT_IN_NOT_KNOWN, NOT_AGREED_FILL, CLOUDY],
  ...["empty", MILKY, LOW_TWICE, "half or less", "low", "more than put in", "too early"],
];

const isForHome = (cell: Slots): FormulaTemplate =>
  formula`${is(wordIn(cell("Held by")), "balloon")},${is(wordIn(cell("Access")), "g")}`;

export const checksKey = keyColumn("Checks", [
  reads("Balloon", "too early", "balloon: too early"),
  {
    word: "balloon: …",
    when: (cell) => formula`NOT(OR(LEN(${cell("Balloon")})=0,${isOneOf(cell("Balloon"), ownWords)}))`,
  },
  {
    word: "check late",
    when: (cell) =>
      formula`OR(${is(cell("Balloon"), CHECK_LATE)},IF(ISNUMBER(${cell("Check due")}),${cell("Check due")}+Check_Grace<As_of,FALSE))`,
  },
]);

export const suppliesKey = keyColumn("Supplies", [
  {
    word: "no spare",
    when: (cell) => formula`AND(${isForHome(cell)},${is(wordIn(cell("Spare at home")), "none")})`,
  },
  {
    word: "spare not known",
    when: (cell) =>
      formula`AND(${isForHome(cell)},NOT(${isOneOf(wordIn(cell("Spare at home")), [...sparesThere, "none"])}))`,
  },
  {
    word: "spare expires",
    when: (cell) =>
      formula`IF(ISNUMBER(${cell("Spare expires")}),${cell("Spare expires")}<MAX(As_of+IFERROR(N(Spare_Days),0),N(${cell("Change due")})),FALSE)`,
  },
]);

export const fitKey = keyColumn("Measuring", [
  {
    word: "measure again",
    when: (cell) =>
      formula`OR(${isOneOf(cell("Fit"), [MEASURE_AGAIN, READ_AGAIN, "not measured"])},${isOneOf(cell("Mark"), [MEASURE_AGAIN, "not measured"])})`,
  },
  readsOneOf("Fit", ["too long"], "too long"),
  readsOneOf("Fit", ["loose"], "loose"),
  reads("Mark", "further in", "further in"),
  reads("Review", REVIEW, "review the tube"),
  {
    word: "check entries",
    when: (cell) => formula`LEN(${cell("Missing or contradictory")})>0`,
  },
]);
