/** What a cell holds, read from its token by the rules of the format. */
import type { CellFormula, CellValue, PackageCell } from "../contents";
import { decodeEscapes } from "../../xlsx/escaped-strings";
import { isTrue, wholeNumber } from "../parts/values";
import { damaged } from "../../xlsx/xml/damaged";
import type { StoredFormula } from "./store";
import type { CellToken, FormulaToken } from "./tokens";

/** What cells point to elsewhere in the package. */
export interface CellSurroundings {
  readonly partName: string;
  readonly strings: readonly string[];
  readonly dynamicMarks: ReadonlySet<number>;
}

export function storedFormula(token: CellToken, formula: FormulaToken, around: CellSurroundings): StoredFormula {
  const kind = kindOf(formula.type) ?? damaged(around.partName, formula.start, "a formula is of no known kind");
  return {
    text: formula.text,
    kind,
    ...(formula.group === undefined ? {} : { group: formula.group }),
    ...(formula.ref === undefined ? {} : { ref: formula.ref }),
    isDynamic: kind === "array" && around.dynamicMarks.has(token.cellMetadata),
  };
}

function kindOf(type: string): CellFormula["kind"] | undefined {
  return type === "normal" || type === "shared" || type === "array" || type === "dataTable" ? type : undefined;
}

export function valueOf(token: CellToken, around: CellSurroundings): CellValue {
  const { content } = token;
  if (content === undefined) return null;
  switch (token.type) {
    case "n":
      return numberOf(content, token, around.partName);
    case "s":
      return (
        around.strings[wholeNumber(content, -1)] ??
        damaged(around.partName, token.start, "a cell names a text that is not there")
      );
    case "inlineStr":
      return content;
    case "str":
    case "d":
      return decodeEscapes(content);
    case "b":
      return isTrue(content.trim());
    case "e":
      return { error: content };
    default:
      return damaged(around.partName, token.start, `a cell is of the unknown kind "${token.type.slice(0, 20)}"`);
  }
}

function numberOf(content: string, token: CellToken, partName: string): number | null {
  const text = content.trim();
  if (text === "") return null;
  const value = Number(text);
  return Number.isFinite(value) ? value : damaged(partName, token.start, "a cell's number is none");
}

export function typeOf(value: CellValue, type: string): PackageCell["type"] {
  if (value === null) return "blank";
  if (typeof value === "number") return "number";
  if (typeof value === "boolean") return "boolean";
  if (typeof value === "object") return "error";
  return type === "d" ? "date" : "text";
}
