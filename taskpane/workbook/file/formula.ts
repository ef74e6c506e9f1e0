/**
 * Formulas of a description in the spelling of a file: `TUBE.X(` is `_xldudf_TUBE_X(`, functions newer than the format
 * carry `_xlfn.` (src/formula/newer.ts). The grid's dialect does the same; a test compares both over the whole caseload.
 */
import { NAMESPACE } from "../../../functions/formula-text";
import { LONGEST_FORMULA, LONGEST_TEXT } from "../../../src/formula/limits";
import { filePrefix } from "../../../src/formula/newer";
import { boundNames, inFileAsBound } from "../embedded/formulas/boundNames";
import { isFunctionName, tokens, untokened } from "../embedded/formulas/tokens";

const OURS = `${NAMESPACE}.`;
const OURS_IN_FILES = `_xldudf_${NAMESPACE}_`;

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
  const bound = boundNames(all);
  return untokened(
    all.map((token, at) => {
      if (token.kind === "word" && bound.has(token.text.toUpperCase())) return inFileAsBound(token);
      if (!isFunctionName(all, at)) return token;
      const name = token.text.toUpperCase();
      if (NOT_WRITTEN.has(name)) throw new Error(`${name} cannot be written into a new file: ${formula}`);
      if (name.startsWith(OURS)) return { ...token, text: OURS_IN_FILES + name.slice(OURS.length) };
      return { ...token, text: filePrefix(name) === "" ? token.text : filePrefix(name) + name };
    }),
  );
}

export const callsOurs = (formula: string): boolean => formula.toUpperCase().includes(OURS);
