/**
 * Before the tests that need no page: puts the grid's packages together once, by esbuild, instead of having them read
 * one by one for every test file (8 seconds each time). vitest.config.ts leads their names to the bundle. Its entries
 * share their pieces, so there is one instance of each package whoever asks for it: what a test changes in a class of
 * the grid is what the engine runs.
 */
import { createHash } from "node:crypto";
import { existsSync, readFileSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { build, version } from "esbuild";

const root = fileURLToPath(new URL("..", import.meta.url));
const packages = join(root, "node_modules/@univerjs");
const bundle = join(root, "node_modules/.cache/grid");
const keyFile = join(bundle, "made-from.txt");

/** Sets of packages with their styles: only the page takes them as sets. */
const FOR_THE_PAGE = /^preset-/;
/** The doors of a package that we may come in by, and their files. */
const DOORS = { "": "index.js", "/facade": "facade.js", "/lib/facade": "facade.js" };

/** Every way to name a package of the grid that package.json lists, with its file. */
function entries(): { in: string; out: string }[] {
  const { devDependencies } = JSON.parse(readFileSync(join(root, "package.json"), "utf8")) as {
    devDependencies: Record<string, string>;
  };
  return Object.keys(devDependencies)
    .filter((name) => name.startsWith("@univerjs/"))
    .map((name) => name.slice("@univerjs/".length))
    .filter((name) => !FOR_THE_PAGE.test(name))
    .flatMap((name) =>
      Object.entries(DOORS).map(([door, file]) => ({ in: join(packages, name, "lib/es", file), out: name + door })),
    )
    .filter((entry) => existsSync(entry.in));
}

/** Other packages, another esbuild or other lines in this file ask for another bundle. */
function key(): string {
  const parts = [
    readFileSync(join(root, "node_modules/.package-lock.json")),
    version,
    readFileSync(import.meta.filename),
  ];
  return parts.reduce((hash, part) => hash.update(part), createHash("sha256")).digest("hex");
}

export async function setup(): Promise<void> {
  const wanted = key();
  if (existsSync(keyFile) && readFileSync(keyFile, "utf8") === wanted) return;
  // Made beside its place and moved there when whole: another run never sees half of it.
  const making = `${bundle}-${process.pid}`;
  await build({
    entryPoints: entries(),
    outdir: making,
    outExtension: { ".js": ".mjs" },
    bundle: true,
    splitting: true,
    format: "esm",
    platform: "node",
    target: "node20",
    logLevel: "error",
  });
  writeFileSync(join(making, "made-from.txt"), wanted);
  rmSync(bundle, { recursive: true, force: true });
  renameSync(making, bundle);
}
