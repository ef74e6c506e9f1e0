/** Saving in the real page: the entry that is still open, a job of the pane that still runs, results that became errors. */
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { read as readElsewhere, utils, write as writeElsewhere, type CellObject, type WorkSheet } from "@e965/xlsx";
import type { Browser, Download, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { addColumns } from "../../taskpane/texts/add-columns";
import { shell } from "../../taskpane/texts/shell";
import { launchBrowser } from "./launch";
import { added, openFile, openWorkbookPage, pressAdd, save, tick } from "./nurse/workbook-page";
import { serveDist, type Served } from "./serve";

const FILES = fileURLToPath(new URL("../workbooks/files/", import.meta.url));

let browser: Browser;
let served: Served;
let folder: string;
let page: Page;
let faults: string[];
let downloads: Download[];

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "saving-"));
  [browser, served] = await Promise.all([launchBrowser(), serveDist()]);
});
afterAll(async () => {
  await browser?.close();
  await served?.close();
  rmSync(folder, { recursive: true });
});
beforeEach(async () => {
  ({ page, faults } = await openWorkbookPage(browser, served.url));
  downloads = [];
  page.on("download", (download) => downloads.push(download));
  await page.locator(".grid-waiting").waitFor({ state: "detached" });
});
afterEach(async () => {
  expect(faults).toEqual([]);
  await page.context().close();
});

/** By the name box, as with any spreadsheet. */
async function go(address: string): Promise<void> {
  const box = page.locator("[data-u-comp=defined-name] input").first();
  await box.click({ clickCount: 3 });
  await page.keyboard.type(address);
  await page.keyboard.press("Enter");
  await expect.poll(() => box.inputValue()).toBe(address);
}

/** Typed, and not ended. */
async function typeInto(address: string, text: string): Promise<void> {
  await go(address);
  await page.keyboard.type(text);
}

async function open(name: string, path = FILES + name): Promise<void> {
  await openFile(page, path);
  await page.getByRole("heading", { level: 1, name }).waitFor();
  await expect.poll(said).toContain(shell.opened(name));
}

const said = () => page.locator(".sheet-side").innerText();
const isMarked = () => page.title().then((title) => title.startsWith("•"));
const sheetOf = (bytes: Uint8Array): WorkSheet => {
  const book = readElsewhere(bytes, { cellFormula: true });
  return book.Sheets[book.SheetNames[0]!]!;
};
const cellOf = (sheet: WorkSheet, address: string) => sheet[address] as CellObject | undefined;

