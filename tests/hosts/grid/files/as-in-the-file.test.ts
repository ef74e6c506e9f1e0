/** What a file says of how it looks, or what Excel makes of it when it opens the file. */
import { readFileSync } from "node:fs";
import { SheetsFilterService } from "@univerjs/sheets-filter";
import { afterAll, beforeAll, expect, it } from "vitest";
import type { Engine } from "../../../../taskpane/workbook/embedded/engine";
import { gridOn } from "../../../../taskpane/workbook/embedded/face";
import type { Grid } from "../../../../taskpane/workbook/embedded/interface";
import { oneSheet, opened } from "../../../workbooks/package/build";
import { startHeadless } from "../headless";

const FILES = new URL("../../../workbooks/files/", import.meta.url);

let engine: Engine;
let grid: Grid;
beforeAll(() => {
  engine = startHeadless();
  grid = gridOn(engine, { today: 46_132, dayFirst: true, say: () => undefined, hush: () => undefined });
});
afterAll(() => engine.univer.dispose());

const sheet = () => engine.api.getActiveWorkbook()!.getActiveSheet();
const height = (row: number) => sheet().getRowHeight(row - 1);

it("a title in large letters and headers of two lines have room, plain rows no more than before", async () => {
  const bytes = new Uint8Array(readFileSync(new URL("plain-list-title-rows.xlsx", FILES)));
  await grid.open(bytes, "titles.xlsx");
  // 16 points of letters need about 22 points, 29 pixels; two lines of 15 points are 40 pixels
  expect(height(1)).toBeGreaterThanOrEqual(28);
  expect(height(6)).toBe(40);
  expect([2, 7, 8].map(height)).toEqual([24, 24, 24]);
  expect(grid.isChanged()).toBe(false);
});

it("a height that the file states stands, whatever is in the row", async () => {
  const text = `<c r="A1" s="1" t="inlineStr"><is><t>${"word ".repeat(30)}</t></is></c>`;
  await grid.open(oneSheet(`<row r="1" ht="30" customHeight="1">${text}</row>`), "stated.xlsx");
  expect(height(1)).toBe(40);
});

it("arrows of a filter that hides nothing are there, and are no change", async () => {
  const rows = ["a", "b", "c"].map(
    (word, at) => `<row r="${at + 1}"><c r="A${at + 1}" t="inlineStr"><is><t>${word}</t></is></c></row>`,
  );
  const bytes = oneSheet(`<sheetData>${rows.join("")}</sheetData><autoFilter ref="A1:A3"/>`);
  await grid.open(bytes, "arrows.xlsx");
  const book = engine.api.getActiveWorkbook()!;
  const model = () => engine.injector.get(SheetsFilterService).getFilterModel(book.getId(), sheet().getSheetId());
  expect(model()?.getRange()).toMatchObject({ startRow: 0, endRow: 2, startColumn: 0, endColumn: 0 });
  expect(grid.isChanged()).toBe(false);
  sheet().getRange("A3").setValue("z");
  const saved = await grid.save();
  if (saved.outcome === "refused") throw new Error(saved.sentence);
  expect(saved.report).toEqual([]);
  expect(opened(saved.bytes).sheets[0]!.filter).toMatchObject({ ref: "A1:A3", isActive: false });
});
