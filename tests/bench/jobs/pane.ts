/** The side pane as Excel opens it: until its first screen stands. */
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";
import type { Browser } from "playwright-core";
import { serveDist, serveFolder } from "../../browser/serve";
import { inTurn, median } from "../measure";
import { inBrowser } from "../page/in-browser";
import { openWatched, type Waited } from "../page/watched";
import type { How, Job } from "../report/row";

/** Stands where office.js would: it says at once that this is Excel, which has not answered anything yet. */
const EXCEL = `
  window.Office = {
    HostType: { Excel: "Excel" },
    onReady: () => Promise.resolve({ host: "Excel", platform: "PC" }),
    context: { displayLanguage: "en-GB", requirements: { isSetSupported: () => true } },
  };
  window.Excel = { run: () => new Promise(() => undefined) };
  window.CustomFunctions = { associate: () => undefined, Error: class {}, ErrorCode: {} };`;

const LINE = `
  import { createElement } from "react";
  import { createRoot } from "react-dom/client";
  createRoot(document.getElementById("root")).render(createElement("nav", null, "A pane"));`;

/** The peer: the library that the pane is made with, showing one line. */
async function bareFolder(): Promise<string> {
  const folder = await mkdtemp(join(tmpdir(), "bare-pane-"));
  await build({
    stdin: { contents: LINE, resolveDir: fileURLToPath(new URL(".", import.meta.url)) },
    outfile: join(folder, "pane.js"),
    bundle: true,
    minify: true,
    define: { "process.env.NODE_ENV": '"production"' },
    logLevel: "error",
  });
  const html = `<!doctype html><meta charset="utf-8"><div id="root"></div><script src="pane.js"></script>`;
  await writeFile(join(folder, "index.html"), html);
  return folder;
}

async function visit(browser: Browser, url: string): Promise<Waited> {
  const watched = await openWatched(browser);
  await watched.page.route("**/office/office.js", (route) =>
    route.fulfill({ contentType: "text/javascript", body: EXCEL }),
  );
  const start = await watched.waited(
    () => watched.page.goto(url),
    () => watched.page.locator("nav").first().waitFor(),
  );
  await watched.close();
  return start;
}

async function measure({ quick, row }: How, browser: Browser, ours: string, bare: string): Promise<void> {
  const figures = await inTurn({ ours: () => visit(browser, ours), bare: () => visit(browser, bare) }, quick ? 2 : 7);
  for (const [what, which] of [
    ["From the address to the pane's first screen, and quiet", "untilQuiet"],
    ["The same: work of the page", "work"],
  ] as const) {
    const ours = median(figures.ours.map((one) => one[which]));
    row({
      what,
      size: "",
      unit: "ms",
      ours,
      peer: "React alone, one line",
      theirs: median(figures.bare.map((one) => one[which])),
      ...(which === "work" && { limits: [{ what: "ms", most: 300, is: ours }] }),
    });
  }
}

export const pane: Job = {
  name: "pane",
  title: "The side pane's start in Excel",
  about:
    "taskpane.html as built, with functions.js, in a real browser, in a new page each time, until its navigation stands; beside it, in turn, a page " +
    "that shows one line with the same React.",
  leavesOut:
    "Microsoft's office.js, in whose place a few lines say at once that this is Excel, and Excel's own time; a workbook, " +
    "so that the pane has nothing to read.",
  async run(how) {
    const folder = await bareFolder();
    try {
      await inBrowser([serveDist, () => serveFolder(folder)], (browser, ours, bare) =>
        measure(how, browser, `${ours}taskpane.html`, bare!),
      );
    } finally {
      await rm(folder, { recursive: true });
    }
  },
};
