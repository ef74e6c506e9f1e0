/** This list: what its columns and words are, looked up, kept in the workbook, and forgotten. */
import { memoryRows, type Remembered } from "../../../src/columns/remembered";
import { roleNamed, roles, type Role } from "../../../src/columns/role";
import { thisList as words } from "../../texts/this-list";
import type { Receipt, Workbook } from "../../workbook/port";
import { problem, type Afterwards, type Problem } from "../action";
import { addColumns } from "../add-columns";
import { kindWords } from "../add-columns/kind-words";
import type { Asked, SurveyedList } from "../list/interface";
import { expectationsOf } from "../list/expected";
import { listName, readMemory, stepsToKeep } from "../list/memory";
import type { ThisListChoices, ThisListPlan, ThisListSurvey } from "./interface";

export async function surveyThisList(workbook: Workbook, asked: Asked): Promise<ThisListSurvey> {
  const { lists, list, sentence, proposal } = await addColumns.survey(workbook, asked);
  const memory = await readMemory(workbook, await workbook.overview());
  const meanings = Object.fromEntries(
    roles.flatMap(({ key }): [number, Role][] => {
      const column = list?.guesses[key]?.column;
      return column === undefined ? [] : [[column, key]];
    }),
  );
  const kind = list?.guesses.kind?.column;
  const said = list && kind !== undefined ? kindWords(list, kind) : [];
  return {
    lists,
    list,
    sentence,
    memory,
    numbers: { ...list?.remembered?.numbers, ...proposal.numbers },
    lengths: proposal.lengths,
    proposal: {
      meanings,
      words: Object.fromEntries(said.flatMap(({ key, guess }) => (guess === null ? [] : [[key, guess]]))),
    },
  };
}

/** The column that says the kind; null where none does. */
export const kindColumn = ({ meanings }: ThisListChoices): number | null => {
  const found = Object.entries(meanings).find(([, role]) => role === "kind");
  return found ? Number(found[0]) : null;
};

/** A role that was said before and is no column's now was taken away on purpose. */
function columnsOf(list: SurveyedList, { meanings }: ThisListChoices): Remembered["columns"] {
  const said = Object.entries(meanings).map(([column, role]) => [role, list.columns[Number(column)]!.header] as const);
  const held = new Set(said.map(([role]) => role));
  const before = new Set([...Object.keys(list.guesses), ...Object.keys(list.remembered?.columns ?? {})]);
  const gone = roles.filter(({ key }) => before.has(key) && !held.has(key)).map(({ key }) => [key, null] as const);
  return Object.fromEntries([...said, ...gone]);
}

/** Words that stand in the list now, and those that were said before. */
function wordsOf(list: SurveyedList, choices: ThisListChoices): Remembered["words"] {
  const column = kindColumn(choices);
  const here = column === null ? [] : kindWords(list, column).filter(({ refused }) => refused === null);
  const said = here.flatMap(({ key, guess }) => {
    const kind = choices.words[key];
    if (kind !== undefined) return [[key, kind] as const];
    return guess === null ? [] : [[key, "not known" as const] as const];
  });
  return { ...list.remembered?.words, ...Object.fromEntries(said) };
}

export function planThisList(survey: ThisListSurvey, choices: ThisListChoices): ThisListPlan | Problem {
  const { list, memory, numbers, lengths } = survey;
  if (!list) return problem(survey.sentence);
  if (memory.isTaken) return problem(words.taken);
  const roleOf = Object.values(choices.meanings);
  const twice = roleOf.find((role, at) => roleOf.indexOf(role) !== at);
  if (twice !== undefined) return problem(words.twice(roleNamed(twice).label));
  if (roleOf.length === 0) return problem(words.nothing);
  const remembered: Remembered = {
    columns: columnsOf(list, choices),
    words: wordsOf(list, choices),
    everyone: list.remembered?.everyone ?? null,
    numbers,
    lengths,
  };
  const steps = stepsToKeep(memory, listName(list), remembered);
  const lines = memoryRows(new Map([[listName(list), remembered]])).length;
  return {
    outcome: "planned",
    change: { steps, expects: expectationsOf(list, [], null) },
    says: [words.says(lines, memory.sheet === null)],
    remembered,
    lines,
    isKept: steps.length === 0,
  };
}

/** Null where nothing of the list is kept. */
export function planForgetting({ list, memory }: ThisListSurvey): ThisListPlan["change"] | null {
  if (!list?.remembered || memory.isTaken) return null;
  return { steps: stepsToKeep(memory, listName(list), null), expects: [] };
}

export const afterKeeping =
  (lines: number) =>
  (receipt: Receipt): Afterwards => ({
    outcome: receipt.outcome,
    sentences: [receipt.outcome === "done" ? words.done(lines) : receipt.sentence],
    where: null,
    canTakeBack: receipt.done.length > 0,
  });

export const afterForgetting = (receipt: Receipt): Afterwards => ({
  outcome: receipt.outcome,
  sentences: [receipt.outcome === "done" ? words.forgotten : receipt.sentence],
  where: null,
  canTakeBack: receipt.done.length > 0,
});
