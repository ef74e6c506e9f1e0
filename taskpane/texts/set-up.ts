import { rows } from "./pieces";

export const setUp = {
  loading: "Working out what will be made…",
  failed: (reason: string) => `The caseload could not be made. Nothing was changed. (${reason})`,
  who: {
    title: "Who is in it",
    legend: "The lists begin with",
    invented: "Invented people, to try it out",
    inventedNote:
      "With all the mess that real lists have. Every sheet says that they are invented; one press removes them.",
    none: "Nobody yet",
    noneNote: "Empty lists, ready for your own people.",
  },
  columns: {
    title: "Which columns",
    always:
      "Always there: who, stoma, device, balloon, change dates and what is to be done. These groups can be left out:",
    groups: {
      fit: { label: "Fit", note: "Lengths, mark and play: whether the tube still fits." },
      plan: { label: "Plan", note: "Own intervals, who changes the tube, what to do when it comes out." },
      spare: { label: "Spare and site", note: "The spare at home and when it expires; how the site looks." },
    },
  },
  preview: {
    title: "What will be made",
    sheets: "The sheets",
    settings: "The clinic settings in it",
    caution: "A new caseload knows nothing of your clinic: its numbers are starting points until somebody agrees them.",
    inPlace:
      "In the browser it opens in place of this workbook; you are asked first if that has changes that are not saved.",
    make: "Make the caseload",
  },
  working: "Making the caseload…",
  done: {
    title: "The caseload is open",
    sentence: (name: string) =>
      `Begin with the sheet ‘Read first’. Save it under a name of your own; it is called ${name} now.`,
    again: "Set up another one",
  },
  notDone: "No caseload was opened",
  older: {
    title: "This caseload is of an earlier version",
    lead: "It goes on as it is. A new one, made from it, would also say:",
    look: "Show what would come along",
    looking: "Looking at the lists and settings…",
    unreadable: "This caseload cannot be read as it stands. Nothing was changed.",
    preview: "What would come along",
    make: "Make the new caseload",
    fileName: "Caseload, brought up to date.xlsx",
    done: "The new caseload is open. The old one is as it was.",
    opened: (name: string) =>
      `Compare both before you go on with the new one, then save it under a name of your own; it is called ${name} now. To stay with the old one, close the new one without saving.`,
    failed: (reason: string) => `The new caseload could not be made. Nothing was changed. (${reason})`,
  },
  remove: {
    title: "Remove the invented people",
    lead: "This caseload still has invented people in it.",
    look: "Show what would be removed",
    looking: "Looking at the lists…",
    lookFailed: (reason: string) => `The lists could not be read just now. Press again. (${reason})`,
    withChanged: (n: number) => `Remove the ${rows(n)} changed or added since as well`,
    changed: "Rows of invented people that were changed or added since",
    goTo: (label: string) => `Go to ${label}`,
    more: (n: number) => `${rows(n)} more`,
    press: (n: number) => (n === 0 ? "Take the mark away" : `Remove ${rows(n)}`),
    working: "Removing the invented rows…",
    finished: { done: "Removed", stopped: "Not finished", refused: "Nothing was removed" },
    again: "Back",
  },
};
