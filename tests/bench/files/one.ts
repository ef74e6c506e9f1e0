/** One program opens a file and saves it, in a process of its own, as a page does that was opened for it. Prints JSON. */
import { readFileSync } from "node:fs";
import { cpuUntil } from "../measure";
import { programs, type ProgramName } from "./programs";

export interface Measured {
  /** Milliseconds of processor time, helpers beside the script's own thread included. */
  readonly open: number;
  readonly save: number;
  /** Megabytes at the highest above what was there with the program and the file in memory. */
  readonly openMegabytes: number;
  readonly saveMegabytes: number;
}

const [name, file, rows] = process.argv.slice(2) as [ProgramName, string, string];
const program = await programs[name]();
const bytes = new Uint8Array(readFileSync(file)).slice();
global.gc?.();
const before = process.memoryUsage().rss;
const above = (): number => Math.max(0, process.resourceUsage().maxRSS * 1024 - before) / 1e6;

let opened: unknown;
const open = await cpuUntil(async () => (opened = await program.open(bytes)));
const openMegabytes = above();
const save = await cpuUntil(() => program.save(opened as never, Number(rows)));
const measured: Measured = { open, save, openMegabytes, saveMegabytes: above() };
console.log(JSON.stringify(measured));
