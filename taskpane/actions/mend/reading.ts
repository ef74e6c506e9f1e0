/** What becomes of each cell of the chosen column: changed, waiting for an answer, good as it is, or not read and why. */
import { cellAddress } from "../../../src/columns/formula";
import { textOf } from "../../../src/columns/sheet-block";
import type { Role } from "../../../src/columns/role";
import { mendDates, readDateColumn, type DateColumn, type MendedDates } from "../../../src/mending/dates";
import { mendKinds } from "../../../src/mending/kinds";
import { mendSizes, sizeSaid, sizeWordings } from "../../../src/mending/sizes";
import { dayMeant, type DateAnswers } from "../../../src/mending/written-date";
import { wordKey } from "../../../src/columns/spelling";
import { shortDate } from "../../../src/words/date-in-words";
import { kindNamed, type KindKey } from "../../../src/settings/kinds";
import { kindWords } from "../add-columns/kind-words";
import type { SurveyedList } from "../list/interface";
import { MADE_A_DATE } from "../list/shown-dates";
import type { CellGroup, DateQuestions, MendCell, MendChoices, MendReading, MendSurvey } from "./interface";
import { columnValues } from "./survey";

/** Longer texts are cut short where cells are listed. */
const LONGEST = 60;

/** Days of these columns lie behind us: one that does not is to be looked at. */
const PAST: { readonly [R in Role]?: string } = {
  last: "last change",
  stomaMade: "stoma made",
  lastCheck: "last check",
};

/** Null where no column is chosen. */
export function readingOf(survey: MendSurvey, choices: MendChoices): MendReading | null {
  const { list } = survey;
  const { what } = choices;
  if (!list || !what || !list.columns[what.column]) return null;
  if (what.as === "dates") return ofDates(survey, list, what.column, choices);
  return what.as === "sizes" ? ofSizes(list, what.column, choices) : ofKinds(list, what.column, choices);
}

/** @param row counted from 0 within the list's rows */
function cellOf(list: SurveyedList, column: number, row: number): MendCell {
  const shown = list.shownDates.get(column)?.get(row);
  const value = list.rows[row]![column] ?? null;
  const text = shown ?? textOf(value).replace(/\s+/gu, " ").trim();
  return {
    address: cellAddress(list.area.top + 1 + row, list.area.left + column),
    row: list.rowNumbers[row]!,
    text: text.length > LONGEST ? `${text.slice(0, LONGEST - 1)}…` : text,
  };
}

const groupOf = (list: SurveyedList, column: number, reason: string, rows: readonly number[]): CellGroup => ({
  reason,
  cells: rows.map((row) => cellOf(list, column, row)),
});

const total = (groups: readonly { readonly rows: readonly number[] }[]): number =>
  groups.reduce((sum, { rows }) => sum + rows.length, 0);

const changedIn = (results: readonly unknown[]): number => results.filter((result) => result !== null).length;

function ofDates({ asOf }: MendSurvey, list: SurveyedList, column: number, choices: MendChoices): MendReading {
  const read = readDateColumn(columnValues(list, column));
  const role = (Object.entries(list.guesses) as [Role, { column: number }][]).find(([, one]) => one.column === column);
  const mended = mendDates(read, choices.dates, asOf.day, role ? (PAST[role[0]] ?? null) : null);
  const group = ({ reason, rows }: { readonly reason: string; readonly rows: readonly number[] }) =>
    groupOf(list, column, reason, rows);
  return {
    as: "dates",
    of: read.of,
    changed: changedIn(mended.results),
    waiting: mended.waiting.length,
    good: read.dates.filter((row) => mended.results[row] === null).length,
    blank: read.blank,
    unread: [...read.unread, ...mended.failed].map(group),
    doubts: mended.doubts.map(({ reason, rows }) => ({
      reason,
      cells: rows.map((row) => withDay(cellOf(list, column, row), mended, read, row)),
    })),
    dates: questionsOf(list, column, read, mended, choices, asOf.day),
    sizes: null,
    kinds: null,
    results: mended.results,
  };
}

