/**
 * The grid in the real page, driven by keyboard and clipboard. The grid is a picture: what a cell shows is read from
 * "Read this row", as somebody with a screen reader would.
 */
import { fileURLToPath } from "node:url";
import { read as readElsewhere, type CellObject } from "@e965/xlsx";
import type { Browser, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, beforeEach, expect, it } from "vitest";
import { shell as pageWords } from "../../taskpane/texts/shell";
import { go as goCell, type as typeInto } from "./caseload/desk";
import { launchOwnBrowser } from "./launch";
import { openFile, openWorkbookPage, save } from "./nurse/workbook-page";
import { serveDist, type Served } from "./serve";

const FILES = fileURLToPath(new URL("../workbooks/files/", import.meta.url));

let browser: Browser;
let served: Served;
let page: Page;
let requests: string[];
let faults: string[];
let complaints: string[];

beforeAll(async () => {
  [browser, served] = await Promise.all([launchOwnBrowser(), serveDist()]);
});
afterAll(async () => {
  await browser?.close();
  await served?.close();
});

beforeEach(async () => {
  ({ page, requests, faults } = await openWorkbookPage(browser, served.url));
  complaints = [];
  page.on("console", (message) => message.type() === "error" && complaints.push(message.text()));
  await page.context().grantPermissions(["clipboard-read", "clipboard-write"]);
  await page.locator(".grid-waiting").waitFor({ state: "detached" });
  await page.locator(".selected-row summary").click();
});
afterEach(async () => {
  expect(faults).toEqual([]);
  // a breach of the page's policy is told there
  expect(complaints.filter((text) => !text.includes("favicon"))).toEqual([]);
  expect(requests.filter((url) => !url.startsWith(served.url) && !/^(?:blob|data):/.test(url))).toEqual([]);
  await page.context().close();
});

const go = (address: string): Promise<void> => goCell(page, address);
const type = (address: string, text: string): Promise<void> => typeInto(page, address, text);

/** What a cell shows, read from the row of text; null where it shows nothing. */
async function shows(address: string): Promise<string | null> {
  await go(address);
  const title = new RegExp(pageWords.rowTitle(Number(address.slice(1)), "@").replace(/@.*/, ""));
  await page.getByRole("table", { name: title }).waitFor();
  const row = page.locator(".selected-row tr", { has: page.getByRole("cell", { name: address, exact: true }) });
  const value = row.locator("td").last();
  return (await value.count()) === 0 ? null : value.innerText();
}

const said = () => page.locator(".sheet-side").innerText();

it("typed days and months follow the setting, and are refused without one", async () => {
  await type("B2", "03/04/2026");
  await expect.poll(said).toContain("Which part of 03/04/2026 is the day?");
  expect(await shows("B2")).toBeNull();
  await page.locator("select").first().selectOption({ index: 1 });
  await type("B2", "03/04/2026");
  await expect.poll(() => shows("B2")).toBe("3 Apr 2026");
  await type("B3", "2026-04-03");
  await expect.poll(() => shows("B3")).toBe("3 Apr 2026");
  await type("B4", "3/4/26");
  await expect.poll(said).toContain("four figures");
  await type("B5", "12");
  await expect.poll(said).not.toContain("four figures");
});

it("pasted days and months too", async () => {
  await go("B2");
  await page.evaluate(() => navigator.clipboard.writeText("03/04/2026\t12\nx\t2026-06-07"));
  await page.keyboard.press("Control+V");
  await expect.poll(said).toContain("Nothing was pasted.");
  expect(await shows("C2")).toBeNull();
  await page.locator("select").first().selectOption({ index: 1 });
  await go("B2");
  await page.keyboard.press("Control+V");
  await expect.poll(() => shows("C2")).toBe("12");
  const sheet = readElsewhere((await save(page)).bytes, { cellNF: true }).Sheets["Sheet1"]!;
  expect((sheet["B2"] as CellObject).v).toBe(46_115);
  expect((sheet["C3"] as CellObject).v).toBe(46_180);
});

it("our functions work in cells, alone and spilling, and are saved as Excel writes them", async () => {
  await type("A1", "12");
  await type("A2", "14 Fr");
  await type("B1", "=TUBE.FRTOMM(A1)");
  await type("D1", "=TUBE.FRTOMM(A1:A2)");
  await expect.poll(() => shows("B1")).toBe("4");
  await expect.poll(() => shows("D2")).toMatch(/^4\.66/);
  const { bytes } = await save(page);
  const sheet = readElsewhere(bytes, { cellFormula: true }).Sheets["Sheet1"]!;
  expect(sheet["B1"]).toMatchObject({ f: "_xldudf_TUBE_FRTOMM(A1)", v: 4 });
  expect(sheet["D1"]).toMatchObject({ f: "_xldudf_TUBE_FRTOMM(A1:A2)", F: "D1:D2" });
});

it("a structured reference may be typed, short form and odd column name too", async () => {
  await openFile(page, `${FILES}table-with-totals.xlsx`);
  await page.getByRole("heading", { level: 1, name: "table-with-totals.xlsx" }).waitFor();
  await type("K9", "=Caseload[[#This Row],[Tube '#]]*2");
  await expect.poll(() => shows("K9")).toBe("28");
  await type("K10", "=SUM(Caseload[Fill mL])-SUM(F6:F65)");
  await expect.poll(() => shows("K10")).toBe("0");
  // the session still calculates: a structured reference the engine cannot read would have ended that
  await type("K12", "=1+1");
  await expect.poll(() => shows("K12")).toBe("2");
});

it("the row as text has a table's headers, beside the table too", async () => {
  await openFile(page, `${FILES}table-with-totals.xlsx`);
  await page.getByRole("heading", { level: 1, name: "table-with-totals.xlsx" }).waitFor();
  await type("L5", "7");
  await go("L9");
  await expect.poll(() => page.getByRole("row", { name: /^A9/ }).innerText()).toContain("Hosp no");
});

it("unsaved changes are marked, undone changes and calculation are not confused", async () => {
  await openFile(page, `${FILES}error-cells.xlsx`);
  await page.getByRole("heading", { level: 1, name: "error-cells.xlsx" }).waitFor();
  // by then the grid has gone over the file's formulas
  for (const address of ["A2", "A3", "A4"]) await shows(address);
  const asksBeforeLeaving = () => page.title().then((title) => /unsaved|\*|•|●/i.test(title));
  expect(await asksBeforeLeaving()).toBe(false);
  await type("A30", "x");
  await expect.poll(asksBeforeLeaving).toBe(true);
  await save(page);
  await expect.poll(asksBeforeLeaving).toBe(false);
});

it("sorting that takes the headers for a row of the list is not offered", async () => {
  await openFile(page, `${FILES}tables-on-two-sheets.xlsx`);
  await page.getByRole("heading", { level: 1, name: "tables-on-two-sheets.xlsx" }).waitFor();
  await page.locator("[data-u-comp='ribbon-toolbar-more'] button").click();
  await page.locator("[data-u-command='sheet.menu.sheets-sort']").last().click();
  await page.getByText("Ascending", { exact: true }).first().waitFor();
  expect(await page.getByText(/^Expand|^Custom Sort/).count()).toBe(0);
});

it("sheets are not added to a file: the press is answered with a sentence", async () => {
  await openFile(page, `${FILES}table-with-totals.xlsx`);
  await page.getByRole("heading", { level: 1, name: "table-with-totals.xlsx" }).waitFor();
  await go("B9");
  await page.locator("[data-u-comp=sheet-bar-append-button]").first().click();
  await expect.poll(said).toContain("Sheets are not added");
});
