/**
 * The grid in a page that has no policy: what it would ask for is seen, not stopped. And what is in sight there, which
 * only a page can tell.
 */
import { readFileSync } from "node:fs";
import { rm } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { book, MAIN, oneSheet, STYLES } from "../workbooks/package/build";
import { buildPage } from "./build-page";
import type { GridPage } from "./grid-page/page";
import { launchOwnBrowser } from "./launch";
import { serveFolder, type Served } from "./serve";
import { shot } from "./shots";

const FILES = fileURLToPath(new URL("../workbooks/files/", import.meta.url));

declare const window: GridPage;

let browser: Browser;
let served: Served;
let folder: string;
let page: Page;
const asked: string[] = [];

beforeAll(async () => {
  [browser, folder] = await Promise.all([launchOwnBrowser(), buildPage("grid-page")]);
  served = await serveFolder(folder);
  page = await browser.newPage({ viewport: { width: 900, height: 700 } });
  page.on("request", (request) => asked.push(request.url()));
  await page.context().grantPermissions(["clipboard-read", "clipboard-write"]);
  await begin();
});

const begin = async () => {
  await page.goto(served.url);
  await page.waitForFunction(() => window.isReady);
};
afterAll(async () => {
  await browser?.close();
  await served?.close();
  if (folder) await rm(folder, { recursive: true });
});

beforeEach(async () => {
  await page.evaluate(async () => {
    await window.grid.openEmpty();
    window.said.splice(0);
  });
  asked.splice(0);
});

const open = (bytes: Uint8Array) =>
  page.evaluate(async (text) => {
    const opened = await window.grid.open(
      Uint8Array.from(atob(text), (one) => one.charCodeAt(0)),
      "x.xlsx",
    );
    return opened.outcome === "opened" ? opened.remarks : [opened.sentence];
  }, Buffer.from(bytes).toString("base64"));

/** What a cell's formula has been worked out to. */
const shown = (address: string) =>
  page.evaluate(
    (address) => window.engine.api.getActiveWorkbook()!.getActiveSheet().getRange(address).getRawValue(),
    address,
  );

const row = (number: number, ...cells: string[]) => `<row r="${number}">${cells.join("")}</row>`;
const text = (ref: string, words: string) => `<c r="${ref}" t="inlineStr"><is><t>${words}</t></is></c>`;
const formula = (ref: string, text: string) =>
  `<c r="${ref}"><f>${text.replaceAll("&", "&amp;").replaceAll('"', "&quot;")}</f><v>0</v></c>`;

const ELSEWHERE = "http://elsewhere.test/";

