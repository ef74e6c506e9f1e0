/** Builds the bare grid's page into a folder of its own, minified. */
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";
import { serveFolder, type Served } from "../../../browser/serve";

const HTML = `<!doctype html><html lang="en-GB"><meta charset="utf-8"><title>Bare grid</title>
<link rel="stylesheet" href="page.css"><style>html,body,#root{height:100%;margin:0}</style>
<div id="root"></div><script src="page.js"></script></html>`;

export async function serveBarePage(): Promise<Served> {
  const folder = await mkdtemp(join(tmpdir(), "bare-grid-"));
  const entry = fileURLToPath(new URL("page.ts", import.meta.url));
  await build({
    entryPoints: [entry],
    outfile: join(folder, "page.js"),
    bundle: true,
    minify: true,
    target: "es2022",
    define: { "process.env.NODE_ENV": '"production"' },
    logLevel: "error",
  });
  await writeFile(join(folder, "index.html"), HTML);
  const served = await serveFolder(folder);
  return {
    ...served,
    close: async () => {
      await served.close();
      await rm(folder, { recursive: true });
    },
  };
}
