/** Runs a script of ours in a process of its own and reads the JSON of its last line. */
import { spawnSync } from "node:child_process";

/** Ends what hangs. */
const AT_MOST = 600_000;

/** @returns what it printed, or the sentence that it failed with */
export function inOwnProcess<T>(script: string, given: readonly string[]): T | string {
  const { stdout, stderr } = spawnSync(process.execPath, ["--expose-gc", ...process.execArgv, script, ...given], {
    encoding: "utf8",
    timeout: AT_MOST,
  });
  const last = stdout.trim().split("\n").at(-1) ?? "";
  return last.startsWith("{") ? (JSON.parse(last) as T) : stderr.trim().split("\n").at(-1) || "it did not end";
}
