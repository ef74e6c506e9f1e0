/** How large a caseload may grow. Measured with all groups of columns, in processor time. */

/**
 * A check's tag (checks/order.ts) keeps five digits for its sheet row; a sixth would run into its day, and a balloon's
 * checks would silently stand in a wrong order. Room is left for rows above the list. Record a check refuses beyond it.
 */
export const MOST_CHECKS = 99_000;

/**
 * Rows of Tubes in use and Balloon checks together up to which the grid's engine works a caseload out within a few
 * seconds: 450 rows took 5 seconds at opening, 7,000 took 300. It has to where formulas are not as they were set up; above
 * it the page says so. A caseload as set up is worked out by work-out.ts, 7,000 rows in half a second.
 */
export const MOST_ROWS_LEFT_TO_THE_ENGINE = 600;
