/**
 * Everything that the running grid has registered, beside the table that says what each of it does (by-hand/commands.ts):
 * what nobody named is refused, what is refused changes nothing, and what is done beside it is left out.
 */
import { rm } from "node:fs/promises";
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { commands, mutations, operations, refusalOf } from "../../taskpane/workbook/embedded/by-hand/commands";
import { buildPage } from "./build-page";
import type { GridPage } from "./grid-page/page";
import { launchBrowser } from "./launch";
import { serveFolder, type Served } from "./serve";

const FILES = fileURLToPath(new URL("../workbooks/files/", import.meta.url));

declare const window: GridPage;

let browser: Browser;
let served: Served;
let folder: string;
let page: Page;

beforeAll(async () => {
  [browser, folder] = await Promise.all([launchBrowser(), buildPage("grid-page")]);
  served = await serveFolder(folder);
  page = await browser.newPage({ viewport: { width: 1200, height: 800 } });
  await page.goto(served.url);
  await page.waitForFunction(() => window.isReady);
});
afterAll(async () => {
  await browser?.close();
  await served?.close();
  if (folder) await rm(folder, { recursive: true });
});

beforeEach(() =>
  page.evaluate(async () => {
    await window.grid.openEmpty();
    window.said.splice(0);
  }),
);

const open = (name: string) =>
  page.evaluate(async ([bytes, title]) => (await window.grid.open(new Uint8Array(bytes), title)).outcome, [
    [...readFileSync(FILES + name)],
    name,
  ] as const);

/** Everything that the grid holds of the workbook, rules, notes and names too. */
const held = () => page.evaluate(() => JSON.stringify(window.engine.api.getActiveWorkbook()!.save()));

const run = (id: string, params: object = {}) =>
  page.evaluate(([id, params]) => window.run(id, params), [id, params] as const);

const said = () => page.evaluate(() => window.said.splice(0));

describe("the table of commands", () => {
  it.each([
    ["COMMAND", commands],
    ["OPERATION", operations],
    ["MUTATION", mutations],
  ] as const)("names every %s that the grid has registered, and no other", async (type, named) => {
    const registered = await page.evaluate((type) => window.registered(type), type);
    expect(registered.length).toBeGreaterThan(40);
    expect([...named.keys()].sort()).toEqual([...new Set(registered)].sort());
  });

  it("refuses what nobody named", async () => {
    await page.evaluate(() => window.register("sheet.command.of-a-newer-version"));
    expect(await run("sheet.command.of-a-newer-version")).toBe("refused");
    expect(await said()).toEqual([expect.stringContaining("does not know how to save it")]);
  });
});

describe("in a file", () => {
  const refused = [...commands, ...operations].flatMap(([id, does]) => {
    const sentence = refusalOf(does, true);
    return sentence === undefined ? [] : [{ id, sentence }];
  });

  it("what is refused says why and changes nothing", async () => {
    expect(await open("table-with-totals.xlsx")).toBe("opened");
    const before = await held();
    expect(refused.length).toBeGreaterThan(150);
    const range = { startRow: 6, endRow: 7, startColumn: 1, endColumn: 2 };
    const params = { range, ranges: [range], rule: { ranges: [range] }, value: 40, rowHeight: 40 };
    for (const { id, sentence } of refused) {
      expect([id, await run(id, params)]).toEqual([id, "refused"]);
      expect([id, await said()]).toEqual([id, [sentence]]);
    }
    expect(await held()).toBe(before);
    expect(await page.evaluate(() => window.grid.isChanged())).toBe(false);
  });

  it("a look that is not saved is refused, whichever command brings it", async () => {
    expect(await open("table-with-totals.xlsx")).toBe("opened");
    const before = await held();
    for (const style of [
      { type: "ul", value: { s: 1 } },
      { type: "fs", value: 20 },
      { type: "tb", value: 2 },
    ]) {
      expect(await run("sheet.command.set-style", { style })).toBe("refused");
    }
    expect(await held()).toBe(before);
    expect(await run("sheet.command.set-style", { style: { type: "bl", value: 1 } })).toBe("done");
    expect(await page.evaluate(() => window.grid.isChanged())).toBe(true);
  });

  it("merged cells and rules that filling would bring along are left out", async () => {
    expect(await open("table-with-totals.xlsx")).toBe("opened");
    const rules = () =>
      page.evaluate(() => {
        const { resources, sheets } = window.engine.api.getActiveWorkbook()!.save();
        const kept = /VALIDATION|CONDITIONAL|NOTE/;
        const merges = Object.values(sheets).map((sheet) => sheet.mergeData);
        return JSON.stringify([merges, resources?.filter(({ name }) => kept.test(name))]);
      });
    const before = await rules();
    const [sourceRange, targetRange] = [
      { startRow: 0, endRow: 5, startColumn: 0, endColumn: 9 },
      { startRow: 0, endRow: 15, startColumn: 0, endColumn: 9 },
    ];
    expect(await run("sheet.command.auto-fill", { sourceRange, targetRange })).toBe("done");
    expect(await page.evaluate(() => window.grid.isChanged())).toBe(true);
    expect(await rules()).toBe(before);
  });
});

describe("by keyboard", () => {
  it("what is typed stands in the cell; the editors' own names are no obstacle", async () => {
    const box = page.locator("[data-u-comp=defined-name] input").first();
    for (const [address, typed] of [
      ["B2", "77"],
      ["B3", "two words"],
      ["B4", "=B2*2"],
    ] as const) {
      await box.click({ clickCount: 3 });
      await page.keyboard.type(address);
      await page.keyboard.press("Enter");
      await page.keyboard.type(typed);
      await page.keyboard.press("Enter");
    }
    const shown = () =>
      page.evaluate(() => {
        const sheet = window.engine.api.getActiveWorkbook()!.getActiveSheet();
        return ["B2", "B3", "B4"].map((address) => sheet.getRange(address).getRawValue());
      });
    await expect.poll(shown).toEqual([77, "two words", 154]);
    expect(await said()).toEqual([]);
    expect(await page.evaluate(() => window.grid.isChanged())).toBe(true);
  });
});

describe("a new workbook", () => {
  it("may have sheets and merged cells, which are saved, and no row heights, which are not", async () => {
    const ranges = [{ startRow: 1, endRow: 2, startColumn: 1, endColumn: 2 }];
    const merges = () =>
      page.evaluate(() => window.engine.api.getActiveWorkbook()!.getActiveSheet().getMergedRanges().length);
    expect(await run("sheet.mutation.add-worksheet-merge", { ranges })).toBe("done");
    expect(await merges()).toBe(1);
    expect(await run("sheet.command.insert-sheet")).toBe("done");
    expect(await run("sheet.command.set-row-height", { ranges, value: 60 })).toBe("refused");
    expect(await run("sheet.command.set-worksheet-default-style", { defaultStyle: { bl: 1 } })).toBe("refused");
    expect(await said()).toHaveLength(2);
  });
});
