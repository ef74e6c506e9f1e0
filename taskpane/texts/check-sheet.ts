import { count, figure, together } from "./pieces";

export const checkSheet = {
  title: "What cannot be right",
  counts: (doubtful: number, rows: number) => `${figure(doubtful)} of ${count(rows, "row")} to look at.`,
  none: (rows: number) =>
    `Nothing was found in ${count(rows, "row")}. Only what stands in the columns below was compared; that does not show that it is true.`,
  lead: "Each group says what does not go together, not which of the two is right. Put it right in the sheet; the count falls as you do.",
  notLookedFor: (labels: readonly string[]) =>
    `Not looked for, because the list has no column that was recognised for it: ${together(labels)}.`,
  print: "Print the findings",
  heading: (list: string) => `To put right: ${list}`,
  columns: ["Cell", "What stands there", "Put right"] as readonly string[],
};
