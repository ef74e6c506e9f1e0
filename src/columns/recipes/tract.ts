import { call } from "../../worksheet/call";
import type { Cell } from "../../worksheet/cell";
import type { SheetError } from "../../worksheet/error";
import { CellError } from "../../worksheet/error";
import { TRACTSTATE } from "../../schedule/tractstate";
import { formula, quoted, type ColumnSlot, type FormulaTemplate } from "../formula";
import { spelled } from "../spelling";
import { CHECK_DATE, NO_DATE } from "../state-words";
import { AS_OF } from "../as-of";
import { isIso, noDateIn, whereSet } from "./guards";
import type { Recipe, RowCells, Using } from "./recipe";

/** As in TRACTSTATE: an opening older than a life is a year typed instead of a date. */
const OLDEST_DAYS = 36525;

/** TRACTSTATE's arguments, as this column calls them. */
const CALLED: Readonly<Record<string, string>> = { stomamade: "the date", asof: "today" };

const THRESHOLDS = ["Tract_Low", "Tract_High"] as const;

/** The day in a cell; one beyond belief where there is none, so that whatever counts from it says so. */
const dayIn = (cell: ColumnSlot) =>
  formula`IFERROR(INT(IF(ISNUMBER(${cell}),${cell},IF(AND(${isIso(cell)},LEN(TRIM(${cell}))=10),LEFT(TRIM(${cell}),10)+0,-1E9))),-1E9)`;

/** A text with a time of day beside its date is left to people: rather a look too many than a wrong day. */
const ISO_DAY = /^.{4}-.{2}-.{2}$/s;

const isUnread = (cell: Cell | CellError): boolean =>
  cell instanceof CellError ||
  typeof cell === "boolean" ||
  (typeof cell === "string" && !ISO_DAY.test(spelled(cell) ?? ""));

/** Only "no" says that healing is not slow; a blank, another word or an error is not known. */
const isKnownNotSlow = (cell: Cell | CellError | undefined): boolean =>
  cell !== undefined && !(cell instanceof CellError) && spelled(cell) === "no";

function stateOf(
  { stomaMade = null, slowHealing }: RowCells,
  using: Using,
): { readonly word: string; readonly reason: string } {
  const text = stomaMade instanceof CellError ? null : spelled(stomaMade);
  if (text === "" || text === "0") return { word: NO_DATE, reason: "no date of the stoma" };
  if (stomaMade instanceof CellError) return { word: CHECK_DATE, reason: "the date is an error" };
  if (isUnread(stomaMade)) return { word: CHECK_DATE, reason: "text, not a date" };
  const given = typeof stomaMade === "string" ? stomaMade.trim() : stomaMade;
  const thresholds = THRESHOLDS.map((name) => using.value(name));
  const band = (slow: string) => call(TRACTSTATE, [given, using.asOf, ...thresholds, slow]) as string | SheetError;
  const found = band(isKnownNotSlow(slowHealing) ? "no" : "not known");
  if (typeof found === "string") {
    const isSlow = slowHealing !== undefined && !(slowHealing instanceof CellError) && spelled(slowHealing) === "yes";
    return { word: found, reason: isSlow || found === band("no") ? "" : "not known whether healing is slow" };
  }
  return { word: CHECK_DATE, reason: found.said({ argument: (name) => CALLED[name] ?? name }) };
}

function template(cell: ColumnSlot, grown: FormulaTemplate, using: Using): FormulaTemplate {
  const age = formula`${AS_OF}-${dayIn(cell)}`;
  const [low, high] = THRESHOLDS.map((name) => using.written(name));
  const band = formula`IF(${age}<7*${low!},"immature",IF(${age}<7*${high!},"uncertain",${grown}))`;
  const known = formula`IF(OR(${age}<0,${age}>${OLDEST_DAYS}),${quoted(CHECK_DATE)},${band})`;
  const dated = formula`IF(ISERROR(${cell}),${quoted(CHECK_DATE)},IF(${noDateIn(cell)},${quoted(NO_DATE)},${known}))`;
  return whereSet(THRESHOLDS, using, dated);
}

/** Never better than uncertain where nobody has written down that healing is not slow. */
const grown = (slow: ColumnSlot | undefined): FormulaTemplate =>
  slow
    ? formula`IF(ISERROR(${slow}),"uncertain",IF(EXACT(LOWER(TRIM(${slow})),"no"),"mature by weeks","uncertain"))`
    : [quoted("uncertain")];

/**
 * Plain Excel on the name As_of, because a function that counts from today would have to be volatile. Where TRACTSTATE
 * refuses a date, this says so in a word.
 */
export const tract: Recipe = {
  key: "tract",
  group: "Opening",
  header: "Tract",
  label: "Tract: age of the opening",
  help: "How old the opening is today, in a word: immature, uncertain, mature by weeks.",
  caution:
    "Weeks are not proof: replacements have gone astray through old openings too. Say which column holds slow healing: without it no opening reads better than uncertain.",
  needs: [
    { role: "stomaMade", optional: false },
    { role: "slowHealing", optional: true },
  ],
  needsKinds: false,
  functions: [],
  settings: () => THRESHOLDS,
  usesAsOf: true,
  usesDates: true,
  format: "General",
  words: [CHECK_DATE, NO_DATE, "immature", "uncertain", "mature by weeks"],
  template: ({ stomaMade, slowHealing }, using) => template(stomaMade!, grown(slowHealing), using),
  earlier: ({ stomaMade }, using) => template(stomaMade!, [quoted("mature by weeks")], using),
  answer: (row, using) => stateOf(row, using).word,
  problem: (row, using) => {
    const { word, reason } = stateOf(row, using);
    if (word === CHECK_DATE || word === NO_DATE) return { severity: "no answer", shows: word, reason };
    return reason === "" ? null : { severity: "doubt", shows: word, reason };
  },
};
