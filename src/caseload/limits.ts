/** How large a caseload may grow before its formulas need help. Measured with all groups of columns, in processor time. */

/**
 * A check's tag (checks/order.ts) keeps five digits for its sheet row; a sixth would run into its day, and a balloon's
 * checks would silently stand in a wrong order. Room is left for rows above the list. Record a check refuses beyond it.
 */
export const MOST_CHECKS = 99_000;

/**
 * Rows of Tubes in use and Balloon checks together up to which the browser's grid works everything out by itself within
 * a few seconds: 450 rows took 5 seconds at opening, and 1.5 for a check or 2 for a fill, which feed all rows; 7,000 rows
 * took 300 seconds at opening. Above it the page says so while it opens the file. An edit that feeds its own row only
 * takes 0.1 seconds with 450 rows, 0.2 with 2,000 and 0.9 with 7,000.
 */
export const MOST_ROWS_WORKED_OUT_BY_THE_GRID = 600;
