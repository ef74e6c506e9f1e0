/** Lives by R's survfit, in a process of its own; undefined where Rscript or its package survival is not found. */
import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import { doubles, withDoubles } from "./scratch";

export interface ByR {
  readonly version: string;
  readonly milliseconds: number;
  readonly median: number;
}

const SCRIPT = fileURLToPath(new URL("survfit.R", import.meta.url));

export function livesByR(days: ArrayLike<number>, failed: ArrayLike<number>): ByR | undefined {
  return withDoubles(doubles(days, failed), (file) => {
    const { status, stdout } = spawnSync("Rscript", ["--vanilla", SCRIPT, file], { encoding: "utf8" });
    if (status !== 0) return undefined;
    const [version = "", seconds, median] = stdout.split("\n");
    return { version: `R ${version}`, milliseconds: Number(seconds) * 1000, median: Number(median) };
  });
}