describe("nothing in a cell asks for anything outside the page", () => {
  const CALLS = [
    `IMAGE("${ELSEWHERE}a.png")`,
    `_xlfn.IMAGE("${ELSEWHERE}b.png","words",3,9,9)`,
    `WEBSERVICE("${ELSEWHERE}c")`,
    `HYPERLINK("${ELSEWHERE}d","d")`,
    `FILTERXML(WEBSERVICE("${ELSEWHERE}e"),"//a")`,
    `RTD("${ELSEWHERE}f","","a")`,
    `ENCODEURL("${ELSEWHERE}g")`,
    `LET(call,IMAGE("${ELSEWHERE}h.png"),call)`,
    `HYPERLINK("${ELSEWHERE}"&A1,IMAGE("${ELSEWHERE}i.png"))`,
  ];

  it("in a file that is opened and worked out anew", async () => {
    const rows = CALLS.map((call, at) => row(at + 1, text(`A${at + 1}`, "x"), formula(`B${at + 1}`, call)));
    const last = CALLS.length + 1;
    const links = `<hyperlinks><hyperlink ref="A1" location="${ELSEWHERE}"/></hyperlinks>`;
    await open(oneSheet(`<sheetData>${rows.join("")}${row(last, formula(`A${last}`, "1+1"))}</sheetData>${links}`));
    await page.evaluate((at) => {
      const sheet = window.engine.api.getActiveWorkbook()!.getActiveSheet();
      sheet.getRange(`A${at}`).setFormula("=2+2");
      window.engine.api.getFormula().executeCalculation();
    }, last);
    await expect.poll(() => shown(`A${last}`)).toBe(4);
    expect(asked.filter((url) => url.startsWith(ELSEWHERE))).toEqual([]);
  });

  /** The grid's engine works these out, later than the reader its sums. */
  const allWorkedOut = () =>
    expect
      .poll(async () => {
        const results = await Promise.all(CALLS.map((_, at) => shown(`B${at + 1}`)));
        return results.filter((result) => result === 0 || result === null || result === undefined);
      })
      .toEqual([]);

  it("typed into a cell", async () => {
    await page.evaluate((calls) => {
      const sheet = window.engine.api.getActiveWorkbook()!.getActiveSheet();
      calls.forEach((call, at) => sheet.getRange(at, 1).setFormula(`=${call}`));
      sheet.getRange(calls.length, 1).setFormula("=3+4");
    }, CALLS);
    await expect.poll(() => shown(`B${CALLS.length + 1}`)).toBe(7);
    await allWorkedOut();
    expect(await shown("B1")).toBe("#NAME?");
    expect(asked.filter((url) => url.startsWith(ELSEWHERE))).toEqual([]);
  });

  it("pasted with pictures", async () => {
    const html = `<table><tr><td><img src="${ELSEWHERE}k.png">one</td><td style="background:url(${ELSEWHERE}l.png)">two</td></tr></table>`;
    await page.mouse.click(300, 300);
    await page.evaluate(async (html) => {
      const part = (type: string, content: string) => new Blob([content], { type });
      const item = new ClipboardItem({
        "text/html": part("text/html", html),
        "text/plain": part("text/plain", "one\ttwo"),
      });
      await navigator.clipboard.write([item]);
    }, html);
    await page.keyboard.press("Control+V");
    const held = () => page.evaluate(() => JSON.stringify(window.engine.api.getActiveWorkbook()!.save().sheets));
    await expect.poll(held).toContain("two");
    expect(asked.filter((url) => url.startsWith(ELSEWHERE))).toEqual([]);
  });
});

describe("what comes from the clipboard is judged as the grid will put it into cells", () => {
  /** Another cell each time: a second click on the same one would open it. */
  const put = async (html: string, plain: string, y: number) => {
    await page.mouse.click(300, y);
    await page.evaluate(
      async ([html, plain]) => {
        const part = (type: string, content: string) => new Blob([content], { type });
        const item = { "text/html": part("text/html", html), "text/plain": part("text/plain", plain) };
        await navigator.clipboard.write([new ClipboardItem(item)]);
      },
      [html, plain] as const,
    );
    await page.keyboard.press("Control+V");
  };
  const values = () =>
    page.evaluate(() =>
      Object.values(window.engine.api.getActiveWorkbook()!.save().sheets).flatMap(({ cellData }) =>
        Object.values(cellData ?? {}).flatMap((row) => Object.values(row).map((cell) => (cell as { v?: unknown }).v)),
      ),
    );
  const said = () => page.evaluate(() => window.said);
  const table = (...cells: string[]) => `<table><tr>${cells.map((cell) => `<td>${cell}</td>`).join("")}</tr></table>`;
  /** 3 April and 5 June 2026: ECMA-376 part 1, 18.17.4. */
  const [APRIL, JUNE] = [46_115, 46_178];

  it.each([
    ["a word of a page", "<meta charset='utf-8'><span>03/04/2026</span>", "03/04/2026", [APRIL]],
    ["two paragraphs", "<p>03/04/2026</p><p>05/06/2026</p>", "03/04/2026\n05/06/2026", [APRIL, JUNE]],
    [
      "a copy of the grid's in another tab",
      `<table data-copy-id="abcdef"><tr><td>03/04/2026</td></tr></table>`,
      "",
      [APRIL],
    ],
    [
      "a table with a line above",
      `<p>List</p>${table("03/04/2026", "x")}`,
      "List\n03/04/2026\tx",
      ["List", APRIL, "x"],
    ],
  ])("%s: day first is day first, and without a choice nothing is pasted", async (_, html, plain, wanted) => {
    await page.evaluate(() => window.grid.setDayFirst(null));
    await put(html, plain, 300);
    await expect.poll(said).toEqual([expect.stringContaining("Nothing was pasted.")]);
    expect(await values()).toEqual([]);
    await page.evaluate(() => window.grid.setDayFirst(true));
    await put(html, plain, 400);
    await expect.poll(values).toEqual(wanted);
  });

  it("a table is pasted whatever the text beside it on the clipboard looks like", async () => {
    await page.evaluate(() => window.grid.setDayFirst(null));
    await put(table("2026-04-03", "one"), "03/04/2026\t=1+", 300);
    await expect.poll(values).toEqual([APRIL, "one"]);
    expect(await said()).toEqual([]);
  });
});

