/**
 * To do: the most urgent single thing of a row. Each small column looks up what the row reads in the list of the settings
 * sheet, which stands from the most urgent down (when.ts); the least place wins, and *To do* says its words.
 */
import { URGENCY, wordsThatAsk } from "../../urgency";
import { PLAIN, type CaseloadColumn } from "../../column";
import { isOneOf, wordOf } from "../../phrases";
import { computed, reason, type AllShown } from "../../shown";

/** Where the list of the settings sheet has what stands here. */
const placeOf = (text: string): string => `IFERROR(MATCH(${text},ToDo_When,0),10^9)`;
const firstOf = <const Texts extends readonly string[]>(...texts: AllShown<Texts>): string =>
  `MIN(${texts.map(placeOf).join(",")})`;

export const steps: readonly CaseloadColumn[] = [
  reason(
    "Site state",
    `IF(AND([@[Site word]]="leaking",[@Tract]<>"mature by weeks"),"leaking, not mature",IF(AND([@[Site word]]="infected",N(Site_Act)>0,ISNUMBER([@[Seen day]]),As_of-N([@[Seen day]])>Site_Act),"infected, long ago",[@[Site word]]))`,
    "spare",
  ),
  reason(
    "Kind open",
    `IF(OR([@Change]="kind not known",[@Held]="not known",[@End]="not known",AND([@Held]<>"balloon",[@[Balloon signs]]="yes")),"not known","")`,
  ),
  reason(
    "What cannot wait",
    `IF(COUNT(SEARCH("insulin",[@[Cannot wait]]),SEARCH("seizure",[@[Cannot wait]]),SEARCH("fluid",[@[Cannot wait]]),SEARCH("glucose",[@[Cannot wait]]))>0,"cannot wait",IF(${isOneOf(wordOf("[@[Cannot wait]]"), ["", "not known"])},"not known",""))`,
    "plan",
  ),
  reason(
    "Nobody trained",
    `IF(OR(${isOneOf(wordOf("[@[Trained for tube out]]"), ["put in spare", "hold opening only"])},${wordOf("[@[Own tube-out plan]]")}="yes"),"",[@[What cannot wait]])`,
    "plan",
  ),
  /* What has no word of its own in To do: a booking does not hide it. */
  reason(
    "Entries",
    `IF(OR([@[Rows of the key]]>1,[@[Too early]]="yes",[@[Gap of turning]]&[@[Gap of readings]]<>"",AND([@[Spare there]]="yes",[@[Spare size]]&[@[Spare length]]<>""),IF(COUNT([@[Fill mL]],[@[Most mL]])=1+1,AND([@[Most mL]]>0,[@[Fill mL]]>[@[Most mL]]),FALSE)),"contradictory","")`,
  ),
  reason(
    "Spare soon",
    `IF(ISNUMBER([@[Spare expires]]),IF([@[Spare expires]]<MAX(As_of+Spare_Days,[@[Change due]]),"soon",""),"")`,
    "spare",
  ),
];

/** Each gives the place of its most urgent words. */
export const keyColumns: readonly CaseloadColumn[] = [
  reason("Bedside", firstOf(`"Balloon: "&[@Balloon]`, `"Fit: "&[@Fit]`, `"Mark: "&[@Mark]`)),
  reason("Site now", firstOf(`"Site: "&[@[Site state]]`)),
  reason(
    "Dates",
    firstOf(
      `"Change: "&[@Change]`,
      `"Change: "&[@Change]&", "&[@Booking]`,
      `"Booking: "&[@Booking]`,
      `"Tract: "&[@Tract]`,
    ),
  ),
  reason(
    "People",
    firstOf(
      `"Nobody trained: "&[@[Nobody trained]]`,
      `[@Changer]&" changes: "&[@End]`,
      `[@Changer]&" changes: "&[@Held]`,
    ),
  ),
  reason("Checks", firstOf(`"Check due: "&[@Late]`, `"Kind: "&[@[Kind open]]`, `"Entries: "&[@Entries]`)),
  reason("Supplies", firstOf(`[@Held]&" "&[@End]&", spare: "&[@Spare]`, `"Spare expires: "&[@[Spare soon]]`)),
  reason(
    "Measuring",
    firstOf(
      `"Review: "&[@Review]`,
      `"Missing: "&IF(OR([@[Missing or contradictory]]="",[@[Missing or contradictory]]="check settings"),[@[Missing or contradictory]],"something")`,
    ),
  ),
];

export const behind: readonly CaseloadColumn[] = [
  reason(
    "Away",
    `IF(OR([@Live]="hold",[@Live]="hospital"),IF(N(IF([@Live]="hold",Hold_Days,Hospital_Days))<=0,"check settings",IF(AND(ISNUMBER([@[Status day]]),As_of-N([@[Status day]])>IF([@Live]="hold",Hold_Days,Hospital_Days)),"too long","known")),"")`,
  ),
  reason(
    "First",
    `MIN([@Bedside],[@[Site now]],[@Dates],[@People],[@Checks],[@Supplies],[@Measuring],ROWS(ToDo_When))`,
  ),
  reason(
    "Days counted",
    `IF([@Change]="overdue",As_of-[@[Change due]],IF(ISNUMBER([@[Due first]]),[@[Due first]]-As_of,""))`,
  ),
  reason(
    "To do detail",
    `IF([@Dates]<>[@First],[@Balloon],IF([@Booked]<>"",[@Booked],[@[Days counted]]&IF([@[Days counted]]=1," day"," days")))`,
  ),
];

/** Of a row that says nothing: behind all others. */
export const urgency = reason(
  URGENCY,
  `IF([@Live]="live",INDEX(ToDo_Place,[@First]),IFERROR(INDEX(ToDo_Place,MATCH([@Live]&": "&[@Away],ToDo_When,0)),MAX(ToDo_Place)+1))`,
);

export const toDo = computed(
  "To do",
  `IF([@Urgency]>MAX(ToDo_Place),"",SUBSTITUTE(INDEX(ToDo_Says,MATCH([@Urgency],ToDo_Place,0)),"…",[@[To do detail]]))`,
  {
    format: PLAIN,
    width: 31,
    /* A rule for words that begin alike stands behind those for the words themselves. */
    rules: [
      { look: "act", words: wordsThatAsk("act") },
      { look: "soon", words: wordsThatAsk("soon") },
      { look: "missing", words: wordsThatAsk("missing") },
      { look: "arranged", words: wordsThatAsk("arranged") },
      { look: "quiet", words: wordsThatAsk("quiet") },
    ],
  },
);
