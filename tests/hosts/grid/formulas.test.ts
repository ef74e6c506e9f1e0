/** Formula texts: references that move, structured references, the file's spelling; held to the engine's own reader. */
import { LexerTreeBuilder } from "@univerjs/engine-formula";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fromFile, toFile } from "../../../taskpane/workbook/embedded/formulas/dialect";
import { isMovedByEngine, relativeForm, shifted } from "../../../taskpane/workbook/embedded/formulas/references";
import { structuredToA1, type TableGeometry } from "../../../taskpane/workbook/embedded/formulas/structured";
import { tokens, untokened } from "../../../taskpane/workbook/embedded/formulas/tokens";
import { structuredForm } from "../../../taskpane/workbook/embedded/save/formulas";
import { inTable, formula as template } from "../../../src/columns/formula";

const SEED = 20_260_510;

const cell = (columns: readonly string[], from: number, to: number) =>
  fc
    .tuple(
      fc.constantFrom("", "$"),
      fc.constantFrom(...columns),
      fc.constantFrom("", "$"),
      fc.integer({ min: from, max: to }),
    )
    .map((parts) => parts.join(""));
const reference = cell(["A", "C", "Z", "AB"], 20, 900);
const atom = fc.oneof(
  reference,
  // the engine puts the corners of a range in order: these are
  fc.tuple(cell(["A", "C"], 20, 99), cell(["Z", "AB"], 150, 900)).map(([from, to]) => `SUM(${from}:${to})`),
  reference.map((one) => `'It''s 2'!${one}`),
  reference.map((one) => `Lists!${one}`),
  fc.constantFrom('"A20"', '"say ""B7"""', "12", "1.5", "TRUE", "LOG10(B30)", "A1_name", "SUM($B:$B)"),
);
const formulas = fc.array(atom, { minLength: 1, maxLength: 5 }).map((atoms) => atoms.join("+"));

describe("references", () => {
  it("put together again are the text they came from", () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 60 }), (text) => untokened(tokens(text)) === text),
      { seed: SEED, numRuns: 5_000 },
    );
  });

  it("move as the engine moves them", () => {
    const engine = new LexerTreeBuilder();
    const offset = fc.integer({ min: -15, max: 40 });
    fc.assert(
      fc.property(formulas, offset, (text, rows) => {
        fc.pre(isMovedByEngine(text));
        expect(`=${shifted(text, rows, 0)}`).toBe(engine.moveFormulaRefOffset(`=${text}`, 0, rows));
      }),
      { seed: SEED, numRuns: 1_000 },
    );
  });

  it("mean the same after moving", () => {
    fc.assert(
      fc.property(
        formulas,
        fc.integer({ min: -15, max: 40 }),
        fc.integer({ min: 0, max: 20 }),
        (text, rows, columns) => {
          expect(relativeForm(shifted(text, rows, columns), 100 + rows, 3 + columns)).toBe(relativeForm(text, 100, 3));
        },
      ),
      { seed: SEED, numRuns: 2_000 },
    );
  });

  it("keep doubled quotes, which the engine drops", () => {
    expect(shifted('"a""b"&A1', 1, 0)).toBe('"a""b"&A2');
    expect(isMovedByEngine('"a""b"&A1')).toBe(false);
    expect(isMovedByEngine('IF(A1="","",A2)')).toBe(true);
  });

  it("beyond the sheet are lost", () => {
    expect(shifted("A1+B5", -1, 0)).toBe("#REF!+B4");
    expect(shifted("XFD3", 0, 1)).toBe("#REF!");
  });
});

