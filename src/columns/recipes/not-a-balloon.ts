/**
 * A kind that no balloon holds, and a balloon's water or check in the same row: one of the two is wrong. What stands on
 * the kind is then not known, and what stands on the water is no balloon's.
 */
import { kindNamed } from "../../settings/kinds";
import { CellError } from "../../worksheet/error";
import { formula, quoted, type ColumnSlot, type FormulaTemplate } from "../formula";
import type { Role } from "../role";
import { spelled, spellings, written } from "../spelling";
import { NO_BALLOON } from "../state-words";
import type { KindSource, Need, RowCells, RowProblem, Slots, Using } from "./recipe";

/** What tells of a balloon. */
export const balloonRoles = ["putIn", "out", "lastCheck"] as const satisfies readonly Role[];
export const balloonNeeds: readonly Need[] = balloonRoles.map((role) => ({ role, optional: true }));

export const CONTRADICTION = "a balloon check of a tube without a balloon: one of the two is wrong";

/** A figure or a day; a dash, "n/a" or a 0 that stands for nothing is none. */
const tellsIn = (cell: ColumnSlot) =>
  formula`IF(ISNUMBER(FIND(LEFT(TRIM(${cell})&" ",1),"0123456789")),NOT(EXACT(TRIM(${cell}),"0")),FALSE)`;
const tells = (cell: RowCells["putIn"]): boolean => {
  if (cell === undefined || cell instanceof CellError) return false;
  if (typeof cell === "number") return cell > 0;
  const text = spelled(cell) ?? "";
  return /^\d/.test(text) && text !== "0";
};

/** TRUE where a row tells of a balloon; null where no column could. */
export function tellsOfBalloonIn(slots: Slots): FormulaTemplate | null {
  const cells = balloonRoles.flatMap((role) => (slots[role] ? [tellsIn(slots[role])] : []));
  if (cells.length === 0) return null;
  return cells.length === 1
    ? cells[0]!
    : formula`OR(${cells.slice(1).reduce((all, one) => formula`${all},${one}`, cells[0]!)})`;
}
export const tellsOfBalloon = (row: RowCells): boolean => balloonRoles.some((role) => tells(row[role]));

const wordsWithout = (kinds: KindSource): readonly string[] =>
  kinds.from === "everyone"
    ? []
    : [...kinds.words].flatMap(([word, key]) => (kindNamed(key).hasBalloon === false && word !== "" ? [word] : []));

/** `no balloon` in place of what figures would say, where the kind says that no balloon holds this tube. */
export function unlessNoBalloon(answered: FormulaTemplate, { kind: slot }: Slots, { kinds }: Using): FormulaTemplate {
  if (kinds.from === "everyone") return kindNamed(kinds.kind).hasBalloon === false ? [quoted(NO_BALLOON)] : answered;
  const words = slot ? [...new Set(wordsWithout(kinds).flatMap(spellings))] : [];
  if (!slot || words.length === 0) return answered;
  const tests = words.map((word) => formula`EXACT(LOWER(TRIM(${slot})),${written(word)})`);
  const is = tests.slice(1).reduce((all, one) => formula`${all},${one}`, tests[0]!);
  return formula`IF(IFERROR(OR(${is}),FALSE),${quoted(NO_BALLOON)},${answered})`;
}
export function hasNoBalloon(row: RowCells, { kinds }: Using): boolean {
  if (kinds.from === "everyone") return kindNamed(kinds.kind).hasBalloon === false;
  if (row.kind === undefined || row.kind instanceof CellError) return false;
  return wordsWithout(kinds).includes(spelled(row.kind) ?? "");
}

export const noBalloonProblem = (row: RowCells): RowProblem | null =>
  tellsOfBalloon(row) ? { severity: "doubt", shows: NO_BALLOON, reason: CONTRADICTION } : null;
