import { count, together } from "./pieces";

/** What is overdue, in tables. */
export const overdueTable = {
  heading: (list: string) => `What is overdue: ${list}`,
  sheetName: "Overdue",
  ways: { kind: "By kind", changedBy: "By who changes it", place: "By where it is changed" },
  columns: ["Overdue", "Due soon", "No date", "Later, or none set", "All"] as readonly string[],
  places: {
    home: "at home",
    clinic: "in clinic",
    radiology: "in radiology",
    endoscopy: "in endoscopy",
    theatre: "in theatre",
    notKnown: "not decided, or not known",
  },
  notKnown: "not known",
  counted: (overdue: number, without: number, n: number) =>
    `${count(overdue, "device")} of ${n} ${overdue === 1 ? "is" : "are"} overdue; ${count(without, "has", "have")} no date that can be used.`,
  missing: (what: readonly string[]) => `The list has no column for: ${together(what)}.`,
  noDates: "This list has neither a column ‘Change’ nor one with the day of the next change. Add them first.",
  print: "Print these tables",
  caution:
    "Where somebody else’s word stands for a kind, it is counted as said in Add columns; other words are not known.",
};
