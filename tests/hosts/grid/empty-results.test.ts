/**
 * A formula that gives "" is a text to whoever reads it, though files store it as an empty result: Excel's AVERAGE and
 * SUBTOTAL leave texts in cells out ("AVERAGE function", Microsoft), and the grid's engine would count a bare cell as 0.
 */
import { afterAll, beforeAll, expect, it } from "vitest";
import { startGrid, type InGrid } from "../../workbooks/new-file/in-grid";
import { oneSheet } from "../../workbooks/package/build";

let there: InGrid;
beforeAll(() => {
  there = startGrid(46_000);
});
afterAll(() => there.engine.univer.dispose());

it.each(["SUBTOTAL(101,A1:A3)", "SUBTOTAL(1,A1:A3)", "AVERAGE(A1:A3)", "MIN(A1:A3)", "COUNT(A1:A3)*4"])(
  "%s leaves results that are empty texts out",
  async (formula) => {
    const nothing = (row: number) => `<row r="${row}"><c r="A${row}"><f>IF($A$1=4,"",$A$1)</f><v></v></c></row>`;
    const first = `<row r="1"><c r="A1"><v>4</v></c><c r="B1"><f>${formula}</f><v>0</v></c></row>`;
    const bytes = oneSheet(`<sheetData>${first}${nothing(2)}${nothing(3)}</sheetData>`);
    expect(await there.grid.open(bytes, "list.xlsx")).toMatchObject({ outcome: "opened" });
    const list = there.engine.api.getActiveWorkbook()!.getSheets()[0]!;
    list.getRange("A1").setValue(4);
    await expect.poll(() => list.getRange("B1").getRawValue()).toBe(4);
  },
);
