/**
 * What a person types beside an argument, and what it becomes in a formula. The pane shows beside each field how it
 * was taken, because "CH14" can be a French size or the cell in column CH.
 */
import { quoted } from "../../../src/columns/formula";
import { NAMESPACE } from "../../../src/formula/ours";
import { argumentText } from "../../../functions/formula-text";
import type { RawArgument } from "../../../src/worksheet/define";

export type TakenAs = "nothing" | "cell" | "range" | "name" | "number" | "text" | "formula";

export interface Expression {
  readonly as: TakenAs;
  /** As the formula writes it; "" for nothing. */
  readonly text: string;
}

const SHEET = String.raw`(?:(?:'(?:[^']|'')+'|[\p{L}\p{N}_.]+)!)?`;
const CELL = String.raw`\$?[A-Za-z]{1,3}\$?[1-9]\d{0,6}`;
const ONE_CELL = new RegExp(`^${SHEET}${CELL}$`, "u");
const CELLS = new RegExp(`^${SHEET}(?:${CELL}:${CELL}|\\$?[A-Za-z]{1,3}:\\$?[A-Za-z]{1,3}|${CELL}#)$`, "u");
/** `Caseload[Last change]` or `[@Size]`. */
const OF_TABLE = /^[\p{L}_][\p{L}\p{N}_.]*\[.+\]$|^\[@?.+\]$/u;
const NUMBER = /^[+-]?(?:\d+(?:[.,]\d+)?|[.,]\d+)$/;

/** @param names the workbook's own names, which are written without quotes */
export function readTyped(typed: string, names: readonly string[] = []): Expression {
  const text = typed.trim();
  if (text === "") return { as: "nothing", text: "" };
  if (text.startsWith("="))
    return text.length > 1 ? { as: "formula", text: text.slice(1).trim() } : { as: "nothing", text: "" };
  if (text.startsWith("{") && text.endsWith("}")) return { as: "range", text };
  if (text.length > 1 && text.startsWith('"') && text.endsWith('"')) {
    return { as: "text", text: quoted(text.slice(1, -1).replaceAll('""', '"')) };
  }
  if (NUMBER.test(text)) return { as: "number", text: text.replace(",", ".") };
  if (/^(?:true|false)$/i.test(text)) return { as: "formula", text: text.toUpperCase() };
  if (ONE_CELL.test(text)) return { as: "cell", text };
  if (CELLS.test(text) || OF_TABLE.test(text)) return { as: "range", text };
  const name = names.find((known) => known.toLowerCase() === text.toLowerCase());
  return name === undefined ? { as: "text", text: quoted(text) } : { as: "name", text: name };
}

/** An example's argument as it stands in a field: without quotes, unless it would then be taken for something else. */
export function fieldText(argument: RawArgument | undefined): string {
  const written = argumentText(argument);
  if (!written.startsWith('"')) return written;
  const bare = written.slice(1, -1).replaceAll('""', '"');
  return readTyped(bare).as === "text" ? bare : bare === "" ? "" : written;
}

/** The whole formula with "=", arguments left out at the end dropped. */
export function callText(name: string, argumentTexts: readonly string[]): string {
  let last = argumentTexts.length;
  while (last > 0 && argumentTexts[last - 1] === "") last--;
  return `=${NAMESPACE}.${name}(${argumentTexts.slice(0, last).join(", ")})`;
}