describe("what is in sight", () => {
  /** First row and column; nothing before the sheet has been drawn. */
  const visible = () =>
    page.evaluate(() => {
      const range = window.engine.api.getActiveWorkbook()!.getActiveSheet().getVisibleRange();
      return range && ([range.startRow, range.startColumn] as const);
    });
  const openAtHome = async (bytes: Uint8Array) => {
    await open(bytes);
    await expect.poll(visible).toBeTruthy();
    return (await visible())!;
  };
  const goTo = (top: number, left: number, rows = 1, columns = 1) =>
    page.evaluate(
      ([top, left, rows, columns]) => {
        const sheet = window.engine.api.getActiveWorkbook()!.getActiveSheet().getSheetId();
        return window.grid.workbook.reveal({ sheet, area: { top, left, rows, columns } });
      },
      [top, left, rows, columns] as const,
    );

  /** 400 rows, 40 columns; the header and the first column are held in place, or not. */
  const list = (pane: string) => {
    const letters = Array.from({ length: 40 }, (_, at) => (at < 26 ? "" : "A") + String.fromCharCode(65 + (at % 26)));
    const rows = Array.from({ length: 400 }, (_, r) =>
      row(
        r + 1,
        ...letters.map((letter) => text(letter + (r + 1), r === 0 ? `h${letter}` : r % 100 === 1 ? "keep" : "x")),
      ),
    );
    return oneSheet(
      `<sheetViews><sheetView workbookViewId="0">${pane}</sheetView></sheetViews><sheetData>${rows.join("")}</sheetData>`,
    );
  };
  const HELD = `<pane xSplit="1" ySplit="1" topLeftCell="B2" activePane="bottomRight" state="frozen"/>`;

  it.each([
    ["held in place", HELD],
    ["moving", ""],
  ])("begins with the first row and column of a place, from wherever the view stood: %s", async (name, pane) => {
    const home = await openAtHome(list(pane));
    await goTo(395, 38);
    await expect.poll(async () => (await visible())?.[0]).toBeGreaterThan(300);
    await expect.poll(async () => (await visible())?.[1]).toBeGreaterThan(25);
    for (const [top, left, rows, columns] of [
      [0, 0, 1, 1],
      [1, 0, 399, 1],
      [0, 2, 400, 1],
    ] as const) {
      await goTo(395, 38);
      await goTo(top, left, rows, columns);
      await expect.poll(visible).toEqual(home);
    }
    await goTo(1, 30);
    await expect.poll(async () => (await visible())?.[0]).toBe(home[0]);
    await shot(page, `in-sight-${name.replaceAll(" ", "-")}`);
  });

  it.each([
    ["held in place", HELD],
    ["moving", ""],
  ])("is the first row that is shown, after showing only some: %s", async (_, pane) => {
    const home = await openAtHome(list(pane));
    await goTo(395, 38);
    const outcome = await page.evaluate(async () => {
      const sheet = window.engine.api.getActiveWorkbook()!.getActiveSheet().getSheetId();
      const area = { top: 0, left: 0, rows: 400, columns: 40 };
      const step = {
        kind: "showRows",
        of: { list: { sheet, area } },
        criteria: [{ column: 3, keeps: ["keep"] }],
      } as const;
      const watch = { report: () => undefined, signal: new AbortController().signal };
      return (await window.grid.workbook.apply({ steps: [step], expects: [] }, watch)).outcome;
    });
    expect(outcome).toBe("done");
    await expect.poll(visible).toEqual(home);
    const selected = () => page.evaluate(async () => (await window.grid.workbook.overview()).selection?.area);
    expect(await selected()).toEqual({ top: 1, left: 0, rows: 1, columns: 1 });
  });
});

