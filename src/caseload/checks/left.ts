/**
 * What a check leaves in the balloon: nothing, more than its label allows, not what was agreed, or nobody wrote it down.
 * Figures that agree say nothing of that: 5 mL came out as expected, and none was put back.
 */
import type { SheetValue } from "../../columns/sheet-block";
import { rounded } from "../../worksheet/numbers";
import { ABOVE_LABEL, LEFT_EMPTY, NOT_AGREED_FILL, PUT_IN_NOT_KNOWN } from "./words";
import { type CaseloadColumn } from "../column";
import { hidden } from "../shown";

/**
 * @param lossFor the loss to act on, mL, of a balloon with this fill
 * @returns "" where what was put in is as agreed, or nothing is known to compare it with
 */
export function leftOf(put: SheetValue, fill: SheetValue, most: SheetValue, lossFor: (fill: number) => number): string {
  if (put === 0) return LEFT_EMPTY;
  if (!isAbove(put)) return PUT_IN_NOT_KNOWN;
  if (isAbove(most) && put > most) return ABOVE_LABEL;
  if (!isAbove(fill) || rounded(Math.abs(put - fill)) <= lossFor(fill)) return "";
  return put > lossFor(fill) ? NOT_AGREED_FILL : LEFT_EMPTY;
}

const isAbove = (value: SheetValue): value is number => typeof value === "number" && value > 0;

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
