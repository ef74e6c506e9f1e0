/** How long a million devices last: against R's survfit in the same run, an npm package, and plain JavaScript. */
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { compute as packageShares } from "@fullstax/kaplan-meier-estimator";
import { LIFEQUANTILE } from "../../src/wear/lifequantile";
import { LIFETABLE } from "../../src/wear/lifetable";
import { call } from "../../src/worksheet/call";
import { compare, growth, line, ms, randoms, time } from "./measure";

const ROWS = 1_000_000;

interface Lives {
  readonly days: readonly [number][];
  readonly failed: readonly (readonly [number])[];
}

/** Weibull lives (shape 1.5, scale 200 days), two thirds of them failed, in no order. */
function lives(rows: number, wholeDays: boolean): Lives {
  const random = randoms(1);
  const day = (): number => 1 + 200 * (-Math.log(1 - random())) ** (1 / 1.5);
  return {
    days: Array.from({ length: rows }, () => [wholeDays ? Math.floor(day()) : day()] as [number]),
    failed: Array.from({ length: rows }, () => [random() < 2 / 3 ? 1 : 0] as const),
  };
}

/** Table and median, as two formulas of a sheet ask for them. */
const ours = ({ days, failed }: Lives): unknown => [
  call(LIFETABLE, [days, failed]),
  call(LIFEQUANTILE, [days, failed]),
];

/** One cell differs from run to run: the last list's answer is kept (src/worksheet/remember.ts) and must not be timed. */
const afresh =
  (list: Lives): ((run: number) => unknown) =>
  (run) => {
    list.days[0]![0] = 100 + run;
    return ours(list);
  };

/** What one would write by hand: sort, walk, Greenwood's variance, log-log limits, the first day at half or below. */
function plainJavaScript({ days, failed }: Lives): unknown {
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

/** The package takes rows sorted by day, and gives shares alone: no limits, no median. */
function byPackage({ days, failed }: Lives): unknown {
  const rows = days.map(([day], i) => ({ day, failed: failed[i]![0] === 1 })).sort((a, b) => a.day - b.day);
  return packageShares(
    rows.map((row) => row.day),
    rows.map((row) => row.failed),
  );
}

/** Seconds and median of R in a process of its own; undefined where Rscript is not found. */
function byR({ days, failed }: Lives): { version: string; milliseconds: number; median: number } | undefined {
  const folder = mkdtempSync(join(tmpdir(), "bench-"));
  try {
    const file = join(folder, "lives.bin");
    writeFileSync(file, Float64Array.from([days.length, ...days.flat(), ...failed.flat()]));
    const script = fileURLToPath(new URL("survfit.R", import.meta.url));
    const { status, stdout } = spawnSync("Rscript", ["--vanilla", script, file], { encoding: "utf8" });
    if (status !== 0) return undefined;
    const [version = "", seconds, median] = stdout.split("\n");
    return { version, milliseconds: Number(seconds) * 1000, median: Number(median) };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function sameMedian({ days, failed }: Lives, other: number): string {
  const [[median]] = call(LIFEQUANTILE, [days, failed]) as [[number]];
  // One day of the list differs from run to run.
  return Math.abs(median - other) <= 1e-4 * median ? "same median" : `MEDIAN ${median}, R ${other}`;
}

function against(wholeDays: boolean): void {
  const list = lives(ROWS, wholeDays);
  const what = `LIFETABLE and LIFEQUANTILE, 1,000,000 rows, ${wholeDays ? "whole days" : "no two alike"}`;
  const run = afresh(list);
  const r = byR(list);
  const own = time(run);
  if (r === undefined) line(`${what}; peer: R's survfit`, `${ms(own)}; R not found`, "at least 1");
  else {
    const faster = `${ms(own)} against ${ms(r.milliseconds)}: ${(r.milliseconds / own).toFixed(1)} times as fast`;
    line(`${what}; peer: survfit, R ${r.version}`, `${faster}, ${sameMedian(list, r.median)}`, "at least 1");
  }
  const peers = [
    ["plain JavaScript (this file)", plainJavaScript],
    ["@fullstax/kaplan-meier-estimator 3.1.2, shares alone", byPackage],
  ] as const;
  for (const [name, peer] of peers) {
    let turn = 0;
    const pair = compare(
      () => run(turn++),
      () => peer(list),
      3,
    );
    const faster = `${ms(pair.ours)} against ${ms(pair.peer)}: ${pair.timesAsFast.toFixed(1)} times as fast`;
    line(`${what}; peer: ${name}`, faster, "above 1");
  }
}

export function benchLives(): void {
  against(true);
  against(false);
  for (const wholeDays of [true, false]) {
    line(
      `LIFETABLE and LIFEQUANTILE, 250,000, 500,000 and 1,000,000 rows, ${wholeDays ? "whole days" : "no two alike"}`,
      growth([250_000, 500_000, ROWS], (rows) => afresh(lives(rows, wholeDays))),
      "about 2 times",
    );
  }
}
