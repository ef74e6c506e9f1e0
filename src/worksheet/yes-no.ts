/** Answers of yes and no. A number is not an answer, because an empty cell can arrive as 0. */
import type { Cell } from "./cell";
import { SheetError } from "./error";
import { reading } from "./parameters";

export type YesNo = "yes" | "no" | "not known";

/** A map, because an object also answers to "__proto__" and "constructor". */
const ANSWERS: ReadonlyMap<string, YesNo> = new Map([
  ["yes", "yes"],
  ["y", "yes"],
  ["true", "yes"],
  ["no", "no"],
  ["n", "no"],
  ["false", "no"],
  ["not known", "not known"],
]);

/** Undefined when the cell holds neither. Most cells hold the word as it stands above: it is looked up first. */
export const answerOf = (cell: Exclude<Cell, null>): YesNo | undefined =>
  typeof cell === "number" ? undefined : (ANSWERS.get(String(cell)) ?? ANSWERS.get(String(cell).trim().toLowerCase()));

const neither = new SheetError("must be yes, no or not known");

/** yes, no or not known; anything else is refused. */
export const yesNo = <const O extends { fallback: YesNo; fallbackHelp?: string }>(help: string, options: O) =>
  reading<YesNo, O>(help, options, (cell) => (cell === 0 ? null : (answerOf(cell) ?? neither)));

/** For sentences about danger: whatever is not clearly yes or no is not known, never refused. */
export const yesNoOrDoubt = <const O extends { fallback: YesNo; fallbackHelp?: string }>(help: string, options: O) =>
  reading<YesNo, O>(help, options, (cell) => (cell === 0 ? null : (answerOf(cell) ?? "not known")));
