import { count } from "./pieces";

export const repair = {
  looking: "Looking through the workbook for formulas of TUBE functions that are lost.",
  found: (cells: number) => `${count(cells, "formula")} of TUBE functions ${cells === 1 ? "is" : "are"} lost.`,
  none: "No lost formula of a TUBE function was found.",
  lead: "They are entered again as they stand, under the name by which they are found now. Nothing else is touched.",
  locked: (sheets: string) => `Protected, left as they are: ${sheets}. Take the protection off first.`,
  press: (cells: number) => `Enter ${count(cells, "formula")} again`,
  full: "Which cells, and their formulas",
  again: "Look again",
  after: (cells: number) =>
    `Entered again: ${count(cells, "formula")}. Press Look again: one that still shows #NAME? means that the functions are not loaded.`,
  working: "Entering formulas again",
  title: { done: "Entered again", refused: "Nothing was changed", stopped: "Stopped" },
};
