/**
 * Set up a caseload: what the pane chooses and gets.
 *
 *   const maker = await setUp.load();
 *   const book = maker.describe(choices, today);
 *   show(setUp.preview(book));
 *   await openNew(book, setUp.fileName(choices));
 */
/** Columns that a caseload can do without; added later with Add columns. */
export const columnGroups = ["fit", "plan", "spare"] as const;
export type ColumnGroup = (typeof columnGroups)[number];

export interface SetUpChoices {
  readonly people: "invented" | "none";
  readonly groups: readonly ColumnGroup[];
}
