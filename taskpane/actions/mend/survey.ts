/** Looks where somebody stands: the list, and which of its columns could be mended. */
import { roleNamed, type Role } from "../../../src/columns/role";
import { mendedFrom, isAsTyped } from "../../../src/mending/headers";
import { plainHeader } from "../../../src/columns/header-words";
import { NOTHING_SAID, readDateColumn } from "../../../src/mending/dates";
import { sizeWordings } from "../../../src/mending/sizes";
import { wordKey } from "../../../src/columns/spelling";
import type { Value, Workbook } from "../../workbook/port";
import { kindWords } from "../add-columns/kind-words";
import type { SurveyedList } from "../list/interface";
import { asOfIn } from "../list/as-of";
import { candidatesIn, locate } from "../list/find";
import { readList } from "../list/read-list";
import { count } from "../../texts/pieces";
import type { Asked, MendableColumn, MendAs, MendChoices, MendSurvey } from "./interface";

export async function surveyMend(workbook: Workbook, asked: Asked): Promise<MendSurvey> {
  const overview = await workbook.overview();
  const { list: located, sentence } = await locate(workbook, overview, asked);
  const asOf = asOfIn(overview, asked.today);
  const list = located && (await readList(workbook, overview, located, asOf));
  const mendable = list ? mendableIn(list) : [];
  return {
    lists: candidatesIn(overview).map(({ choice }) => choice),
    list,
    sentence: list ? `${sentence} ${count(list.rows.length, "row")}.` : sentence,
    asOf,
    dateSystem: overview.dateSystem,
    mendable,
    proposal: proposalFor(list, mendable),
  };
}

export const columnValues = ({ rows }: SurveyedList, column: number): readonly Value[] =>
  rows.map((row) => row[column] ?? null);

/** Texts that could be days, and as many as that of a column's texts, before it is proposed without a header's word. */
const DATES_AT_LEAST = 3;
const SHARE_OF_DATES = 0.4;

function mendableIn(list: SurveyedList): readonly MendableColumn[] {
  const roles = new Map<number, Role>();
  for (const [role, guess] of Object.entries(list.guesses)) roles.set(guess.column, role as Role);
  const mended = new Set(list.columns.map(({ header }) => mendedFrom(plainHeader(header))));
  const found = list.columns.flatMap(({ index, header, isOurs }): MendableColumn[] => {
    const plain = plainHeader(header);
    if (isOurs || isAsTyped(plain) || mended.has(plain)) return [];
    const role = roles.get(index);
    const as = role === undefined ? looksLikeDates(list, index) : asOfRole(role);
    if (as === null) return [];
    const open = openCells(list, index, as);
    return open > 0 ? [{ column: index, as, open }] : [];
  });
  return found.sort((a, b) => b.open - a.open || a.column - b.column);
}

function asOfRole(role: Role): MendAs | null {
  if (role === "kind") return "kinds";
  if (role === "size") return "sizes";
  return roleNamed(role).content === "date" ? "dates" : null;
}

function looksLikeDates(list: SurveyedList, column: number): MendAs | null {
  const { wordings, unread } = readDateColumn(columnValues(list, column));
  const read = wordings.reduce((sum, { rows }) => sum + rows.length, 0);
  const not = unread.reduce((sum, { rows }) => sum + rows.length, 0);
  return read >= DATES_AT_LEAST && read >= SHARE_OF_DATES * (read + not) ? "dates" : null;
}

const sum = (groups: readonly { readonly rows: readonly number[] }[]): number =>
  groups.reduce((all, { rows }) => all + rows.length, 0);

/** Cells that no formula of ours can read as they stand: a text with the year first, "14 Fr" and "balloon" are read. */
function openCells(list: SurveyedList, column: number, as: MendAs): number {
  const values = columnValues(list, column);
  if (as === "dates") {
    const { wordings, unread } = readDateColumn(values);
    return sum(wordings.filter(({ form }) => form !== "year first")) + sum(unread);
  }
  if (as === "sizes") return sum(sizeWordings(values).filter(({ reads }) => reads === null));
  return sum(kindWords(list, column).filter(({ guess, refused }) => refused === null && guess === null));
}

/** Each word's kind as it is guessed; words without a guess wait. */
export const guessedWords = (list: SurveyedList, column: number): MendChoices["kinds"] =>
  Object.fromEntries(
    kindWords(list, column).flatMap(({ word, guess }) => (guess === null ? [] : [[wordKey(word), guess]])),
  );

function proposalFor(list: SurveyedList | null, mendable: readonly MendableColumn[]): MendChoices {
  const [first] = mendable;
  return choicesFor(list, first ? { column: first.column, as: first.as } : null);
}

/** Where to start with a column: nothing said, but for words whose kind is plain. */
export const choicesFor = (list: SurveyedList | null, what: MendChoices["what"]): MendChoices => ({
  what,
  put: "beside",
  dates: NOTHING_SAID,
  sizes: {},
  kinds: list && what?.as === "kinds" ? guessedWords(list, what.column) : {},
});
