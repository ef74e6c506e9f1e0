/**
 * The dietitian's job in the real page: open a workbook with 1,402 sizes that twenty people have typed, convert them,
 * look at those that were not read and go there, save, and read the file back with a reader that is not ours. What is
 * expected follows from how the column is made (tests/examples/convert/messy-sizes), never from our own reader.
 */
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import * as independent from "@e965/xlsx";
import axe from "axe-core";
import type { Browser, Locator, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { convertSizes as words } from "../../taskpane/texts/convert-sizes";
import { explain as explainWords } from "../../taskpane/texts/explain";
import { ownList } from "../../taskpane/texts/own-list";
import { shell as pageWords } from "../../taskpane/texts/shell";
import { pane as paneWords } from "../../taskpane/texts/pane";
import { convertSizes } from "../../taskpane/ui/convert-sizes/job";
import { explain } from "../../taskpane/ui/explain/job";
import { messySizes } from "../examples/convert/messy-sizes";
import { launchBrowser } from "./launch";
import { openFile, openWorkbookPage, save } from "./nurse/workbook-page";
import { goTo } from "./places";
import { serveDist, type Served } from "./serve";

const HEADERS = ["Row", "Size", "Remark"];
/** Invented; the sizes stand in column B from row 2 on. */
const rows = messySizes.map(({ cell }, i) => [`T-${i + 1}`, cell, "invented"]);
const LAST = messySizes.length + 1;

let browser: Browser;
let served: Served;
let folder: string;
let file: string;

beforeAll(async () => {
  [browser, served, folder] = await Promise.all([launchBrowser(), serveDist(), mkdtemp(join(tmpdir(), "sizes-"))]);
  const sheet = independent.utils.aoa_to_sheet([HEADERS, ...rows]);
  const book = independent.utils.book_new();
  independent.utils.book_append_sheet(book, sheet, "Sizes");
  file = join(folder, "sizes.xlsx");
  await writeFile(file, independent.write(book, { type: "buffer", bookType: "xlsx" }) as Buffer);
});
afterAll(async () => {
  await browser?.close();
  await served?.close();
  if (folder) await rm(folder, { recursive: true });
});

const part = (page: Page): Locator =>
  page
    .locator("section", { has: page.getByRole("heading", { level: 2, name: convertSizes.label, exact: true }) })
    .first();

async function openConvert() {
  const opened = await openWorkbookPage(browser, served.url);
  const { page } = opened;
  await openFile(page, file);
  await page.getByRole("heading", { level: 1, name: "sizes.xlsx" }).waitFor();
  await goTo(page, convertSizes);
  await part(page).getByRole("heading", { name: paneWords.preview }).waitFor();
  return { ...opened, section: part(page) };
}

/** All that cannot be read, by the maker of the column. */
const unread = messySizes.flatMap(({ is, cell, because }, i) =>
  is === "not read" ? [{ address: `B${i + 2}`, cell, because }] : [],
);

describe("1,402 sizes", () => {
  test("are converted next to their column; 22 are not read, listed, and a press goes there", async () => {
    const { page, section, faults, requests } = await openConvert();
    await expect.poll(() => section.getByLabel(words.source.column).inputValue()).toBe("1");
    await section.getByText("1,380 read, 22 not; 18 blank.", { exact: true }).waitFor();
    await section.getByText("6 sizes were read but need a look.").waitFor();
    await section.getByText(/Adds the column "Size mm" .*: column D, 1,420 rows/).waitFor();

    const list = section.locator(".column-figures", { hasText: words.unread.title(22) });
    for (;;) {
      const more = list.getByRole("button", { name: /^\d+ more$/ });
      if ((await more.count()) === 0) break;
      await more.first().click();
    }
    const presses = list.getByRole("button", { name: /^Go to B\d+:/ });
    const listed = await presses.allTextContents();
    expect(listed.sort()).toEqual(unread.map(({ address }) => address).sort());
    const gauge = unread.filter(({ because }) => because === "gauge");
    await list.getByText("G means gauge; write Fr").waitFor();
    for (const { address, cell } of gauge)
      expect(await list.getByRole("button", { name: ownList.goTo(address, String(cell)) }).count()).toBe(1);

    const { address } = gauge[0]!;
    await list.getByRole("button", { name: ownList.goTo(address, String(gauge[0]!.cell)) }).click();
    // The page says which row is selected; the numbers stay as they were.
    await page.getByText(pageWords.selectedRow).click();
    await page.getByText(pageWords.rowTitle(Number(address.slice(1)), "Sizes")).waitFor();
    await section.getByText("1,380 read, 22 not; 18 blank.", { exact: true }).waitFor();

    await section.getByRole("button", { name: words.preview.readAgain }).click();
    await section.getByText("1,380 read, 22 not; 18 blank.", { exact: true }).waitFor();
    await section.getByRole("button", { name: words.preview.add, exact: true }).click();
    await section.getByRole("heading", { name: words.result.title.done }).waitFor();
    await section.getByText('The column "Size mm" was added: D1:D1421.').waitFor();
    await section.getByText(words.unread.title(22)).waitFor();

    const { bytes } = await save(page);
    const sheet = independent.read(bytes, { cellFormula: true, cellNF: true }).Sheets["Sizes"]!;
    const at = (cell: string) => sheet[cell] as independent.CellObject | undefined;
    expect(at("D1")?.v).toBe("Size mm");
    expect(at("D2")?.f).toBe('IF(LEN(TRIM(B2))=0,"",_xldudf_TUBE_FRTOMM(B2))');
    expect(at("D2")?.z).toBe("0.0");
    const wrong = messySizes.flatMap(({ cell, is, french }, i) => {
      const got = at(`D${i + 2}`);
      const isRight =
        is === "not read"
          ? got?.t === "e"
          : is === "blank"
            ? (got?.v ?? "") === ""
            : got?.t === "n" && Math.abs((got.v as number) - french! / 3) < 1e-9;
      const kept = at(`B${i + 2}`)?.v ?? null;
      return isRight && kept === cell && got?.f ? [] : [[i + 2, cell, kept, got?.t, got?.v]];
    });
    expect(wrong).toEqual([]);
    expect(at(`D${LAST + 1}`)).toBeUndefined();
    expect(faults).toEqual([]);
    for (const request of requests)
      expect(request.startsWith(served.url) || /^(?:blob|data):/.test(request), request).toBe(true);
    await page.context().close();
  });

  test("spilled by one formula, taken back, and nothing is left", async () => {
    const { page, section, faults } = await openConvert();
    await section.getByLabel(words.put.spill).check();
    await expect.poll(() => section.getByLabel(words.put.start).inputValue()).toBe("E2");
    await section.getByText(/its answers fill E2:E1421/).waitFor();
    await section.getByLabel(words.put.start).fill("C5");
    await section.getByText(/^These cells are not empty: C5, C6, C7 and/).waitFor();
    expect(await section.getByRole("button", { name: words.preview.add, exact: true }).count()).toBe(0);
    await section.getByLabel(words.put.start).fill("E2");
    await section.getByRole("button", { name: words.preview.add, exact: true }).click();
    await section.getByRole("heading", { name: words.result.title.done }).waitFor();
    await section.getByRole("button", { name: paneWords.takeBack, exact: true }).click();
    await section.getByRole("heading", { name: paneWords.takenBack }).waitFor();
    const { bytes } = await save(page);
    const sheet = independent.read(bytes, { cellFormula: true }).Sheets["Sizes"]!;
    expect(sheet["E2"]).toBeUndefined();
    expect((sheet["B2"] as independent.CellObject | undefined)?.v ?? null).toBe(messySizes[0]!.cell);
    expect(faults).toEqual([]);
    await page.context().close();
  });

  test("a cell that was not read is explained", async () => {
    const { page, section, faults } = await openConvert();
    const { address } = unread.find(({ because }) => because === "two sizes")!;
    await section.getByRole("button", { name: words.preview.add, exact: true }).click();
    await section.getByRole("heading", { name: words.result.title.done }).waitFor();
    await section.getByRole("button", { name: new RegExp(`^Go to ${address}:`) }).click();
    await goTo(page, explain);
    await page.getByRole("button", { name: explainWords.press }).click();
    await page.getByRole("heading", { name: `${address} on "Sizes"` }).waitFor();
    const sentence = /and cannot be read: .*holds more than one number: write one size\./;
    await page.getByRole("paragraph").filter({ hasText: sentence }).waitFor();
    // It is read out too.
    await page.getByRole("status").filter({ hasText: sentence }).waitFor({ state: "attached" });
    expect(faults).toEqual([]);
    await page.context().close();
  });

  test.each([1280, 320])("at %i px axe finds nothing, and nothing scrolls sideways", async (width) => {
    const { page, section } = await openConvert();
    await page.setViewportSize({ width, height: 900 });
    await section.getByText(words.unread.title(22)).waitFor();
    await page.evaluate(axe.source);
    const found = await page.evaluate(async () => {
      const { violations } = await (window as unknown as { axe: typeof axe }).axe.run(".pane");
      return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(" | ")}`);
    });
    expect(found).toEqual([]);
    expect(
      await page.locator(".pane-body").evaluate((body) => body.scrollWidth - body.clientWidth),
    ).toBeLessThanOrEqual(0);
    await page.context().close();
  });
});
