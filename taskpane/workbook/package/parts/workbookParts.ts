/** The package behind an opened workbook, for the patcher only. */
export interface WorkbookParts {
  readonly bytes: Uint8Array;
}
