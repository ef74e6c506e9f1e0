/** What is said of a cell as a whole. */
import { NAMESPACE, oursWithoutPrefix } from "../../../src/formula/ours";
import { nearestName } from "../../../functions/nearest-name";
import { pieces, type Node } from "../../../src/formula/tree";
import type { SheetFunction } from "../../../src/worksheet/define";
import { SheetError, CellError } from "../../../src/worksheet/error";
import { CHART_SHEET } from "../../texts/pieces";
import type { Value } from "../../workbook/port";
import type { ReadInColumn } from "./typed";
import { valueText } from "./values";

export const nothing = {
  selected: "No cell is selected. Click a cell in the sheet.",
  chart: CHART_SHEET,
  empty: (address: string) => `${address} is empty.`,
};

export const NOT_WORKED_OUT = "this part was not worked out here";

export const filledBy = (here: string, from: string): string => `${here} is filled by the formula in ${from}.`;

export const plainFormula = (isWorkedOut: boolean): string =>
  isWorkedOut
    ? "The formula holds none of this add-in's functions."
    : "The formula holds none of this add-in's functions, and was not worked out again here. What it reads is listed.";

const STILL = "it is still being worked out.";

const hostErrors: Readonly<Record<string, string>> = {
  "#NAME?":
    "a function or name in the formula was not known when the sheet was last worked out. Open this add-in, then have the sheet worked out again.",
  "#SPILL!": "the answers need cells that are not empty. Clear the cells below or beside it, or move the formula.",
  "#REF!": "the formula points to cells that are no longer there.",
  "#DIV/0!": "something is divided by nothing.",
  "#N/A": "something that it reads is #N/A.",
  "#VALUE!": "something that it reads is of the wrong kind, or an error.",
  "#BUSY!": STILL,
  "#GETTING_DATA": STILL,
  "#CONNECT!": "the add-in did not answer. Open it, then have the sheet worked out again.",
};

/** Why, where no function of ours says it. */
export const hostError = (code: string): string =>
  hostErrors[code] ?? "the program that holds the sheet gives no reason.";

/** A name of ours that no function has, and the one that was probably meant; null where every name is known. */
export function misspelt(formula: Node, functions: readonly SheetFunction[]): string | null {
  const isOurs = (name: string) => functions.some((one) => one.name === name.toUpperCase());
  for (const piece of pieces(formula)) {
    if (piece.is !== "call") continue;
    const name = oursWithoutPrefix(piece.name);
    if (name === undefined && isOurs(piece.name))
      return `there is no function ${piece.name.toUpperCase()}. Write ${NAMESPACE}.${piece.name.toUpperCase()}.`;
    if (name === undefined || isOurs(name)) continue;
    const nearest = nearestName(name, functions);
    const wrong = `there is no function ${NAMESPACE}.${name}.`;
    return nearest ? `${wrong} Did you mean ${NAMESPACE}.${nearest.name}?` : `${wrong} ‘All functions’ lists them.`;
  }
  return null;
}

interface Typed {
  readonly headline: string;
  readonly notes: readonly string[];
  readonly isError: boolean;
}

/** A value without a formula, and what it is read as in its column. */
export function typedSentences(address: string, shown: Value, isDate: boolean, read: ReadInColumn | null): Typed {
  const held = `${address} holds ${valueText(shown, isDate ? "date" : undefined)}`;
  const origin = "It holds no formula: it was typed, pasted or brought in.";
  if (shown instanceof CellError) {
    return { headline: `${address} is an error, ${shown.code}, without a formula.`, notes: [origin], isError: true };
  }
  if (!read) return { headline: `${held}.`, notes: [origin], isError: false };
  const column = `The column "${read.header}" is taken for: ${read.because}.`;
  return read.read instanceof SheetError
    ? { headline: `${held}, and cannot be read: ${read.read.message}.`, notes: [origin, column], isError: true }
    : { headline: `${held}. It is read as ${read.read}.`, notes: [origin, column], isError: false };
}
