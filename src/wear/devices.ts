/** The list of devices that every function of this family is about: one row a device, how long and whether it failed. */
import { countByDay, kaplanMeier, type Curve, type DayCounts, type Lifetimes } from "../maths/survival";
import { fitWeibull, type Weibull } from "../maths/weibull";
import type { Cell } from "../worksheet/cell";
import { notAvailable, SheetError } from "../worksheet/error";
import { number } from "../worksheet/parameters";
import { rememberLast } from "../worksheet/remember";
import { columnOf, filledRows, numberColumn, type Column, type NumberColumn } from "../worksheet/rows";
import { answerOf } from "../worksheet/yes-no";

const unclear = new SheetError("must be yes or no (or 1 or 0)");

const readFailed = (cell: Exclude<Cell, null>): number | SheetError => {
  if (cell === 1 || cell === 0) return cell;
  const answer = answerOf(typeof cell === "string" && /^[01]$/.test(cell.trim()) ? cell.trim() === "1" : cell);
  return answer === "yes" ? 1 : answer === "no" ? 0 : unclear;
};

export const deviceColumns = () => ({
  days: numberColumn("Days in place, one row a device; still in: the days up to now", {
    unit: "days",
    limits: "above 0",
    above: 0,
    zeroIsBlank: true,
  }),
  failed: columnOf(
    "Did it fail: yes or no (1 or 0); burst, leak, broken: yes; still in, planned change, out for another reason: no",
    {},
    readFailed,
  ),
});

export const confidenceLevel = (fallback: number) =>
  number("Confidence level of the limits, two-sided", { above: 0, below: 1, fallback });

/** The devices of the filled rows, and which rows these are; a sentence when a row is only half filled. */
export function lifetimes(
  columns: Readonly<Record<string, Column>> & { readonly days: NumberColumn; readonly failed: NumberColumn },
): (Lifetimes & { readonly rows: Uint32Array }) | SheetError {
  const rows = filledRows(columns);
  if (rows instanceof SheetError) return rows;
  const [days, failed] = [new Float64Array(rows.length), new Uint8Array(rows.length)];
  for (let i = 0; i < rows.length; i++) {
    days[i] = columns.days.values[rows[i]!]!;
    failed[i] = columns.failed.values[rows[i]!]!;
  }
  return { rows, days, failed };
}

/** Devices by day; undefined when there are none. */
export const countedByDay = rememberLast(
  (days: NumberColumn, failed: NumberColumn): DayCounts | undefined | SheetError => {
    const lives = lifetimes({ days, failed });
    if (lives instanceof SheetError) return lives;
    return lives.days.length === 0 ? undefined : countByDay(lives);
  },
);

let lastCurve: { readonly counts: DayCounts; readonly level: number; readonly curve: Curve } | undefined;

/** The curve of counts that `countedByDay` gave; a table and a median of one list, or several shares, need it once. */
export function curveOf(counts: DayCounts, level: number): Curve {
  if (lastCurve?.counts !== counts || lastCurve.level !== level) {
    lastCurve = { counts, level, curve: kaplanMeier(counts, level) };
  }
  return lastCurve.curve;
}

const noFit = notAvailable("needs at least 2 failures, on different days, to fit a Weibull distribution");

/** The Weibull distribution of a list; undefined when the list is empty. */
export const weibullOf = rememberLast((days: NumberColumn, failed: NumberColumn): Weibull | undefined | SheetError => {
  const counts = countedByDay(days, failed);
  return counts === undefined || counts instanceof SheetError ? counts : (fitWeibull(counts) ?? noFit);
});

/** Below these the clinic's own curve is not shown. Clinic setting, no published source. */
export const [LEAST_FAILURES, LEAST_DEVICES] = [8, 20];

/** A sentence with the counts where a clinic's list is too short to say anything from. */
export const tooFew = (failures: number, devices: number): SheetError | undefined =>
  failures < LEAST_FAILURES || devices < LEAST_DEVICES
    ? notAvailable(
        `too few to say: ${failures} failures of ${devices} devices, at least ${LEAST_FAILURES} of ${LEAST_DEVICES} are needed`,
      )
    : undefined;

/** The Weibull distribution of a clinic's list, where it is long enough. */
export const clinicCurve = rememberLast((days: NumberColumn, failed: NumberColumn): Weibull | SheetError => {
  const counts = countedByDay(days, failed);
  if (counts instanceof SheetError) return counts;
  return curveOfCounts(counts);
});

export function curveOfCounts(counts: DayCounts | undefined): Weibull | SheetError {
  const sum = (counted: Float64Array | undefined): number => counted?.reduce((all, n) => all + n, 0) ?? 0;
  return tooFew(sum(counts?.failed), sum(counts?.ended)) ?? fitWeibull(counts!) ?? noFit;
}

/** Cumulative hazard of a curve at an age in days. */
export const hazardAt = ({ shape, logScale }: Weibull, age: number): number =>
  age <= 0 ? 0 : Math.exp(shape * (Math.log(age) - logScale));

/** What the list must be, said in every help of this family. */
export const censoring =
  "A device that has not failed still counts: it has lasted at least so long. Leaving such devices out makes lives look " +
  "shorter than they are.";

/** Cautions that every estimate of this family needs. */
export const lifeCautions = [
  "Enter every device, also those still in and those changed as planned, or the answer is wrong.",
  "How long others lasted does not show that the tube in place is sound.",
] as const;