describe("structured references", () => {
  const table: TableGeometry = {
    name: "Tubes",
    sheetName: "In use",
    top: 4,
    left: 1,
    bottom: 14,
    columns: ["Tube #", "Notes [x]", "It's", "Line\nbreak", "Size (Fr)", "Last"],
    headerRows: 1,
    totalsRows: 1,
  };
  const inside = { sheetName: "In use", row: 7, column: 9 };
  const own = { sheetName: "In use", row: 7, column: 3 };
  const elsewhere = { sheetName: "Other", row: 7, column: 0 };

  it.each([
    ["SUM(Tubes[Last])", "SUM($G$6:$G$14)"],
    ["Tubes[[#This Row],[Tube '#]]*2", "$B8*2"],
    ["Tubes[@[Notes '[x']]]", "$C8"],
    ["Tubes[@Last]", "$G8"],
    ["Tubes[[#This Row],[It''s]]", "$D8"],
    ["Tubes[[#This Row],[Line\nbreak]]", "$E8"],
    ["Tubes[[#Headers],[Last]]", "$G$5"],
    ["Tubes[[#Totals],[Last]]", "$G$15"],
    ["Tubes[#Headers]", "$B$5:$G$5"],
    ["Tubes[#All]", "$B$5:$G$15"],
    ["SUM(Tubes)", "SUM($B$6:$G$14)"],
    ["Tubes[[Tube '#]:[It''s]]", "$B$6:$D$14"],
    ["Tubes[[#This Row],[Tube '#]:[It''s]]", "$B8:$D8"],
    ["Tubes[[#Data],[#Totals],[Last]]", "$G$6:$G$15"],
    ["tubes[last]", "$G$6:$G$14"],
    ['"Tubes[Last]"&Tubes[@Last]', '"Tubes[Last]"&$G8'],
    ["Tubes[Nowhere]", "#REF!"],
  ])("%s", (text, expected) => {
    expect(structuredToA1(text, [table], inside)).toBe(expected);
  });

  it("without a name belong to the table around them", () => {
    expect(structuredToA1("[@[Size (Fr)]]/3", [table], own)).toBe("$F8/3");
    expect(structuredToA1("[Last]", [table], own)).toBe("$G$6:$G$14");
    expect(structuredToA1("[@Last]", [table], inside)).toBeUndefined();
  });

  it("from another sheet name the sheet, and have no row of their own outside", () => {
    expect(structuredToA1("SUM(Tubes[Last])", [table], elsewhere)).toBe("SUM('In use'!$G$6:$G$14)");
    expect(structuredToA1("Tubes[@Last]", [table], { ...inside, row: 4 })).toBe("#REF!");
  });

  it("leave other workbooks alone", () => {
    expect(structuredToA1("[1]Stock!$B$2+1", [table], inside)).toBe("[1]Stock!$B$2+1");
  });

  it("come back from A1 as a template writes them", () => {
    const slots = table.columns.map((header, index) => ({ header, index }));
    for (const slot of slots) {
      const written = inTable(template`TUBE.FRTOMM(${slot})`, "Tubes");
      const inA1 = structuredToA1(written, [table], inside)!;
      expect(structuredForm(inA1, table, inside.row)).toBe(written);
    }
  });
});

describe("the file's spelling", () => {
  it.each([
    ["TUBE.FRTOMM(A1)", "_xldudf_TUBE_FRTOMM(A1)"],
    ['IF(A1="TUBE.X(",tube.changedue(A1,3),0)', 'IF(A1="TUBE.X(",_xldudf_TUBE_CHANGEDUE(A1,3),0)'],
    ["FILTER(A1:A9,B1:B9)", "_xlfn._xlws.FILTER(A1:A9,B1:B9)"],
    ["XLOOKUP(1,A:A,B:B)", "_xlfn.XLOOKUP(1,A:A,B:B)"],
    ["LET(x,A1,x*2)", "_xlfn.LET(_xlpm.x,A1,_xlpm.x*2)"],
    ["MAP(A1:A3,LAMBDA(y,y+1))", "_xlfn.MAP(A1:A3,_xlfn.LAMBDA(_xlpm.y,_xlpm.y+1))"],
    ["SUM(A1:A3)", "SUM(A1:A3)"],
  ])("%s", (inGrid, inFile) => {
    expect(toFile(inGrid)).toBe(inFile);
    expect(fromFile(inFile).toUpperCase()).toBe(inGrid.toUpperCase());
  });

  it("keeps what stands for @ and #, which the engine does not have", () => {
    expect(fromFile("_xlfn.SINGLE(A1:A3)+_xlfn.ANCHORARRAY(B1)")).toBe("_xlfn.SINGLE(A1:A3)+_xlfn.ANCHORARRAY(B1)");
  });
});
