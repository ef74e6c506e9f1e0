import { kindWords } from "../../actions/add-columns";
import type { KindChoice, SurveyedList } from "../../actions/add-columns/interface";

/** The kinds as guessed from the words of a column; a word without a guess stays out, which means not known. */
export function kindsOfColumn(list: SurveyedList, column: number | null): KindChoice {
  const guessed = column === null ? [] : kindWords(list, column);
  return {
    from: "words",
    words: Object.fromEntries(guessed.flatMap(({ key, guess }) => (guess === null ? [] : [[key, guess]]))),
  };
}
