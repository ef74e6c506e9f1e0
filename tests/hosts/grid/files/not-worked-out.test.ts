/**
 * Formulas in forms that the grid's engine does not work out, or works out wrongly. What they mean is Excel's own page
 * "Create a reference to the same cell range on multiple worksheets", and "Calculation operators and precedence" for
 * unions and intersections; a range that stands for itself in a cell of an old file is ECMA-376 part 1, 18.17.2.2.
 */
import { read as readElsewhere, utils, write as writeElsewhere, type CellObject, type WorkSheet } from "@e965/xlsx";
import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import type { LiveBook } from "../../../../taskpane/workbook/embedded/book/live-book";
import { SheetReader } from "../../../../taskpane/workbook/embedded/book/sheet-reader";
import { startGrid, type InGrid } from "../../../workbooks/new-file/in-grid";

let there: InGrid;
beforeAll(() => {
  there = startGrid(46_000);
});
afterAll(() => there.engine.univer.dispose());

interface Name {
  readonly Name: string;
  readonly Ref: string;
}

/** Sheets List, Jan and Feb, with numbers in A1:C3 each, and these formulas in J of List, for all of which 77.5 is stored. */
async function open(formulas: readonly string[], names: readonly Name[] = []): Promise<void> {
  const numbers = (): WorkSheet => utils.aoa_to_sheet([1, 2, 3].map((n) => [n, n + 1, n + 2]));
  const list = numbers();
  for (const [row, f] of formulas.entries()) list[`J${row + 1}`] = { t: "n", v: 77.5, f };
  list["!ref"] = `A1:J${Math.max(3, formulas.length)}`;
  const book = { ...utils.book_new(), Workbook: { Names: [...names] } };
  utils.book_append_sheet(book, list, "List");
  for (const name of ["Jan", "Feb"]) utils.book_append_sheet(book, numbers(), name);
  const bytes = new Uint8Array(writeElsewhere(book, { type: "array", bookType: "xlsx" }) as ArrayBuffer);
  expect(await there.grid.open(bytes, "list.xlsx")).toMatchObject({ outcome: "opened" });
}

const sheet = (at = 0) => there.engine.api.getActiveWorkbook()!.getSheets()[at]!;

async function saved(): Promise<WorkSheet> {
  const file = await there.grid.save();
  if (file.outcome === "refused") throw new Error(file.sentence);
  return readElsewhere(file.bytes, { cellFormula: true }).Sheets["List"]!;
}

const valueIn = (list: WorkSheet, address: string): unknown => {
  const { t, v, w } = list[address] as CellObject;
  return t === "e" ? w : v;
};

const FORMS = [
  "SUM(Jan:Feb!A1)",
  "SUM('Jan:Feb'!A1)",
  "SUM((A1:A2,A1))",
  "SUM(A1:A3 A1:C1)",
  "A1:A3*2",
  "List!A1:A3",
  "SUM(nope!A1,A1)",
];

describe("in a file", () => {
  it.each(FORMS)(
    "%s holds its stored result until what it reads changes, and spoils no other formula",
    async (form) => {
      await open([form, "A1*3"]);
      sheet(0).getRange("A1").setValue(100);
      sheet(1).getRange("A1").setValue(100);
      const list = await saved();
      expect(valueIn(list, "J1")).toBe("#N/A");
      expect((list["J1"] as CellObject).f).toBe(form);
      expect((list["J1"] as CellObject).F).toBeUndefined();
      expect(valueIn(list, "J2")).toBe(300);
    },
  );

  it("a sheet is found in any case", async () => {
    await open(["jAN!A1*2", "SUM('fEB'!A1:A3)"]);
    sheet(1).getRange("A1").setValue(50);
    sheet(2).getRange("A1").setValue(50);
    const list = await saved();
    expect([valueIn(list, "J1"), valueIn(list, "J2")]).toEqual([100, 55]);
    expect((list["J1"] as CellObject).f).toBe("jAN!A1*2");
  });

  it("what a name without $ means is not taken from another row", async () => {
    await open(["OTHER.DOUBLE(beside)"], [{ Name: "beside", Ref: "List!B7" }]);
    sheet(0).getRange("A1").setValue(100);
    expect(valueIn(await saved(), "J1")).toBe("#N/A");
  });

  it("a running total that another add-in makes is out of date at once, and comes back", async () => {
    const total = Array.from({ length: 400 }, (_, row) => `OTHER.ADD(${row === 0 ? "A1" : `J${row}`},1)`);
    await open(total);
    const changes: string[] = [];
    const watching = there.engine.api.onCommandExecuted(({ id }) => void changes.push(id));
    sheet(0).getRange("A1").setValue(100);
    const list = await saved();
    watching.dispose();
    expect(total.every((_, row) => valueIn(list, `J${row + 1}`) === "#N/A")).toBe(true);
    // one change for the entry and one for all that hang on it, not one a row
    expect(changes.filter((id) => id === "sheet.mutation.set-range-values").length).toBeLessThan(5);
    sheet(0).getRange("A1").setValue(1);
    const back = await saved();
    expect(total.every((_, row) => valueIn(back, `J${row + 1}`) === 77.5)).toBe(true);
  });
});

