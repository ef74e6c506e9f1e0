/**
 * Runs several of package.json's scripts at the same time: `node tests/side-by-side.mjs typecheck lint build`. Each says
 * what it has to say when it has ended, in one piece, and how long it took. All run to their end, so that one look shows
 * everything that is wrong; then the exit code is 1 if any has failed.
 */
import { spawn } from "node:child_process";

/** @param {string} name */
function run(name) {
  const began = performance.now();
  /** @type {Buffer[]} */
  const said = [];
  // through a shell: on Windows npm is no program but a command file
  const child = spawn(`npm run --silent ${name}`, { shell: true, stdio: ["ignore", "pipe", "pipe"] });
  for (const stream of [child.stdout, child.stderr]) stream.on("data", (piece) => said.push(piece));
  return new Promise((resolve) => {
    child.on("close", (code, signal) => {
      const seconds = Math.round((performance.now() - began) / 1_000);
      const outcome = code === 0 ? "passed" : `FAILED (${signal ?? code})`;
      process.stdout.write(`${name} ${outcome} after ${seconds} s\n`);
      if (said.length > 0) process.stdout.write(`${Buffer.concat(said).toString().trimEnd()}\n`);
      resolve(code === 0);
    });
  });
}

const passed = await Promise.all(process.argv.slice(2).map(run));
process.exitCode = passed.every(Boolean) ? 0 : 1;
