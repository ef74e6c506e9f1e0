/**
 * Small valid files of which a sheet of billions of cells could be made: the whole page, pane and all, opens them, says
 * what it does not draw, takes an entry and saves the rest as it was.
 */
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { cellsOf, oneSheet, partText, SHEET } from "../workbooks/package/build";
import { launchBrowser } from "./launch";
import { onePage, save } from "./nurse/workbook-page";
import { serveDist, type Served } from "./serve";

let browser: Browser;
let served: Served;
const inPage = onePage();
beforeAll(async () => {
  [browser, served] = await Promise.all([launchBrowser(), serveDist()]);
});
afterAll(async () => {
  await browser?.close();
  await served?.close();
});

const cell = (ref: string, value = 1) => `<c r="${ref}"><v>${value}</v></c>`;
const row = (number: number, ...refs: string[]) => `<row r="${number}">${refs.map((ref) => cell(ref)).join("")}</row>`;
const list = `<sheetData>${row(1, "A1", "B1")}${row(2, "A2", "B2")}</sheetData>`;
const many = (count: number, each: (at: number) => string) =>
  Array.from({ length: count }, (_, at) => each(at)).join("");
const long = (rows: number) => `<sheetData>${many(rows, (at) => row(at + 1, `A${at + 1}`, `B${at + 1}`))}</sheetData>`;
const rule = (ref: string, type = 'type="list"') =>
  `<dataValidation ${type} sqref="${ref}"><formula1>"a,b"</formula1></dataValidation>`;
const format = (ref: string, inside: string) =>
  `<conditionalFormatting sqref="${ref}">${inside}</conditionalFormatting>`;
const WHOLE = "A1:XFD1048576";

const files: Readonly<Record<string, () => Uint8Array>> = {
  "a cell in the last corner": () => oneSheet(row(1, "A1") + row(1_048_576, "XFD1048576")),
  "a cell far down and one far right": () => oneSheet(row(1, "A1", "XFD1") + row(65_536, "A65536")),
  "a list validation of the whole sheet": () =>
    oneSheet(`${list}<dataValidations count="1">${rule(WHOLE)}</dataValidations>`),
  "a list validation of a whole column": () =>
    oneSheet(`${list}<dataValidations count="1">${rule("B1:B1048576")}</dataValidations>`),
  "a merge of the whole sheet": () => oneSheet(`${list}<mergeCells count="1"><mergeCell ref="${WHOLE}"/></mergeCells>`),
  "20,000 merges beside a list": () =>
    oneSheet(
      `${long(20_000)}<mergeCells count="20000">${many(20_000, (at) => `<mergeCell ref="D${at + 1}:E${at + 1}"/>`)}</mergeCells>`,
    ),
  "2,000 validations of a list": () =>
    oneSheet(
      `${long(2_000)}<dataValidations count="2000">${many(2_000, (at) => rule(`B${at + 1}`))}</dataValidations>`,
    ),
  "2,000 conditional formats of a list": () =>
    oneSheet(
      long(2_000) +
        many(2_000, (at) =>
          format(
            `A${at + 1}:B${at + 1}`,
            `<cfRule type="expression" priority="${at + 1}"><formula>A${at + 1}&gt;0</formula></cfRule>`,
          ),
        ),
    ),
  "100,000 names": () =>
    oneSheet(list, {
      workbookTail: `<definedNames>${many(100_000, (at) => `<definedName name="n${at}">S!$A$1</definedName>`)}</definedNames>`,
    }),
  "conditional formats of the whole sheet": () =>
    oneSheet(
      list +
        format(WHOLE, `<cfRule type="expression" priority="1"><formula>A1&gt;B1</formula></cfRule>`) +
        format(WHOLE, `<cfRule type="duplicateValues" priority="2"/>`),
    ),
  "16,384 column widths and a style for all columns": () =>
    oneSheet(
      `<cols>${many(16_384, (at) => `<col min="${at + 1}" max="${at + 1}" width="9" style="2"/>`)}</cols>${list}`,
    ),
  "65,000 links": () =>
    oneSheet(
      `${list}<hyperlinks>${many(65_000, (at) => `<hyperlink ref="A${at + 1}" location="S!A1"/>`)}</hyperlinks>`,
    ),
  "a pane over a million rows": () =>
    oneSheet(
      `<sheetViews><sheetView workbookViewId="0"><pane xSplit="16000" ySplit="1000000" state="frozen"/></sheetView></sheetViews>${list}`,
    ),
};

/** What stands beside the cells, as the file has it. */
const besides = (bytes: Uint8Array) => partText(bytes, SHEET).replace(/<sheetData>.*<\/sheetData>/s, "");

describe("opens, takes an entry, and saves all the rest as it was", () => {
  it.each(Object.keys(files))("%s", async (name) => {
    const bytes = files[name]!();
    await inPage(browser, served.url, async ({ page, faults }) => {
      const file = { name: `${name}.xlsx`, mimeType: "application/octet-stream", buffer: Buffer.from(bytes) };
      await page.locator('input[type="file"]').first().setInputFiles(file);
      await page.getByRole("heading", { level: 1, name: `${name}.xlsx`, exact: true }).waitFor();
      const box = page.locator("[data-u-comp=defined-name] input").first();
      await box.click({ clickCount: 3 });
      await page.keyboard.type("A2");
      await page.keyboard.press("Enter");
      await expect.poll(() => box.inputValue()).toMatch(/^A[12]/);
      await page.keyboard.type("77");
      await page.keyboard.press("Enter");
      await expect.poll(() => page.title()).toContain("•");
      const saved = (await save(page)).bytes;
      const [before, after] = [cellsOf(bytes), cellsOf(saved)];
      const typed = [...after].filter(([ref, { value }]) => before.get(ref)?.value !== value);
      expect(typed.map(([, { value }]) => value)).toEqual([77]);
      expect([...before.keys()].filter((ref) => !after.has(ref))).toEqual([]);
      expect(besides(saved)).toBe(besides(bytes));
      expect(faults).toEqual([]);
    });
  });
});
