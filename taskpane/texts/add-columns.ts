import { count, figure, rowList, rows, together } from "./pieces";

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
    gives: { date: "a date", number: "a number" },
    all: (n: number) => `${count(n, "column", "columns")} to choose from`,
    others: (n: number) => `${count(n, "more", "more")}, and what each says`,
    optional: (label: string) => `${label} (if kept)`,
  },
  columns: {
    everyone: "no such column: the same kind for everyone",
    shared: "header stands twice",
    guess: "our guess",
    because: (reason: string) => `Guessed from the ${reason}.`,
    optional: "if you keep it",
  },
  said: {
    title: "What your list says",
    asks: (n: number) => `${count(n, "choice needs", "choices need")} you`,
    taken: (label: string, letters: string) => `${label}: ${letters}`,
    guessed: (columns: number, words: number) => {
      const parts = [...(columns > 0 ? [count(columns, "column")] : []), ...(words > 0 ? [count(words, "word")] : [])];
      return parts.length === 0 ? "Columns that help, if you keep them" : `Guessed: ${together(parts)}`;
    },
    lead: "Words of your list, and what they are taken for. Rows whose kind is not known get no date; they are named.",
    noWords: "This column holds no words.",
  },
  kinds: {
    everyone: "Kind of tube of everyone on this list",
    everyoneLead: "Choose this only if it is true of every row. A mixed list needs a column that says the kind.",
    choose: "choose a kind",
    blank: "(blank)",
    rows,
    guess: "our guess",
    readAs: (english: string) => `read as “${english}”`,
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
    inUse: (label: string, value: string, { least, most }: { least: number | null; most: number | null }) => {
      const ends = [least, most].filter((end) => end !== null);
      if (ends.length === 0) return `${label} ${value} (no range published)`;
      return `${label} ${value} (sources: ${ends.length === 2 ? ends.join(" to ") : `up to ${ends[0]}`})`;
    },
    look: "Where they come from; use others",
    standard: (value: string) => `Default ${value}`,
    range: (words: string) => `across sources ${words}`,
    noRange: "no range published",
    source: (source: string) => `Source: ${source}`,
    fixed: "This number is part of the rule and cannot be changed here.",
    onSheet: "From the settings sheet; change it there.",
    reset: (value: string) => `Back to ${value}`,
    notNumber: "Type a number.",
    mend: "Correct the numbers marked above first.",
  },
  formulas: {
    label: "Formulas",
    choices: {
      "plain where the same": "Plain Excel, where it says the same",
      plain: "Plain Excel in every column",
      ours: "TUBE functions",
    },
    plain: (headers: readonly string[]) => `Plain Excel, works without this add-in: ${together(headers)}.`,
    ours: (headers: readonly string[]) => `TUBE functions: ${together(headers)}.`,
    needed: (header: string, rows: readonly number[], because: string) =>
      `TUBE function: ${header}, because ${because} (${rowList(rows)}).`,
    missed: (header: string, rows: readonly number[]) =>
      `${header}: ${count(rows.length, "row")} that only TUBE functions read ${rows.length === 1 ? "gets" : "get"} an error (${rowList(rows)}).`,
  },
  preview: {
    answers: (filled: number, of: number) => `${figure(filled)} of ${rows(of)} get an answer.`,
    goTo: "Go to row:",
    goToRow: (row: number) => `Go to row ${row}`,
    moreRows: (n: number) => `${figure(n)} more`,
    counts: "Words that would stand there today",
    formula: "The formula in the first row",
    full: "Which rows, and why; the formulas",
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
