/** Formulas of a description on their way into a new file: in its spelling, and no longer than Excel allows. */
import { toFile } from "../../../src/formula/file-spelling";
import { LONGEST_FORMULA, LONGEST_TEXT } from "../../../src/formula/limits";
import { isFunctionName, tokens } from "../../../src/formula/tokens";

/** These need more than a prefix (a second one, or a place to spill into): no description uses them. */
const NOT_WRITTEN = new Set(["FILTER", "SORT", "LAMBDA"]);

/**
 * What only files spell out (prefixes, the table of a cell in the same row) does not count for Excel's limit, or Excel
 * could not read what it has written.
 */
const SAME_ROW = /[\p{L}\p{N}_.]+\[\[#This Row\],/gu;
const shownLength = (formula: string): number => 1 + formula.replace(SAME_ROW, "[@").length;

const tooLong = (what: string, text: string): Error =>
  new Error(`${what} is longer than Excel allows: ${text.slice(0, 80)}…`);

/** File spelling. No "=" on either side. */
export function inFile(formula: string): string {
  if (shownLength(formula) > LONGEST_FORMULA) throw tooLong("A formula", formula);
  const all = tokens(formula);
  const long = all.find(({ kind, text }) => kind === "text" && text.length - 2 > LONGEST_TEXT);
  if (long) throw tooLong("A text in a formula", long.text);
  const refused = all.find(({ text }, at) => isFunctionName(all, at) && NOT_WRITTEN.has(text.toUpperCase()));
  if (refused) throw new Error(`${refused.text} cannot be written into a new file: ${formula}`);
  return toFile(formula);
}
