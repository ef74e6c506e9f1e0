/**
 * A step of *To do*: a word of the order of urgency, and when it holds. Steps stand in hidden columns of a few each; a
 * column gives the place of its most urgent step that holds, and the least of these places is the row's.
 */
import type { Header } from "../../headers";
import { formula, type FormulaTemplate } from "../../../columns/formula";
import { PLAIN, type CaseloadColumn, type Slots } from "../../column";
import { is, isOneOf } from "../../reading";
import { urgencyKey, type ToDoWord } from "../../urgency";
import { ifLive } from "../live";

export interface Step {
  readonly word: ToDoWord;
  readonly when: (cell: Slots) => FormulaTemplate;
}

/** The word itself stands in a column of states. */
export const reads = (header: Header, state: string, word: ToDoWord): Step => ({
  word,
  when: (cell) => is(cell(header), state),
});

export const readsOneOf = (header: Header, states: readonly string[], word: ToDoWord): Step => ({
  word,
  when: (cell) => isOneOf(cell(header), states),
});

/** One of several columns reads so. */
export const anyReads = (headers: readonly Header[], state: string, word: ToDoWord): Step => ({
  word,
  when: (cell) => {
    const [first, ...rest] = headers.map((header) => is(cell(header), state));
    return formula`OR(${rest.reduce((all, one) => formula`${all},${one}`, first!)})`;
  },
});

/** @param steps the order in which they are given does not matter */
export function keyColumn(header: Header, steps: readonly Step[]): CaseloadColumn {
  const inOrder = [...steps].sort((one, other) => urgencyKey(one.word) - urgencyKey(other.word));
  return {
    header,
    kind: "computed",
    format: PLAIN,
    width: 4,
    isHidden: true,
    formula: (cell) =>
      ifLive(
        cell,
        inOrder.reduceRight<FormulaTemplate>(
          (rest, { word, when }) => formula`IF(${when(cell)},${urgencyKey(word)},${rest})`,
          formula`""`,
        ),
      ),
  };
}
