/** Compares ratios measured now with the committed ones. Times differ from machine to machine, ratios hardly. */
import { keyOfRow, type Ratios } from "./table";
import { ratioOf, type Row } from "./row";

/** A ratio that has become so many times as large is half as good. */
const TIMES = 2;

/** Ratios below this are of what takes no time to speak of: the clock would fail the check. */
const LEAST = 0.02;

export interface Worse {
  readonly row: string;
  readonly committed: number;
  readonly now: number;
}

export interface Checked {
  readonly compared: number;
  readonly worse: readonly Worse[];
  /** Rows that nobody has committed yet. */
  readonly unknown: readonly string[];
}

export function check(job: string, rows: readonly Row[], committed: Ratios): Checked {
  const worse: Worse[] = [];
  const unknown: string[] = [];
  let compared = 0;
  for (const row of rows) {
    const now = ratioOf(row);
    if (now === undefined) continue;
    const key = keyOfRow(job, row);
    const before = committed.get(key);
    if (before === undefined) {
      unknown.push(key);
      continue;
    }
    compared++;
    // Written with !: a ratio that is no number is worse too.
    if (!(now <= TIMES * Math.max(before, LEAST))) worse.push({ row: key, committed: before, now });
  }
  return { compared, worse, unknown };
}

/** Of two tries what is worse in both, so that one stumble of the machine fails nothing. */
export const worseTwice = (first: Checked, second: Checked): readonly Worse[] =>
  second.worse.filter(({ row }) => first.worse.some((one) => one.row === row));
