import { count, figure, rows } from "./pieces";

export const showOnly = {
  dates: "Rows without a usable date",
  showThese: "Show only these rows",
  choose: "Which rows to show",
  chooseLead: "Tick what you want to see; another heading narrows it. Beside each: its rows.",
  by: {
    kind: "How it is held",
    shape: "Shape",
    access: "Access",
    size: "Size",
    state: "Change",
    changedBy: "Who changes it",
    status: "Status",
  },
  inColumn: (header: string) => `column “${header}”`,
  many: (n: number) => count(n, "choice", "choices"),
  ticked: (n: number) => `${figure(n)} ticked`,
  nothingToChoose:
    "No column was found to choose by: how the tube is held, its shape, access, size, change or who changes it. Say below which column it is.",
  nothingTicked: "Nothing is ticked: nothing is hidden.",
  show: (n: number) => `Show ${rows(n)}`,
  showAll: "Show all rows",
  hiddenNow: (n: number) => `${rows(n)} of this list ${n === 1 ? "is" : "are"} hidden now.`,
  clear: "Clear the ticks",
  order: {
    title: "Order of the rows",
    press: "Most urgent first",
    note: "Sorts the whole list by ‘To do’, the worst first. Each row moves as a whole; blank ones go to the end.",
    filtered: "Show all rows first: hidden ones would stay where they are.",
    done: (n: number) => `${rows(n)} sorted, the most urgent first. Undo in the sheet puts them back.`,
  },
  working: "Showing the rows",
};
