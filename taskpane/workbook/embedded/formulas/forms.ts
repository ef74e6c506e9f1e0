/**
 * References in forms that the engine (0.25.1) does not work out. It gives errors for them or keeps an old result, and of
 * 'Jan:Mar'!A1 it reads A1 of the formula's own sheet, which looks like a result (all measured).
 */
import { isFunctionName, type Token } from "../../../../src/formula/tokens";

export interface Form {
  /** What the engine does not work out, in words; undefined where there is nothing of the kind. */
  readonly unread: string | undefined;
  /**
   * A range stands in it for itself, not for a function to read: =A1:A9*2. In a cell that a file does not call a spilling
   * one it means the cell of the same row or column (ECMA-376 part 1, 18.17.2.2); the engine would spill it.
   */
  readonly isRange: boolean;
}

const SHEETS = "the same cells of several sheets";
const JOINED = "several ranges in one bracket";
const CROSSING = "the cells in which two ranges cross";
const SPILLED = "the sign #";
const SINGLE = "the sign @";

export function formOf(formula: readonly Token[]): Form {
  const all = formula.filter(({ text }, at) => text.trim() !== "" || isCrossing(formula, at));
  let unread: string | undefined;
  let isRange = false;
  /** The brackets around, whether each is one of a function or an array. */
  const around: boolean[] = [];
  for (const [at, { kind, text }] of all.entries()) {
    if (text === "(") around.push(at > 0 && (isFunctionName(all, at - 1) || all[at - 1]!.text === ")"));
    else if (text === "{") around.push(true);
    else if (text === ")" || text === "}") around.pop();
    else if (text === ":") isRange ||= !around.includes(true);
    else if (text === "," && around.at(-1) !== true) unread ??= JOINED;
    else if (text === "#") unread ??= SPILLED;
    else if (text === "@") unread ??= SINGLE;
    else if (text.trim() === "") unread ??= CROSSING;
    else if ((kind === "sheet" && text.includes(":")) || (text === "!" && isOfSeveral(all, at))) unread ??= SHEETS;
  }
  return { unread, isRange };
}

/** Jan:Mar!A1, and not Jan!A1:Jan!B2. */
const isOfSeveral = (all: readonly Token[], at: number): boolean =>
  all[at - 2]?.text === ":" && all[at - 3]?.kind === "word" && all[at - 4]?.text !== "!";

/** A blank between two things that stand for cells: A1:A3 A2:C2. */
function isCrossing(all: readonly Token[], at: number): boolean {
  let next = at + 1;
  while (all[next]?.text.trim() === "") next++;
  const [before, after] = [all[at - 1], all[next]];
  if (!before || !after) return false;
  const ends = ["word", "bracket"].includes(before.kind) || before.text === ")";
  const starts = ["word", "sheet", "bracket"].includes(after.kind) || (after.text === "(" && before.kind !== "word");
  return ends && starts;
}
