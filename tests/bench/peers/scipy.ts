/** Exact limits of rates by scipy, in a process of its own; undefined where Python or scipy is not found. */
import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import { doubles, withDoubles } from "./scratch";

export interface ByScipy {
  readonly version: string;
  /** Milliseconds of processor time. */
  readonly rate: number;
  readonly ratio: number;
  readonly firstRate: readonly number[];
  readonly firstRatio: readonly number[];
}

const SCRIPT = fileURLToPath(new URL("rates.py", import.meta.url));

export function ratesByScipy(...columns: readonly Float64Array[]): ByScipy | undefined {
  return withDoubles(doubles(...columns), (file) => {
    const { status, stdout } = spawnSync("python3", [SCRIPT, file], { encoding: "utf8" });
    return status === 0 ? (JSON.parse(stdout) as ByScipy) : undefined;
  });
}
