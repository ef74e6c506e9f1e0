/** Whether the device still fits, as STOMAFIT, FREEPLAY and MARKSHIFT say it, and whether the measurement is still good. */
import { formula, type FormulaTemplate } from "../../columns/formula";
import { letting, PLAIN, type CaseloadColumn, type Slots } from "../column";
import { CHECK_SETTINGS } from "../ready";
import { dayState, is, isAboveIn, numbered, wordIn } from "../reading";
import { ageClassIn } from "./kind";
import { ifLive } from "./live";

export const MEASURE_AGAIN = "measure again";
export const READ_AGAIN = "read again";
const NOT_MEASURED = "not measured";

/**
 * A measurement is fresh when its day is known and not too long ago, and the weight has not changed too much since. Of a child, or where the age is not known, both weights must be there.
 */
const freshNames = (cell: Slots) => ({
  ...numbered("born", cell("Born")),
  bornis: dayState("born"),
  age: ageClassIn,
  ...numbered("measured", cell("Measured on")),
  ...numbered("then", cell("Weight then kg")),
  ...numbered("weight", cell("Weight kg")),
  since: formula`IF(${is("age", "adult")},Day_MeasureAdult,Day_MeasureChild)`,
  recent: formula`IF(${dayState("measured")}=1,measured>=since,FALSE)`,
  weighed: formula`AND(${isAboveIn("then")},${isAboveIn("weight")})`,
  grown: formula`IF(weighed,ROUND(100*ABS(weight/then-1),9)>=Grow_Percent,NOT(${is("age", "adult")}))`,
});
const freshIn: FormulaTemplate = formula`AND(recent,NOT(grown))`;

/** Play and mark are the tube's, not the opening's: those of the tube before say nothing of this one. */
const sinceNames = (cell: Slots) => ({ ...numbered("in", cell("Device in")), inis: dayState("in") });
const sinceIn: FormulaTemplate = formula`IF(inis=1,measured>=INT(in),FALSE)`;

const lengthIn = (name: string) => formula`IF(ISNUMBER(${name}),IF(${name}>0,${name}<=Length_Most,FALSE),FALSE)`;

const fitRules = [
  { look: "act", words: ["too short", "tight", "further out"] },
  { look: "soon", words: ["too long", "loose", "further in", READ_AGAIN, MEASURE_AGAIN] },
  { look: "missing", words: [NOT_MEASURED, CHECK_SETTINGS] },
  { look: "quiet", words: ["in range", "same mark"] },
] as const;

export const fit: CaseloadColumn = {
  header: "Fit",
  kind: "computed",
  format: PLAIN,
  width: 14,
  onlyWith: "fit",
  rules: fitRules,
  formula: (cell) => {
    const isShort = formula`OR(length<larger,length<ROUND((lying+sitting)/(1+1)+Slack_Least,9))`;
    const kept = formula`IF(${freshIn},"in range","${MEASURE_AGAIN}")`;
    const played = formula`IF(play<Play_Least,"tight",IF(play>Play_Most,"loose",IF(IF(recent,${sinceIn},FALSE),${kept},"${MEASURE_AGAIN}")))`;
    const low = formula`IF(${isShort},"too short",IF(length>ROUND(larger+Slack_Most,9),"too long",IF(sitting<lying,"${READ_AGAIN}",${kept})))`;
    const isRead = formula`AND(${lengthIn("length")},${lengthIn("lying")},${lengthIn("sitting")})`;
    const ofLow = letting(
      {
        ...numbered("length", cell("Length cm")),
        ...numbered("lying", cell("Lying cm")),
        ...numbered("sitting", cell("Sitting cm")),
      },
      formula`IF(${isRead},${letting({ larger: "MAX(lying,sitting)" }, low)},"${NOT_MEASURED}")`,
    );
    const ofLong = letting(
      { ...numbered("play", cell("Play mm")), ...sinceNames(cell) },
      formula`IF(IF(ISNUMBER(play),play>=0,FALSE),${played},"${NOT_MEASURED}")`,
    );
    const word = letting(
      { shape: wordIn(cell("Shape")), ...freshNames(cell) },
      formula`IF(${is("shape", "low-profile")},${ofLow},IF(${is("shape", "long")},${ofLong},"${NOT_MEASURED}"))`,
    );
    return ifLive(cell, formula`IF(Ready_Fit,${word},"${CHECK_SETTINGS}")`);
  },
};

/** Marks count from the inner end: a smaller number now means further out. */
export const mark: CaseloadColumn = {
  header: "Mark",
  kind: "computed",
  format: PLAIN,
  width: 13,
  onlyWith: "fit",
  rules: fitRules,
  formula: (cell) => {
    const same = formula`IF(IF(recent,${sinceIn},FALSE),"same mark","${MEASURE_AGAIN}")`;
    const moved = formula`IF(ABS(moved)<=Mark_Tol,${same},IF(moved<0,"further out","further in"))`;
    const read = formula`IF(current=0,"further out",${letting({ moved: "ROUND(current-before,9)" }, moved)})`;
    const isRead = formula`IF(${isAboveIn("before")},IF(ISNUMBER(current),AND(current>=0,current<=Mark_Most,before<=Mark_Most),FALSE),FALSE)`;
    const word = letting(
      {
        ...numbered("before", cell("Mark then cm")),
        ...numbered("current", cell("Mark now cm")),
        ...sinceNames(cell),
        ...freshNames(cell),
      },
      formula`IF(${isRead},${read},"${NOT_MEASURED}")`,
    );
    const ofLong = formula`IF(Ready_Fit,${word},"${CHECK_SETTINGS}")`;
    return ifLive(cell, formula`IF(${is(wordIn(cell("Shape")), "long")},${ofLong},"")`);
  },
};
