/**
 * Reads a French (Charrière) size as people write it: `14 Fr`, `CH14`, `Ch. 14`, `FG 14`, `14,0`, `14 Fr x 2.3 cm`.
 *
 * Never guesses: two sizes, a question mark, gauge, millimetres, a letter against the number are refused with a sentence.
 */
import type { Cell } from "../worksheet/cell";
import { cellText, SheetError, wholeFault } from "../worksheet/error";
import { numberOfText } from "../worksheet/numbers";
import { isTooSmallForASize, LARGEST_FRENCH, printedWords, readPrintedNumbers } from "./printed-numbers";

export { LARGEST_FRENCH };

/** Beside them a number without a unit is a size: `PEG 15`. Not "balloon", whose number may be its volume. */
const WORDS_OF_TUBES = new Set([
  ...["peg", "pej", "rig", "prg", "gastrostomy", "gtube", "g", "j", "gj"],
  ...["tube", "button", "bumper", "size", "low", "profile", "long"],
]);

const outside = new SheetError(`must be above 0 and at most ${LARGEST_FRENCH} Fr`);

const inLimits = (size: number): number | SheetError => (size > 0 && size <= LARGEST_FRENCH ? size : outside);

function sizeOfText(raw: string): number | SheetError {
  const plain = numberOfText(raw);
  if (plain instanceof SheetError) return plain;
  if (plain !== null) return inLimits(plain);
  if (raw.includes("?")) return wholeFault`${cellText(raw)} is in doubt: look at the tube, then write one size`;

  const numbers = readPrintedNumbers(raw);
  if (numbers.some(({ unit }) => unit === "gauge")) return wholeFault`G means gauge; write Fr`;
  if (numbers.some(({ broken }) => broken)) {
    return wholeFault`${cellText(raw)} has a letter or a sign against its number: write it like 14 Fr`;
  }
  const sizes = new Set<number>();
  const unmarked: number[] = [];
  let isSum = false;
  for (const number of numbers) {
    const { text, unit, isShared, negative, behind } = number;
    if (unit !== undefined && unit !== "Fr") continue;
    if (negative) return outside;
    if (unit === undefined && sizes.size > 0 && isTooSmallForASize(number)) continue;
    const value = numberOfText(text);
    if (value instanceof SheetError) return value;
    isSum ||= behind === "plus" && sizes.size > 0;
    if (unit === "Fr" && !isShared) sizes.add(value ?? NaN);
    else unmarked.push(value ?? NaN);
  }
  if (numbers.length === 1 && unmarked.length === 1 && printedWords(raw).every((word) => WORDS_OF_TUBES.has(word))) {
    return inLimits(unmarked[0]!);
  }
  const [size] = sizes;
  if (isSum || sizes.size > 1 || unmarked.length > 1 || (unmarked.length === 1 && size !== undefined)) {
    return wholeFault`${cellText(raw)} holds more than one number: write one size`;
  }
  if (size === undefined) return wholeFault`no French size in ${cellText(raw)}: write it like 14 Fr`;
  return inLimits(size);
}

/** Reads a cell that holds a French size; the number 0 is a blank. */
export function readFrench(cell: Exclude<Cell, null>): number | null | SheetError {
  if (typeof cell === "number") {
    return cell === 0 ? null : inLimits(cell);
  }
  if (typeof cell === "boolean") return new SheetError("must be a French size such as 14 Fr");
  return sizeOfText(cell);
}
