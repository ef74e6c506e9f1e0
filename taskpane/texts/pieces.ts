/** Pieces of sentences that the pane and its actions share: figures, lists, quotes. */

/** So many rows are named; the others are counted. */
const ROWS_NAMED = 6;

/** "1,380" */
export const figure = (n: number): string => n.toLocaleString("en-GB");

/** "1 row", "1,380 rows" */
export const count = (n: number, one: string, many = `${one}s`): string => `${figure(n)} ${n === 1 ? one : many}`;

export const rows = (n: number): string => count(n, "row");

/** "rows 14, 52, 60 and 6 more" */
export function rowList(numbers: readonly number[]): string {
  const named = numbers.slice(0, ROWS_NAMED);
  const more = numbers.length - named.length;
  const label = numbers.length === 1 ? "row" : "rows";
  if (more > 0) return `${label} ${named.join(", ")} and ${figure(more)} more`;
  return `${label} ${together(named.map(String))}`;
}

/** "a", "a and b", "a, b and c" */
export const together = (parts: readonly string[]): string =>
  parts.length < 2 ? (parts[0] ?? "") : `${parts.slice(0, -1).join(", ")} and ${parts.at(-1)}`;

/** "Each word" of "each word" */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

export const inQuotes = (text: string): string => `"${text.replace(/\s+/g, " ").trim()}"`;

export const CHART_SHEET = "A chart sheet has no cells. Go to a sheet with cells.";

export const FROM_1904 = "This workbook counts its days from 1904, so dates would come out four years wrong.";

/** @param way the cells, as addresses */
export const notEmptyBeside = (way: string): string =>
  `The cells right of the list are not empty (${way}). Nothing is overwritten: clear or move them first.`;