describe("an entry that is still being typed", () => {
  it("counts as unsaved, and is saved", async () => {
    await typeInto("B2", "half a word");
    await expect.poll(isMarked).toBe(true);
    const sheet = sheetOf((await save(page)).bytes);
    expect(cellOf(sheet, "B2")?.v).toBe("half a word");
    await expect.poll(isMarked).toBe(false);
  });

  it("is no change when it is given up", async () => {
    await typeInto("B2", "half");
    await expect.poll(isMarked).toBe(true);
    await page.keyboard.press("Escape");
    await expect.poll(isMarked).toBe(false);
  });

  it("that is turned down is not saved over: a sentence says so", async () => {
    await typeInto("B2", "03/04/2026");
    await page.getByRole("button", { name: "Save", exact: true }).click();
    await expect.poll(said).toContain("Which part of 03/04/2026 is the day?");
    await expect.poll(said).toContain("The workbook was not saved.");
    expect(downloads).toEqual([]);
  });

  it("is asked which part is the day, where it was typed, and typed again it is that day", async () => {
    const answer = page.getByLabel(shell.dayFirst);
    await typeInto("B2", "03/04/2026");
    await page.keyboard.press("Tab");
    await page.getByRole("button", { name: shell.dayFirstAnswers.day }).click();
    expect(await answer.inputValue()).toBe("day");
    await typeInto("B2", "03/04/2026");
    await page.keyboard.press("Tab");
    /* ECMA-376 part 1, 18.17.4: 3 April 2026. */
    expect(cellOf(sheetOf((await save(page)).bytes), "B2")?.v).toBe(46_115);
    await answer.selectOption("refuse");
  });

  it("is asked about before another workbook comes in its place", async () => {
    await typeInto("B2", "not lost");
    await page.getByRole("button", { name: "New", exact: true }).click();
    await page.getByRole("button", { name: shell.leave.stay }).click();
    expect(cellOf(sheetOf((await save(page)).bytes), "B2")?.v).toBe("not lost");
  });

  it("stands in its cell before anything of the pane is pressed, by hand and by key", async () => {
    await open("plain-list-title-rows.xlsx");
    await page.getByRole("checkbox", { name: "Change due", exact: true }).waitFor();
    await typeInto("A60", "a note");
    await page.getByRole("checkbox", { name: "Change due", exact: true }).click();
    expect(await page.getByRole("checkbox", { name: "Change due", exact: true }).isChecked()).toBe(true);
    await typeInto("A61", "one more");
    await page.keyboard.press("F6");
    await expect.poll(() => page.evaluate(() => document.activeElement?.closest("#pane") !== null)).toBe(true);
    const sheet = sheetOf((await save(page)).bytes);
    expect([cellOf(sheet, "A60")?.v, cellOf(sheet, "A61")?.v]).toEqual(["a note", "one more"]);
  });
});

it("nothing is saved, opened or begun while columns are being added; then the file is whole", async () => {
  await open("ten-thousand-rows.xlsx");
  await tick(page, ["Change due", "At the latest", "Change"]);
  // as soon as the page says that it is working: it is hardly to be had from outside then, and on some machines not for long
  await page.evaluate(
    ([save, working]) => {
      const press = () => {
        if (![...document.querySelectorAll("h3")].some((heading) => heading.textContent === working)) return;
        watcher.disconnect();
        [...document.querySelectorAll("button")].find((one) => one.textContent === save)!.click();
      };
      const watcher = new MutationObserver(press);
      watcher.observe(document.body, { childList: true, subtree: true, characterData: true });
    },
    [shell.save, addColumns.working.title],
  );
  await pressAdd(page);
  await expect.poll(said).toContain("still being changed");
  expect(downloads).toEqual([]);
  await added(page);
  const sheet = sheetOf((await save(page)).bytes);
  const range = utils.decode_range(sheet["!ref"]!);
  const [first, last] = [range.e.c - 2, range.e.c];
  const found = [first, first + 1, last].map(
    (column) =>
      Array.from({ length: 10_000 }, (_, row) => cellOf(sheet, utils.encode_cell({ r: row + 3, c: column }))).filter(
        (cell) => cell?.f !== undefined && cell.v !== undefined,
      ).length,
  );
  expect(found).toEqual([10_000, 10_000, 10_000]);
});

it("a result that became an error is one in the file, although Save was pressed at once", async () => {
  const list = utils.aoa_to_sheet([
    ["ID", "Last change", "Change due"],
    ["A1", 46_000, null],
  ]);
  list["C2"] = { t: "n", v: 46_092, f: "_xldudf_TUBE_CHANGEDUE(B2,3)" };
  const book = utils.book_new();
  utils.book_append_sheet(book, list, "List");
  const path = join(folder, "list.xlsx");
  writeFileSync(path, new Uint8Array(writeElsewhere(book, { type: "array", bookType: "xlsx" }) as ArrayBuffer));
  await open("list.xlsx", path);
  await typeInto("B2", "see letter");
  const sheet = sheetOf((await save(page)).bytes);
  expect(cellOf(sheet, "B2")?.v).toBe("see letter");
  expect(cellOf(sheet, "C2")).toMatchObject({ t: "e", w: "#VALUE!", f: "_xldudf_TUBE_CHANGEDUE(B2,3)" });
});
