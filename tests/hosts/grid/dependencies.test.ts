/** Formulas that stay in the engine's index are found by edits, also after the names in them have come to mean other cells. */
import { expect, it } from "vitest";
import { calculated } from "../../../taskpane/workbook/embedded/book/calculation";
import { mendDependencies } from "../../../taskpane/workbook/embedded/mends/slow-dependencies";
import { mendReader } from "../../../taskpane/workbook/embedded/mends/spoilt-formulas";
import { startHeadless } from "./headless";

it("follows a name that moves twice, a formula that changes, and a row that comes in", async () => {
  mendReader();
  mendDependencies();
  const engine = startHeadless();
  const group = (row: number) => ({ ...(row === 0 && { f: "=SUM(Figures)+A1" }), si: "sum" });
  const cellData = Object.fromEntries(
    [0, 1, 2].map((row) => [row, { 0: { v: row, t: 2 }, 1: { v: 10, t: 2 }, 2: group(row) }]),
  );
  const sheets = { s: { id: "s", name: "S", rowCount: 20, columnCount: 8, cellData } };
  const book = engine.api.createWorkbook({ id: "b", name: "b", sheetOrder: ["s"], sheets });
  const sheet = book.getSheetByName("S")!;
  const after = (change: () => unknown) => calculated(engine, () => void change());
  const sums = () => [0, 1, 2].map((row) => sheet.getRange(row, 2).getRawValue());
  const put = (row: number, value: number) => after(() => sheet.getRange(row, 1).setValue({ v: value, t: 2 }));

  await after(() => {
    book.insertDefinedName("Figures", "S!$B$1:$B$3");
    engine.api.getFormula().executeCalculation();
  });
  expect(sums()).toEqual([30, 31, 32]);
  await put(0, 11);
  expect(sums()).toEqual([31, 32, 33]);

  for (const [row, until] of [
    [3, 4],
    [4, 5],
  ] as const) {
    await after(() => book.getDefinedName("Figures")!.setRef(`S!$B$1:$B$${until}`));
    await put(row, 100);
    await put(row, 7);
  }
  // 11 + 10 + 10 + 7 + 7
  expect(sums()).toEqual([45, 46, 47]);

  await after(() => sheet.getRange(1, 2).setFormula("=B2*2"));
  await put(1, 20);
  expect(sums()).toEqual([55, 40, 57]);

  await after(() => sheet.insertRows(1, 1));
  await put(4, 17);
  // The row of 7 stands one row lower: 11 + 20 + 10 + 17 + 7.
  expect(sheet.getRange(0, 2).getRawValue()).toBe(65);
  engine.univer.dispose();
});
