/**
 * How the caseload's formulas read a cell. No piece passes an error on: a cell in error is neither blank nor a number nor
 * a known word.
 */
import { formula, quoted, type FormulaTemplate } from "../columns/formula";
import type { SheetValue } from "../columns/sheet-block";
import { monthsLaterIn } from "./counted-days";

type Text = FormulaTemplate | string;

/** A word without letter case and outer spaces; an error is no word. */
export const wordIn = (cell: Text) => formula`IFERROR(LOWER(TRIM(${cell})),"?")`;

/** EXACT and never "=", because "=" takes * and ? as wildcards in the grid's engine (docs/decisions.md). */
export const is = (text: Text, known: string) => formula`EXACT(${text},${quoted(known)})`;

export const isOneOf = (text: Text, known: readonly string[]) => {
  const tests = known.map((one) => is(text, one));
  return formula`OR(${tests.slice(1).reduce((all, test) => formula`${all},${test}`, tests[0]!)})`;
};

/** TRUE where nothing was entered; spaces are nothing. */
export const isBlankIn = (cell: Text) => formula`(IFERROR(LEN(TRIM(${cell})),1)=0)`;

export const isNumber = (value: SheetValue): value is number => typeof value === "number";

/**
 * LET names for a cell: `in` is its number, or "", and `incell` the cell itself. N makes a plain number of it: to compare
 * a cell by < or = takes the grid's engine ten times as long.
 */
export const numbered = (name: string, cell: FormulaTemplate): Readonly<Record<string, FormulaTemplate>> => ({
  [`${name}cell`]: cell,
  [name]: formula`IF(ISNUMBER(${name}cell),N(${name}cell),"")`,
});

/** The same for a cell that holds a number or one of our words. */
export const numberOrWord = (name: string, cell: FormulaTemplate): Readonly<Record<string, FormulaTemplate>> => ({
  [`${name}cell`]: cell,
  [name]: formula`IF(ISNUMBER(${name}cell),N(${name}cell),IFERROR(T(${name}cell),"?"))`,
});

/** TRUE for a number that is no more than what a balloon can hold; never while that setting is no number. */
export const isUsualIn = (volume: Text) => formula`IFERROR(${volume}<=N(Volume_Most),FALSE)`;

/** TRUE for a number above 0. */
export const isAboveIn = (name: string) => formula`IF(ISNUMBER(${name}),${name}>0,FALSE)`;
export const isAbove = (value: SheetValue): value is number => isNumber(value) && value > 0;

/** So many whole months later, clipped to the month's end. */
export const monthsLater = (day: string, months: string) => formula`${monthsLaterIn(day, months)}`;

/**
 * Of LET names made by `numbered`. 1: a day not after today and not absurdly long ago. 0: nothing entered. -1: anything
 * else: text, future, 2052.
 */
export const dayState = (name: string) =>
  formula`IF(ISNUMBER(${name}),IF(${name}<As_of+1,IF(${name}>=Day_Oldest,1,-1),-1),IF(${isBlankIn(`${name}cell`)},0,-1))`;

/** The same for a cell itself: TRUE for a day not after today and not absurdly long ago. */
export const isPastDayIn = (cell: FormulaTemplate) =>
  formula`IF(ISNUMBER(${cell}),IF(N(${cell})<As_of+1,N(${cell})>=Day_Oldest,FALSE),FALSE)`;

/** A day that may lie ahead, but not beyond belief: a booking, an expiry, a date that somebody has set. */
export const isAheadIn = (name: string) =>
  formula`IF(ISNUMBER(${name}),IF(${name}>=Day_Oldest,${name}<Day_Farthest+1,FALSE),FALSE)`;

/** An identifier that no criterion reads as a number, a date or a wildcard. */
export const identityIn = (cell: Text) =>
  formula`SUBSTITUTE(SUBSTITUTE(SUBSTITUTE(${wordIn(cell)},"*","·"),"?","·"),"~","·")`;

/** A cell of another table's row; a blank there stays a blank, where INDEX alone would give 0. */
export const numberAt = (column: string, position: Text) =>
  formula`IF(ISNUMBER(INDEX(${column},${position})),N(INDEX(${column},${position})),"")`;
