/**
 * How much of a stranger's file is taken. Every limit is counted while reading, never believed from a header.
 * Where the number comes from stands beside it; "our choice" means that no published source gives one.
 */
export interface Limits {
  /** Bytes of the file as chosen. Our choice: a 100,000 x 15 sheet takes 8 MB (measured). */
  readonly fileBytes: number;
  /** Bytes of all parts together once unpacked, counted while inflating (OWASP File Upload sheet: limit the uncompressed size). */
  readonly unpackedBytes: number;
  /** Entries in the package. Our choice: a workbook with 200 sheets, each with a drawing and comments, has about 1,500. */
  readonly entries: number;
  /** Unpacked to packed, for parts above `ratioFrom`. Deflate reaches 1032 at most; the most even sheets tried here reach 60. */
  readonly ratio: number;
  /** Small parts may repeat themselves as they like. */
  readonly ratioFrom: number;
  /**
   * Cells in all worksheets together. Our choice: the grid holds every cell in memory. A caseload of 5,000 devices, 25,000
   * checks and 10,000 changes has 2.7 million.
   */
  readonly cells: number;
  /** Elements inside one another. Our choice: deep drawings reach about 30. */
  readonly depth: number;
}

export const LIMITS: Limits = {
  fileBytes: 50 * 1024 * 1024,
  unpackedBytes: 400 * 1024 * 1024,
  entries: 5_000,
  ratio: 200,
  ratioFrom: 1024 * 1024,
  cells: 3_000_000,
  depth: 256,
};

/** The last row and column of a worksheet (ECMA-376 part 1, 18.3.1.73 and Excel's published limits: 1,048,576 x 16,384). */
export { LAST_COLUMN, LAST_ROW } from "../../../src/formula/words";
