/** What has to be arranged: checks, spares, measurements, reviews, entries to mend. */
import { ABOVE_LABEL, CLOUDY, LEFT_EMPTY, MILKY, NOT_AGREED_FILL, PUT_IN_NOT_KNOWN } from "../../checks/words";
import { formula, type FormulaTemplate } from "../../../columns/formula";
import { CHECK_SETTINGS } from "../../ready";
import { is, isNumber, isOneOf, word, wordIn } from "../../reading";
import { sparesThere } from "../../words";
import { CHECK_LATE, KEPT_AT_HOME, LOW_TWICE, NO_CHECK_YET } from "../balloon";
import { MEASURE_AGAIN, READ_AGAIN } from "../fit";
import { REVIEW } from "../review";
import type { Slots } from "../../column";
import { keyColumn, reads, readsOneOf, type At } from "./step";

/** Balloon words that say nothing here, or that have a word of their own. */
const ownWords = [
  ...["as filled", KEPT_AT_HOME, NO_CHECK_YET, CHECK_LATE, CHECK_SETTINGS],
  ...[LEFT_EMPTY, ABOVE_LABEL, PUT_IN_NOT_KNOWN, NOT_AGREED_FILL, CLOUDY],
  ...["empty", MILKY, LOW_TWICE, "half or less", "low", "more than put in", "too early"],
];

const isForHome = (cell: Slots): FormulaTemplate =>
  formula`${is(wordIn(cell("Held by")), "balloon")},${is(wordIn(cell("Access")), "g")}`;
const isForHomeAt = (at: At): boolean => word(at("Held by")) === "balloon" && word(at("Access")) === "g";

export const checksKey = keyColumn("Checks", [
  reads("Balloon", "too early", "balloon: too early"),
  {
    word: "balloon: …",
    when: (cell) => formula`NOT(OR(LEN(${cell("Balloon")})=0,${isOneOf(cell("Balloon"), ownWords)}))`,
    holds: (at) => !["", null, ...ownWords].includes(at("Balloon") as string),
  },
  {
    word: "check late",
    when: (cell) =>
      formula`OR(${is(cell("Balloon"), CHECK_LATE)},IF(ISNUMBER(${cell("Check due")}),${cell("Check due")}+Check_Grace<As_of,FALSE))`,
    holds: (at, { asOf, number }) => {
      const due = at("Check due");
      return at("Balloon") === CHECK_LATE || (isNumber(due) && due + number("Check_Grace") < asOf);
    },
  },
]);

export const suppliesKey = keyColumn("Supplies", [
  {
    word: "no spare",
    when: (cell) => formula`AND(${isForHome(cell)},${is(wordIn(cell("Spare at home")), "none")})`,
    holds: (at) => isForHomeAt(at) && word(at("Spare at home")) === "none",
  },
  {
    word: "spare not known",
    when: (cell) =>
      formula`AND(${isForHome(cell)},NOT(${isOneOf(wordIn(cell("Spare at home")), [...sparesThere, "none"])}))`,
    holds: (at) => isForHomeAt(at) && ![...sparesThere, "none"].includes(word(at("Spare at home"))),
  },
  {
    word: "spare expires",
    when: (cell) =>
      formula`IF(ISNUMBER(${cell("Spare expires")}),${cell("Spare expires")}<MAX(As_of+IFERROR(N(Spare_Days),0),N(${cell("Change due")})),FALSE)`,
    holds: (at, { asOf, number }) => {
      const [expires, due] = [at("Spare expires"), at("Change due")];
      return isNumber(expires) && expires < Math.max(asOf + number("Spare_Days"), isNumber(due) ? due : 0);
    },
  },
]);

export const fitKey = keyColumn("Measuring", [
  {
    word: "measure again",
    when: (cell) =>
      formula`OR(${isOneOf(cell("Fit"), [MEASURE_AGAIN, READ_AGAIN, "not measured"])},${isOneOf(cell("Mark"), [MEASURE_AGAIN, "not measured"])})`,
    holds: (at) =>
      [MEASURE_AGAIN, READ_AGAIN, "not measured"].includes(at("Fit") as string) ||
      [MEASURE_AGAIN, "not measured"].includes(at("Mark") as string),
  },
  readsOneOf("Fit", ["too long"], "too long"),
  readsOneOf("Fit", ["loose"], "loose"),
  reads("Mark", "further in", "further in"),
  reads("Review", REVIEW, "review the tube"),
  {
    word: "check entries",
    when: (cell) => formula`LEN(${cell("Missing or contradictory")})>0`,
    holds: (at) => String(at("Missing or contradictory") ?? "").length > 0,
  },
]);
