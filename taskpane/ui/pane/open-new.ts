/** Opens a workbook that was made here: in the browser's grid in place of the one there, in Excel as one beside it. */
export type OpenNew = (
  bytes: Uint8Array,
  name: string,
) => Promise<{ readonly outcome: "opened" } | { readonly outcome: "refused"; readonly sentence: string }>;
