import type { BookDescription } from "../../../src/caseload/book";

/** Makes a workbook and opens it: in the browser's grid in place of the one there, in Excel as one beside it. */
export type OpenNew = (
  book: BookDescription,
  name: string,
) => Promise<{ readonly outcome: "opened" } | { readonly outcome: "refused"; readonly sentence: string }>;
