/**
 * Check this sheet: everything in somebody's own list that cannot be right, grouped by what is said of it, each cell named.
 * In the ready-made caseload the column *Missing or contradictory* has found it already, by the clinic's settings. Nothing
 * is changed.
 */
import { cellAddress } from "../../../src/columns/formula";
import { checkRows } from "../../../src/checking/check-rows";
import { rowRules } from "../../../src/checking/rules";
import { sameIdentifiers } from "../../../src/checking/same-person";
import type { RowCells } from "../../../src/columns/recipes/recipe";
import { roleNamed, type Role } from "../../../src/columns/role";
import { textOf } from "../../../src/columns/sheet-block";
import { FIRST_DAY, LAST_DAY } from "../../../src/maths/calendar";
import { shortDate } from "../../../src/words/date-in-words";
import type { SheetId, Value, Workbook } from "../../workbook/port";
import { asOfIn } from "../list/as-of";
import { candidatesIn, locate } from "../list/find";
import { identifierIn } from "../list/identifier";
import type { Asked, ListChoice, SurveyedList } from "../list/interface";
import { kindOfWord } from "../list/memory";
import { readList } from "../list/read-list";
import { headerKey } from "../caseload/recognise";

export interface CheckedCell {
  /** "C14" */
  readonly address: string;
  /** Whose row it is, and what stands in the cell. */
  readonly text: string;
}

export interface CheckedGroup {
  readonly reason: string;
  readonly cells: readonly CheckedCell[];
}

export interface CheckSurvey {
  readonly lists: readonly ListChoice[];
  readonly list: SurveyedList | null;
  /** What was found, or why nothing was, in a sentence. */
  readonly sentence: string;
  readonly sheet: SheetId | null;
  /** The most dangerous first. */
  readonly groups: readonly CheckedGroup[];
  /** Rows with anything in them. */
  readonly rows: number;
  /** Rows in which something was found. */
  readonly doubtful: number;
  /** What the list has no column for, so that nothing was looked for there; empty for a ready-made caseload. */
  readonly notLookedFor: readonly string[];
}

const CASELOAD_FINDINGS = "Missing or contradictory";
/** How its words are put one after the other. */
const BETWEEN = "; ";
/** Longer texts are cut short where cells are listed. */
const LONGEST = 40;

export async function checkSheet(workbook: Workbook, asked: Asked): Promise<CheckSurvey> {
  const overview = await workbook.overview();
  const { list: located, sentence } = await locate(workbook, overview, asked);
  const lists = candidatesIn(overview).map(({ choice }) => choice);
  const asOf = asOfIn(overview, asked.today);
  const list = located && (await readList(workbook, overview, located, asOf));
  if (!list) return { lists, list, sentence, sheet: null, groups: [], rows: 0, doubtful: 0, notLookedFor: [] };
  const found = inCaseload(list) ?? inOwnList(list, asOf.day);
  const isFilled = (row: readonly Value[]): boolean => row.some((value) => textOf(value).trim() !== "");
  return { lists, list, sentence, sheet: list.sheet, rows: list.rows.filter(isFilled).length, ...found };
}

type Found = Pick<CheckSurvey, "groups" | "doubtful" | "notLookedFor">;

/** The caseload's own words, each a group; null where the list has no such column. */
function inCaseload(list: SurveyedList): Found | null {
  const column = list.columns.findIndex(({ header }) => headerKey(header) === headerKey(CASELOAD_FINDINGS));
  if (column < 0) return null;
  const groups = new Map<string, number[]>();
  const doubtful = new Set<number>();
  list.rows.forEach((row, at) => {
    const words = textOf(row[column] ?? null).split(BETWEEN);
    for (const word of words.map((text) => text.trim()).filter((text) => text !== "")) {
      groups.set(word, [...(groups.get(word) ?? []), at]);
      doubtful.add(at);
    }
  });
  return {
    groups: [...groups]
      .sort(([, a], [, b]) => b.length - a.length)
      .map(([reason, rows]) => ({ reason, cells: rows.map((row) => cellOf(list, column, row)) })),
    doubtful: doubtful.size,
    notLookedFor: [],
  };
}

function inOwnList(list: SurveyedList, asOf: number): Found {
  const columns = Object.entries(list.guesses) as [Role, { readonly column: number }][];
  const rows = list.rows.map((row): RowCells =>
    Object.fromEntries(columns.map(([role, { column }]) => [role, row[column] ?? null])),
  );
  const known = new Set(columns.map(([role]) => role));
  const found = checkRows(rows, known, asOf, (word) => kindOfWord(list, word)).map(
    ({ reason, at, rows: standing }) => ({
      reason,
      column: list.guesses[at]!.column,
      rows: standing,
    }),
  );
  const twice = twiceIn(list);
  const all = [...found, ...twice];
  return {
    groups: all.map(({ reason, column, rows: standing }) => ({
      reason,
      cells: standing.map((row) => cellOf(list, column, row)),
    })),
    doubtful: new Set(all.flatMap(({ rows: standing }) => standing)).size,
    notLookedFor: [...new Set(rowRules.flatMap(({ reads }) => reads))]
      .filter((role) => !known.has(role))
      .map((role) => roleNamed(role).label.toLowerCase()),
  };
}

function twiceIn(list: SurveyedList): readonly { reason: string; column: number; rows: readonly number[] }[] {
  const column = identifierIn(list);
  if (column === null) return [];
  const values = (at: number): readonly Value[] => list.rows.map((row) => row[at] ?? null);
  const access = list.guesses.access?.column;
  return sameIdentifiers(values(column), access === undefined ? null : values(access)).map((one) => ({
    ...one,
    column,
  }));
}

const holdsDates = ({ guesses }: SurveyedList, column: number): boolean =>
  (Object.entries(guesses) as [Role, { readonly column: number }][]).some(
    ([role, guess]) => guess.column === column && roleNamed(role).content === "date",
  );

/** Whose cell it is and what stands there: "D-17: 3/4/24". */
function cellOf(list: SurveyedList, column: number, row: number): CheckedCell {
  const value = list.rows[row]![column] ?? null;
  const isDay = typeof value === "number" && holdsDates(list, column) && value >= FIRST_DAY && value < LAST_DAY + 1;
  const text = isDay ? shortDate(Math.floor(value)) : (list.shownDates.get(column)?.get(row) ?? textOf(value));
  const whose = identifierIn(list);
  const who = whose === null || whose === column ? "" : textOf(list.rows[row]![whose] ?? null).trim();
  const both = [who, text.replace(/\s+/gu, " ").trim()].filter((part) => part !== "").join(": ");
  return {
    address: cellAddress(list.area.top + 1 + row, list.area.left + column),
    text: both.length > LONGEST ? `${both.slice(0, LONGEST - 1)}…` : both,
  };
}
