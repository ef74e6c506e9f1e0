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
  sheet: {
    title: "What was said about the lists of this workbook",
    lead: "The Gastrostomy Tubes pane reads this sheet, so that nobody is asked twice. It may be edited; a line that contradicts another is not used. Deleting the sheet forgets everything and changes no list.",
  },
};
