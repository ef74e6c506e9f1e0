import { call } from "../../worksheet/call";
import type { Cell } from "../../worksheet/cell";
import type { SheetError } from "../../worksheet/error";
import { CellError } from "../../worksheet/error";
import { TRACTSTATE } from "../../schedule/tractstate";
import { formula, quoted, type ColumnSlot } from "../formula";
import { spelled } from "../spelling";
import { CHECK_DATE, NO_DATE } from "../state-words";
import { AS_OF } from "../as-of";
import { isIso, noDateIn, whereSet } from "./guards";
import type { Recipe, RowCells, Using } from "./recipe";

/** As in TRACTSTATE: an opening older than a life is a year typed instead of a date. */
const OLDEST_DAYS = 36525;

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

function stateOf({ stomaMade = null }: RowCells, using: Using): { readonly word: string; readonly reason: string } {
  const text = stomaMade instanceof CellError ? null : spelled(stomaMade);
  if (text === "" || text === "0") return { word: NO_DATE, reason: "no date of the stoma" };
  if (stomaMade instanceof CellError) return { word: CHECK_DATE, reason: "the date is an error" };
  if (isUnread(stomaMade)) return { word: CHECK_DATE, reason: "text, not a date" };
  const given = typeof stomaMade === "string" ? stomaMade.trim() : stomaMade;
  const found = call(TRACTSTATE, [given, using.asOf, ...THRESHOLDS.map((name) => using.value(name))]) as
    string | SheetError;
  if (typeof found === "string") return { word: found, reason: "" };
  return { word: CHECK_DATE, reason: found.message.replace("stomamade", "the date").replace("asof", "today") };
}

/**
 * Plain Excel on the name As_of, because a function that counts from today would have to be volatile. Where TRACTSTATE
 * refuses a date, this says so in a word. Slow healing is not known here.
 */
export const tract: Recipe = {
  key: "tract",
  group: "Opening",
  header: "Tract",
  label: "Tract: age of the opening",
  help: "How old the opening is today, in a word: immature, uncertain, mature by weeks.",
  caution:
    "Weeks are not proof: replacements have gone astray through old openings too. Slow healing is not counted in.",
  needs: [{ role: "stomaMade", optional: false }],
  needsKinds: false,
  functions: [],
  settings: () => THRESHOLDS,
  usesAsOf: true,
  usesDates: true,
  format: "General",
  words: [CHECK_DATE, NO_DATE, "immature", "uncertain", "mature by weeks"],
  template: ({ stomaMade }, using) => {
    const cell = stomaMade!;
    const age = formula`${AS_OF}-${dayIn(cell)}`;
    const [low, high] = THRESHOLDS.map((name) => using.written(name));
    const band = formula`IF(${age}<7*${low!},"immature",IF(${age}<7*${high!},"uncertain","mature by weeks"))`;
    const known = formula`IF(OR(${age}<0,${age}>${OLDEST_DAYS}),${quoted(CHECK_DATE)},${band})`;
    const dated = formula`IF(ISERROR(${cell}),${quoted(CHECK_DATE)},IF(${noDateIn(cell)},${quoted(NO_DATE)},${known}))`;
    return whereSet(THRESHOLDS, using, dated);
  },
  answer: (row, using) => stateOf(row, using).word,
  problem: (row, using) => {
    const { word, reason } = stateOf(row, using);
    return word === CHECK_DATE || word === NO_DATE ? { severity: "no answer", shows: word, reason } : null;
  },
};
