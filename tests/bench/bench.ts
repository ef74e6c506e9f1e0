/**
 * `npm run bench`: what a person can feel, beside named peers.
 *
 *   npm run bench                        everything, into docs/benchmarks.md
 *   npm run bench -- functions files     some jobs; their sections of docs/benchmarks.md are written anew
 *   npm run bench -- --quick dates       fewer sizes and rounds; nothing is written, unless with --write
 *   npm run bench -- --check [jobs]      fails where a ratio is half as good as the committed one; nothing is written
 *   npm run bench -- --list              the jobs
 *
 * It runs to its end by itself: a job that fails is told, and the others are measured all the same.
 */
import { spawnSync } from "node:child_process";
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { jobs } from "./jobs/index";
import { check, worseTwice } from "./report/check";
import { load, machine, measuredHere } from "./report/machine";
import { INTRODUCTION } from "./report/introduction";
import type { Job, Row } from "./report/row";
import { ratiosOf, rowCells, section, sectionsOf } from "./report/table";

const PAGE = fileURLToPath(new URL("../../docs/benchmarks.md", import.meta.url));
const committed = existsSync(PAGE) ? readFileSync(PAGE, "utf8") : "";

const given = process.argv.slice(2);
const flags = given.filter((one) => one.startsWith("--"));
const names = given.filter((one) => !one.startsWith("--"));
const known = new Map(jobs.map((job) => [job.name, job]));

for (const flag of flags) if (!["--quick", "--write", "--check", "--list"].includes(flag)) fail(`There is no ${flag}.`);
for (const name of names)
  if (!known.has(name)) fail(`There is no job ${name}; there are: ${[...known.keys()].join(", ")}`);

function fail(sentence: string): never {
  console.error(sentence);
  process.exit(2);
}

const quick = flags.includes("--quick");
const isCheck = flags.includes("--check");

interface Outcome {
  readonly rows: readonly Row[];
  readonly notMeasured: readonly string[];
  readonly where: string;
}

async function measure(job: Job): Promise<Outcome> {
  console.log(`\n${job.title} (${job.name})`);
  const rows: Row[] = [];
  const notMeasured: string[] = [];
  const began = performance.now();
  const busy = load();
  await job.run({
    quick,
    row: (row) => {
      rows.push(row);
      console.log(`  ${rowCells(row).filter(Boolean).join(" | ")}`);
    },
    notMeasured: (sentence) => {
      notMeasured.push(sentence);
      console.log(`  not measured: ${sentence}`);
    },
  });
  return { rows, notMeasured, where: measuredHere(busy, (performance.now() - began) / 1000, quick) };
}

/** After every job, so that what was measured stays when a later one is stopped. */
function write(job: Job, { rows, notMeasured, where }: Outcome): void {
  const sections = new Map(sectionsOf(existsSync(PAGE) ? readFileSync(PAGE, "utf8") : ""));
  sections.set(job.name, section(job, rows, notMeasured, where));
  const inOrder = jobs.flatMap(({ name }) => sections.get(name) ?? []);
  writeFileSync(PAGE, `${INTRODUCTION}\n${inOrder.join("\n")}`);
}

async function passes(job: Job): Promise<boolean> {
  const ratios = ratiosOf(committed);
  const first = check(job.name, (await measure(job)).rows, ratios);
  for (const row of first.unknown) console.log(`  not in docs/benchmarks.md yet: ${row}`);
  if (first.worse.length === 0) {
    console.log(`  ${first.compared} ratios are no worse than twice the committed ones`);
    return true;
  }
  console.log("  once more, because some were worse:");
  const worse = worseTwice(first, check(job.name, (await measure(job)).rows, ratios));
  for (const { row, committed, now } of worse)
    console.log(`  WORSE: ${row}: ${now.toFixed(3)}, committed ${committed}`);
  return worse.length === 0;
}

if (flags.includes("--list")) {
  for (const { name, title } of jobs) console.log(`${name.padEnd(12)} ${title}`);
  process.exit();
}

/** What is measured is what is shipped. One that is there is taken as it is: whoever has changed something builds it. */
function buildIfMissing(): void {
  const root = fileURLToPath(new URL("../../", import.meta.url));
  if (["functions.js", "index.html"].every((file) => existsSync(`${root}dist/${file}`))) return;
  console.log("dist/ is missing: npm run build");
  // Through a shell: on Windows npm is no program but a command file.
  const { status } = spawnSync("npm run build", { cwd: root, stdio: "inherit", shell: true });
  if (status !== 0) fail("The build failed: nothing was measured.");
}

console.log(machine());
buildIfMissing();
let isGood = true;
for (const job of jobs) {
  if (names.length > 0 ? !names.includes(job.name) : job.onlyByName) continue;
  try {
    if (isCheck) isGood = (await passes(job)) && isGood;
    else {
      const outcome = await measure(job);
      if (!quick || flags.includes("--write")) write(job, outcome);
    }
  } catch (fault) {
    // What stands in docs/benchmarks.md of this job stays there.
    console.error(`  FAILED: ${fault instanceof Error ? fault.message : String(fault)}`);
    isGood = false;
  }
}
process.exitCode = isGood ? 0 : 1;
