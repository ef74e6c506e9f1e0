/**
 * Reads what is printed on a tube or its box: `14 Fr x 2.3 cm, 5 mL`.
 *
 * Only a number with its unit is read. Two values of one unit (`3-5 mL`, `5 mL, max 7 mL`) are not chosen between:
 * the larger may overfill a balloon, the smaller may let the tube out.
 */
import { cited } from "../worksheet/cited";
import { cellText, SheetError, wholeFault } from "../worksheet/error";
import { numberOfText } from "../worksheet/numbers";
import { isRestated, LARGEST_FRENCH, readPrintedNumbers, type PrintedNumber, type PrintUnit } from "./printed-numbers";

const PLURALS: Readonly<Record<PrintUnit, string>> = { Fr: "sizes", mm: "diameters", cm: "lengths", mL: "volumes" };

/** The one number with this unit; "" where none is printed. */
export function valueOf(unit: PrintUnit, list: readonly PrintedNumber[]): number | "" | SheetError {
  let only: number | undefined;
  let first: PrintedNumber | undefined;
  let several = false;
  for (const printed of list) {
    if (unit === "Fr" && printed.unit === "gauge") return new SheetError("G means gauge; write Fr");
    if (printed.unit !== unit) continue;
    const value = numberOfText(printed.text);
    if (value instanceof SheetError) return value;
    if (
      printed.broken ||
      value === null ||
      value <= 0 ||
      printed.negative ||
      (unit === "Fr" && value > LARGEST_FRENCH)
    ) {
      return new SheetError(`${cited(`${printed.text} ${unit}`)} cannot be meant: read the tube again`);
    }
    only ??= value;
    several ||= first !== undefined && (value !== only || !isRestated(first, printed));
    first ??= printed;
  }
  return several ? new SheetError(`two ${PLURALS[unit]}: enter them yourself`) : (only ?? "");
}

export const readPrint = (raw: string): readonly PrintedNumber[] | SheetError =>
  raw.includes("?") ? wholeFault`${cellText(raw)} is in doubt: read the tube again` : readPrintedNumbers(raw);
