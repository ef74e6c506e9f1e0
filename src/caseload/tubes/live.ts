/**
 * Whether a row's states count today: `live`, `hospital`, `hold`, or "" for a blank row and for somebody who is gone. A
 * status that is missing or no word of the list counts as active, so that nothing is kept back.
 */
import { formula, type FormulaTemplate } from "../../columns/formula";
import { letting, PLAIN, type CaseloadColumn, type Slots } from "../column";
import { is, wordIn } from "../reading";

/** Where one of these is filled in, the row is somebody's. */
const filledIn = [
  "ID",
  "Status",
  "Born",
  "Access",
  "Stoma made",
  "Held by",
  "Size Fr",
  "Device in",
  "Fill mL",
] as const;

export const live: CaseloadColumn = {
  header: "Live",
  kind: "computed",
  format: PLAIN,
  width: 4,
  isHidden: true,
  formula: (cell) => {
    const [first, ...rest] = filledIn.map((header) => cell(header));
    const all = rest.reduce((sum, one) => formula`${sum},${one}`, first!);
    return formula`IF(COUNTA(${all})=0,"",${letting(
      { status: wordIn(cell("Status")) },
      formula`IF(${is("status", "left")},"",IF(${is("status", "on hold")},"hold",IF(${is("status", "in hospital")},"hospital","live")))`,
    )})`;
  },
};

/** A result for live rows only. */
export const ifLive = (cell: Slots, result: FormulaTemplate): FormulaTemplate =>
  formula`IF(${is(cell("Live"), "live")},${result},"")`;
