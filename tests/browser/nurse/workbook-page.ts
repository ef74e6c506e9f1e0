/** The browser workbook, driven as a person drives it. */
import { buffer } from "node:stream/consumers";
import { expect } from "vitest";
import type { Browser, Download, Locator, Page } from "playwright-core";
import { addColumns as words } from "../../../taskpane/texts/add-columns";
import { ownList } from "../../../taskpane/texts/own-list";
import { shell } from "../../../taskpane/texts/shell";
import { pane } from "../../../taskpane/texts/pane";
import { openFolds } from "../places";
import { KINDS, trimmed } from "./by-hand";

export interface WorkbookPage {
  readonly page: Page;
  /** Every address that was asked for. */
  readonly requests: string[];
  /** What the page itself could not bear. */
  readonly faults: string[];
}

export async function openWorkbookPage(
  browser: Browser,
  url: string,
  viewport = { width: 1280, height: 900 },
): Promise<WorkbookPage> {
  const context = await browser.newContext({ viewport, acceptDownloads: true, reducedMotion: "reduce" });
  const page = await context.newPage();
  const requests: string[] = [];
  const faults: string[] = [];
  page.on("request", (request) => requests.push(request.url()));
  page.on("pageerror", (error) => faults.push(String(error)));
  await page.goto(url);
  await page.getByRole("button", { name: shell.first.empty, exact: true }).click();
  await page.locator('header button:enabled:has-text("Save")').waitFor();
  return { page, requests, faults };
}

/**
 * One page for all cases of a file of tests, each of which opens a workbook of its own in it: a page and its grid cost
 * more than most of what is done there. A case that fails takes its page with it, so that the next one begins anew.
 *
 * @returns gives the page to a case, and gives back what that one gives
 */
export function onePage(): <T>(browser: Browser, url: string, work: (there: WorkbookPage) => Promise<T>) => Promise<T> {
  let kept: WorkbookPage | undefined;
  return async (browser, url, work) => {
    const there = kept ?? (await openWorkbookPage(browser, url));
    kept = undefined;
    try {
      const given = await work(there);
      there.requests.length = 0;
      there.faults.length = 0;
      kept = there;
      return given;
    } finally {
      if (!kept) await there.page.context().close();
    }
  };
}

/** Chooses a file as the file dialog would. */
export const openFile = (page: Page, path: string): Promise<void> =>
  page.locator('input[type="file"]').first().setInputFiles(path);

const step = (page: Page, title: string): Locator =>
  page.locator("section", { has: page.getByRole("heading", { name: title, exact: true }) }).last();

/** Chooses a list by its label's beginning, when the one that was found is another. */
export async function chooseList(page: Page, label: RegExp): Promise<void> {
  const correction = step(page, ownList.title).locator("details").first();
  await correction.evaluate((details: HTMLDetailsElement) => (details.open = true));
  const select = page.getByLabel(ownList.choose, { exact: true });
  const options = await select.locator("option").allTextContents();
  const wanted = options.find((option) => label.test(option));
  expect(wanted, `${String(label)} among ${options.join(" | ")}`).toBeDefined();
  if ((await select.locator("option:checked").textContent()) !== wanted) await select.selectOption({ label: wanted! });
}

export const tick = async (page: Page, columns: readonly string[]): Promise<void> => {
  await page.getByRole("heading", { name: words.tick.title, exact: true }).waitFor();
  for (const column of columns) {
    const box = page.getByRole("checkbox", { name: column, exact: true });
    /* The folds and refusals of the list before may still be in sight, and go away under the hand. */
    await expect
      .poll(async () => {
        await openFolds(page);
        if ((await box.isVisible()) && (await box.isEnabled())) await box.check({ timeout: 1_000 }).catch(() => {});
        return (await box.isVisible()) && (await box.isChecked());
      })
      .toBe(true);
  }
};

/** Says which column is what: by letters, whatever was guessed. */
export async function sayColumns(page: Page, letters: Readonly<Record<string, string>>): Promise<void> {
  await openFolds(page);
  for (const [label, column] of Object.entries(letters)) {
    const select = page.getByRole("combobox", { name: new RegExp(`^${label}`) });
    const options = await select.locator("option").allTextContents();
    await select.selectOption({ label: options.find((option) => option.startsWith(`${column}: `))! });
  }
}

/** Gives each word of the list its kind as this nurse knows it, and takes back guesses that she does not share. */
export async function sayKinds(page: Page): Promise<void> {
  await openFolds(page);
  const rows = page.locator(".rows > li", { has: page.locator(".row-field") });
  for (let i = 0; i < (await rows.count()); i++) {
    const row = rows.nth(i);
    const select = row.locator("select");
    if ((await select.count()) === 0) continue;
    const word = trimmed((await row.locator("strong").textContent())!);
    const kind = KINDS.find(({ matches }) => matches.test(word));
    if (!kind) {
      await select.selectOption({ value: "" });
      continue;
    }
    const options = await select.locator("option").allTextContents();
    await select.selectOption({ label: options.find((option) => kind.label.test(option))! });
  }
}

export const pressAdd = async (page: Page): Promise<void> => {
  const add = page.getByRole("button", { name: /^Add \d+ columns?$/ });
  await add.waitFor().catch(async () => {
    throw new Error(`Nothing can be added: ${await step(page, pane.preview).innerText()}`);
  });
  await add.click();
};

export const added = (page: Page): Promise<void> =>
  page.getByRole("heading", { name: words.result.title.done }).waitFor();

/** What the browser got; its own path leads nowhere for those who are only connected to it. */
export const bytesOf = async (download: Download): Promise<Uint8Array> =>
  new Uint8Array(await buffer(await download.createReadStream()));

/** Presses Save and gives the file that the browser got. */
export async function save(page: Page): Promise<{ readonly bytes: Uint8Array; readonly name: string }> {
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name: "Save", exact: true }).click(),
  ]);
  return { bytes: await bytesOf(download), name: download.suggestedFilename() };
}
