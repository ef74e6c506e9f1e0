import { count, together } from "./pieces";

export const asValues = {
  lead: "Columns that were added here, kept as what they say today: for a colleague, or a copy that must not change. They no longer count from today.",
  none: "No column of this list was added here.",
  choose: "Columns to keep as values",
  back: "Kept as values; tick to have formulas again",
  says: (rows: number) =>
    `${count(rows, "row")}. The day on which they were worked out stands beside the list, in “Worked out”.`,
  toValues: (n: number) => `Keep ${count(n, "column", "columns")} as values`,
  toFormulas: (n: number) => `Formulas again in ${count(n, "column", "columns")}`,
  both: "One at a time: tick columns of one sort.",
  tick: "Tick what is to change.",
  done: (headers: readonly string[], day: string) => `Kept as worked out on ${day}: ${together(headers)}.`,
  backDone: (headers: readonly string[]) => `Formulas again: ${together(headers)}.`,
  gone: (header: string, missing: string) =>
    `${header} reads the column “${missing}”, which is no longer in this list. Add the column anew instead.`,
  noRoom:
    "There is no room beside the list for the day on which the columns were worked out. Clear the cells there first.",
  working: "Changing the columns",
  title: { done: "Changed", refused: "Nothing was changed", stopped: "Stopped" },
  again: "More columns",
};