describe("what is out of date", () => {
  /** How many cells are compared with the file for one entry in a list of so many rows. */
  async function compared(rows: number, change: () => void): Promise<number> {
    const list = utils.aoa_to_sheet(Array.from({ length: rows }, (_, row) => [row, row + 1]));
    list["J1"] = { t: "n", v: 77.5, f: "OTHER.DOUBLE(A1)" };
    list["!ref"] = `A1:J${rows}`;
    const book = utils.book_new();
    utils.book_append_sheet(book, list, "List");
    const bytes = new Uint8Array(writeElsewhere(book, { type: "array", bookType: "xlsx" }) as ArrayBuffer);
    expect(await there.grid.open(bytes, "list.xlsx")).toMatchObject({ outcome: "opened" });
    change();
    const { outdated } = there.grid.workbook as unknown as LiveBook;
    const reading = vi.spyOn(SheetReader.prototype, "value");
    expect(outdated.mark()).toBe(true);
    const { length } = reading.mock.calls;
    reading.mockRestore();
    expect(valueIn(await saved(), "J1")).toBe("#N/A");
    return length;
  }

  it("is found by the cells that were changed, however long the list is", async () => {
    const change = () => void sheet().getRange("A1").setValue(100);
    expect(await compared(3_000, change)).toBe(await compared(30, change));
  });
});

describe("typed", () => {
  it.each([
    ["=SUM(Jan:Feb!A1)", "the same cells of several sheets"],
    ["=SUM('Jan:Feb'!A1)", "the same cells of several sheets"],
    ["=SUM((A1:A2,B1))", "several ranges in one bracket"],
    ["=SUM(A1:A3 A2:C2)", "the cells in which two ranges cross"],
    ["=SUM(A1#)", "the sign #"],
    ["=@A1:A3", "the sign @"],
  ])("%s is turned down, and says for what", async (formula, what) => {
    await open([]);
    there.said.length = 0;
    sheet().getRange("E5").setFormula(formula);
    expect(sheet().getRange("E5").getFormula()).toBe("");
    expect(there.said.join()).toContain(`asks for ${what}, which this page cannot work out`);
  });

  it.each([
    ["=jan!A1", "=Jan!A1", 1],
    ["=SUM('FEB'!A1:A3)", "=SUM('Feb'!A1:A3)", 6],
    ["=SUM(List!A1:List!B2)", "=SUM(List!A1:List!B2)", 8],
    ["=SUM(A1 : A3)", "=SUM(A1 : A3)", 6],
    ["=SUM (A1:A3, B1)", "=SUM (A1:A3, B1)", 8],
    ["=IF( A1 = 1 , {1,2} , 3 )", "=IF( A1 = 1 , {1,2} , 3 )", 1],
  ])("%s is entered as %s", async (typed, entered, result) => {
    await open([]);
    sheet().getRange("E5").setFormula(typed);
    expect(sheet().getRange("E5").getFormula()).toBe(entered);
    expect(valueIn(await saved(), "E5")).toBe(result);
  });
});
