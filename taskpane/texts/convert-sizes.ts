import { figure, rows } from "./pieces";

export const convertSizes = {
  title: "Convert sizes",
  lead: "Select the column of sizes, or stand anywhere in your list.",
  source: {
    title: "Which sizes",
    column: "Column with the sizes",
    only: "Which cells",
    whole: (header: string, n: number) => `The whole column ${header}, ${rows(n)}`,
    wholeOfList: "A whole column of the list",
    selected: (cells: string) => `Only the selected cells, ${cells}`,
    way: "Which way",
    ways: {
      toMm: "French (Fr, CH) to millimetres",
      toFr: "Millimetres to French",
    },
    notes: {
      toMm: "One French is a third of a millimetre of outside diameter.",
      toFr: "A measured diameter cannot tell neighbouring sizes apart: read the size on the tube or its label.",
    },
  },
  put: {
    title: "Where the answers go",
    beside: "A new column of the list",
    besideNote: (column: string) => `At the right end of the list, column ${column}; one formula in each row.`,
    besideRefused: "Only for a whole column of a list.",
    spill: "One formula that fills the cells below it",
    spillNote: "For a quick look. It has no header, and does not move with the rows when they are sorted.",
    start: "First cell",
    startHint: "for example H2",
  },
  preview: {
    formula: "The formula in the first cell",
    add: "Convert the sizes",
    corrected: "When you have corrected cells:",
    readAgain: "Read them again",
  },
  unread: {
    title: (n: number) => `Not read: ${figure(n)}`,
    lead: "These stay as errors until the cell is corrected. Nothing is guessed.",
    doubtful: (n: number) => `Read, but look: ${figure(n)}`,
  },
  working: "Converting the sizes",
  result: {
    title: { done: "Sizes converted", refused: "Nothing was converted", stopped: "Converting was stopped" },
    again: "Convert more",
  },
};
