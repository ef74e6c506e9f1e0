/** What a word of a formula can be: an address, a number, a name. ECMA-376 part 1, 18.17.2 (grammar) and 18.17.2.5 (names). */
export const LAST_ROW = 1_048_576;
export const LAST_COLUMN = 16_384;

const CELL = /^\$?([A-Za-z]{1,3})\$?([1-9]\d{0,6})$/;
const COLUMN = /^\$?([A-Za-z]{1,3})$/;
const ROW = /^\$?([1-9]\d{0,6})$/;
const NUMBER = /^(?:\d+\.?\d*|\.\d+)(?:[Ee][+-]?\d+)?$/;
/** Letters of any script; combining marks count with their letter. */
const NAME = /^[\p{L}_\\][\p{L}\p{N}\p{M}_.\\?]*$/u;

/** 1 is column A. */
export const columnNumber = (letters: string): number =>
  [...letters.toUpperCase()].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0);

/** B4 and $B$4, on the sheet: A1048577 and XFE1 are names. */
export function isCell(word: string): boolean {
  const found = CELL.exec(word);
  return found !== null && columnNumber(found[1]!) <= LAST_COLUMN && Number(found[2]) <= LAST_ROW;
}

/** One end of A:C. */
export const isColumn = (word: string): boolean => {
  const found = COLUMN.exec(word);
  return found !== null && columnNumber(found[1]!) <= LAST_COLUMN;
};

/** One end of 3:7. */
export const isRow = (word: string): boolean => {
  const found = ROW.exec(word);
  return found !== null && Number(found[1]) <= LAST_ROW;
};

export const isNumber = (word: string): boolean => NUMBER.test(word);
export const isBoolean = (word: string): boolean => /^(?:TRUE|FALSE)$/i.test(word);
export const isName = (word: string): boolean => NAME.test(word);

/** A:C and 3:7, with or without a sheet before them. */
export const isWholeLines = (reference: string): boolean => {
  const halves = reference.slice(reference.lastIndexOf("!") + 1).split(":");
  return halves.length === 2 && (halves.every(isColumn) || halves.every(isRow));
};
