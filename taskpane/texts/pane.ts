import { QUIET_LINE } from "../../src/words/who-decides";

/** The frame of the pane, and what every section says. */
export const product = "Gastrostomy workbook";

export const pane = {
  places: "Places",
  /** The row of presses that chooses between the parts of a place. */
  parts: (place: string) => `${place}: what to do`,
  tubeOut: "Tube out",
  today: "Today",
  list: "My list",
  pictures: "Pictures",
  more: "More",
  addColumns: "Add columns",
  setUp: "Set up a caseload",
  convert: "Convert sizes",
  mend: "Mend",
  checkSheet: "Check this sheet",
  showOnly: "Show only",
  guide: "All functions",
  explain: "Explain this cell",
  settings: "Clinic settings",
  help: "Help and cautions",
  /** One sentence under each heading. */
  leads: {
    tubeOut: "The telephone call. Nothing is written down here.",
    today: "What to do, and what to write down.",
    addColumns: "Columns beside your list, such as the day of the next change. Nothing is overwritten.",
    pictures: "What the caseload’s own past can tell, each with its figures.",
    setUp: "Ready-made sheets for a whole caseload, with invented people to look at.",
    checkSheet: "Entries of a list that cannot be right, each one press away. Nothing is changed.",
    mend: "Dates, sizes and kinds that many people typed, put right once by wording.",
    convert: "Tube sizes, however they were typed: French to millimetres, or back.",
    showOnly: "Shows some rows of a list and hides the others, until one press shows them all again.",
    settings: "The numbers your clinic works with, and who agreed them.",
    guide: "What each worksheet function is for, with worked examples and their sources.",
    explain: "Select a cell: what it says, and how it comes about.",
    help: "Read this before you rely on a date or a word.",
  },
  quietLine: QUIET_LINE,
  waiting: "Waiting for the workbook…",
  takeBack: "Take it back",
  takingBack: "Taking it back…",
  takenBack: "Taken back. The sheet is as it was before.",
  takeBackAnyway: "Take it back anyway",
  keepIt: "Leave it as it is",
  show: "Show me",
  /** Before a press that changes the workbook. */
  preview: "What will happen",
  backToChoices: "Back to the choices",
  stop: "Stop",
  stopping: "Stopping…",
  share: (done: number, of: number) => `${Math.floor((100 * done) / Math.max(of, 1))} %`,
  cannot: (why: string) => `This cannot be done here: ${why}`,
  tryAgain: "Try again",
  loading: "One moment…",
  /** The workbook is asked again all the while. */
  unread: (reason: string) =>
    `The workbook cannot be read just now, so what stands here may be out of date. If you are typing in a cell, end the entry. (${reason})`,
  /** Something may have been written, and it cannot be said what came of it. */
  notToldAfterwards: (reason: string) =>
    `What came of it cannot be told here. Look at your sheet before you go on. (${reason})`,
  unexpected: (reason: string) =>
    `Something went wrong here and nothing more was done. Look at your sheet, then try again. (${reason})`,
};

export const excel = {
  starting: "Waiting for Excel…",
  notExcel:
    "This page is the side pane of the Excel add-in and Excel did not answer. Open it from Excel, or use the workbook in the browser (index.html in the same folder).",
  failed: (reason: string) => `The pane could not start. Close it and open it again. (${reason})`,
};
