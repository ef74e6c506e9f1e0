/** When the change is due, the latest it may be, and where it stands today. */
import { formula } from "../../columns/formula";
import { CHECK_DATE, NO_DATE } from "../../columns/state-words";
import { DATE, letting, PLAIN, type CaseloadColumn, type Slots } from "../column";
import { CHECK_SETTINGS } from "../ready";
import { dayState, is, isAheadIn, isBlankIn, monthsLater, numbered, numberOrWord, wordIn } from "../reading";
import { ageClassIn, dueAfter, latestAfter, monthsIn } from "./kind";
import { ifLive } from "./live";

const kindNames = (cell: Slots) => ({
  held: wordIn(cell("Held by")),
  access: wordIn(cell("Access")),
  shape: wordIn(cell("Shape")),
  ...numbered("born", cell("Born")),
  bornis: dayState("born"),
  age: ageClassIn,
  filled: formula`NOT(AND(${isBlankIn(cell("Fill mL"))},${isBlankIn(cell("Most mL"))},NOT(ISNUMBER(${cell("Newest")}))))`,
});

const ownIn = formula`IF(ISNUMBER(own),IF(own>=1,IF(own<=Far_Months,own=INT(own),FALSE),FALSE),FALSE)`;

/** The day so many months after the change; a word where there are no months. */
const after = (months: string) =>
  formula`IF(ISNUMBER(${months}),IF(${months}>=1,${monthsLater("in", months)},"${CHECK_SETTINGS}"),${months})`;

const inputs = (cell: Slots) => ({
  ...numbered("in", cell("Device in")),
  inis: dayState("in"),
  ...numbered("own", cell("Own interval months")),
  ...numbered("team", cell("Date set by placing team")),
});

export const changeDue: CaseloadColumn = {
  header: "Change due",
  kind: "computed",
  format: DATE,
  width: 15,
  formula: (cell) => {
    const byInterval = formula`IF(${isBlankIn("owncell")},${letting(
      { ...kindNames(cell), months: monthsIn(dueAfter) },
      after("months"),
    )},IF(${ownIn},${monthsLater("in", "own")},"${CHECK_DATE}"))`;
    const dated = formula`IF(inis=0,"${NO_DATE}",IF(inis=1,${byInterval},"${CHECK_DATE}"))`;
    const byTeam = formula`IF(${isBlankIn("teamcell")},${dated},IF(${isAheadIn("team")},INT(team),"${CHECK_DATE}"))`;
    return ifLive(cell, formula`IF(Ready_Change,${letting(inputs(cell), byTeam)},"${CHECK_SETTINGS}")`);
  },
};

/** The kind's limit; a date or interval of this person's own overrides it, so it never lies before the due date then. */
export const atTheLatest: CaseloadColumn = {
  header: "At the latest",
  kind: "computed",
  format: DATE,
  width: 15,
  formula: (cell) => {
    const limit = letting({ ...kindNames(cell), months: monthsIn(latestAfter) }, after("months"));
    const isOwn = formula`NOT(AND(${isBlankIn("owncell")},${isBlankIn("teamcell")}))`;
    const raised = formula`IF(AND(ISNUMBER(limit),${isOwn},ISNUMBER(due)),MAX(limit,due),limit)`;
    const dated = formula`IF(inis=0,"${NO_DATE}",IF(inis=1,${letting({ limit, ...numbered("due", cell("Change due")) }, raised)},"${CHECK_DATE}"))`;
    return ifLive(cell, formula`IF(Ready_Change,${letting(inputs(cell), dated)},"${CHECK_SETTINGS}")`);
  },
};

const changeRules = [
  { look: "act", words: ["past limit", "overdue"] },
  { look: "missing", words: [CHECK_DATE, NO_DATE, "kind not known", CHECK_SETTINGS] },
  { look: "soon", words: ["due soon"] },
  { look: "quiet", words: ["later", "no set change"] },
] as const;

/** In the steps of src/columns/change-state.ts; here a limit that comes near reads `due soon` also where no change is set. */
export const change: CaseloadColumn = {
  header: "Change",
  kind: "computed",
  format: PLAIN,
  width: 16,
  rules: changeRules,
  formula: (cell) => {
    const near = (day: string) => formula`${day}<As_of+Soon_Days+1`;
    const first = formula`IF(ISNUMBER(latest),MIN(due,latest),due)`;
    const isFar = formula`OR(due>=Day_Farthest+1,IF(ISNUMBER(latest),latest>=Day_Farthest+1,FALSE))`;
    const later = formula`IF(unset,"${CHECK_SETTINGS}","later")`;
    const ahead = formula`IF(${isFar},"${CHECK_DATE}",IF(inis=0,"${NO_DATE}",IF(${near("first")},"due soon",${later})))`;
    const dated = formula`IF(due<As_of,"overdue",${letting({ first }, ahead)})`;
    const undated = formula`IF(ISNUMBER(latest),IF(${near("latest")},"due soon",due),IF(unset,"${CHECK_SETTINGS}",due))`;
    const isCrossed = formula`IF(ISNUMBER(stoma),IF(ISNUMBER(in),stoma>=in+1,FALSE),FALSE)`;
    const word = formula`IF(OR(inis<0,${isCrossed}),"${CHECK_DATE}",IF(IF(ISNUMBER(latest),latest<As_of,FALSE),"past limit",IF(ISNUMBER(due),${dated},${undated})))`;
    return ifLive(
      cell,
      formula`IF(Ready_Change,${letting(
        {
          ...numbered("in", cell("Device in")),
          inis: dayState("in"),
          ...numbered("stoma", cell("Stoma made")),
          ...numberOrWord("due", cell("Change due")),
          ...numbered("latest", cell("At the latest")),
          unset: is("latestcell", CHECK_SETTINGS),
        },
        word,
      )},"${CHECK_SETTINGS}")`,
    );
  },
};

export const daysLeft: CaseloadColumn = {
  header: "Days left",
  kind: "computed",
  format: "0",
  width: 8,
  formula: (cell) =>
    letting(
      { ...numbered("due", cell("Change due")), ...numbered("latest", cell("At the latest")) },
      formula`IF(EXACT(${cell("Change")},"${CHECK_DATE}"),"",IF(ISNUMBER(due),due-As_of,IF(ISNUMBER(latest),latest-As_of,"")))`,
    ),
};
