/** Worksheet functions over a million rows, against named peers in the same process. */
import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import { EDATE } from "@formulajs/formulajs";
import { CHANGEDUE } from "../../src/schedule/changedue";
import { FRTOMM } from "../../src/sizes/frtomm";
import { call } from "../../src/worksheet/call";
import { compare, line, ms } from "./measure";

const ROWS = 1_000_000;
const manyDates = () => Array.from({ length: ROWS }, (_, i) => [45_000 + ((i * 7) % 2000)]);
const manySizes = () => Array.from({ length: ROWS }, (_, i) => [5 + ((i * 7) % 50)]);

export function benchFunctions(): void {
  const dates = manyDates();
  const edate = compare(
    () => call(CHANGEDUE, [dates, 3]),
    () => dates.map((row) => row.map((start) => EDATE(start, 3) as unknown)),
  );
  line(
    "CHANGEDUE, 1,000,000 rows; peer: formulajs EDATE row by row",
    `${ms(edate.ours)} against ${ms(edate.peer)}: ${edate.timesAsFast.toFixed(1)} times as fast`,
    "at least 2",
  );

  const sizes = manySizes();
  const loop = compare(
    () => call(FRTOMM, [sizes]),
    () => {
      const out = new Array<number[]>(sizes.length);
      for (let r = 0; r < sizes.length; r++) {
        const row = sizes[r]!;
        const cells = new Array<number>(row.length);
        for (let c = 0; c < row.length; c++) cells[c] = row[c]! / 3;
        out[r] = cells;
      }
      return out;
    },
  );
  line(
    "FRTOMM, 1,000,000 rows; peer: a plain loop, nested arrays",
    `${ms(loop.ours)} against ${ms(loop.peer)}: takes ${(1 / loop.timesAsFast).toFixed(2)} times as long`,
    "below 2",
  );

  // A process of its own, so that the peers' memory does not count.
  const child = spawnSync(process.execPath, [...process.execArgv, fileURLToPath(import.meta.url), "memory"], {
    encoding: "utf8",
  });
  line("CHANGEDUE, 1,000,000 rows, peak memory of the process", child.stdout.trim() || child.stderr, "below 1,000 MB");
}

if (process.argv[2] === "memory") {
  call(CHANGEDUE, [manyDates(), 3]);
  console.log(`${Math.round(process.resourceUsage().maxRSS / 1000).toLocaleString("en-GB")} MB`);
}
