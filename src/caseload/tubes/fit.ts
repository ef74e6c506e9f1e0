/** Whether the device still fits, as STOMAFIT, FREEPLAY and MARKSHIFT say it, and whether the measurement is still good. */
import { CHECK_SETTINGS } from "../ready";
import { PLAIN, type CaseloadColumn } from "../column";
import { ifLive, isPast } from "../phrases";
import { computed, hidden } from "../shown";

/**
 * A measurement is still good when its day is known and not too long ago, and the weight has not changed too much since;
 * of a child, or where the age is not known, both weights must be there. Play and mark are the tube's, not the opening's:
 * those of the tube before say nothing of this one.
 */
export const fitSteps: readonly CaseloadColumn[] = [
  hidden(
    "Recent",
    `IF(${isPast("[@[Measured on]]")},IF([@[Measured on]]>=IF([@[Age class]]="adult",Day_MeasureAdult,Day_MeasureChild),"yes","no"),"no")`,
    "fit",
  ),
  hidden(
    "Of this tube",
    `IF(AND([@Recent]="yes",ISNUMBER([@[Device day]])),IF([@[Measured on]]>=[@[Device day]],"yes","no"),"no")`,
    "fit",
  ),
  hidden(
    "Weight change",
    `IF(COUNT([@[Weight kg]],[@[Weight then kg]])=1+1,IF(MIN([@[Weight kg]],[@[Weight then kg]])>0,ROUND(100*ABS([@[Weight kg]]/[@[Weight then kg]]-1),9),""),"")`,
    "fit",
  ),
  hidden(
    "Still good",
    `IF(AND([@Recent]="yes",IF(ISNUMBER([@[Weight change]]),[@[Weight change]]<Grow_Percent,[@[Age class]]="adult")),"in range","measure again")`,
    "fit",
  ),
  hidden(
    "Opening cm",
    `IF(COUNT([@[Lying cm]],[@[Sitting cm]])=1+1,IF(AND(MIN([@[Lying cm]],[@[Sitting cm]])>0,MAX([@[Lying cm]],[@[Sitting cm]])<=Length_Most),MAX([@[Lying cm]],[@[Sitting cm]]),""),"")`,
    "fit",
  ),
  hidden(
    "Length usable",
    `IF(AND([@[Opening cm]]<>"",IFERROR(AND([@[Length cm]]>0,[@[Length cm]]<=Length_Most),FALSE)),"yes","no")`,
    "fit",
  ),
  hidden(
    "Fit flat",
    `IF([@[Length usable]]="no","not measured",IF(OR([@[Length cm]]<[@[Opening cm]],[@[Length cm]]<ROUND(([@[Lying cm]]+[@[Sitting cm]])/(1+1)+Slack_Least,9)),"too short",IF([@[Length cm]]>ROUND([@[Opening cm]]+Slack_Most,9),"too long",IF([@[Sitting cm]]<[@[Lying cm]],"read again",[@[Still good]]))))`,
    "fit",
  ),
  hidden(
    "Fit long",
    `IF(IF(ISNUMBER([@[Play mm]]),[@[Play mm]]<0,TRUE),"not measured",IF([@[Play mm]]<Play_Least,"tight",IF([@[Play mm]]>Play_Most,"loose",IF([@[Of this tube]]="yes",[@[Still good]],"measure again"))))`,
    "fit",
  ),
  hidden(
    "Mark moved",
    `IF(COUNT([@[Mark then cm]],[@[Mark now cm]])=1+1,IF(AND([@[Mark then cm]]>0,[@[Mark now cm]]>=0,MAX([@[Mark then cm]],[@[Mark now cm]])<=Mark_Most),ROUND([@[Mark now cm]]-[@[Mark then cm]],9),""),"")`,
    "fit",
  ),
  hidden(
    "Mark long",
    `IF([@[Mark moved]]="","not measured",IF([@[Mark now cm]]=0,"further out",IF(ABS([@[Mark moved]])<=Mark_Tol,IF([@[Of this tube]]="yes","same mark","measure again"),IF([@[Mark moved]]<0,"further out","further in"))))`,
    "fit",
  ),
];

const fitRules = [
  { look: "act", words: ["too short", "tight", "further out"] },
  { look: "soon", words: ["too long", "loose", "further in", "read again", "measure again"] },
  { look: "missing", words: ["not measured", CHECK_SETTINGS] },
  { look: "quiet", words: ["in range", "same mark"] },
] as const;

export const fit = computed(
  "Fit",
  ifLive(
    `IF(NOT(Ready_Fit),"check settings",IF([@Form]="low-profile",[@[Fit flat]],IF([@Form]="long",[@[Fit long]],"not measured")))`,
  ),
  { format: PLAIN, width: 14, rules: fitRules, onlyWith: "fit" },
);

/** Marks count from the inner end: a smaller number now means further out. */
export const mark = computed(
  "Mark",
  `IF(AND([@Live]="live",[@Form]="long"),IF(Ready_Fit,[@[Mark long]],"check settings"),"")`,
  { format: PLAIN, width: 13, rules: fitRules, onlyWith: "fit" },
);
