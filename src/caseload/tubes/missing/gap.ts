/**
 * A gap: something missing in a row, or something in it that contradicts itself. What one is, and the pieces that its rule
 * is made of.
 */
import type { Header } from "../../headers";
import { formula, type FormulaTemplate } from "../../../columns/formula";
import { isBlankIn } from "../../reading";

export interface Gap {
  readonly says: string;
  /** TRUE where it applies, on LET names (names.ts). */
  readonly when: FormulaTemplate;
  /** Asked only where this column was not left out. */
  readonly needs?: Header;
}

/** The words of a list that say something, in the letters in which they are compared. */
export const known = (words: readonly string[], unknown?: string): readonly string[] =>
  words.filter((one) => one !== unknown).map((one) => one.toLowerCase());

export const both = (first: FormulaTemplate, second: FormulaTemplate) => formula`IF(${first},${second},FALSE)`;
export const not = (one: FormulaTemplate) => formula`NOT(${one})`;
export const isFilledIn = (name: string) => not(isBlankIn(`${name}cell`));
/** Something is entered, and it is not what it should be. */
export const wrong = (name: string, right: FormulaTemplate) => both(isFilledIn(name), not(right));
