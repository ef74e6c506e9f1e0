import { MEMORY_SHEET, type UnfitRow } from "../../src/columns/remembered";
import { count, inQuotes, together } from "./pieces";

const why: Readonly<Record<UnfitRow["why"], string>> = {
  "said twice": "said in two ways",
  "not known": "not understood",
  "not allowed": "not a number that can be used",
};

export const thisList = {
  columns: "What each column is",
  columnsLead:
    "Guesses are marked. What stands here is used by Add columns, Mend, Check this sheet, Show only and Today.",
  noMeaning: "not used",
  words: "What each word for the kind means",
  wordsOf: (header: string) => `Words of ${inQuotes(header)}.`,
  numbers: "Numbers of your columns",
  kept: "Kept",
  keptAll: `This is kept on the sheet ${inQuotes(MEMORY_SHEET)} of this workbook.`,
  notKept: "Not kept yet: it is guessed anew each time.",
  changed: "Some of this is not kept yet.",
  guess: "guess",
  said: "kept",
  press: "Keep it in this workbook",
  forget: "Forget this list",
  working: "Keeping what was said",
  title: { done: "Kept", refused: "Not kept", stopped: "Stopped" },
  forgotten: "Forgotten. The sheet holds nothing of this list now.",
  done: (rows: number) =>
    `${count(rows, "line")} on the hidden sheet ${inQuotes(MEMORY_SHEET)}. Any spreadsheet program can show that sheet; delete it to forget everything.`,
  again: "Back to the list",
  says: (rows: number, isNew: boolean) =>
    isNew
      ? `Adds a hidden sheet ${inQuotes(MEMORY_SHEET)} with ${count(rows, "line")}. Your list is not changed.`
      : `Writes ${count(rows, "line")} on the sheet ${inQuotes(MEMORY_SHEET)}. Your list is not changed.`,
  nothing: "Say what at least one column is.",
  twice: (label: string) => `Two columns are said to be ${inQuotes(label)}. Leave one.`,
  taken: `A sheet ${inQuotes(MEMORY_SHEET)} is here already and holds something else. Rename it, then try again.`,
  because: `kept on the sheet ${inQuotes(MEMORY_SHEET)}`,
  unfit: (rows: readonly UnfitRow[]) =>
    `On the sheet ${inQuotes(MEMORY_SHEET)}: ${together(rows.map((row) => `${inQuotes(row.text)} is ${why[row.why]}`))}. Not used.`,
  gone: (header: string, label: string) =>
    `${inQuotes(header)} was kept as ${inQuotes(label)}; no column of this name is here now. Say anew which it is.`,
  shared: (header: string, label: string) =>
    `${inQuotes(header)} was kept as ${inQuotes(label)}; two columns have this name now. Rename one.`,
  otherValues: (header: string, label: string, filled: number) =>
    `${inQuotes(header)} was kept as ${inQuotes(label)}; none of its ${count(filled, "entry", "entries")} reads so now. Not used.`,
  bring: {
    title: "A caseload from this list",
    lead: "Makes a new workbook, the ready-made caseload, with the rows of this list. This one is not changed.",
    look: "What would be brought",
    looking: "Reading the list",
    make: "Make the caseload",
    working: "Making the caseload",
    fileName: "Caseload from a list.xlsx",
    failed: (why: string) => `That could not be done: ${why}`,
    from1904:
      "This workbook counts its days from 1904 (a setting of older Macs). Copy the list into a new workbook first.",
    rows: (rows: number, checks: number) =>
      `${count(rows, "row")} of Tubes in use${checks > 0 ? `, ${count(checks, "check")} of a balloon` : ""}.`,
    left: (cells: number) =>
      cells === 0
        ? "Every cell that has a place in the caseload is taken."
        : `${count(cells, "cell")} cannot be taken. Each is kept in its row, and listed with its reason on the sheet "Not brought".`,
    beside: (headers: readonly string[]) =>
      `Kept as ${headers.length === 1 ? "a column of its own" : "columns of their own"}: ${together(headers.map(inQuotes))}.`,
    changes: "Past changes are none: a list of devices in use does not hold them.",
    noIdentifier: "No column says whose row it is: the caseload asks for an ID in every row.",
    open: "The caseload opened as a new workbook. Your old list stays as it was.",
  },
  sheet: {
    title: "What was said about the lists of this workbook",
    lead: "The Gastrostomy Tubes pane reads this sheet, so that nobody is asked twice. It may be edited; a line that contradicts another is not used. Deleting the sheet forgets everything and changes no list.",
  },
};
