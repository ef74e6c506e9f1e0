export const TOO_OLD = "This Excel is too old for this step. Update Excel, or use the browser workbook.";

export const notEmptied = (address: string): string => `Some cells could not be emptied (${address}).`;

/** Office's error codes, said so that a person knows what to do. The codes are those of Microsoft's library. */
const SENTENCES: Readonly<Record<string, string>> = {
  AccessDenied: "Excel does not allow changes here: the sheet or workbook is protected or open for reading only.",
  InvalidOperationInCellEditMode: "A cell is being edited. Press Enter or Esc in the sheet, then try again.",
  ApiNotFound: TOO_OLD,
  ItemNotFound: "The sheet, table or name is no longer there. Choose the list again.",
  ItemAlreadyExists: "A sheet, table or name of that name is there already.",
  InvalidArgument: "Excel did not accept a formula or an address.",
  InvalidReference: "The cells meant are no longer there. Choose the list again.",
  FilteredRangeConflict: "A filter is in the way. Clear the filter, then try again.",
  MergedRangeConflict: "Merged cells are in the way. Unmerge them, then try again.",
  PivotTableRangeConflict: "A pivot table is in the way. Choose another place.",
  RequestPayloadSizeLimitExceeded: "That is more than Excel takes at once. Try fewer columns or rows.",
  ResponsePayloadSizeLimitExceeded: "That is more than Excel gives at once. Try a smaller list.",
  RequestAborted: "Excel broke off. Try again.",
  InvalidOperation: "Excel does not allow that here now.",
};

interface CodedError {
  readonly code: string;
  readonly message: string;
}

const isCoded = (error: unknown): error is CodedError =>
  error instanceof Error && "code" in error && typeof error.code === "string";

export function errorSentence(error: unknown): string {
  if (isCoded(error)) return SENTENCES[error.code] ?? `Excel could not do that (${error.code}).`;
  return error instanceof Error ? error.message : "Excel could not do that.";
}
