/** Which rows of a sheet are which former ones, told by what is typed in them: rows alike are as good as one another. */
import { isError, type Value } from "./values";

type Values = readonly (Value | undefined)[];

/** Rows of now and of before; -1: nowhere. */
export interface Moves {
  readonly from: (row: number) => number;
  readonly to: (row: number) => number;
}

const itself = (row: number): number => row;
export const unmoved: Moves = { from: itself, to: itself };

const said = (value: Value | undefined): string =>
  value === null || value === undefined ? "" : `${typeof value} ${isError(value) ? value.code : String(value)}`;

function linesOf(columns: readonly Values[], rows: number): readonly string[] {
  return Array.from({ length: rows }, (_, row) => columns.map((values) => said(values[row])).join("\n"));
}

/** @param columns what is typed, column by column: as it was, as it is */
export function rowsMoved(columns: readonly { readonly before: Values; readonly now: Values }[]): Moves {
  const rows = columns.reduce((most, { before, now }) => Math.max(most, before.length, now.length), 0);
  const before = linesOf(
    columns.map((one) => one.before),
    rows,
  );
  const now = linesOf(
    columns.map((one) => one.now),
    rows,
  );
  const from = new Int32Array(rows).fill(-1);
  const left = new Map<string, number[]>();
  const blank = columns.map(() => "").join("\n");
  for (let row = rows - 1; row >= 0; row--) {
    const [line, own] = [before[row]!, left.get(before[row]!)];
    if (line === now[row]) from[row] = row;
    else if (own) own.push(row);
    else if (line !== blank) left.set(line, [row]);
  }
  const isTaken = new Set<number>();
  for (let row = 0; row < rows; row++) {
    if (from[row] === row) continue;
    const found = left.get(now[row]!)?.pop();
    if (found === undefined) continue;
    from[row] = found;
    isTaken.add(found);
  }
  // a row that stands where another stood, and is like none: that one, with cells typed anew
  for (let row = 0; row < rows; row++) if (from[row] === -1 && !isTaken.has(row)) from[row] = row;
  if (from.every((at, row) => at === row)) return unmoved;
  const to = new Int32Array(rows).fill(-1);
  from.forEach((at, row) => {
    if (at >= 0) to[at] = row;
  });
  return { from: (row) => from[row] ?? -1, to: (row) => to[row] ?? -1 };
}
