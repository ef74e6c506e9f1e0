/** What a check found, in a word: as BALLOONSTATE, with the clinic's settings, and what else may be wrong with a row. */
import { formula, type FormulaTemplate } from "../../columns/formula";
import { CHECK_DATE } from "../../columns/state-words";
import { letting, PLAIN, type CaseloadColumn, type Slots } from "../column";
import { CHECK_SETTINGS } from "../ready";
import { CLOUDY, leftBadly, MILKY, NOT_AGREED_FILL, PUT_IN_NOT_KNOWN, waterMissing, WHICH_DEVICE } from "./words";
import { is, isOneOf, isUsualIn, numbered, wordIn } from "../reading";

/** In these words, and in the list's own that holds them all, feed may have come out of the balloon. */
const likeFeed = ["milk", "yellow", "feed"] as const;
/** Of these nothing is to be asked; a word that the list does not have is asked about like `cloudy`. */
const plainLooks = ["", "clear", "nothing came"];

/** What came out: a plain look, or the word that it asks for. */
const seenNames = (cell: FormulaTemplate) => {
  const isLikeFeed = formula`OR(${likeFeed.map((part) => `ISNUMBER(SEARCH("${part}",look))`).join(",")})`;
  return {
    look: wordIn(cell),
    seen: formula`IF(${isLikeFeed},"${MILKY}",IF(${isOneOf("look", plainLooks)},look,"${CLOUDY}"))`,
  };
};

const volumeIn = (name: string) => formula`IF(ISNUMBER(${name}),IF(${name}>=0,${isUsualIn(name)},FALSE),FALSE)`;
const emptyRowIn = (cell: Slots) =>
  formula`COUNTA(${cell("ID")},${cell("Checked on")},${cell("Out mL")},${cell("Put in mL")})=0`;

export const lossMl: CaseloadColumn = {
  header: "Loss mL",
  kind: "computed",
  format: "0.0",
  width: 8,
  formula: (cell) =>
    letting(
      { ...numbered("out", cell("Out mL")), ...numbered("expected", cell("Expected mL")) },
      formula`IF(ISNUMBER(expected),IF(${volumeIn("out")},ROUND(expected-out,9),""),"")`,
    ),
};

export const lossAWeek: CaseloadColumn = {
  header: "Loss mL a week",
  kind: "computed",
  format: "0.0",
  width: 9,
  formula: (cell) =>
    letting(
      { ...numbered("loss", cell("Loss mL")), ...numbered("days", cell("Days since fill")) },
      formula`IF(AND(Ready_Balloon,ISNUMBER(loss),ISNUMBER(days)),IF(days>=Rate_Days,ROUND(7*loss/days,9),""),"")`,
    ),
};

export const state: CaseloadColumn = {
  header: "State",
  kind: "computed",
  format: PLAIN,
  width: 17,
  rules: [
    { look: "act", words: [...waterMissing, ...leftBadly, MILKY, "more than put in"] },
    { look: "soon", words: [PUT_IN_NOT_KNOWN, NOT_AGREED_FILL, CLOUDY] },
    { look: "missing", words: ["not measured", WHICH_DEVICE, CHECK_DATE, CHECK_SETTINGS] },
    { look: "quiet", words: ["as filled"] },
  ],
  formula: (cell) => {
    const isDated = formula`AND(ISNUMBER(${cell("Tag")}),ISNUMBER(${cell("Device in")}))`;
    const good = formula`IF(${isDated},"as filled","${CHECK_DATE}")`;
    const left = cell("Left");
    const remarked = formula`IF(LEN(${left})>0,${left},IF(${is("seen", CLOUDY)},seen,${good}))`;
    const limit = formula`IF(expected<=Fill_Small,Loss_Small,Loss_Large)`;
    const label = formula`IF(ISNUMBER(most),IF(most>0,expected>most,FALSE),FALSE)`;
    const aboveLabel = formula`IF(ISNUMBER(most),IF(most>0,out>most,FALSE),FALSE)`;
    const calm = formula`IF(${is("seen", "nothing came")},"not measured",IF(${label},"more than put in",${remarked}))`;
    const low = formula`IF(out<=ROUND(expected*Loss_Half,9),"half or less",IF(ROUND(expected-out,9)>${limit},"low",${calm}))`;
    const figures = formula`IF(OR(ROUND(out-expected,9)>Over_Read,${aboveLabel}),"more than put in",${low})`;
    const measured = letting(
      { ...numbered("expected", cell("Expected mL")), ...numbered("most", cell("Label mL")) },
      formula`IF(ISNUMBER(expected),${figures},"not measured")`,
    );
    const found = letting(
      { ...seenNames(cell("Looked")), found: formula`IF(${volumeIn("out")},${measured},"not measured")` },
      formula`IF(${isOneOf("found", waterMissing)},found,IF(${isOneOf(left, leftBadly)},${left},IF(${is("seen", MILKY)},seen,found)))`,
    );
    const known = formula`IF(LEN(${cell("Key")})=0,"${WHICH_DEVICE}",${found})`;
    /* Nothing came out: that needs no setting to be bad news. */
    const isEmpty = formula`IF(ISNUMBER(out),out=0,FALSE)`;
    const ready = formula`IF(Ready_Balloon,${known},"${CHECK_SETTINGS}")`;
    const all = letting(numbered("out", cell("Out mL")), formula`IF(${isEmpty},"empty",${ready})`);
    return formula`IF(${emptyRowIn(cell)},"",${all})`;
  },
};

const isLowIn = (text: string) => isOneOf(text, waterMissing);

/** Counted up to three, the most that the setting allows to ask for; a check without figures neither counts nor ends it. */
export const lowInARow: CaseloadColumn = {
  header: "Low in a row",
  kind: "computed",
  format: "0",
  width: 8,
  formula: (cell) => {
    const second = "INDEX(Check_MeasuredBefore,first)";
    const third = formula`IF(ISNUMBER(${second}),IF(${isLowIn(`INDEX(Check_State,${second})`)},1+1+1,1+1),1+1)`;
    const earlier = formula`IF(ISNUMBER(first),IF(${isLowIn("INDEX(Check_State,first)")},${third},1),1)`;
    const count = letting({ first: cell("Measured before") }, earlier);
    return formula`IF(ISNUMBER(${cell("Measured")}),IF(${isOneOf(cell("State"), waterMissing)},${count},0),"")`;
  },
};

/** Checks that cannot be laid to a device, or to a day: by person, or by key. */
export const loose: CaseloadColumn = {
  header: "Loose",
  kind: "computed",
  format: PLAIN,
  width: 4,
  isHidden: true,
  formula: (cell) =>
    formula`IF(LEN(${cell("Key")})=0,${cell("Person")},IF(ISNUMBER(${cell("Tag")}),"",${cell("Key")}))`,
};
