/** What the built files weigh on the wire. */
import { existsSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { gzipSync } from "node:zlib";
import { line } from "./measure";

const kilobytes = (file: string): number => {
  const path = fileURLToPath(new URL(`../../dist/${file}`, import.meta.url));
  return existsSync(path) ? gzipSync(readFileSync(path), { level: 9 }).length / 1000 : Number.NaN;
};

export function benchBundles(): void {
  line("functions.js, gz", `${kilobytes("functions.js").toFixed(1)} KB`, "at most 40 KB");
  line("taskpane.js, gz", `${kilobytes("taskpane.js").toFixed(1)} KB`, "at most 90 KB");
}
