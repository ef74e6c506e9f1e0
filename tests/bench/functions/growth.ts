/** The table of all worksheet functions: three sizes, CPU seconds, memory, and what a doubling costs. */
import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import { cases } from "./cases";
import type { Measured } from "./one";

/** What every function is meant to keep at its largest size. */
export const LIMITS = { seconds: 1.5, doubling: 2.3, megabytes: 600, timesTexts: 3 } as const;

/** Below so many seconds a ratio says nothing. */
const TOO_SHORT = 0.02;

const number = (value: number): string => value.toLocaleString("en-GB");

export function measureOne(name: string): Measured | string {
  const script = fileURLToPath(new URL("one.ts", import.meta.url));
  const { stdout, stderr } = spawnSync(process.execPath, ["--expose-gc", ...process.execArgv, script, name], {
    encoding: "utf8",
    timeout: 300_000,
  });
  const last = stdout.trim().split("\n").at(-1) ?? "";
  return last.startsWith("{")
    ? (JSON.parse(last) as Measured)
    : stderr.trim().split("\n").at(-1) || "did not end in 5 minutes";
}

const doublings = ({ seconds }: Measured): string =>
  seconds
    .slice(1)
    .map((value, i) => (seconds[i]! < TOO_SHORT ? "-" : (value / seconds[i]!).toFixed(2)))
    .join(", ");

/** What is missed, in words; nothing where all is kept. */
function missed({ seconds, own, texts, fault }: Measured): string {
  const allowed = Math.max(LIMITS.megabytes, LIMITS.timesTexts * texts);
  const worst = Math.max(...seconds.slice(1).map((value, i) => (seconds[i]! < TOO_SHORT ? 0 : value / seconds[i]!)));
  return [
    fault,
    seconds.at(-1)! > LIMITS.seconds ? "CPU" : undefined,
    worst > LIMITS.doubling ? "doubling" : undefined,
    own > allowed ? "memory" : undefined,
  ]
    .filter((what) => what !== undefined)
    .join(", ");
}

export function benchGrowth(only: readonly string[] = []): void {
  const { seconds, doubling, megabytes, timesTexts } = LIMITS;
  console.log(
    `\nEvery function from dist/functions.js, all of them warm. Wanted at the largest size: ${seconds} s of CPU, ` +
      `${megabytes} MB above the inputs or ${timesTexts} times the texts, ${doubling} for each doubling.\n`,
  );
  console.log("| function | rows | CPU s | doubling | MB above inputs | MB in all | MB of texts | missed |");
  console.log("| --- | --- | --- | --- | --- | --- | --- | --- |");
  for (const { name, counted = "rows" } of cases) {
    if (only.length > 0 && !only.includes(name)) continue;
    const measured = measureOne(name);
    if (typeof measured === "string") {
      console.log(`| ${name} | ${counted} | ${measured} | | | | | |`);
      continue;
    }
    const { sizes, seconds: spent, own, peak, texts } = measured;
    const cells = [
      name,
      `${sizes.map(number).join(", ")} ${counted}`,
      spent.map((value) => value.toFixed(3)).join(", "),
      doublings(measured),
      number(own),
      number(peak),
      number(texts),
      missed(measured),
    ];
    console.log(`| ${cells.join(" | ")} |`);
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) benchGrowth(process.argv.slice(2));
