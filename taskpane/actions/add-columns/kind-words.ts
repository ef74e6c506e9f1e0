/** The different ways in which a list writes its kinds of tube. */
import { textOf } from "../../../src/columns/sheet-block";
import { spelled, unwritable, wordKey } from "../../../src/columns/spelling";
import type { KindKey } from "../../../src/settings/kinds";
import type { Value } from "../../workbook/port";
import { kindOfWord } from "../list/memory";
import { MADE_A_DATE } from "../list/shown-dates";
import type { KindChoice, KindWord } from "./interface";
import type { SurveyedList } from "../list/interface";

function refusal(value: Value, date: string | undefined): string | null {
  if (date !== undefined) return MADE_A_DATE;
  const word = spelled(value);
  if (word === null) return "not a word: these rows are not known";
  if (wordKey(word) === "") return "nothing entered: these rows are not known";
  return unwritable(word);
}

/** Every word of a column with its rows, the most frequent first. */
export function kindWords(list: SurveyedList, column: number): readonly KindWord[] {
  const dates = list.shownDates.get(column);
  const found = new Map<string, { word: string; refused: string | null; rows: number[] }>();
  list.rows.forEach((row, i) => {
    const value = row[column] ?? null;
    const date = dates?.get(i);
    const text = date ?? textOf(value);
    const key = wordKey(text);
    const known = found.get(key);
    if (known) known.rows.push(list.rowNumbers[i]!);
    else
      found.set(key, {
        word: text.replace(/\s+/g, " ").trim(),
        refused: refusal(value, date),
        rows: [list.rowNumbers[i]!],
      });
  });
  return [...found]
    .map(([key, one]) => ({ key, ...one, guess: one.refused === null ? kindOfWord(list, one.word) : null }))
    .sort((a, b) => b.rows.length - a.rows.length);
}

/** The kinds as said before or guessed; a word without either stays out, which means not known. */
export function guessedKinds(list: SurveyedList, column: number | null): KindChoice {
  const everyone = list.remembered?.everyone ?? null;
  if (column === null && everyone !== null) return { from: "everyone", kind: everyone };
  const words = column === null ? [] : kindWords(list, column);
  return {
    from: "words",
    words: Object.fromEntries(words.flatMap(({ key, guess }) => (guess === null ? [] : [[key, guess]]))),
  };
}

/** Every spelling in the list of every word that was given a kind, as formulas meet it. */
export function spellingsInList(
  list: SurveyedList,
  column: number,
  kinds: Readonly<Record<string, KindKey>>,
): ReadonlyMap<string, KindKey> {
  const found = new Map<string, KindKey>();
  for (const row of list.rows) {
    const value = row[column] ?? null;
    const word = spelled(value);
    if (word === null || refusal(value, undefined) !== null) continue;
    const kind = Object.hasOwn(kinds, wordKey(word)) ? kinds[wordKey(word)] : undefined;
    if (kind !== undefined && kind !== "not known") found.set(word, kind);
  }
  return found;
}
