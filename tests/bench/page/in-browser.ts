/** The browser and the served pages of one job: started for it, and gone after it, whatever becomes of it. */
import type { Browser, Page } from "playwright-core";
import { launchBrowser } from "../../browser/launch";
import type { Served } from "../../browser/serve";
import { isOpen, open, ready, type WorkbookFile } from "./our-page";
import { openWatched, type Waited, type Watched } from "./watched";

/** @param serve starts what is served; `work` gets its addresses in the same order */
export async function inBrowser(
  serve: readonly (() => Promise<Served>)[],
  work: (browser: Browser, ...urls: string[]) => Promise<void>,
): Promise<void> {
  const served: Served[] = [];
  let browser: Browser | undefined;
  try {
    browser = await launchBrowser();
    for (const start of serve) served.push(await start());
    await work(browser, ...served.map(({ url }) => url));
  } finally {
    await browser?.close();
    for (const one of served) await one.close();
  }
}

/** A new page that is watched, until it can open a file and is quiet. */
export async function startOurs(browser: Browser, url: string): Promise<{ watched: Watched; start: Waited }> {
  const watched = await openWatched(browser);
  const { page } = watched;
  const start = await watched.waited(
    () => page.goto(url),
    () => ready(page),
  );
  return { watched, start };
}

/** A file open in our page, and the page quiet. */
export async function openOurs(
  browser: Browser,
  url: string,
  file: WorkbookFile,
): Promise<{ watched: Watched; page: Page; start: Waited; opened: Waited }> {
  const { watched, start } = await startOurs(browser, url);
  const { page } = watched;
  const opened = await watched.waited(
    () => open(page, file),
    () => isOpen(page, file),
  );
  return { watched, page, start, opened };
}
