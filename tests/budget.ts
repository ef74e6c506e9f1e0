/**
 * How much of a long test to do. `npm cit` does a part that takes seconds and reaches every rule; `npm run endurance`
 * does all of it.
 */
export const isEndurance = process.env["ENDURANCE"] === "1";

/** The first in `npm cit`, the second in `npm run endurance`. */
export const shortOrLong = <T>(short: T, long: T): T => (isEndurance ? long : short);
