/**
 * The file's spelling of function names and the grid's. In a file `TUBE.X(` is `_xldudf_TUBE_X(` and functions newer than
 * the format carry `_xlfn.` (MS-XLSX 2.2.2; [MS-OI29500]); in the grid both stand as people type them.
 */
import { NEW_EXCEL_FUNCTIONS } from "@univerjs/engine-formula";
import { NAMESPACE } from "../../../../functions/grid";
import { boundNames, inFileAsBound } from "./boundNames";
import { isFunctionName, tokens, untokened } from "./tokens";

const OURS_IN_FILES = `_xldudf_${NAMESPACE}_`;
const OURS = `${NAMESPACE}.`;
/** Names given by LET and LAMBDA carry this one. */
const PARAMETER = /^_xlpm\./i;
const NEWER = /^_xlfn\.(?:_xlws\.)?/i;
/** Newer than the format, and missing from the engine's own list (0.25.1). */
const ALSO_NEWER = new Set(["CONCAT", "LET", "LAMBDA", "ISOMITTED"]);
const isNewer = (name: string): boolean =>
  ALSO_NEWER.has(name) || (NEW_EXCEL_FUNCTIONS as ReadonlySet<string>).has(name);
/** These two carry a second prefix on top. */
const WORKSHEET_ONLY = new Set(["FILTER", "SORT"]);
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
      if (!isNewer(upper)) return token;
      return { kind: "word", text: (WORKSHEET_ONLY.has(upper) ? "_xlfn._xlws." : "_xlfn.") + upper };
    }),
  );
}

/** Whether a formula calls one of our functions (grid spelling). */
export const callsOurs = (formula: string): boolean => formula.toUpperCase().includes(OURS);
