/**
 * What a check leaves in the balloon: nothing, more than its label allows, not what was agreed, or nobody wrote it down.
 * Figures that agree say nothing of that: 5 mL came out as expected, and none was put back.
 */
import { type CaseloadColumn } from "../column";
import { hidden } from "../shown";

/** "" where what was put in is as agreed, or nothing is known to compare it with. */
export const leftColumns: readonly CaseloadColumn[] = [
  hidden(
    "Other fill",
    `IF(AND(Ready_Balloon,ISNUMBER([@[Put in mL]]),N([@[Agreed mL]])>0),IF(ROUND(ABS([@[Put in mL]]-[@[Agreed mL]]),9)>IF([@[Agreed mL]]<=Fill_Small,Loss_Small,Loss_Large),IF([@[Put in mL]]>IF([@[Agreed mL]]<=Fill_Small,Loss_Small,Loss_Large),"not the agreed fill","left empty"),""),"")`,
  ),
  hidden(
    "Left",
    `IF([@Key]="","",IF(IF(ISNUMBER([@[Put in, read]]),[@[Put in, read]]=0,FALSE),"left empty",IF(N([@[Put in, read]])<=0,"put in not known",IF(IF(N([@[Label mL]])>0,[@[Put in, read]]>[@[Label mL]],FALSE),"above the label",T([@[Other fill]])))))`,
  ),
];
