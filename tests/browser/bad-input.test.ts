/** Bad input on the real page: a sentence, and nothing lost. */
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { strToU8, zipSync } from "fflate";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { launchBrowser } from "./launch";
import { chooseList, openFile, openWorkbookPage, tick } from "./nurse/workbook-page";
import { serveDist, type Served } from "./serve";

const FILES = fileURLToPath(new URL("../workbooks/files/", import.meta.url));
const MEGABYTE = 1024 * 1024;

let browser: Browser;
let served: Served;
let folder: string;

/** A part that unpacks to far more than it weighs. */
const bomb = (): Uint8Array =>
  zipSync({
    "[Content_Types].xml": strToU8("<Types/>"),
    "xl/worksheets/sheet1.xml": [new Uint8Array(300 * MEGABYTE), { level: 9 }],
  });

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "bad-input-"));
  writeFileSync(join(folder, "bomb.xlsx"), bomb());
  writeFileSync(join(folder, "too-large.xlsx"), new Uint8Array(65 * MEGABYTE));
  [browser, served] = await Promise.all([launchBrowser(), serveDist()]);
});
afterAll(async () => {
  await browser?.close();
  await served?.close();
  rmSync(folder, { recursive: true });
});

const REFUSED: readonly (readonly [file: string, says: RegExp])[] = [
  ["not-a-workbook.xlsx", /not (an? )?(Excel )?workbook|not an \.xlsx/i],
  ["encrypted.xlsx", /password/i],
  ["old-binary.xls", /\.xls|old/i],
  ["truncated.xlsx", /damaged|incomplete|cut|broken/i],
  ["zip-of-photos.xlsx", /not (an? )?(Excel )?workbook|no workbook/i],
  ["doctype.xlsx", /document type|DOCTYPE/i],
  ["sheet-part-missing.xlsx", /missing/i],
  ["bomb.xlsx", /unpack|large|more than/i],
  ["too-large.xlsx", /large|MB/i],
];

describe("a file that is refused leaves what was open as it was", () => {
  let page: Page;
  beforeAll(async () => {
    ({ page } = await openWorkbookPage(browser, served.url));
    await openFile(page, `${FILES}table-with-totals.xlsx`);
    await page.getByRole("heading", { level: 1, name: "table-with-totals.xlsx" }).waitFor();
  });
  afterAll(() => page?.context().close());

  test.each(REFUSED)("%s", async (file, says) => {
    const own = file.startsWith("bomb") || file.startsWith("too-large");
    await openFile(page, own ? join(folder, file) : FILES + file);
    await page.getByRole("main").getByText(says).locator("visible=true").first().waitFor();
    expect(await page.getByRole("heading", { level: 1 }).textContent()).toBe("table-with-totals.xlsx");
    expect(await page.getByText("Unsaved changes").count()).toBe(0);
    // The list of the workbook that was open is still there to be worked on.
    await page
      .getByText(/table .Caseload./i)
      .first()
      .waitFor();
    const close = page.getByRole("button", { name: "Close", exact: true });
    if (await close.count()) await close.first().click();
  });
});

interface InTheWay {
  readonly file: string;
  readonly list?: RegExp;
  /** Columns ticked before the sentence can be expected. */
  readonly ticked?: readonly string[];
  readonly says: RegExp;
}

const IN_THE_WAY: readonly InTheWay[] = [
  { file: "protected-sheet.xlsx", list: /^list on sheet .List./, says: /protected/i },
  { file: "no-header.xlsx", says: /header/i },
  { file: "empty.xlsx", says: /empty|no list/i },
  { file: "date-1904.xlsx", says: /1904/ },
  {
    file: "two-columns-one-name.xlsx",
    ticked: ["Change due"],
    says: /needs a column: say which one holds .Last change./,
  },
  { file: "cells-right-of-table.xlsx", says: /not empty \(H8, I13\)\. Nothing is overwritten/ },
  { file: "table-at-last-column.xlsx", says: /no room: the list reaches the sheet's last column/ },
  { file: "spill-in-the-way.xlsx", says: /not empty \(H\d+.*Nothing is overwritten/ },
];

describe("a list to which nothing can be added says why", () => {
  let page: Page;
  beforeAll(async () => {
    ({ page } = await openWorkbookPage(browser, served.url));
  });
  afterAll(() => page?.context().close());

  const open = async (file: string) => {
    await openFile(page, FILES + file);
    await page.getByRole("heading", { level: 1, name: file }).waitFor();
  };

  test.each(IN_THE_WAY)("$file", async ({ file, list, ticked = [], says }) => {
    await open(file);
    if (list) await chooseList(page, list);
    if (ticked.length > 0) await tick(page, ticked);
    await page.getByRole("complementary").getByText(says).locator("visible=true").first().waitFor();
    expect(await page.getByRole("button", { name: /^Add \d+ columns?$/ }).count()).toBe(0);
    expect(await page.getByText("Unsaved changes").count()).toBe(0);
  });

  test("a column whose header stands twice cannot be chosen, and says why", async () => {
    await open("two-columns-one-name.xlsx");
    await tick(page, ["Change due"]);
    const options = page.locator("option[disabled]", { hasText: "header stands twice" });
    expect(await options.count()).toBeGreaterThanOrEqual(2);
  });

  test("a filter that is on is told, and does not stand in the way", async () => {
    await open("filter-on.xlsx");
    await page
      .getByText(/19 rows of this list are hidden now/)
      .first()
      .waitFor();
  });
});
