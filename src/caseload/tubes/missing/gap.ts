/**
 * A gap: something missing in a row, or something in it that contradicts itself. What one is, and the pieces that its rule
 * is made of, in a formula and in TypeScript.
 */
import { formula, type FormulaTemplate } from "../../../columns/formula";
import type { SheetValue } from "../../../columns/sheet-block";
import type { RowCells } from "../../column";
import { isBlank, isBlankIn } from "../../reading";
import type { Sight } from "../../sight";

/** A row's cells as the gaps read them. */
export interface Cells {
  readonly at: (header: string) => SheetValue;
  readonly word: (header: string) => string;
  readonly day: (header: string) => 1 | 0 | -1;
  readonly row: RowCells;
  readonly sight: Sight;
}

export interface Gap {
  readonly says: string;
  /** TRUE where it applies, on LET names (names.ts). */
  readonly when: FormulaTemplate;
  readonly applies: (cells: Cells) => boolean;
  /** Asked only where this column was not left out. */
  readonly needs?: string;
}

/** The words of a list that say something, in the letters in which they are compared. */
export const known = (words: readonly string[], unknown?: string): readonly string[] =>
  words.filter((one) => one !== unknown).map((one) => one.toLowerCase());

export const both = (first: FormulaTemplate, second: FormulaTemplate) => formula`IF(${first},${second},FALSE)`;
export const not = (one: FormulaTemplate) => formula`NOT(${one})`;
export const isFilledIn = (name: string) => not(isBlankIn(`${name}cell`));
/** Something is entered, and it is not what it should be. */
export const wrong = (name: string, right: FormulaTemplate) => both(isFilledIn(name), not(right));
export const isWrong = (value: SheetValue, isRight: boolean): boolean => !isBlank(value) && !isRight;
