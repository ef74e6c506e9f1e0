import { count, figure, rows, together } from "./pieces";

export const addColumns = {
  tick: {
    title: "Columns to add",
    groups: {
      Change: "When it is changed",
      Opening: "The opening",
      Balloon: "Balloon checks",
      Size: "Sizes",
      Fit: "Fit and position",
    },
    present: (letters: string, header: string) =>
      `There already (column ${letters}, “${header}”): ticked, it is written anew with today’s choices, in every row.`,
    needs: (needs: string) => `Needs: ${needs}.`,
    optional: (label: string) => `${label} (if kept)`,
  },
  columns: {
    everyone: "no such column: the same kind for everyone",
    shared: "header stands twice",
    guess: "our guess",
    because: (reason: string) => `Guessed from the ${reason}.`,
    optional: "if you keep it",
  },
  kinds: {
    title: "Which kind is which",
    lead: "Each word of your list, and what it is taken for. Rows whose kind is not known get no date; they are listed below.",
    everyone: "Kind of tube of everyone on this list",
    everyoneLead: "Choose this only if it is true of every row. A mixed list needs a column that says the kind.",
    choose: "choose a kind",
    blank: "(blank)",
    rows,
    guess: "our guess",
    open: "no guess",
    opened: (n: number) => `${count(n, "word has", "words have")} no kind yet.`,
    none: "This column holds no words.",
  },
  lengths: {
    title: "Lengths that you stock",
    label: "Lengths in cm",
    lead: "Type your own list, for example with commas between. No list is assumed.",
    used: (lengths: readonly number[]) => `Used: ${lengths.join(" · ")} cm.`,
  },
  numbers: {
    title: "Numbers used",
    lead: "Check them against your own policy. Changed numbers stand in the formulas, where they can be seen.",
    leadSheet:
      "Numbers of your settings sheet are changed there, and the columns follow. All others stand in the formulas, where they can be seen.",
    standard: (value: string) => `Default ${value}`,
    range: (words: string) => `across sources ${words}`,
    noRange: "no range published",
    source: (source: string) => `Source: ${source}`,
    fixed: "This number is part of the worksheet function and cannot be changed here.",
    onSheet: "From the settings sheet; change it there.",
    reset: (value: string) => `Back to ${value}`,
    notNumber: "Type a number.",
    mend: "Correct the numbers marked above first.",
  },
  preview: {
    answers: (filled: number, of: number) => `${figure(filled)} of ${rows(of)} get an answer.`,
    goTo: "Go to row:",
    goToRow: (row: number) => `Go to row ${row}`,
    moreRows: (n: number) => `${figure(n)} more`,
    counts: "Words that would stand there today",
    formula: "The formula in the first row",
    asOf: (date: string) => `Counted from ${date}, today’s date in this workbook.`,
    asOfNew: (date: string) =>
      `Counted from today, ${date}. Today’s date is put into the workbook for it, under the name As_of.`,
    nothingYet: "Add columns",
    tickFirst: "Tick what to add.",
    seeAbove: "Something stands in the way: see above.",
    consequence: (letters: readonly string[], refreshed: number, without: number, of: number) =>
      [
        refreshed === 0 ? `${together(letters)}, nothing overwritten` : "Our own columns are written anew",
        without === 0 ? `all ${rows(of)} get an answer` : `${figure(without)} of ${rows(of)} get no answer`,
      ].join("; "),
    press: (added: number, refreshed: number) =>
      [
        ...(added > 0 ? [`Add ${count(added, "column", "columns")}`] : []),
        ...(refreshed > 0 ? [`write ${count(refreshed, "column", "columns")} anew`] : []),
      ]
        .join(", ")
        .replace(/^w/, "W"),
  },
  working: {
    title: "Writing the columns",
  },
  result: {
    title: { done: "Columns added", refused: "Nothing was written", stopped: "Writing was stopped" },
    refreshed: "Columns written anew",
    more: "More columns",
  },
};
