/** What columns are called that mending puts beside a list. Stored in people's workbooks, and known again by the guesses. */

const MENDED = "mended";
const AS_TYPED = "as typed";

/** "Last change, mended" */
export const mendedHeader = (header: string): string => `${header}, ${MENDED}`;

/** "Last change, as typed": what stood in cells that were changed in place. */
export const asTypedHeader = (header: string): string => `${header}, ${AS_TYPED}`;

/**
 * Whose mended column that is; null where it is none.
 * @param plain a header as `plainHeader` makes it
 */
export const mendedFrom = (plain: string): string | null => {
  const found = new RegExp(`^(.+) ${MENDED}(?: \\d+)?$`).exec(plain);
  return found ? found[1]! : null;
};

/** @param plain a header as `plainHeader` makes it */
export const isAsTyped = (plain: string): boolean => new RegExp(` ${AS_TYPED}(?: \\d+)?$`).test(plain);
