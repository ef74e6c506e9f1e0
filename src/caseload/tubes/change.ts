/** When the change is due, the latest it may be, and where it stands today. */
import { CHECK_DATE, NO_DATE } from "../../columns/state-words";
import { CHECK_SETTINGS } from "../ready";
import { DATE, PLAIN, type CaseloadColumn } from "../column";
import { ifLive, isAhead, isBlank, monthsAfter } from "../phrases";
import { computed, hidden } from "../shown";

/** `Due first`: the sooner of due and latest; "" where neither is a date. */
export const changeSteps: readonly CaseloadColumn[] = [
  hidden(
    "Own months",
    `IF(IFERROR(AND([@[Own interval months]]=INT([@[Own interval months]]),[@[Own interval months]]>=1,[@[Own interval months]]<=Far_Months),FALSE),[@[Own interval months]],IF(${isBlank("[@[Own interval months]]")},"","check date"))`,
    "plan",
  ),
  hidden(
    "Team day",
    `IF(${isAhead("[@[Date set by placing team]]")},INT([@[Date set by placing team]]),IF(${isBlank("[@[Date set by placing team]]")},"","check date"))`,
    "plan",
  ),
  hidden("Due after", `IF([@[Own months]]<>"",[@[Own months]],INDEX(Kind_Due,MATCH([@Kind],Kind_List,0)))`),
  hidden(
    "Due by months",
    `IF(NOT(ISNUMBER([@[Device day]])),[@[Device day]],IF(NOT(ISNUMBER([@[Due after]])),[@[Due after]],IF([@[Due after]]>=1,${monthsAfter("[@[Device day]]", "[@[Due after]]")},"check settings")))`,
  ),
  hidden(
    "Latest after",
    `INDEX(Kind_Latest,IFERROR(MATCH([@Kind]&", "&[@Form],Kind_List,0),MATCH([@Kind],Kind_List,0)))`,
  ),
  hidden(
    "Limit day",
    `IF(NOT(ISNUMBER([@[Device day]])),[@[Device day]],IF(NOT(ISNUMBER([@[Latest after]])),[@[Latest after]],IF([@[Latest after]]>=1,${monthsAfter("[@[Device day]]", "[@[Latest after]]")},"check settings")))`,
  ),
  hidden("Due first", `IF(COUNT([@[Change due]],[@[At the latest]])=0,"",MIN([@[Change due]],[@[At the latest]]))`),
  hidden(
    "Change ahead",
    `IF(AND(ISNUMBER([@[Change due]]),MAX([@[Change due]],[@[At the latest]])>=Day_Farthest+1),"check date",IF(AND(ISNUMBER([@[Change due]]),[@[Device day]]="no date"),"no date",IF(IF(ISNUMBER([@[Due first]]),[@[Due first]]<As_of+Soon_Days+1,FALSE),"due soon",IF([@[At the latest]]="check settings","check settings",IF(ISNUMBER([@[Change due]]),"later",[@[Change due]])))))`,
  ),
];

export const changeDue = computed(
  "Change due",
  ifLive(`IF(NOT(Ready_Change),"check settings",IF([@[Team day]]<>"",[@[Team day]],[@[Due by months]]))`),
  { format: DATE, width: 16 },
);

/** The kind's limit; a date or interval of this person's own overrides it, so it never lies before the due date then. */
export const atTheLatest = computed(
  "At the latest",
  ifLive(
    `IF(NOT(Ready_Change),"check settings",IF(AND(ISNUMBER([@[Limit day]]),[@[Own months]]&[@[Team day]]<>""),MAX([@[Limit day]],[@[Change due]]),[@[Limit day]]))`,
  ),
  { format: DATE, width: 16 },
);

const changeRules = [
  { look: "act", words: ["past limit", "overdue"] },
  { look: "missing", words: [CHECK_DATE, NO_DATE, "kind not known", CHECK_SETTINGS] },
  { look: "soon", words: ["due soon"] },
  { look: "quiet", words: ["later", "no set change"] },
] as const;

/** In the steps of src/columns/change-state.ts; here a limit that comes near reads `due soon` also where no change is set. */
export const change = computed(
  "Change",
  ifLive(
    `IF(NOT(Ready_Change),"check settings",IF(OR([@[Device day]]="check date",[@[Stoma after device]]="yes"),"check date",IF([@[At the latest]]<As_of,"past limit",IF([@[Change due]]<As_of,"overdue",[@[Change ahead]]))))`,
  ),
  { format: PLAIN, width: 16, rules: changeRules },
);

export const daysLeft = computed(
  "Days left",
  `IF([@Change]="check date","",IF(ISNUMBER([@[Change due]]),[@[Change due]]-As_of,IF(ISNUMBER([@[At the latest]]),[@[At the latest]]-As_of,"")))`,
  { format: "0", width: 8 },
);
