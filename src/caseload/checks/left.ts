/**
 * What a check leaves in the balloon: nothing, more than its label allows, not what was agreed, or nobody wrote it down.
 * Figures that agree say nothing of that: 5 mL came out as expected, and none was put back.
 */
import { formula } from "../../columns/formula";
import type { SheetValue } from "../../columns/sheet-block";
import { rounded } from "../../worksheet/numbers";
import { PLAIN, type CaseloadColumn } from "../column";
import { isAbove } from "../reading";
import { currentIn } from "./order";
import { ABOVE_LABEL, LEFT_EMPTY, NOT_AGREED_FILL, PUT_IN_NOT_KNOWN } from "./words";

const hidden = { kind: "computed", format: PLAIN, width: 4, isHidden: true } as const;

/** The fill agreed for the device that this check was made on; only the device now in has one. */
export const agreedMl: CaseloadColumn = {
  ...hidden,
  header: "Agreed mL",
  formula: (cell) =>
    formula`IF(${currentIn(cell("Tube"), cell("Device in"))},IF(ISNUMBER(INDEX(Tube_Fill,${cell("Tube")})),INDEX(Tube_Fill,${cell("Tube")}),""),"")`,
};

/**
 * @param lossFor the loss to act on, mL, of a balloon with this fill
 * @returns "" where what was put in is as agreed, or nothing is known to compare it with
 */
export function leftOf(put: SheetValue, fill: SheetValue, most: SheetValue, lossFor: (fill: number) => number): string {
  if (put === 0) return LEFT_EMPTY;
  if (!isAbove(put)) return PUT_IN_NOT_KNOWN;
  if (isAbove(most) && put > most) return ABOVE_LABEL;
  return isAbove(fill) && rounded(Math.abs(put - fill)) > lossFor(fill) ? NOT_AGREED_FILL : "";
}

/** "" where what was put in is as agreed, or nothing is known to compare it with. */
export const left: CaseloadColumn = {
  ...hidden,
  header: "Left",
  formula: (cell) => {
    const [put, fill, most] = [cell("Put in mL"), cell("Agreed mL"), cell("Label mL")];
    const loss = formula`IF(N(${fill})<=Fill_Small,Loss_Small,Loss_Large)`;
    const isOther = formula`IF(N(${fill})>0,ROUND(ABS(N(${put})-N(${fill})),9)>${loss},FALSE)`;
    const isAboveLabel = formula`IF(N(${most})>0,N(${put})>N(${most}),FALSE)`;
    const known = formula`IF(${isAboveLabel},"${ABOVE_LABEL}",IF(${isOther},"${NOT_AGREED_FILL}",""))`;
    const read = formula`IF(ISNUMBER(${put}),IF(N(${put})=0,"${LEFT_EMPTY}",IF(N(${put})>0,${known},"${PUT_IN_NOT_KNOWN}")),"${PUT_IN_NOT_KNOWN}")`;
    return formula`IF(LEN(${cell("Key")})=0,"",${read})`;
  },
};
