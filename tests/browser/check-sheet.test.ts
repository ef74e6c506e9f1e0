/**
 * Check this sheet in the real page, on a messy list that SheetJS wrote: every group with its count, a press that goes to
 * the cell, a count that falls as cells are put right, and a page for paper with all of it.
 */
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { read, utils, write } from "@e965/xlsx";
import axe from "axe-core";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { checkSheet as words } from "../../taskpane/texts/check-sheet";
import { MEMORY_SHEET } from "../../src/columns/remembered";
import { kindNamed } from "../../src/settings/kinds";
import { ownList } from "../../taskpane/texts/own-list";
import { thisList as listWords } from "../../taskpane/texts/this-list";
import { checkSheet } from "../../taskpane/ui/check-sheet/job";
import { thisList } from "../../taskpane/ui/this-list/job";
import { cellsOf, english, ENGLISH_HEADERS } from "../examples/mending/messy-lists";
import { type } from "./caseload/desk";
import { launchBrowser } from "./launch";
import { openFile, openWorkbookPage, save } from "./nurse/workbook-page";
import { goTo } from "./places";
import { serveDist, type Served } from "./serve";

/** Data begins in row 4; the kind stands in column B. */
const FIRST_ROW = 4;
const PLACED = "The kind says how it was placed or its shape, not how it is held";
const pegs = english.flatMap(({ id, kind }, i) => (kind === "PEG" ? [{ id, address: `B${FIRST_ROW + i}` }] : []));
const letters = english.filter(({ last }) => last.cell === "see letter").length;

let browser: Browser;
let served: Served;
let folder: string;
let page: Page;

beforeAll(async () => {
  [browser, served, folder] = await Promise.all([launchBrowser(), serveDist(), mkdtemp(join(tmpdir(), "check-"))]);
  const book = utils.book_new();
  const rows = [["Invented"], [], [...ENGLISH_HEADERS], ...cellsOf(english)];
  utils.book_append_sheet(book, utils.aoa_to_sheet(rows), "List");
  await writeFile(join(folder, "own.xlsx"), write(book, { type: "buffer", bookType: "xlsx" }) as Buffer);
  ({ page } = await openWorkbookPage(browser, served.url));
  await openFile(page, join(folder, "own.xlsx"));
  await page.getByRole("heading", { level: 1, name: "own.xlsx" }).waitFor();
  await goTo(page, checkSheet);
});
afterAll(async () => {
  await browser?.close();
  await served?.close();
  if (folder) await rm(folder, { recursive: true });
});

const group = (reason: string) => page.locator(".pane li", { has: page.getByText(reason, { exact: true }) }).last();

test("each group with its cells; one that is put right leaves it", async () => {
  await group(PLACED).getByText(ownList.cells(pegs.length), { exact: true }).waitFor();
  const [first] = pegs;
  await group(PLACED)
    .getByRole("button", { name: ownList.goTo(first!.address, `${first!.id}: PEG`) })
    .click();
  const box = page.locator("[data-u-comp=defined-name] input").first();
  await expect.poll(() => box.inputValue()).toBe(first!.address);
  await type(page, first!.address, "bumper adult");
  await group(PLACED)
    .getByText(ownList.cells(pegs.length - 1), { exact: true })
    .waitFor();
});

test("nothing for a reader of screens to complain of", async () => {
  await page.evaluate(axe.source);
  const faults = await page.evaluate(async () => {
    const { axe: running } = globalThis as unknown as { axe: typeof axe };
    const { violations } = await running.run(document.querySelector(".pane") as HTMLElement);
    return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(" ")}`);
  });
  expect(faults).toEqual([]);
});

test("on paper every cell, not only those in sight", async () => {
  await page.evaluate(() => (window.print = () => undefined));
  await page.getByRole("button", { name: words.print, exact: true }).click();
  const paper = page.locator(".paper");
  await paper.waitFor({ state: "attached" });
  const texts = await paper.locator("tbody tr td:nth-child(2)").allTextContents();
  expect(texts.filter((text) => text.endsWith(": see letter")).length).toBe(letters);
  expect(texts.filter((text) => text.endsWith(": PEG")).length).toBe(pegs.length - 1);
});

test("what a word means is said once, kept in the saved workbook, and known again there", async () => {
  await goTo(page, thisList);
  const word = page.locator(".pane li", { hasText: /^PEG/ }).getByRole("combobox");
  await word.selectOption({ label: kindNamed("bumper adult").label });
  await page.getByRole("button", { name: listWords.press, exact: true }).click();
  await page.getByRole("heading", { name: listWords.title.done, exact: true }).waitFor();
  const { bytes } = await save(page);
  const book = read(bytes, { cellStyles: true });
  expect(book.Workbook!.Sheets!.at(-1)).toMatchObject({ name: MEMORY_SHEET, Hidden: 1 });
  const lines = utils.sheet_to_json<string[]>(book.Sheets[MEMORY_SHEET]!, { header: 1 });
  expect(lines).toContainEqual(["sheet List", "kind", "peg", "bumper adult"]);

  await writeFile(join(folder, "again.xlsx"), bytes);
  await openFile(page, join(folder, "again.xlsx"));
  await page.getByRole("heading", { level: 1, name: "again.xlsx" }).waitFor();
  await goTo(page, checkSheet);
  await page.getByText(words.title, { exact: true }).waitFor();
  await expect.poll(() => group(PLACED).count()).toBe(0);
});
