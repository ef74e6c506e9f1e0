/** What a contributor waits for. */
import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import type { How, Job } from "../report/row";

const ROOT = fileURLToPath(new URL("../../../", import.meta.url));

/** Seconds that a command takes; undefined where it fails. */
function seconds(command: string, args: readonly string[]): number | undefined {
  const start = performance.now();
  // Through a shell: on Windows npm is no program but a command file.
  const { status } = spawnSync([command, ...args].join(" "), { cwd: ROOT, stdio: "ignore", shell: true });
  return status === 0 ? (performance.now() - start) / 1000 : undefined;
}

function told({ row, notMeasured }: How, what: string, command: string, most: number, remark = ""): void {
  const [program = "", ...args] = command.split(" ");
  const took = seconds(program, args);
  if (took === undefined) notMeasured(`${what}: \`${command}\` failed.`);
  else row({ what, size: command, unit: "s", ours: took, limits: [{ what: "s", most, is: took }], remark });
}

export const build: Job = {
  name: "build",
  title: "Build and types",
  about:
    "On the clock, once each, with what their caches hold, as a contributor waits for them again and again. No peer is known.",
  leavesOut: "installing, a first build without a cache, and the tests (the job tests).",
  run(how) {
    told(how, "Build", "npm run build", 25);
    told(how, "Types", "npm run typecheck", 60);
  },
};

export const tests: Job = {
  name: "tests",
  title: "All tests",
  about:
    "What `npm cit` does after installing: types, lint and build side by side, then every test, the real-browser ones too. On the clock, once. " +
    "It is meant to stay below 8 minutes on two idle processors. No peer is known.",
  leavesOut: "installing. Measured only where it is asked for: `npm run bench -- tests`.",
  onlyByName: true,
  run: (how) => told(how, "Types, lint, build, all tests", "npm test", 480),
};
