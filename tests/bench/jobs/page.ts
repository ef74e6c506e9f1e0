/** What a person waits for on the built page with a list of their own, beside a bare page of the same grid. */
import { existsSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { gzipSync } from "node:zlib";
import type { Browser } from "playwright-core";
import { serveDist } from "../../browser/serve";
import { COLUMNS, makeList } from "../files/make";
import { inTurn, median } from "../measure";
import { serveBarePage } from "../page/bare/build";
import type { BarePage } from "../page/bare/page";
import { listAsGridData } from "../page/list-data";
import { inBrowser, openOurs } from "../page/in-browser";
import { save } from "../page/our-page";
import { openWatched, type Waited } from "../page/watched";
import type { How, Job } from "../report/row";

declare const window: { bare: BarePage };

const SIZES = [1_000, 10_000, 100_000];

interface Visit {
  readonly start: Waited;
  readonly list: Waited;
  readonly megabytes: number;
  readonly saved?: Waited;
}

async function visitOurs(browser: Browser, url: string, bytes: Uint8Array): Promise<Visit> {
  const { watched, page, start, opened: list } = await openOurs(browser, url, { name: "list.xlsx", bytes });
  const megabytes = await watched.megabytes();
  const saved = await watched.waited(() => save(page));
  await watched.close();
  return { start, list, megabytes, saved };
}

async function visitBare(browser: Browser, url: string, json: string): Promise<Visit> {
  const watched = await openWatched(browser);
  const { page } = watched;
  const start = await watched.waited(
    () => page.goto(url),
    () => page.waitForFunction(() => window.bare !== undefined),
  );
  await watched.waited(() => page.evaluate((given) => window.bare.take(given), json));
  const list = await watched.waited(() => page.evaluate(() => window.bare.show()));
  const megabytes = await watched.megabytes();
  await watched.close();
  return { start, list, megabytes };
}

const BARE = "a bare page of the same grid";

async function atSize(
  how: How,
  browser: Browser,
  [ours, bare]: readonly [string, string],
  rows: number,
): Promise<void> {
  const [bytes, json] = [makeList(rows), listAsGridData(rows)];
  const visits = await inTurn<"ours" | "bare", Visit>(
    { ours: () => visitOurs(browser, ours, bytes), bare: () => visitBare(browser, bare, json) },
    how.quick ? 1 : 3,
    true,
  );
  const of = (who: "ours" | "bare", what: (visit: Visit) => number): number => median(visits[who].map(what));
  const size = `${rows.toLocaleString("en-GB")} x ${COLUMNS}`;
  const pair = (
    what: string,
    unit: "ms" | "MB",
    figure: (visit: Visit) => number,
    most?: number,
    remark?: string,
  ): void =>
    how.row({
      what,
      size,
      unit,
      ours: of("ours", figure),
      peer: BARE,
      theirs: of("bare", figure),
      ...(most !== undefined && { limits: [{ what: "ratio", most }] }),
      ...(remark !== undefined && { remark }),
    });
  if (rows === SIZES[0]) {
    how.row({
      what: "From the address to a page that can open a file, and quiet",
      size: "empty",
      unit: "ms",
      ours: of("ours", ({ start }) => start.untilQuiet),
      peer: BARE,
      theirs: of("bare", ({ start }) => start.untilQuiet),
    });
    how.row({
      what: "The same: work of the page",
      size: "empty",
      unit: "ms",
      ours: of("ours", ({ start }) => start.work),
      peer: BARE,
      theirs: of("bare", ({ start }) => start.work),
    });
  }
  const remark = "the bare page reads no file: its cells are in its memory already";
  pair("Open the list until quiet", "ms", ({ list }) => list.untilQuiet, undefined, remark);
  pair("Open the list: work of the page", "ms", ({ list }) => list.work, 1.1, remark);
  pair("Open the list: longest block", "ms", ({ list }) => list.longestBlock, 1.1, remark);
  pair("The list open: memory", "MB", ({ megabytes }) => megabytes, 1.1);
  how.row({
    what: "Save from the press until quiet",
    size,
    unit: "ms",
    ours: of("ours", ({ saved }) => saved!.untilQuiet),
    remark: `longest block ${Math.round(of("ours", ({ saved }) => saved!.longestBlock))} ms`,
  });
}

/** What comes over the wire for the first screen, and how large everything is that is shipped. */
function weights({ row, notMeasured }: How): void {
  const file = (name: string) => fileURLToPath(new URL(`../../../dist/${name}`, import.meta.url));
  for (const [name, most] of [
    ["functions.js", 40],
    ["taskpane.js", 90],
    ["browser.js", 150],
  ] as const) {
    if (!existsSync(file(name))) notMeasured(`${name}: it is not in dist/.`);
    else {
      const ours = gzipSync(readFileSync(file(name)), { level: 9 }).length / 1000;
      row({ what: `${name}, compressed`, size: "", unit: "KB", ours, limits: [{ what: "KB", most, is: ours }] });
    }
  }
}

export const page: Job = {
  name: "page",
  title: "The browser workbook with somebody's own list",
  about:
    "The built page in a real browser, beside a page that holds the same grid with the same parts and nothing of ours, in " +
    "turn, each visit in a new page. Quiet means that the page has answered at once for half a second, which is not counted. " +
    "The list is that of the job files.",
  leavesOut:
    "the network (both are served by this machine), and what a screen's graphics card would do: the browser draws by " +
    "processor here. Memory is that of the page's scripts, without workers and pictures.",
  async run(how) {
    weights(how);
    await inBrowser([serveDist, serveBarePage], async (browser, ours, bare) => {
      for (const rows of how.quick ? SIZES.slice(0, 1) : SIZES) await atSize(how, browser, [ours!, bare!], rows);
    });
  },
};
