/** Puts a test page together into a folder of its own. */
import { mkdtemp, readFile, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";

const here = (file: string) => fileURLToPath(new URL(file, import.meta.url));
const LINKED = '<link rel="stylesheet" href="page.css" /><script defer src="page.js"></script></head>';

/** @returns the folder in which index.html stands */
export async function buildPage(name: "pane-page" | "grid-page"): Promise<string> {
  const folder = await mkdtemp(join(tmpdir(), `${name}-`));
  await build({
    entryPoints: [here(`${name}/page.tsx`)],
    outdir: folder,
    bundle: true,
    format: "iife",
    target: "es2022",
    jsx: "automatic",
    define: { "process.env.NODE_ENV": '"production"' },
    logLevel: "error",
  });
  const html = await readFile(here(`${name}/page.html`), "utf8");
  await writeFile(join(folder, "index.html"), html.replace("</head>", LINKED));
  return folder;
}
