/**
 * The checks of one balloon as range arguments, and the loss of water over time that they show.
 *
 * Loss between two checks is what was put in at the first less what came out at the second. Points are days since the
 * first check against the sum of losses until then; the first check is the point 0, 0.
 */
import { theilSen, type Slope } from "../maths/slope";
import { readDate } from "../worksheet/dates";
import { notAvailable, SheetError } from "../worksheet/error";
import { rounded } from "../worksheet/numbers";
import { numberReader } from "../worksheet/parameters";
import { rememberLast } from "../worksheet/remember";
import { columnOf, filledRows, type NumberColumn } from "../worksheet/rows";
import { LARGEST_VOLUME, unitTexts } from "./volumes";

const volumes = (help: string) =>
  columnOf(
    help,
    { unit: "mL", limits: `at least 0, at most ${LARGEST_VOLUME}` },
    numberReader({ unit: "mL", unitTexts, min: 0, max: LARGEST_VOLUME }),
  );

/** The three columns, in the order of the arguments. */
export const checkColumns = () => ({
  date: columnOf("Dates of the checks of the balloon now in, in any order", { unit: "date" }, readDate),
  out: volumes("Water drawn out at each check"),
  in: volumes("Water put in at each check"),
});

export interface Checks {
  readonly date: NumberColumn;
  readonly out: NumberColumn;
  readonly in: NumberColumn;
}

const filled = rememberLast((date: NumberColumn, out: NumberColumn, putIn: NumberColumn) =>
  filledRows({ date, out, in: putIn }),
);

/** Filled rows of the three columns; a partly blank one is a fault that names the row. */
export const checkRows = ({ date, out, in: putIn }: Checks): Uint32Array | SheetError => filled(date, out, putIn);

/** Fewer checks give no slope; fewer than FOR_LIMITS give no limits: the whole range of slopes covers 67% or 92%. */
const FOR_SLOPE = 3;
export const FOR_LIMITS = 5;
/** Every pair of checks is looked at, so the work grows with the square of their number. */
const AT_MOST = 1000;
/** Standard errors to either side of a 95% interval. */
const Z_95 = 1.959963984540054;

export interface Trend extends Slope {
  /** How many checks. */
  readonly checks: number;
  /** The day and the volume put in of the last check. */
  readonly last: { readonly date: number; readonly putIn: number };
}

/** Loss in mL a day; two checks on one day stand in the order of their rows. */
export function lossTrend(checks: Checks, rows: Iterable<number>): Trend | SheetError {
  const order = [...rows].sort((a, b) => checks.date.values[a]! - checks.date.values[b]! || a - b);
  const n = order.length;
  if (n < FOR_SLOPE) return notAvailable(`a trend needs at least ${FOR_SLOPE} checks; there are ${n}`);
  if (n > AT_MOST) return new SheetError(`more than ${AT_MOST} checks: give those of one balloon only`);
  const days = new Float64Array(n);
  const lost = new Float64Array(n);
  for (let i = 1; i < n; i++) {
    days[i] = checks.date.values[order[i]!]! - checks.date.values[order[0]!]!;
    lost[i] = rounded(lost[i - 1]! + checks.in.values[order[i - 1]!]! - checks.out.values[order[i]!]!);
  }
  const slope = theilSen(days, lost, Z_95);
  if (slope === undefined) return notAvailable("all checks are of one day");
  const lastRow = order[n - 1]!;
  return { ...slope, checks: n, last: { date: checks.date.values[lastRow]!, putIn: checks.in.values[lastRow]! } };
}

/** The trend of all filled rows, for a formula on every row of a sheet. */
export const trendOfAll = rememberLast(
  (date: NumberColumn, out: NumberColumn, putIn: NumberColumn): Trend | SheetError => {
    const checks = { date, out, in: putIn };
    const rows = checkRows(checks);
    return rows instanceof SheetError ? rows : lossTrend(checks, rows);
  },
);
