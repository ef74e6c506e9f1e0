/** Opening and saving long lists, beside general libraries and zip alone. */
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { COLUMNS, makeList } from "../files/make";
import type { Measured } from "../files/one";
import type { ProgramName } from "../files/programs";
import { inTurn, median } from "../measure";
import { inOwnProcess } from "../own-process";
import type { How, Job, Limit } from "../report/row";

const SCRIPT = fileURLToPath(new URL("../files/one.ts", import.meta.url));
const SIZES = [1_000, 10_000, 100_000];
const LARGEST = SIZES.at(-1)!;

interface Peer {
  readonly program: ProgramName | "unzip";
  readonly called: string;
  /** Our limits at the largest size, as ratios. */
  readonly open?: number;
  readonly save?: number;
  /** Said beside saving. */
  readonly saves?: string;
}

const PEERS: readonly Peer[] = [
  {
    program: "hucre",
    called: "hucre 1.0.0, with styles",
    open: 0.8,
    saves: "theirs: the added values without formulas",
  },
  { program: "sheetJs", called: "SheetJS 0.20.3, with compression", save: 1, saves: "theirs: without most styles" },
  { program: "excelJs", called: "ExcelJS 4.4.0" },
  { program: "fflate", called: "fflate 0.8.3, zip alone" },
  { program: "unzip", called: "native unzip, alone" },
];

/** Natively, by Info-ZIP; undefined where it is not found. It saves nothing. */
function byUnzip(file: string): Measured | string {
  const start = performance.now();
  const { status, error } = spawnSync("unzip", ["-p", file], { stdio: ["ignore", "ignore", "ignore"] });
  if (status !== 0 || error) return "unzip was not found.";
  return { open: performance.now() - start, save: NaN, openMegabytes: NaN, saveMegabytes: NaN };
}

async function atSize(how: How, folder: string, rows: number): Promise<void> {
  const file = join(folder, `${rows}.xlsx`);
  writeFileSync(file, makeList(rows));
  const run = (program: Peer["program"]) =>
    program === "unzip" ? byUnzip(file) : inOwnProcess<Measured>(SCRIPT, [program, file, String(rows)]);
  const works = Object.fromEntries(
    (["ours", ...PEERS.map(({ program }) => program)] as const).map((program) => [program, () => run(program)]),
  );
  const figures = await inTurn<string, Measured | string>(works, how.quick ? 1 : 3, true);
  const of = (program: string, what: keyof Measured): number =>
    median(figures[program]!.filter((one): one is Measured => typeof one !== "string").map((one) => one[what]));
  const fault = figures["ours"]!.find((one) => typeof one === "string");
  if (fault !== undefined) throw new Error(fault);

  for (const { program, called, saves = "", ...limits } of PEERS) {
    const failed = figures[program]!.find((one) => typeof one === "string");
    if (failed !== undefined) {
      how.notMeasured(`${called}: ${failed}`);
      continue;
    }
    const told = (what: string, which: keyof Measured, unit: "ms" | "MB", most: number | undefined): void => {
      const theirs = of(program, which);
      if (Number.isNaN(theirs)) return;
      const limit: readonly Limit[] = most === undefined || rows !== LARGEST ? [] : [{ what: "ratio", most }];
      how.row({
        what,
        size: `${rows.toLocaleString("en-GB")} x ${COLUMNS}`,
        unit,
        ours: of("ours", which),
        peer: called,
        theirs,
        ...(limit.length > 0 && { limits: limit }),
        remark: what.startsWith("Save") ? saves : "",
      });
    };
    told("Open: every cell read", "open", "ms", limits.open);
    told("Open: memory", "openMegabytes", "MB", undefined);
    told("Save with one more column", "save", "ms", limits.save);
    told("Open and save: memory", "saveMegabytes", "MB", undefined);
  }
}

export const files: Job = {
  name: "files",
  title: "Opening and saving long lists",
  about:
    "A list of texts, dates, numbers and a formula, compressed: opened with every cell read, and saved with one more column " +
    "of formulas and results. Each program in a process of its own, cold as a page is that was opened for it, in turn; " +
    "processor time, helpers beside the script's own thread included (native unzip: on the clock), and memory at the highest above what was there with the program and the file. Ours checks the " +
    "file as a stranger's, keeps everything in it, and reads its own output back before it is offered.",
  leavesOut: "what the grid takes to show it (the job page); loading the program's own script.",
  async run(how) {
    const folder = mkdtempSync(join(tmpdir(), "bench-files-"));
    try {
      for (const rows of how.quick ? SIZES.slice(0, 2) : SIZES) await atSize(how, folder, rows);
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  },
};
