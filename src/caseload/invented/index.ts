/**
 * The invented caseload: 48 identifiers in 50 rows, nobody of them real, with every kind of mess that real lists have.
 * All days count from the day on which the people are invented, so that the list looks alive on any day.
 */
export { inventedCaseload } from "./caseload";
export { inventedRows, type AnyRow } from "./recognise";