describe("held rows", () => {
  const held = () =>
    page.evaluate(() => {
      const sheet = window.engine.api.getActiveWorkbook()!.getActiveSheet();
      const { startRow, ySplit } = sheet.getSheet().getFreeze();
      const rows = Array.from({ length: ySplit }, (_, i) => sheet.getRowHeight(startRow - 1 - i));
      return { rows: ySplit, height: rows.reduce((sum, one) => sum + one, 0) };
    });
  const canvas = () => page.locator("canvas[id*='univer-sheet-main-canvas']").first().boundingBox();

  it("leave two thirds of the height to the list, in a low window and at any zoom, and no change to the file", async () => {
    const rows = Array.from({ length: 80 }, (_, r) => row(r + 1, text(`A${r + 1}`, `row ${r + 1}`)));
    const pane = `<pane ySplit="10" topLeftCell="A11" activePane="bottomLeft" state="frozen"/>`;
    const views = `<sheetViews><sheetView workbookViewId="0">${pane}</sheetView></sheetViews>`;
    await open(oneSheet(`${views}<sheetData>${rows.join("")}</sheetData>`));
    await expect.poll(async () => (await held()).rows).toBeLessThan(10);
    const atFirst = await held();
    await page.setViewportSize({ width: 900, height: 400 });
    await expect.poll(async () => (await held()).rows).toBeLessThan(atFirst.rows);
    const low = await held();
    expect(low.height).toBeLessThanOrEqual(0.35 * (await canvas())!.height);
    await page.evaluate(() => window.run("sheet.command.set-zoom-ratio", { zoomRatio: 2 }));
    await expect.poll(async () => (await held()).rows).toBeLessThan(low.rows);
    expect((await held()).height * 2).toBeLessThanOrEqual(0.35 * (await canvas())!.height);
    await page.evaluate(() => window.run("sheet.command.set-zoom-ratio", { zoomRatio: 1 }));
    await page.setViewportSize({ width: 900, height: 1400 });
    await expect.poll(async () => (await held()).rows).toBe(10);
    expect(await page.evaluate(() => window.grid.isChanged())).toBe(false);
  });
});

describe("the tools", () => {
  it("have a name each, and money is none of them", async () => {
    const nameless = () =>
      page.evaluate(() =>
        [...document.querySelectorAll("button, a, input")]
          .filter((one) => (one as HTMLElement).offsetParent !== null && !one.closest("[aria-hidden='true']"))
          .filter((one) => !one.getAttribute("aria-label") && (one.textContent ?? "").trim() === "")
          .map(({ outerHTML }) => outerHTML.slice(0, 200)),
      );
    await expect.poll(nameless).toEqual([]);
    expect(await page.locator("[data-u-command='sheet.command.numfmt.set.currency']").count()).toBe(0);
  });

  it("and the sheet leave the keyboard where it is until somebody comes to them", async () => {
    await begin();
    expect(await page.evaluate(() => document.activeElement === document.body)).toBe(true);
  });
});

describe("the bar below the sheet", () => {
  it("counts dates and does not add them up", async () => {
    const dates = [46_143, 46_150].map((day, at) =>
      row(at + 1, `<c r="A${at + 1}" s="1"><v>${day}</v></c>`, `<c r="B${at + 1}"><v>${at + 2}</v></c>`),
    );
    await open(oneSheet(dates.join("")));
    const select = (columns: number, left = 0) =>
      page.evaluate(
        ([left, columns]) => {
          window.engine.api.getActiveWorkbook()!.getActiveSheet().getRange(0, left, 2, columns).activate();
        },
        [left, columns] as const,
      );
    await select(1, 1);
    await expect.poll(() => page.locator("body").innerText()).toMatch(/Sum:?\s*5/i);
    await select(1);
    // the numbers beside them were two too
    await expect.poll(() => page.locator("body").innerText()).toMatch(/^(?![^]*(?:Sum|Average|922))[^]*Count:?\s*2/i);
    await select(2);
    await expect.poll(() => page.locator("body").innerText()).toMatch(/Count:?\s*4/i);
    expect(await page.locator("body").innerText()).not.toMatch(/Sum|Average/);
  });
});

