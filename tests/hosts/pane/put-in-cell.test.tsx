/** The guide's "Put it in the cell", on a workbook in memory. */
import { describe, expect, test } from "vitest";
import { texts } from "../../../taskpane/texts";
import { putInCell } from "../../../taskpane/actions/put-in-cell";
import type { WorkbookDescription } from "../../../taskpane/workbook/fake/description";
import { fakeWorkbook } from "../../../taskpane/workbook/fake/workbook";

const book = (change: Partial<WorkbookDescription> = {}): WorkbookDescription => ({
  sheets: [
    { name: "Sizes", rows: [["Size"], ["14 Fr"], [{ value: 4, formula: "=2+2" }]] },
    { name: "Locked", isProtected: true },
    { name: "Picture", kind: "chart sheet" },
  ],
  selection: { sheet: "Sizes", area: "B2" },
  ...change,
});

const FORMULA = "=TUBE.FRTOMM(A2)";
const put = (description: WorkbookDescription, format?: string) => {
  const workbook = fakeWorkbook(description);
  return putInCell(workbook, FORMULA, format, new AbortController().signal).then((outcome) => ({
    ...outcome,
    workbook,
  }));
};
const read = async (workbook: ReturnType<typeof fakeWorkbook>, sheet: string, top: number, left: number) => {
  const { id } = (await workbook.overview()).sheets.find(({ name }) => name === sheet)!;
  return workbook.read({ sheet: id, area: { top, left, rows: 1, columns: 1 } }, ["values", "formulas", "formats"]);
};

test("it puts the formula into the selected empty cell, with a date format where the result is a date", async () => {
  const { workbook, sentence, receipt } = await put(book(), "d mmm yyyy");
  expect(sentence).toBe("The formula stands in B2 on ‘Sizes’.");
  expect(receipt?.outcome).toBe("done");
  const cell = await read(workbook, "Sizes", 1, 1);
  expect(cell.formulas).toEqual([[FORMULA]]);
  expect(cell.formats).toEqual([["d mmm yyyy"]]);
});

test("it can be taken back", async () => {
  const { workbook, receipt } = await put(book());
  expect(await workbook.takeBack(receipt!)).toEqual({ outcome: "taken back" });
  const cell = await read(workbook, "Sizes", 1, 1);
  expect([cell.values, cell.formulas]).toEqual([[[null]], [[null]]]);
});

describe("it refuses with a sentence and touches nothing", () => {
  test.each([
    ["a cell with a value", { sheet: "Sizes", area: "A2" }, texts.guide.notEmpty("A2")],
    ["a cell with a formula", { sheet: "Sizes", area: "A3" }, texts.guide.notEmpty("A3")],
    ["more than one cell", { sheet: "Sizes", area: "B2:B3" }, texts.guide.oneCell],
    ["a protected sheet", { sheet: "Locked", area: "A1" }, texts.guide.protected("Locked")],
    ["a chart sheet", { sheet: "Picture", area: "A1" }, texts.guide.chartSheet],
  ] as const)("%s", async (_, selection, expected) => {
    const { sentence, receipt, workbook } = await put(book({ selection }));
    expect(sentence).toBe(expected);
    expect(receipt).toBeNull();
    expect((await read(workbook, "Sizes", 1, 0)).values).toEqual([["14 Fr"]]);
    expect((await read(workbook, "Sizes", 2, 0)).formulas).toEqual([["=2+2"]]);
  });

  test("nothing selected", async () => {
    expect((await put({ sheets: book().sheets })).sentence).toBe(texts.guide.nothingSelected);
  });
});
