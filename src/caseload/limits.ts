/** How large a caseload may grow. Measured with all groups of columns, in processor time. */

/**
 * A check's tag (checks/order.ts) keeps five digits for its sheet row; a sixth would run into its day, and a balloon's
 * checks would silently stand in a wrong order. Room is left for rows above the list. Record a check refuses beyond it.
 */
export const MOST_CHECKS = 99_000;