it("marks texts that could be taken for numbers, as the grid does, without reading all texts at every repaint", async () => {
  const texts = ["12", "balloon", "20%", "2026-05-14", "Ward 3", "balloon"];
  await open(oneSheet(texts.map((words, i) => row(i + 1, text(`A${i + 1}`, words))).join("")));
  const marked = () =>
    page.evaluate((count) => {
      const sheet = window.engine.api.getActiveWorkbook()!.getActiveSheet().getSheet();
      return Array.from({ length: count }, (_, at) => sheet.getCell(at, 0)?.markers?.tl !== undefined);
    }, texts.length);
  await expect.poll(marked).toEqual([true, false, true, true, false, false]);
  expect(await marked()).toEqual([true, false, true, true, false, false]);
  const handlers = await page.evaluate(() => window.handlersOfCells());
  expect(handlers.length).toBeGreaterThan(1);
  // mends/number-marks.ts stands before it
  expect(handlers.filter((script) => script.includes("disableForceStringMark"))).toEqual([]);
});

/** Told apart by people (`npm run shots`). */
it.each(["plain-list-title-rows", "libreoffice-list", "table-with-totals"])(
  "looks as the file says: headers, titles, arrows of %s",
  async (name) => {
    await open(new Uint8Array(readFileSync(`${FILES}${name}.xlsx`)));
    const heights = () =>
      page.evaluate(() => {
        const sheet = window.engine.api.getActiveWorkbook()!.getActiveSheet();
        return [0, 1, 5].map((row) => sheet.getRowHeight(row));
      });
    if (name === "plain-list-title-rows") expect(await heights()).toEqual([expect.closeTo(30, -1), 24, 40]);
    await shot(page, `as-in-the-file-${name}`);
  },
);

it("the arrow of a table's filtered column is another than those beside it", async () => {
  const names = ["Id", "Size", "Fill"];
  const cells = (row: number, ...each: string[]) => each.map((one, at) => text(`${"ABC"[at]}${row}`, one));
  const rows = row(1, ...cells(1, ...names)) + row(2, ...cells(2, "1", "a", "a"));
  const hidden = row(3, ...cells(3, "2", "b", "b")).replace("<row", '<row hidden="1"');
  const columns = names.map((name, at) => `<tableColumn id="${at + 1}" name="${name}"/>`).join("");
  const filter = '<filterColumn colId="1"><filters><filter val="a"/></filters></filterColumn>';
  const table = `<table xmlns="${MAIN}" id="1" name="T" displayName="T" ref="A1:C3"><autoFilter ref="A1:C3">${filter}</autoFilter><tableColumns count="3">${columns}</tableColumns></table>`;
  await open(
    book({
      styles: STYLES,
      sheets: [{ name: "S", inside: `<sheetData>${rows}${hidden}</sheetData>`, tables: [table] }],
    }),
  );
  const box = (await page.locator("canvas[id*='univer-sheet-main-canvas']").first().boundingBox())!;
  // beside 46 pixels of row numbers, below 20 of column letters: cells of 88 by 24
  const arrow = async (column: number) => {
    const clip = { x: box.x + 46 + 88 * (column + 1) - 18, y: box.y + 20 + 3, width: 16, height: 18 };
    return (await page.screenshot({ clip })).toString("base64");
  };
  await expect.poll(async () => (await arrow(1)) === (await arrow(2))).toBe(false);
  await shot(page, "filtered-table");
  await page.evaluate(() =>
    window.run("sheet.command.set-table-filter", { tableId: "table1", column: 1, tableFilter: undefined }),
  );
  await expect.poll(async () => (await arrow(1)) === (await arrow(2))).toBe(true);
});
