/** The entry that a person is still typing, as far as the workbook has to know of it (page-entry.ts has it from the page). */
export interface OpenEntry {
  isOpen(): boolean;
  /** Puts it into its cell; the selection stays. Resolves when the grid has taken it or turned it down. */
  end(): Promise<void>;
  onChanged(listen: () => void): void;
}

/** Without a page there is no editor. */
export const NO_ENTRY: OpenEntry = { isOpen: () => false, end: async () => undefined, onChanged: () => undefined };
