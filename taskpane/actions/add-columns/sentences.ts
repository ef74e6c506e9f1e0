/** Pieces of sentences that survey, preview and result share. */

/** So many rows are named; the others are counted. */
const ROWS_NAMED = 6;

export const count = (n: number, one: string, many = `${one}s`): string =>
  `${n.toLocaleString("en-GB")} ${n === 1 ? one : many}`;

/** "rows 14, 52, 60 and 6 more" */
export function rowList(rows: readonly number[]): string {
  const named = rows.slice(0, ROWS_NAMED);
  const more = rows.length - named.length;
  const label = rows.length === 1 ? "row" : "rows";
  if (more > 0) return `${label} ${named.join(", ")} and ${more.toLocaleString("en-GB")} more`;
  return `${label} ${together(named.map(String))}`;
}

/** "a", "a and b", "a, b and c" */
export const together = (parts: readonly string[]): string =>
  parts.length < 2 ? (parts[0] ?? "") : `${parts.slice(0, -1).join(", ")} and ${parts.at(-1)}`;

export const inQuotes = (text: string): string => `"${text.replace(/\s+/g, " ").trim()}"`;
