/** How large a caseload's formulas may grow. */

/** A check's tag keeps five digits for its sheet row and five for the row where its key first stands. */
export const MOST_CHECKS = 99_000;
