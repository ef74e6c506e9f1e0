import { count, figure } from "./pieces";

/** Somebody's own list and its columns, as every job on it speaks of them. */
export const ownList = {
  looking: "Looking at the sheet…",
  lookAgain: "Look again",
  lookFailed: (reason: string) =>
    `The sheet could not be read just now. Finish typing in the cell you are in, then press ‘Look again’. (${reason})`,
  title: "Your list",
  none: "A list is one row of headers with rows below it. Open one or type one in, then press ‘Look again’.",
  unsure: "Check this before you go on.",
  correct: "Not right? Correct it",
  choose: "List",
  chooseOne: "Choose a list",
  headerRow: "Row with the headers",
  lastRow: "Last row of the list",
  use: "Use these rows",
  wholeRow: (most: number) => `Give a row number from 1 to ${most}.`,
  inColumns: "What stands in its columns",
  noSamples: "empty",
  which: "Which of your columns is what",
  column: (letters: string, header: string) => `${letters}: ${header === "" ? "(no header)" : header}`,
  samples: (values: readonly string[]) =>
    values.length === 0 ? "This column is empty." : `For example: ${values.join(" · ")}`,
  chooseColumn: "Choose a column",
  noColumn: "no such column",
  cells: (n: number) => count(n, "cell"),
  goTo: (cell: string, text: string) => `Go to ${cell}: ${text}`,
  more: (n: number) => `${figure(n)} more`,
};
