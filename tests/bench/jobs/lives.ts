/** How long a million devices last: against R's survfit, an npm package, and plain JavaScript. */
import { compute as packageShares } from "@fullstax/kaplan-meier-estimator";
import { warmBundle } from "../functions/bundle";
import { inTurn, median, milliseconds, randoms } from "../measure";
import { livesByR, type ByR } from "../peers/survfit";
import type { How, Job } from "../report/row";

const SIZES = [250_000, 500_000, 1_000_000];

interface Lives {
  readonly days: readonly [number][];
  readonly failed: readonly (readonly [number])[];
}

/** Weibull lives (shape 1.5, scale 200 days), two thirds of them failed, in no order. */
function livesOf(rows: number, wholeDays: boolean): Lives {
  const random = randoms(1);
  const day = (): number => 1 + 200 * (-Math.log(1 - random())) ** (1 / 1.5);
  return {
    days: Array.from({ length: rows }, () => [wholeDays ? Math.floor(day()) : day()] as [number]),
    failed: Array.from({ length: rows }, () => [random() < 2 / 3 ? 1 : 0] as const),
  };
}

/** What one would write by hand: sort, walk, Greenwood's variance, log-log limits, the first day at half or below. */
function byHand({ days, failed }: Lives): unknown {
  const rows = days.map(([day], i) => ({ day, failed: failed[i]![0] }));
  rows.sort((a, b) => a.day - b.day);
  const table: { day: number; atRisk: number; died: number; share: number; low: number; high: number }[] = [];
  let share = 1;
  let sum = 0;
  for (let i = 0; i < rows.length;) {
    const { day } = rows[i]!;
    const atRisk = rows.length - i;
    let died = 0;
    for (; i < rows.length && rows[i]!.day === day; i++) died += rows[i]!.failed;
    if (died === 0) continue;
    share *= 1 - died / atRisk;
    sum += died / (atRisk * (atRisk - died));
    const spread = (1.959963984540054 * Math.sqrt(sum)) / Math.log(share);
    table.push({ day, atRisk, died, share, low: share ** Math.exp(-spread), high: share ** Math.exp(spread) });
  }
  return { table, median: table.find((row) => row.share <= 0.5)?.day };
}

/** The package takes rows sorted by day. */
function byPackage({ days, failed }: Lives): unknown {
  const rows = days.map(([day], i) => ({ day, failed: failed[i]![0] === 1 })).sort((a, b) => a.day - b.day);
  return packageShares(
    rows.map((row) => row.day),
    rows.map((row) => row.failed),
  );
}

async function against(how: How, rows: number, wholeDays: boolean): Promise<void> {
  const shipped = warmBundle();
  const list = livesOf(rows, wholeDays);
  let run = 0;
  const ours = (): unknown => {
    // One cell differs from run to run: the last list's answer is kept (src/worksheet/remember.ts), not timed.
    list.days[0]![0] = 100 + run++;
    return [shipped.get("LIFETABLE")!(list.days, list.failed), shipped.get("LIFEQUANTILE")!(list.days, list.failed)];
  };
  const timed = (work: () => unknown) => () => milliseconds(work);
  const figures = await inTurn<"ours" | "hand" | "package" | "r", number | ByR | undefined>(
    {
      ours: timed(ours),
      hand: timed(() => byHand(list)),
      package: timed(() => byPackage(list)),
      r: () => livesByR(list.days.flat(), list.failed.flat()),
    },
    how.quick ? 1 : 3,
  );
  const of = (which: "ours" | "hand" | "package") => median(figures[which] as number[]);
  const r = figures.r.filter((one): one is ByR => one !== undefined);
  const pair = (peer: string, theirs: number, remark: string): void =>
    how.row({
      what: `Table and median, ${wholeDays ? "whole days" : "no two days alike"}`,
      size: `${rows.toLocaleString("en-GB")} devices`,
      unit: "ms",
      ours: of("ours"),
      peer,
      theirs,
      limits: [{ what: "ratio", most: 1 }],
      remark,
    });
  if (r.length === 0) how.notMeasured("survfit, because Rscript with its package survival was not found.");
  else pair(`survfit, ${r[0]!.version}`, median(r.map((one) => one.milliseconds)), sameMedian(shipped, list, r[0]!));
  pair("plain JavaScript by hand", of("hand"), "");
  pair("@fullstax/kaplan-meier-estimator 3.1.2", of("package"), "theirs: shares alone, no limits, no median");
}

function sameMedian(shipped: ReturnType<typeof warmBundle>, { days, failed }: Lives, { median }: ByR): string {
  const [[own]] = shipped.get("LIFEQUANTILE")!(days, failed) as [[number]];
  // One day of the list differs from run to run.
  return Math.abs(own - median) <= 1e-4 * own ? "same median" : `MEDIANS DIFFER: ${own}, R ${median}`;
}

export const lives: Job = {
  name: "lives",
  title: "How long devices last, against R and by hand",
  about:
    "LIFETABLE and LIFEQUANTILE from dist/functions.js, as two formulas of a sheet ask for them, beside R's survfit with " +
    "log-log limits and quantile, an npm package, and what one would write by hand, in turn: time on the clock.",
  leavesOut: "the time that R takes to start and to read the numbers.",
  async run(how) {
    for (const rows of how.quick ? SIZES.slice(0, 1) : SIZES)
      for (const wholeDays of [true, false]) await against(how, rows, wholeDays);
  },
};
