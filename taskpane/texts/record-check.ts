/** Record a check. */
export const recordCheck = {
  title: "The check",
  checkedOn: "Checked on",
  out: "Water that came out",
  outHint: "0 means empty. Blank means not measured.",
  looked: "It looked",
  putIn: "Water put in",
  water: "Water",
  by: "Checked by",
  howKnown: "How it is known",
  note: "Note",
  meaning: "What it means",
  record: "Record this check",
  word: (word: string) => `Balloon: ${word}`,
  noWord: "Balloon: no word, the figures contradict each other",
};
