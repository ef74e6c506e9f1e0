/** Files are opened and saved on a thread of their own, or on the page's where none starts; and can be stopped. */
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Browser, BrowserContext, Page } from "playwright-core";
import { isRefusal, openPackage } from "../../taskpane/workbook/package";
import { large, tenThousand } from "../bench/large";
import { launchBrowser } from "./launch";
import { bytesOf } from "./nurse/workbook-page";
import { serveDist, type Served } from "./serve";

const FIRST_NAME = /ten-thousand\.xlsx is open/;

let browser: Browser;
let served: Served;
beforeAll(async () => {
  [browser, served] = [await launchBrowser(), await serveDist()];
});
afterAll(async () => {
  await browser.close();
  await served.close();
});

interface Opened {
  readonly context: BrowserContext;
  readonly page: Page;
  /** What the page's policy turned down. */
  readonly violations: string[];
}

async function openedPage(prepare: (page: Page) => Promise<unknown> = async () => undefined): Promise<Opened> {
  const context = await browser.newContext({ acceptDownloads: true });
  const page = await context.newPage();
  const violations: string[] = [];
  page.on("console", (message) => {
    if (/Content Security Policy/.test(message.text())) violations.push(message.text());
  });
  await prepare(page);
  await page.goto(served.url);
  await page.locator('header button:enabled:has-text("Save")').waitFor({ state: "attached" });
  return { context, page, violations };
}

const choose = (page: Page, bytes: Uint8Array) =>
  page
    .locator('input[type="file"]')
    .first()
    .setInputFiles({ name: "ten-thousand.xlsx", mimeType: "application/octet-stream", buffer: Buffer.from(bytes) });

async function saved(page: Page): Promise<number> {
  const download = page.waitForEvent("download");
  await page.getByRole("button", { name: "Save", exact: true }).click();
  const opened = openPackage(await bytesOf(await download));
  if (isRefusal(opened)) throw new Error(opened.refused);
  return opened.store(opened.sheets[0]!.name).data.count;
}

describe("a workbook of 10,000 rows", () => {
  it("is opened and saved by a thread of the page's own origin, under its strict policy", async () => {
    const { context, page, violations } = await openedPage();
    await choose(page, tenThousand());
    await page.getByText(FIRST_NAME).first().waitFor();
    expect(page.workers().map((worker) => new URL(worker.url()).pathname)).toEqual(["/packages.js"]);
    expect(await saved(page)).toBeGreaterThan(150_000);
    expect(violations).toEqual([]);
    await context.close();
  });

  it("is opened and saved on the page's own thread where no other starts", async () => {
    const { context, page } = await openedPage((one) =>
      one.addInitScript(() => void delete (globalThis as { Worker?: unknown }).Worker),
    );
    await choose(page, tenThousand());
    await page.getByText(FIRST_NAME).first().waitFor();
    expect(page.workers()).toEqual([]);
    expect(await saved(page)).toBeGreaterThan(150_000);
    await context.close();
  });

  it("is opened on the page's own thread where the script of the other is missing", async () => {
    const { context, page } = await openedPage((one) => one.route("**/packages.js", (route) => route.abort()));
    await choose(page, tenThousand());
    await page.getByText(FIRST_NAME).first().waitFor();
    await context.close();
  });
});

describe("a large workbook", () => {
  it("can be stopped while it is opened: what was there is still there", async () => {
    const { context, page } = await openedPage();
    await choose(page, large(5));
    await page.getByRole("button", { name: "Stop", exact: true }).click();
    await page.getByText("Stopped. Nothing was opened; what was here is still here.").first().waitFor();
    await choose(page, tenThousand());
    await page.getByText(FIRST_NAME).first().waitFor();
    await context.close();
  });
});
