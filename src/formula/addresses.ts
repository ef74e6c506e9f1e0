/** A1 addresses of cells; rows and columns are counted from 0. */

/** A, B, ... Z, AA, ... for 0, 1, ... */
export function columnLetters(index: number): string {
  let letters = "";
  for (let n = index + 1; n > 0; n = Math.floor((n - 1) / 26))
    letters = String.fromCharCode(65 + ((n - 1) % 26)) + letters;
  return letters;
}

/** A1 text of a cell. */
export const cellAddress = (row: number, column: number): string => columnLetters(column) + (row + 1);
