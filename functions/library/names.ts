/** How functions are named in programs: CHANGEDUE is `changeDue` there. */

/** The words that stand last in a name of several words, as they are spelled. */
const LAST_WORDS = [
  ...["ToMm", "ToFr", "Print", "Size", "Deviation", "State", "Due", "Trend", "Half", "Diameter", "Dates", "Open"],
  ...["Load", "Length", "Fit", "Play", "Shift", "Table", "Quantile", "Compare", "Weibull", "By", "Ratio", "Days"],
  ...["Chart", "Level", "Need", "Code", "Energy", "Goal", "Plan", "Gives", "Rate", "Total", "Gap", "Steps", "Fills"],
  ...["Risk", "Out", "Words", "ById", "Replace", "Signal", "Spare"],
];

/** `changeDue` of CHANGEDUE; `book` of BOOK. */
export function libraryName(name: string): string {
  const small = name.toLowerCase();
  const last = LAST_WORDS.find((word) => small.endsWith(word.toLowerCase()) && small.length > word.length);
  return last ? small.slice(0, -last.length) + last : small;
}

export const capitalised = (name: string): string => name.charAt(0).toUpperCase() + name.slice(1);

/** `shareStillWorking` of a column's heading. */
export function labelOf(heading: string): string {
  const [first = "", ...rest] = heading.split(/[^A-Za-z0-9]+/);
  return first.charAt(0).toLowerCase() + first.slice(1) + rest.map(capitalised).join("");
}
