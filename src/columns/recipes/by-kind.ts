/** A date that depends on how a device is held: for every kind its months, or a word where there are none. */
import { CHANGEDUE } from "../../schedule/changedue";
import { oursNamed } from "../../formula/ours";
import { monthsRule } from "../../schedule/interval";
import type { SettingName } from "../../settings/index";
import { kindNamed, type DeviceKind } from "../../settings/kinds";
import { call } from "../../worksheet/call";
import type { Cell } from "../../worksheet/cell";
import { CellError, SheetError } from "../../worksheet/error";
import { plainNumbers } from "../../worksheet/parameters";
import { formula, inA1, quoted, type ColumnSlot, type FormulaTemplate } from "../formula";
import { spelled, spellings, written } from "../spelling";
import { KIND_NOT_KNOWN, NO_DATE } from "../state-words";
import { dateDoubt } from "./date-doubt";
import { CONTRADICTION, tellsOfBalloon, tellsOfBalloonIn } from "./not-a-balloon";
import { noDateIn } from "./guards";
import { isDay, isPlain, isTyped, refusedText, settingIn, whereAll } from "./plain";
import type { KindSource, RowCells, RowProblem, Slots, Using } from "./recipe";

/** Which of a kind's two settings a column is about. */
export type Interval = (kind: DeviceKind) => SettingName | null;

const kindsOf = (source: KindSource): readonly DeviceKind[] =>
  source.from === "everyone" ? [kindNamed(source.kind)] : [...new Set(source.words.values())].map(kindNamed);

export const settingsOf = (source: KindSource, interval: Interval): readonly SettingName[] => [
  ...new Set(kindsOf(source).flatMap((kind) => interval(kind) ?? [])),
];

/** `IF(no last change,"no date",IF(OR(EXACT(...),...),EDATE(last,3),..."kind not known"))`, or TUBE.CHANGEDUE for EDATE */
export function dateByKind(slots: Slots, using: Using, interval: Interval): FormulaTemplate {
  const last = slots.last!;
  const outcome = (kind: DeviceKind): FormulaTemplate => {
    const setting = interval(kind);
    const found = setting === null ? [quoted(kind.without)] : dueIn(last, using.written(setting), using);
    const tells = kind.hasBalloon === false ? tellsOfBalloonIn(slots) : null;
    return tells === null ? found : formula`IF(${tells},${quoted(KIND_NOT_KNOWN)},${found})`;
  };
  const rest =
    using.kinds.from === "everyone"
      ? outcome(kindNamed(using.kinds.kind))
      : byWord(slots.kind!, using.kinds.words, outcome);
  return formula`IF(${noDateIn(last)},${quoted(NO_DATE)},${rest})`;
}

/** So many months after a day. */
const dueIn = (last: ColumnSlot, months: string, using: Using): FormulaTemplate =>
  isPlain(using)
    ? whereAll([...isDay(last), ...settingIn(months, MONTHS)], formula`EDATE(${last},${months})`)
    : formula`${oursNamed(CHANGEDUE.name)}(${last},${months})`;

const MONTHS = plainNumbers(monthsRule);

interface Group {
  readonly outcome: FormulaTemplate;
  readonly words: string[];
}

/** What stands there for the word in `cell`; words with the same outcome share a branch, all others are not known. */
export function byWord(
  cell: ColumnSlot,
  words: ReadonlyMap<string, DeviceKind["key"]>,
  outcomeOf: (kind: DeviceKind, word: string) => FormulaTemplate,
): FormulaTemplate {
  const groups = new Map<string, Group>();
  for (const [word, key] of words) {
    if (key === "not known" || word === "") continue;
    const outcome = outcomeOf(kindNamed(key), word);
    const text = inA1(outcome, 0, 0);
    const group = groups.get(text) ?? { outcome, words: [] };
    groups.set(text, group);
    for (const spelling of spellings(word)) if (!group.words.includes(spelling)) group.words.push(spelling);
  }
  return branches(cell, [...groups.values()]);
}

