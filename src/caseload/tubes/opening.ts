/** Facts worked out from dates and sizes: age, size in mm, how old the opening is, whether this is the first tube. */
import { formula } from "../../columns/formula";
import { CHECK_DATE, NO_DATE } from "../../columns/state-words";
import { letting, PLAIN, TENTHS, type CaseloadColumn } from "../column";
import { CHECK_SETTINGS } from "../ready";
import { dayState, is, isBlankIn, numbered, wordIn } from "../reading";
import { ifLive } from "./live";

export const age: CaseloadColumn = {
  header: "Age",
  kind: "computed",
  format: PLAIN,
  width: 9,
  rules: [{ look: "missing", words: [CHECK_DATE, CHECK_SETTINGS] }],
  formula: (cell) => {
    const months = formula`12*(YEAR(As_of)-YEAR(born))+MONTH(As_of)-MONTH(born)-IF(DAY(As_of)<DAY(born),1,0)`;
    const young = formula`months&IF(months=1," month"," months")`;
    const age = letting({ months }, formula`IF(months<12+12,${young},INT(months/12))`);
    const isDay = formula`IF(ISNUMBER(born),IF(born<As_of+1,born>=Day_Birth,FALSE),FALSE)`;
    const dated = formula`IF(Ready_Entries,IF(${isDay},${age},"${CHECK_DATE}"),"${CHECK_SETTINGS}")`;
    return letting(numbered("born", cell("Born")), formula`IF(${isBlankIn("borncell")},"",${dated})`);
  },
};

/** The one column that asks a function of ours: it reads sizes as people type them. No state stands on it. */
export const sizeMm: CaseloadColumn = {
  header: "Size mm",
  kind: "computed",
  format: TENTHS,
  width: 8,
  formula: (cell) => formula`IF(${isBlankIn(cell("Size Fr"))},"",TUBE.FRTOMM(${cell("Size Fr")}))`,
};

/**
 * As TRACTSTATE; where nothing is recorded about slow healing it is not known, and then never better than uncertain. Of
 * a stoma that is younger than its device one day is wrong: it never counts as mature.
 */
export const tract: CaseloadColumn = {
  header: "Tract",
  kind: "computed",
  format: PLAIN,
  width: 18,
  rules: [
    { look: "act", words: ["immature"] },
    { look: "soon", words: ["uncertain"] },
    { look: "missing", words: [CHECK_DATE, NO_DATE, CHECK_SETTINGS] },
    { look: "quiet", words: ["mature by weeks"] },
  ],
  formula: (cell) => {
    const isCrossed = formula`IF(ISNUMBER(in),stoma>=in+1,FALSE)`;
    const grown = formula`IF(${isCrossed},"${CHECK_DATE}",IF(${is(wordIn(cell("Slow healing")), "no")},"mature by weeks","uncertain"))`;
    const band = formula`IF(weeks<Tract_Low,"immature",IF(weeks<Tract_High,"uncertain",${grown}))`;
    const isBefore = formula`IF(ISNUMBER(born),stoma+1<=born,FALSE)`;
    const aged = letting({ weeks: "INT((As_of-INT(stoma))/7)" }, band);
    const dated = formula`IF(${isBefore},"${CHECK_DATE}",${aged})`;
    const word = formula`IF(state=1,${dated},IF(state=0,"${NO_DATE}","${CHECK_DATE}"))`;
    const all = letting(
      {
        ...numbered("stoma", cell("Stoma made")),
        state: dayState("stoma"),
        ...numbered("born", cell("Born")),
        ...numbered("in", cell("Device in")),
      },
      word,
    );
    return ifLive(cell, formula`IF(Ready_Opening,${all},"${CHECK_SETTINGS}")`);
  },
};

const NOT_KNOWN = "not known";

export const firstTube: CaseloadColumn = {
  header: "First tube",
  kind: "computed",
  format: PLAIN,
  width: 10,
  rules: [
    { look: "soon", words: ["yes"] },
    { look: "missing", words: [NOT_KNOWN] },
  ],
  formula: (cell) => {
    const days = letting(
      { days: "INT(in)-INT(stoma)" },
      formula`IF(days<0,"${NOT_KNOWN}",IF(days<=First_Days,"yes","no"))`,
    );
    const known = formula`IF(Ready_Opening,IF(AND(${dayState("stoma")}=1,${dayState("in")}=1),${days},"${NOT_KNOWN}"),"${NOT_KNOWN}")`;
    return formula`IF(LEN(${cell("Person")})=0,"",${letting({ ...numbered("stoma", cell("Stoma made")), ...numbered("in", cell("Device in")) }, known)})`;
  },
};
