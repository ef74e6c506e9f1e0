/**
 * Pieces of formulas that say in plain Excel what a function of ours says: of numbers and real dates, within the limits
 * of the function's own arguments. What only the function reads (`14 Fr`, `5 mL`, a date written as a text) is refused
 * here with its error, never read another way: Excel itself would take `3/4/26` for a day.
 *
 * The error is written out: every program knows it, and no guess at what a text might mean in a sum is asked for it.
 */
import { FIRST_DAY, LAST_DAY } from "../../maths/calendar";
import type { CellError } from "../../worksheet/error";
import { SheetError } from "../../worksheet/error";
import type { PlainNumbers } from "../../worksheet/define";
import type { Cell } from "../../worksheet/cell";
import { formula, type ColumnSlot, type FormulaTemplate } from "../formula";
import { spelled } from "../spelling";
import { isOnSheet, listed } from "./guards";
import type { Using } from "./recipe";

export const REFUSED = "#VALUE!";

/** `is` where all tests hold, else the error. */
export const whereAll = (tests: readonly FormulaTemplate[], is: FormulaTemplate): FormulaTemplate =>
  formula`IF(AND(${listed(tests)}),${is},${REFUSED})`;

/** As for the function's own argument: `ISNUMBER(C7)`, `C7>0`, `C7<=60`. */
export const numberIn = (cell: ColumnSlot, limits: PlainNumbers | undefined): readonly FormulaTemplate[] => [
  formula`ISNUMBER(${cell})`,
  ...within([cell], limits),
];

/** A number of the settings sheet may have been changed to what the function would refuse; one in the formula may not. */
export const settingIn = (written: string, limits: PlainNumbers | undefined): readonly FormulaTemplate[] =>
  isOnSheet(written) ? within([written], limits) : [];

function within(value: FormulaTemplate, limits: PlainNumbers | undefined): readonly FormulaTemplate[] {
  if (!limits) return [];
  const { min, max, above, below, whole, zeroIsBlank } = limits;
  return [
    ...(above > -Infinity ? [formula`${value}>${above}`] : []),
    ...(min > -Infinity ? [formula`${value}>=${min}`] : []),
    ...(zeroIsBlank && above < 0 && min <= 0 ? [formula`${value}<>0`] : []),
    ...(max < Number.MAX_VALUE ? [formula`${value}<=${max}`] : []),
    ...(below < Infinity ? [formula`${value}<${below}`] : []),
    ...(whole ? [formula`${value}=INT(${value})`] : []),
  ];
}

/** A real date, from 1 March 1900 on; N makes 0 of a text. */
export const isDay = (cell: ColumnSlot): readonly FormulaTemplate[] => [
  formula`N(${cell})>=${FIRST_DAY}`,
  formula`N(${cell})<${LAST_DAY + 1}`,
];

const unread = new SheetError("is a text, which only a TUBE function reads");

/** Whether plain formulas pass a cell over that a function may read. */
export const isTyped = (cell: Cell | CellError): boolean => typeof cell === "string" && spelled(cell) !== "";

/** What a plain formula gives for a row with such a cell, by the argument that it would have been. */
export const refusedText = (argument: string): SheetError => unread.of(argument);

export const isPlain = ({ dialect }: Using): boolean => dialect === "plain";
