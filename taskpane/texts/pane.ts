import { QUIET_LINE } from "../../src/words/who-decides";

/** The frame of the pane, and what every section says. */
export const product = "Gastrostomy workbook";

export const pane = {
  places: "Places",
  /** The row of presses that chooses between the jobs of a place. */
  jobs: (place: string) => `${place}: what to do`,
  list: "My list",
  more: "More",
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
