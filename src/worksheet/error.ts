/**
 * The two error codes that show a sentence in Excel (the others show a generic text only).
 * #N/A means "cannot be estimated from these data"; everything else is #VALUE!.
 */
export type ErrorCode = "#VALUE!" | "#N/A";

/**
 * The one error a worksheet user meets: a code for the cell, a sentence for the person.
 * It is returned, never thrown: an exception inside one custom function stops a whole spreadsheet engine.
 */
export class SheetError {
  constructor(
    /** A short fragment: which argument, what is wrong, what to do. */
    readonly message: string,
    readonly code: ErrorCode = "#VALUE!",
  ) {}
}

/** "Cannot be estimated from these data." */
export const notAvailable = (message: string): SheetError => new SheetError(message, "#N/A");

/**
 * An error that was in a cell when it came in. Hosts hand errors over in their own shapes; their adapters, or `call`,
 * turn them into this.
 */
export class CellError {
  constructor(readonly code: string) {}
}
