/** What a person waits for on the built page (npm run build first). Peers for the page as a whole are not known. */
import { existsSync } from "node:fs";
import { fileURLToPath } from "node:url";
import type { Browser, Page } from "playwright-core";
import { launchBrowser } from "../browser/launch";
import { serveDist } from "../browser/serve";
import { line, median, ms } from "./measure";

const FILE = fileURLToPath(new URL("../workbooks/files/ten-thousand-rows.xlsx", import.meta.url));
const RUNS = 3;

interface Figures {
  readonly firstGrid: number;
  readonly open: number;
  readonly add: number;
  readonly longestBlock: number;
  readonly save: number;
}

const since = async (work: () => Promise<unknown>): Promise<number> => {
  const start = performance.now();
  await work();
  return performance.now() - start;
};

async function run(browser: Browser, url: string): Promise<Figures> {
  const context = await browser.newContext({ acceptDownloads: true });
  const page = await context.newPage();
  page.setDefaultTimeout(120_000);
  await page.addInitScript(() => {
    const blocks: number[] = [];
    Object.assign(window, { blocks });
    new PerformanceObserver((list) => blocks.push(...list.getEntries().map((entry) => entry.duration))).observe({
      type: "longtask",
    });
  });
  const firstGrid = await since(async () => {
    await page.goto(url);
    await page.locator('header button:enabled:has-text("Save")').waitFor();
  });
  const open = await since(async () => {
    await page.locator('input[type="file"]').first().setInputFiles(FILE);
    await page.getByRole("checkbox").first().waitFor();
  });
  await prepare(page);
  await page.evaluate(() => ((window as unknown as { blocks: number[] }).blocks.length = 0));
  const add = await since(async () => {
    await page.getByRole("button", { name: "Add 3 columns" }).click();
    await page.getByRole("heading", { name: "Columns added" }).waitFor();
  });
  const longestBlock = await page.evaluate(() => Math.max(0, ...(window as unknown as { blocks: number[] }).blocks));
  const save = await since(async () => {
    await Promise.all([page.waitForEvent("download"), page.getByRole("button", { name: "Save", exact: true }).click()]);
  });
  await context.close();
  return { firstGrid, open, add, longestBlock, save };
}

async function prepare(page: Page): Promise<void> {
  for (const name of ["Change due", "At the latest", "Change"]) {
    await page.getByRole("checkbox", { name, exact: true }).check();
  }
  await page.getByRole("button", { name: "Add 3 columns" }).waitFor();
}

export async function benchPage(): Promise<void> {
  if (!existsSync(fileURLToPath(new URL("../../dist/index.html", import.meta.url)))) {
    return console.log("The page was not measured: run npm run build first");
  }
  const [browser, served] = [await launchBrowser(), await serveDist()];
  try {
    const runs: Figures[] = [];
    for (let i = 0; i < RUNS; i++) runs.push(await run(browser, served.url));
    const of = (what: keyof Figures) => median(runs.map((figures) => figures[what]));
    line("First grid on screen, ready to open a file", ms(of("firstGrid")), "measured");
    line("Open 10,000 x 15 in the page, to the pane's answer", ms(of("open")), "measured");
    line("Three columns to 10,000 rows, from press to done", ms(of("add")), "under 4,000 ms");
    line("Longest block of the page meanwhile", ms(of("longestBlock")), "at most 500 ms");
    line("Save it, from press to download", ms(of("save")), "measured");
  } finally {
    await browser.close();
    await served.close();
  }
}
