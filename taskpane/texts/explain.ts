export const explain = {
  lead: "Select a cell, then press the button. It says what the cell’s formula is made of, and why it says what it says.",
  press: "Explain the selected cell",
  steps: "Explain this cell",
  looking: "Looking at the cell…",
  failed: (reason: string) =>
    `The cell could not be read just now. Finish typing in the cell you are in, then try again. (${reason})`,
  moved: "Another cell is selected now.",
  formula: "Its formula",
  column: (header: string) => `The column ‘${header}’`,
  words: {
    computed: "Words that it can show, bad news first",
    list: "Words to choose from",
    typed: "Words to choose from",
  },
  atFault: "look here",
  gives: "It gives",
  cautions: "Take care",
  reads: "What the formula reads besides",
};