function branches(cell: ColumnSlot, [group, ...others]: readonly Group[]): FormulaTemplate {
  if (!group) return [quoted(KIND_NOT_KNOWN)];
  const one = (word: string) => formula`EXACT(LOWER(TRIM(${cell})),${written(word)})`;
  const [first, ...more] = group.words;
  const tests = more.reduce<FormulaTemplate>((all, word) => formula`${all},${one(word)}`, one(first!));
  const test = more.length > 0 ? formula`OR(${tests})` : tests;
  return formula`IF(${test},${group.outcome},${branches(cell, others)})`;
}

/** The kind of a row: known, or why not. */
export function kindOfRow(row: RowCells, source: KindSource): DeviceKind | CellError {
  if (source.from === "everyone") return kindNamed(source.kind);
  const cell = row.kind ?? null;
  if (cell instanceof CellError) return cell;
  const word = spelled(cell);
  const key = word === null || word === "" ? undefined : source.words.get(word);
  return kindNamed(key ?? "not known");
}

const hasNoDate = (cell: Cell | CellError): boolean => {
  const word = cell instanceof CellError ? null : spelled(cell);
  return word === "" || word === "0";
};

/** Held by no balloon, and a balloon's water or check in the same row. */
const isContradicted = (kind: DeviceKind, row: RowCells): boolean => kind.hasBalloon === false && tellsOfBalloon(row);

/** What `dateByKind` gives for a row. */
export function dateOfRow(row: RowCells, using: Using, interval: Interval): Cell | SheetError | CellError {
  const last = row.last ?? null;
  if (last instanceof CellError) return last;
  if (hasNoDate(last)) return NO_DATE;
  const kind = kindOfRow(row, using.kinds);
  if (kind instanceof CellError) return kind;
  if (isContradicted(kind, row)) return KIND_NOT_KNOWN;
  const setting = interval(kind);
  if (setting === null) return kind.without;
  if (isPlain(using) && isTyped(last)) return refusedText("lastchange");
  return call(CHANGEDUE, [last, using.value(setting)]) as Cell | SheetError;
}

/** Why a row gets no date, or a date that somebody should look at. */
export function dateProblem(row: RowCells, using: Using, interval: Interval): RowProblem | null {
  const answer = dateOfRow(row, using, interval);
  if (answer instanceof SheetError) {
    const reason = answer.said({ argument: (name) => (name === "lastchange" ? "last change" : name) });
    return { severity: "no answer", shows: answer.code, reason };
  }
  if (answer instanceof CellError) {
    const which = row.last instanceof CellError ? "last change" : "kind";
    return { severity: "no answer", shows: answer.code, reason: `${which} is an error` };
  }
  const kind = kindOfRow(row, using.kinds);
  if (answer === KIND_NOT_KNOWN && !(kind instanceof CellError) && isContradicted(kind, row))
    return { severity: "no answer", shows: answer, reason: CONTRADICTION };
  if (answer === KIND_NOT_KNOWN) return { severity: "kind", shows: answer, reason: kindReason(row.kind ?? null) };
  if (answer === NO_DATE) {
    const reason = hasNoDate(row.last ?? null) ? "no last change" : "the placing team sets the date";
    return { severity: "no answer", shows: NO_DATE, reason };
  }
  if (answer === "") return { severity: "no answer", shows: "", reason: "no last change" };
  const reason = dateDoubt("last change", row.last ?? null, using.asOf);
  const shows = typeof answer === "string" ? answer : "a date";
  return reason === null ? null : { severity: "doubt", shows, reason };
}

export function kindReason(cell: Cell | CellError): string {
  const word = cell instanceof CellError ? null : spelled(cell);
  return word === "" ? "no kind entered" : `kind "${String(cell).trim()}"`;
}
