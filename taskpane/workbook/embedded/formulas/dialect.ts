/**
 * The file's spelling of function names and the grid's. In a file `TUBE.X(` is `_xldudf_TUBE_X(` and functions newer than
 * the format carry `_xlfn.` (MS-XLSX 2.2.2; [MS-OI29500]); in the grid both stand as people type them.
 */
import { NAMESPACE } from "../../../../functions/grid";
import { filePrefix } from "../../../../src/formula/newer";
import { boundNames, inFileAsBound } from "./boundNames";
import { isFunctionName, tokens, untokened } from "./tokens";

const OURS_IN_FILES = `_xldudf_${NAMESPACE}_`;
const OURS = `${NAMESPACE}.`;
/** Names given by LET and LAMBDA carry this one. */
const PARAMETER = /^_xlpm\./i;
const NEWER = /^_xlfn\.(?:_xlws\.)?/i;
/** Excel writes these for the operators @ and #, which the engine does not have. */
const OPERATORS = new Set(["_XLFN.SINGLE", "_XLFN.ANCHORARRAY"]);

/** Grid spelling of a formula as a file holds it. No "=" on either side. */
export function fromFile(formula: string): string {
  if (!formula.includes("_xl")) return formula;
  return untokened(
    tokens(formula).map((token) => {
      if (token.kind !== "word" || OPERATORS.has(token.text.toUpperCase())) return token;
      if (token.text.startsWith(OURS_IN_FILES)) {
        return { kind: "word", text: OURS + token.text.slice(OURS_IN_FILES.length) };
      }
      return { kind: "word", text: token.text.replace(NEWER, "").replace(PARAMETER, "") };
    }),
  );
}

/** File spelling of a formula as the grid holds it. No "=" on either side. */
export function toFile(formula: string): string {
  const all = tokens(formula);
  const bound = boundNames(all);
  return untokened(
    all.map((token, at) => {
      if (token.kind !== "word") return token;
      const upper = token.text.toUpperCase();
      if (bound.has(upper)) return inFileAsBound(token);
      if (!isFunctionName(all, at)) return token;
      if (upper.startsWith(OURS)) return { kind: "word", text: OURS_IN_FILES + upper.slice(OURS.length) };
      const prefix = filePrefix(upper);
      return prefix === "" ? token : { kind: "word", text: prefix + upper };
    }),
  );
}

/** Whether a formula calls one of our functions (grid spelling). */
export const callsOurs = (formula: string): boolean => formula.toUpperCase().includes(OURS);
