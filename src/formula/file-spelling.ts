/**
 * A file's spelling of formulas and people's. In a file `TUBE.X(` is `_xldudf_TUBE_X(`, functions newer than the format
 * carry `_xlfn.`, names given by LET and LAMBDA `_xlpm.` ([MS-XLSX] 2.2.2; [MS-OI29500]). No "=" on either side.
 */
import { boundNames } from "./bound-names";
import { filePrefix } from "./newer";
import { oursFromFile, oursInFile } from "./ours";
import { isFunctionName, tokens, untokened, type Token } from "./tokens";

const PARAMETER = /^_xlpm\./i;
const NEWER = /^_xlfn\.(?:_xlws\.)?/i;
/** Excel writes these for the operators @ and #: they are no functions that people type. */
const OPERATORS = new Set(["_XLFN.SINGLE", "_XLFN.ANCHORARRAY"]);

/** As people type it. */
export function fromFile(formula: string): string {
  if (!formula.includes("_xl")) return formula;
  return untokened(
    tokens(formula).map((token): Token => {
      if (token.kind !== "word" || OPERATORS.has(token.text.toUpperCase())) return token;
      const plain = token.text.replace(NEWER, "").replace(PARAMETER, "");
      return { kind: "word", text: oursFromFile(token.text) ?? plain };
    }),
  );
}

/** As a file holds it. */
export function toFile(formula: string): string {
  const all = tokens(formula);
  const bound = boundNames(all);
  return untokened(
    all.map((token, at): Token => {
      if (token.kind !== "word") return token;
      const capitals = token.text.toUpperCase();
      if (bound.has(capitals)) return { kind: "word", text: `_xlpm.${token.text}` };
      if (!isFunctionName(all, at)) return token;
      const prefix = filePrefix(capitals);
      return { kind: "word", text: oursInFile(token.text) ?? (prefix === "" ? token.text : prefix + capitals) };
    }),
  );
}
