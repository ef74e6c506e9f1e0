/** Figures in sentences. */

export const count = (n: number, one: string, many: string): string =>
  `${n.toLocaleString("en-GB")} ${n === 1 ? one : many}`;

export const rows = (n: number): string => count(n, "row", "rows");
