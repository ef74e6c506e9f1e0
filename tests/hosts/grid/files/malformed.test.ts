/** Formulas that are none: turned down at entry with a sentence that says where, and never written into a file. */
import { SheetInterceptorService, SetRangeValuesMutation } from "@univerjs/sheets";
import { read as readElsewhere, type CellObject } from "@e965/xlsx";
import { strFromU8, unzipSync } from "fflate";
import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { enteredFormula } from "../../../../taskpane/workbook/embedded/by-hand/entered-formula";
import { readPlain } from "../../../../taskpane/workbook/embedded/by-hand/pasting";
import { malformed } from "../../../../taskpane/workbook/change/malformed";
import { startGrid, type InGrid } from "../../../workbooks/new-file/in-grid";

const SHEETS = ["Sheet1", "Old list", "It's 2"];

const NONE: readonly (readonly [formula: string, says: RegExp])[] = [
  ["=1+", /=1\+ is no formula: a value is missing at its end\./],
  ['="abc', /opens at “"abc” is never closed/],
  ["=A1 A2 (((", /=A1 A2 \(\(\( is no formula: .*(at its end|at “)/],
  ["=SUM(A1", /bracket/],
  ["=(A1))", /bracket has no partner at “\)”/],
  ["=Nosheet!A1", /reads a sheet “Nosheet”, which this workbook does not have/],
  ["=SUM('No such'!A1:B2)", /“No such”/],
  ["=Sheet1:Nosheet!A1", /“Nosheet”/],
  ["=cmd|' /C calc'!A0", /is no formula: .*at “\|' \/C calc'!A0”/],
  ["=[Other.xlsx]Sheet1!A1", /reads another workbook/],
  ["='[Other.xlsx]Sheet1'!A1", /reads another workbook/],
  ["=1 2", /a sign such as \+ or a comma is missing at “2”/],
  ["=12abc", /no such number, name or cell as stands at “12abc”/],
  ["={1,2;3}", /\{ and \}/],
  [`=A1&"${"x".repeat(256)}"`, /longer than the 255 characters/],
  [`=${"A1+".repeat(3000)}1`, /longer than the 8,192 characters/],
];

const FORMULAS = [
  "=1+1",
  "=-A1%",
  "=SUM(Sheet1!A1:B2,'Old list'!C:C,'It''s 2'!3:7)",
  "=Sheet1:Sheet1!A1",
  "=SUM(Sheet1!A1:Sheet1!B2,A1 : B2)",
  "=@A1:A3",
  "=A1:A3 A2:C2",
  "=LET(a,1,LAMBDA(x,x+a)(2))",
  "=IF(,,)",
  '={1,-2;"a",#N/A}',
  "=Caseload[[#This Row],[Tube '#]]",
  "=TUBE.FRTOMM([@Size])",
  "=#REF!+Sheet1!#REF!",
  "=not_a_name_yet*2",
  '="a ""quoted"" text"&1E-5',
];

describe("a text that begins with =", () => {
  it.each(NONE)("%s", (formula, says) => expect(malformed(formula, SHEETS)).toMatch(says));
  it.each(FORMULAS)("%s is a formula", (formula) => expect(malformed(formula, SHEETS)).toBeUndefined());
});

describe("in the grid", () => {
  let there: InGrid;
  beforeAll(() => {
    there = startGrid(46_000);
  });
  afterAll(() => there.engine.univer.dispose());
  beforeEach(async () => {
    await there.grid.openEmpty();
    there.said.length = 0;
  });

  const book = () => there.engine.api.getActiveWorkbook()!.getWorkbook();
  const sheet = () => there.engine.api.getActiveWorkbook()!.getActiveSheet();

  it.each(["=1+", '="abc', "=A1 A2 (((", "=Nosheet!A1", "=cmd|' /C calc'!A0"])(
    "%s typed leaves the cell as it was",
    (f) => {
      const worksheet = book().getActiveSheet();
      sheet().getRange("A1").setValue(7);
      const before = { ...worksheet.getCellRaw(0, 0) };
      const cell = there.engine.injector.get(SheetInterceptorService).onWriteCell(book(), worksheet, 0, 0, { f });
      expect(cell).toEqual(before);
      expect(there.said.join()).toContain("Nothing was entered.");
    },
  );

  it("one that comes in by another command is not entered either", () => {
    sheet().getRange("A1").setFormula("=1+1");
    sheet().getRange("A1").setFormula("=1+");
    expect(sheet().getRange("A1").getFormula()).toBe("=1+1");
    expect(there.said.join()).toContain("a value is missing at its end. Nothing was entered.");
  });

  it("the pane writes none", async () => {
    const { sheets } = await there.grid.workbook.overview();
    const step = {
      kind: "writeFormula",
      sheet: sheets[0]!.id,
      row: 0,
      column: 0,
      formula: "=TUBE.FRTOMM(1+)",
    } as const;
    const signal = new AbortController().signal;
    const receipt = await there.grid.workbook.apply(
      { steps: [step], expects: [] },
      { report: () => undefined, signal },
    );
    expect(receipt).toMatchObject({ outcome: "refused" });
    expect(receipt.sentence).toContain("is no formula");
  });

  it("a paste that holds one is turned down as a whole", () => {
    const readFormula = (formula: string) => enteredFormula(formula, SHEETS);
    const paste = (text: string) => readPlain(text, true, readFormula);
    expect(paste("1\t=1+\r\n2\t=1+1")).toMatchObject({ refused: /value is missing/ });
    expect(paste("1\t=SUM((A1,B1))")).toMatchObject({ refused: /cannot work out/ });
    expect(paste("1\t=A1*2\r\n-\t+44")).toEqual({ text: "1\t=A1*2\r\n-\t+44" });
    expect(paste("=sheet1!A1\t='OLD list'!A1")).toEqual({ text: "=Sheet1!A1\t='Old list'!A1" });
  });

  it("one that stands in a cell all the same is saved as a text, and told", async () => {
    const ids = { unitId: book().getUnitId(), subUnitId: sheet().getSheetId() };
    const cellValue = { 1: { 1: { f: "=1+" }, 2: { f: "=1+1" } } };
    await there.engine.api.executeCommand(SetRangeValuesMutation.id, { ...ids, cellValue });
    const saved = await there.grid.save();
    if (saved.outcome === "refused") throw new Error(saved.sentence);
    const cells = readElsewhere(saved.bytes, { cellFormula: true }).Sheets["Sheet1"]!;
    expect(cells["B2"]).toMatchObject({ t: "s", v: "=1+" });
    expect((cells["B2"] as CellObject).f).toBeUndefined();
    expect(cells["C2"]).toMatchObject({ v: 2, f: "1+1" });
    expect(saved.report.join()).toContain("what stands in B2 is no formula");
    expect(strFromU8(unzipSync(saved.bytes)["xl/styles.xml"]!)).toContain('quotePrefix="1"');
  });
});
