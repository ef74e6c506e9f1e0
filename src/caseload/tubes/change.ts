/** When the change is due, the latest it may be, and where it stands today. */
import { formula } from "../../columns/formula";
import { CHECK_DATE, NO_DATE } from "../../columns/state-words";
import { addMonths } from "../../maths/calendar";
import type { SheetValue } from "../../columns/sheet-block";
import { DATE, letting, PLAIN, type CaseloadColumn, type RowCells, type Slots } from "../column";
import { countedDay } from "../counted-days";
import { CHECK_SETTINGS } from "../ready";
import {
  dayState,
  is,
  isAhead,
  isAheadIn,
  isBlank,
  isBlankIn,
  isNumber,
  monthsLater,
  numbered,
  numberOrWord,
  stateOfDay,
  wordIn,
} from "../reading";
import type { Sight } from "../sight";
import { ageClassIn, dueAfter, latestAfter, monthsFor, monthsIn } from "./kind";
import { ifLive, isLive } from "./live";

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
const isInterval = (own: SheetValue, { number }: Sight): own is number =>
  isNumber(own) && own >= 1 && own <= number("Far_Months") && Number.isInteger(own);

/** The day so many months after the change; a word where there are no months. */
const after = (months: string) =>
  formula`IF(ISNUMBER(${months}),IF(${months}>=1,${monthsLater("in", months)},"${CHECK_SETTINGS}"),${months})`;
const afterMonths = (day: number, months: number | string): number | string =>
  !isNumber(months) ? months : months >= 1 ? addMonths(Math.floor(day), Math.trunc(months)) : CHECK_SETTINGS;

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
  answer: (row, sight) => {
    if (!isLive(row)) return "";
    if (!sight.isReady("change")) return CHECK_SETTINGS;
    const team = row["Date set by placing team"]!;
    if (!isBlank(team)) return isAhead(team, sight) ? Math.floor(team) : CHECK_DATE;
    const device = row["Device in"]!;
    const state = stateOfDay(device, sight);
    if (state !== 1 || !isNumber(device)) return state === 0 ? NO_DATE : CHECK_DATE;
    const own = row["Own interval months"]!;
    if (isBlank(own)) return afterMonths(device, monthsFor(dueAfter, row, sight));
    return isInterval(own, sight) ? addMonths(Math.floor(device), own) : CHECK_DATE;
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
  answer: (row, sight) => {
    if (!isLive(row)) return "";
    if (!sight.isReady("change")) return CHECK_SETTINGS;
    const device = row["Device in"]!;
    const state = stateOfDay(device, sight);
    if (state !== 1 || !isNumber(device)) return state === 0 ? NO_DATE : CHECK_DATE;
    const limit = afterMonths(device, monthsFor(latestAfter, row, sight));
    const isOwn = !isBlank(row["Own interval months"]!) || !isBlank(row["Date set by placing team"]!);
    const due = row["Change due"]!;
    return isNumber(limit) && isOwn && isNumber(due) ? Math.max(limit, due) : limit;
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
  answer: (row, sight) => {
    if (!isLive(row)) return "";
    if (!sight.isReady("change")) return CHECK_SETTINGS;
    return changeOf(row, sight);
  },
};

function changeOf(row: RowCells, sight: Sight): SheetValue {
  const { asOf, number } = sight;
  const [device, stoma, due, latest] = [
    row["Device in"]!,
    row["Stoma made"]!,
    row["Change due"]!,
    row["At the latest"]!,
  ];
  const state = stateOfDay(device, sight);
  if (state < 0 || (isNumber(stoma) && isNumber(device) && stoma >= device + 1)) return CHECK_DATE;
  if (isNumber(latest) && latest < asOf) return "past limit";
  const isNear = (day: number): boolean => day < asOf + number("Soon_Days") + 1;
  const isUnset = latest === CHECK_SETTINGS;
  if (!isNumber(due)) return isNumber(latest) && isNear(latest) ? "due soon" : isUnset ? CHECK_SETTINGS : due;
  if (due < asOf) return "overdue";
  const far = countedDay("Day_Farthest", sight) + 1;
  if (due >= far || (isNumber(latest) && latest >= far)) return CHECK_DATE;
  if (state === 0) return NO_DATE;
  if (isNear(isNumber(latest) ? Math.min(due, latest) : due)) return "due soon";
  return isUnset ? CHECK_SETTINGS : "later";
}

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
  answer: (row, { asOf }) => {
    const [due, latest] = [row["Change due"]!, row["At the latest"]!];
    if (row["Change"] === CHECK_DATE) return "";
    if (isNumber(due)) return due - asOf;
    return isNumber(latest) ? latest - asOf : "";
  },
};