/** A day number tells nobody which day it is. */
function withDay(cell: MendCell, { results }: MendedDates, { values }: DateColumn, row: number): MendCell {
  const day = results[row] ?? values[row];
  return typeof day === "number" ? { ...cell, text: shortDate(Math.floor(day)) } : cell;
}

function questionsOf(
  list: SurveyedList,
  column: number,
  read: DateColumn,
  mended: MendedDates,
  { dates: answers }: MendChoices,
  asOf: number,
): DateQuestions {
  const asking = (open: "order" | "century") => read.wordings.filter(({ asks }) => asks.includes(open));
  const [order, century] = [asking("order"), asking("century")];
  const example = order[0];
  const inOrder = (said: NonNullable<DateAnswers["order"]>): number | null => {
    const date = example && read.cells[example.rows[0]!];
    const day = date ? dayMeant(date, { order: said, century: answers.century ?? "2000s" }, asOf) : null;
    return typeof day === "number" ? day : null;
  };
  return {
    ways: read.wordings.map(({ example: text, rows }) => ({
      example: text,
      cells: rows.length,
      becomes: mended.results[rows[0]!] ?? null,
    })),
    order: example
      ? {
          cells: total(order),
          proof: read.proof,
          example: example.example,
          dayFirst: inOrder("day first"),
          monthFirst: inOrder("month first"),
        }
      : null,
    century: century[0] ? { cells: total(century), example: century[0].example, years: read.years } : null,
    exchanged: read.exchanged.map((row) => ({
      ...cellOf(list, column, row),
      text: shortDate(Math.floor(read.values[row] as number)),
    })),
  };
}

function ofSizes(list: SurveyedList, column: number, { sizes: said }: MendChoices): MendReading {
  const values = columnValues(list, column);
  const dates = new Map(
    [...(list.shownDates.get(column) ?? [])].map(([row, text]) => [row, { text, reason: MADE_A_DATE }] as const),
  );
  const wordings = sizeWordings(values, dates);
  const results = mendSizes(values.length, wordings, said);
  const isSaid = (key: string): boolean => Object.hasOwn(said, key) && typeof sizeSaid(said[key]!) === "number";
  const unread = wordings.filter(({ key, reads }) => reads === null && !isSaid(key));
  const plain = wordings.filter(({ key, isPlain }) => isPlain && !isSaid(key));
  return {
    as: "sizes",
    of: values.length,
    changed: changedIn(results),
    waiting: total(unread),
    good: total(plain),
    blank: values.length - total(wordings),
    unread: unread.map(({ reason, rows }) => groupOf(list, column, reason ?? "", rows)),
    doubts: wordings
      .filter(({ key, reads, reason }) => reads !== null && reason !== null && !isSaid(key))
      .map(({ reason, rows }) => groupOf(list, column, reason!, rows)),
    dates: null,
    sizes: wordings,
    kinds: null,
    results,
  };
}

function ofKinds(list: SurveyedList, column: number, { kinds: said }: MendChoices): MendReading {
  const values = columnValues(list, column);
  const words = kindWords(list, column);
  const results = mendKinds(values, said);
  const kindOf = (key: string): KindKey => (Object.hasOwn(said, key) ? said[key]! : "not known");
  const open = words.filter(({ key, refused }) => refused === null && kindOf(key) === "not known");
  const blank = values.filter((value) => wordKey(textOf(value)) === "").length;
  const refused = words.filter(({ refused: why, word }) => why !== null && word !== "");
  const changed = changedIn(results);
  const waiting = total(open);
  return {
    as: "kinds",
    of: values.length,
    changed,
    waiting,
    good: values.length - changed - waiting - blank - total(refused),
    blank,
    unread: refused.map(({ refused: why, rows }) => groupOf(list, column, why!, rowsIn(list, rows))),
    doubts: [],
    dates: null,
    sizes: null,
    kinds: words,
    results: results.map((key) => (key === null ? null : kindNamed(key).key)),
  };
}

/** Kind words are told with sheet rows. */
const rowsIn = ({ rowNumbers }: SurveyedList, rows: readonly number[]): readonly number[] =>
  rows.map((row) => row - rowNumbers[0]!);
