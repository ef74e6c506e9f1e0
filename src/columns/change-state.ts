/**
 * Where a change stands today, in a word, as the formula of the column "Change" decides it. Written once more here for
 * the preview's counts; tests hold formula, this rule and the function DUESTATE to the same words.
 *
 * Bad news first. Wherever a cell cannot be believed or read, the word is never a reassuring one.
 */
import { addMonths, FIRST_DAY } from "../maths/calendar";
import type { Cell } from "../worksheet/cell";
import { dayOfText } from "../worksheet/dates";
import { CellError } from "../worksheet/error";
import { spelled } from "./spelling";
import { CHECK_DATE, KIND_NOT_KNOWN, NO_DATE, NO_SET_CHANGE, type ChangeState } from "./state-words";

export interface ChangeCells {
  readonly due: Cell | CellError;
  readonly latest?: Cell | CellError;
  readonly last?: Cell | CellError;
}

export interface ChangeRule {
  readonly asOf: number;
  /** Due soon: within so many days, the last of them included. */
  readonly soonDays: number;
  /** A date further away than so many months cannot be right. */
  readonly farMonths: number;
}

export interface StateWithReason {
  readonly state: ChangeState;
  /** For the words that need one: a fragment. */
  readonly reason: string;
}

const isNumber = (cell: Cell | CellError | undefined): cell is number => typeof cell === "number";

/** A text with words in it; a blank or only spaces is none. */
const isText = (cell: Cell | CellError | undefined): cell is string => typeof cell === "string" && spelled(cell) !== "";

const ISO = /^.{4}-.{2}-/s;

/** The day that begins an ISO text; null where there is no such day. */
const isoDay = (text: string): number | null => dayOfText(spelled(text)!.slice(0, 10));

const beyondBelief = (cell: Cell | CellError | undefined, { asOf, farMonths }: ChangeRule): boolean =>
  isNumber(cell) && cell !== 0 && (cell < FIRST_DAY || cell >= addMonths(asOf, farMonths) + 1);

const isFuture = (last: Cell | CellError | undefined, asOf: number): boolean =>
  isNumber(last) ? last >= asOf + 1 : isText(last) && ISO.test(spelled(last)!) && (isoDay(last) ?? 0) > asOf;

/** Words that stand where there is no date and say so. */
const wordsForNoDate: readonly string[] = [NO_DATE, NO_SET_CHANGE, KIND_NOT_KNOWN];

export function changeState({ due, latest, last }: ChangeCells, rule: ChangeRule): StateWithReason {
  const check = (reason: string): StateWithReason => ({ state: CHECK_DATE, reason });
  const { asOf, soonDays } = rule;
  if (due instanceof CellError) return check("the due date is an error");
  if (latest instanceof CellError) return check("the latest date is an error");
  if (last instanceof CellError) return check("last change is an error");
  if (isFuture(last, asOf)) return check("last change is in the future");
  if (beyondBelief(due, rule)) return check("the due date is too far away or no date");
  if (beyondBelief(latest, rule)) return check("the latest date is too far away or no date");
  const limit = isNumber(latest) && latest !== 0 ? latest : null;
  if (limit !== null && limit < asOf) return { state: "past limit", reason: "" };
  if (!isNumber(due) || due === 0) {
    const word = isText(due) ? spelled(due) : NO_DATE;
    if (word === NO_SET_CHANGE || word === KIND_NOT_KNOWN) return { state: word, reason: word };
    return {
      state: NO_DATE,
      reason: isText(due) && word !== NO_DATE ? "the due date is text, not a date" : "no due date",
    };
  }
  if (due < asOf) return { state: "overdue", reason: "" };
  if (isText(latest) && !wordsForNoDate.includes(spelled(latest)!)) return check("the latest date is text, not a date");
  if (isText(last) && !ISO.test(spelled(last)!)) return check("last change is text, not a date");
  const soonest = limit === null ? due : Math.min(due, limit);
  return { state: soonest < asOf + soonDays + 1 ? "due soon" : "later", reason: "" };
}
