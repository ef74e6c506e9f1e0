/** What a check found, in a word: as BALLOONSTATE, with the clinic's settings, and what else may be wrong with a row. */
import { CHECK_DATE } from "../../columns/state-words";
import { CHECK_SETTINGS } from "../ready";
import {
  CLOUDY,
  leftBadly,
  measuredWords,
  MILKY,
  NOT_AGREED_FILL,
  NOTHING_CAME,
  PUT_IN_NOT_KNOWN,
  waterMissing,
  WHICH_DEVICE,
} from "./words";
import { PLAIN, TENTHS, type CaseloadColumn } from "../column";
import { isOneOf, wordOf } from "../phrases";
import { computed, hidden } from "../shown";

export const lossMl = computed(
  "Loss mL",
  `IF(AND(ISNUMBER([@[Expected mL]]),ISNUMBER([@[Out mL]])),IF(AND([@[Out mL]]>=0,[@[Out mL]]<=N(Volume_Most)),ROUND([@[Expected mL]]-[@[Out mL]],9),""),"")`,
  { format: TENTHS, width: 8 },
);

export const lossAWeek = computed(
  "Loss mL a week",
  `IF(AND(Ready_Balloon,ISNUMBER([@[Loss mL]]),ISNUMBER([@[Days since fill]])),IF([@[Days since fill]]>=Rate_Days,ROUND(7*[@[Loss mL]]/[@[Days since fill]],9),""),"")`,
  { format: TENTHS, width: 9 },
);

/** `Look`: what came out, or the word that it asks for; a word that the list does not have is asked about like `cloudy`. */
export const stateSteps: readonly CaseloadColumn[] = [
  hidden(
    "Look",
    `IF(COUNT(SEARCH("milk",[@Looked]),SEARCH("yellow",[@Looked]),SEARCH("feed",[@Looked]))>0,"milky fluid",IF(${isOneOf(wordOf("[@Looked]"), ["", "clear", "nothing came"])},LOWER(TRIM([@Looked])),"cloudy: ask"))`,
  ),
  hidden(
    "Nothing missing",
    `IF([@Look]="nothing came","not measured",IF(IF(N([@[Label mL]])>0,N([@[Expected mL]])>[@[Label mL]],FALSE),"more than put in",IF([@Left]<>"",[@Left],IF([@Look]="cloudy: ask",[@Look],IF([@[Device in]]="","check date",IF(OR([@Current]="no",N([@[Agreed mL]])>0),"as filled","not measured"))))))`,
  ),
  hidden(
    "Figures",
    `IF(LEN([@[Loss mL]])=0,"not measured",IF(OR([@[Loss mL]]<0-Over_Read,IF(N([@[Label mL]])>0,[@[Out mL]]>[@[Label mL]],FALSE)),"more than put in",IF([@[Out mL]]<=ROUND([@[Expected mL]]*Loss_Half,9),"half or less",IF([@[Loss mL]]>IF([@[Expected mL]]<=Fill_Small,Loss_Small,Loss_Large),"low",[@[Nothing missing]]))))`,
  ),
  hidden(
    "Found and left",
    `IF(OR([@Figures]="half or less",[@Figures]="low"),[@Figures],IF(OR([@Left]="left empty",[@Left]="above the label"),[@Left],IF(OR([@Look]="milky fluid",AND([@Look]="nothing came",LEN([@[Loss mL]])=0)),[@Look],[@Figures])))`,
  ),
];

export const state = computed(
  "State",
  `IF(COUNTA([@ID],[@[Checked on]],[@[Out mL]],[@[Put in mL]])=0,"",IF(IF(ISNUMBER([@[Out mL]]),[@[Out mL]]=0,FALSE),"empty",IF(NOT(Ready_Balloon),"check settings",IF([@Key]="","device not clear",[@[Found and left]]))))`,
  {
    format: PLAIN,
    width: 17,
    rules: [
      { look: "act", words: [...waterMissing, ...leftBadly, MILKY, NOTHING_CAME, "more than put in"] },
      { look: "soon", words: [PUT_IN_NOT_KNOWN, NOT_AGREED_FILL, CLOUDY] },
      { look: "missing", words: ["not measured", WHICH_DEVICE, CHECK_DATE, CHECK_SETTINGS] },
      { look: "quiet", words: ["as filled"] },
    ],
  },
);

/** Only checks with figures; one without neither counts nor ends a row of low ones. */
export const lowSteps: readonly CaseloadColumn[] = [
  hidden("Measured", `IF(AND(ISNUMBER([@Tag]),ISNUMBER([@[Out mL]]),${isOneOf("[@State]", measuredWords)}),[@Tag],"")`),
  hidden("Measured in order", `IFERROR(SMALL(Check_Measured,ROW()-ROW(Check_Top)),9*10^15)`),
  hidden("Measured tag before", `IF(ISNUMBER([@Measured]),IFERROR(LOOKUP([@Measured]-1,Check_MeasuredInOrder),0),0)`),
  hidden(
    "Measured before",
    `IF(INT([@[Measured tag before]]/10^10)=INT(N([@Measured])/10^10),IF(ISNUMBER([@Measured]),IF(INDEX(Check_Device,MOD([@[Measured tag before]],10^5))=[@[Device in]],MOD([@[Measured tag before]],10^5),""),""),"")`,
  ),
  hidden("Low", `IF(ISNUMBER([@Measured]),IF(${isOneOf("[@State]", ["empty", "half or less", "low"])},1,0),"")`),
  hidden("Low before", `IF(ISNUMBER([@[Measured before]]),INDEX(Check_Low,[@[Measured before]]),0)`),
];

/** Counted up to three, the most that the setting allows to ask for. */
export const lowInARow = computed(
  "Low in a row",
  `IF([@Low]=1,1+IF([@[Low before]]=1,1+INDEX(Check_LowBefore,[@[Measured before]]),0),[@Low])`,
  { format: "0", width: 8 },
);
