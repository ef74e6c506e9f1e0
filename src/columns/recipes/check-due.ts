import { CHECKDUE, LATEST_CHECK, LONGEST_OPENING } from "../../balloon/checkdue";
import { kindNamed, type DeviceKind } from "../../settings/kinds";
import { CellError } from "../../worksheet/error";
import { formula, quoted, type ColumnSlot } from "../formula";
import { saysBalloonGJ } from "../kind-guess";
import { spelled } from "../spelling";
import { BALLOON_NOT_KNOWN, KIND_NOT_KNOWN, NO_BALLOON } from "../state-words";
import { byWord, kindOfRow, kindReason } from "./by-kind";
import { dateDoubt } from "./date-doubt";
import { fromFunction, type Apart, type GivenCell } from "./from-function";
import { CONTRADICTION } from "./not-a-balloon";
import { isDay } from "./plain";
import type { Recipe, RowCells, Slots, Using } from "./recipe";

const cells: readonly GivenCell[] = [
  { role: "stomaMade", called: "stoma made", missing: "blank or 0" },
  { role: "last", called: "last change", missing: "blank or 0" },
  { role: "lastCheck", called: "last check", missing: "left out" },
];

/** A date to come would put the next check off. */
const doubt = (row: RowCells, _: unknown, { asOf }: Using): string | null =>
  cells.reduce<string | null>((found, { role, called }) => found ?? dateDoubt(called, row[role] ?? null, asOf), null);

/** What stands in place of a day; null for a balloon. A gastrojejunal tube may have one: only its own word can say so. */
function insteadOf(kind: DeviceKind, word: string): string | null {
  if (kind.key === "not known") return KIND_NOT_KNOWN;
  if (kind.hasBalloon ?? (kind.key === "gastrojejunal" && saysBalloonGJ(word))) return null;
  return kind.hasBalloon === false ? NO_BALLOON : BALLOON_NOT_KNOWN;
}

const isFilled = (cell: RowCells["lastCheck"]): boolean =>
  cell instanceof CellError || !["", "0"].includes(spelled(cell ?? null) ?? "?");

/** The day of a cell without its time; N makes 0 of a blank. */
const dayIn = (cell: ColumnSlot) => formula`INT(N(${cell}))`;

/** As CHECKDUE has it: neither the tube nor its check before the opening, and no slip of a century. */
function datesGoTogether({ stomaMade, last, lastCheck }: Slots) {
  const [made, put, check] = [dayIn(stomaMade!), dayIn(last!), dayIn(lastCheck!)];
  const isNone = formula`LEN(TRIM(${lastCheck!}))=0,AND(ISNUMBER(${lastCheck!}),${lastCheck!}=0)`;
  return [
    ...isDay(stomaMade!),
    ...isDay(last!),
    formula`${put}>=${made}`,
    formula`${put}-${made}<=${LONGEST_OPENING}`,
    formula`OR(${isNone},AND(${check}>=${made},${check}-${put}<=${LATEST_CHECK}))`,
  ];
}

/** A check from before the tube was put in was another balloon's; none counts as day 0. */
function nextCheck({ stomaMade, last, lastCheck }: Slots, { written }: Using) {
  const [made, put, check] = [dayIn(stomaMade!), dayIn(last!), dayIn(lastCheck!)];
  const next = formula`IF(${check}<${put},${put}+${written("Check_AfterChange")},${check}+${written("Check_Days")})`;
  return formula`MAX(${made}+${written("Check_First")},${next})`;
}

/** Where the list says what holds each tube in, only a balloon gets a day. */
const notABalloon: Apart = {
  needs: [{ role: "kind", optional: true }],
  template: ({ kind: slot }, { kinds }, answered) => {
    const outcome = (kind: DeviceKind, word: string) => {
      const instead = insteadOf(kind, word);
      return instead === null ? answered : [quoted(instead)];
    };
    if (kinds.from === "everyone") return outcome(kindNamed(kinds.kind), "");
    return slot ? byWord(slot, kinds.words, outcome) : answered;
  },
  answer: (row, { kinds }) => {
    if (kinds.from === "words" && row.kind === undefined) return null;
    const kind = kindOfRow(row, kinds);
    if (kind instanceof CellError) return kind;
    const word = kinds.from === "everyone" || row.kind instanceof CellError ? null : spelled(row.kind ?? null);
    return insteadOf(kind, word ?? "");
  },
  problem: (row, answer) => {
    if (answer instanceof CellError) return { severity: "no answer", shows: answer.code, reason: "kind is an error" };
    if (answer === KIND_NOT_KNOWN) return { severity: "kind", shows: answer, reason: kindReason(row.kind ?? null) };
    if (answer === BALLOON_NOT_KNOWN) {
      const kind = row.kind === undefined ? "the kind" : kindReason(row.kind);
      return { severity: "no answer", shows: answer, reason: `${kind} does not say whether a balloon holds it` };
    }
    return isFilled(row.lastCheck) ? { severity: "doubt", shows: answer, reason: CONTRADICTION } : null;
  },
};

export const checkDue: Recipe = {
  key: "checkDue",
  group: "Balloon",
  header: "Check due",
  label: "Check due",
  help: "The day of the next balloon check, never before the first check that a new opening allows. For tubes held by a balloon.",
  caution:
    "Do not empty a balloon in a new opening before the placing team’s date. In a mixed list say which column holds the kind of tube: without it a tube that has no balloon gets a day too, and nothing is drawn out of that one.",
  needsKinds: false,
  usesAsOf: false,
  usesDates: true,
  format: "d mmm yyyy",
  words: [],
  ...fromFunction({
    of: CHECKDUE,
    plain: { tests: datesGoTogether, answer: nextCheck },
    cells,
    numbers: ["Check_First", "Check_Days", "Check_AfterChange"],
    blank: "",
    apart: notABalloon,
    doubt,
  }),
};
