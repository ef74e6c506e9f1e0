/** Excel's own limits for a formula (support.microsoft.com, "Excel specifications and limits"). */

/** Characters as people see it, with its "=". */
export const LONGEST_FORMULA = 8192;

/** Characters of a text in quotes inside a formula. */
export const LONGEST_TEXT = 255;
