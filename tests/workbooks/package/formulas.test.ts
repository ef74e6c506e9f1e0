import { describe, expect, it } from "vitest";
import { MovableFormula } from "../../../src/formula/moving";
import { escapedColumn } from "../../../src/formula/columns";
import { renameColumns } from "../../../src/formula/renaming";

/*
 * What filling down and right does to a reference: ECMA-376 part 1, 18.17.2.3 (relative and absolute references) and
 * 18.3.1.40 (shared formulas).
 */
describe("a formula moved 2 rows down and 1 column right", () => {
  it.each([
    ["A1+B$2+$C3+$D$4", "B3+C$2+$C5+$D$4"],
    ["SUM(A1:B2)", "SUM(B3:C4)"],
    ["SUM(A:A)+SUM($A:B)", "SUM(B:B)+SUM($A:C)"],
    ["SUM(1:1)+SUM($1:2)", "SUM(3:3)+SUM($1:4)"],
    ['"A1"&A1&"say ""B2"""', '"A1"&B3&"say ""B2"""'],
    ["'A1 sheet'!A1+Sheet1!B2", "'A1 sheet'!B3+Sheet1!C4"],
    ["'It''s A1'!A1", "'It''s A1'!B3"],
    ["LOG10(A1)+ATAN2(A1,B1)", "LOG10(B3)+ATAN2(B3,C3)"],
    ["Tubes[[#This Row],[A1]]+Tubes[A1]", "Tubes[[#This Row],[A1]]+Tubes[A1]"],
    ["Tubes[[#This Row],[Tube '#]]+A1", "Tubes[[#This Row],[Tube '#]]+B3"],
    ["Tubes[['[A1']]]*A1", "Tubes[['[A1']]]*B3"],
    ["[1]Sheet1!A1", "[1]Sheet1!B3"],
    ["_xldudf_TUBE_FRTOMM(B2)", "_xldudf_TUBE_FRTOMM(C4)"],
    ["_xlpm.A1+AB12C+A1.x+x_A1+ABCD1", "_xlpm.A1+AB12C+A1.x+x_A1+ABCD1"],
    ["1E5+2.5+TRUE+A1", "1E5+2.5+TRUE+B3"],
    ["{1,2;3,4}*A1", "{1,2;3,4}*B3"],
    ["Données+Ä1+A1", "Données+Ä1+B3"],
    ["a1+xfd1", "B3+#REF!"],
    ["A1048576", "#REF!"],
    ["A1048577+XFE1", "A1048577+XFE1"],
  ])("%s", (from, to) => {
    expect(new MovableFormula(from).moved(2, 1)).toBe(to);
  });

  it("up and left, to the edge of the sheet and over it", () => {
    expect(new MovableFormula("C3+B2+$A$1").moved(-2, -2)).toBe("A1+#REF!+$A$1");
  });
});

describe("a table column that gets another name", () => {
  const renames = [
    { table: "Tubes", from: "Tube #", to: "Size [Fr]" },
    { table: "Tubes", from: "Kind", to: "Type of tube" },
  ];
  it.each([
    ["Tubes[[#This Row],[Tube '#]]*2", "Tubes[[#This Row],[Size '[Fr']]]*2"],
    ["SUM(Tubes[Kind])&COUNTA(tubes[kind])", "SUM(Tubes[Type of tube])&COUNTA(tubes[Type of tube])"],
    ["SUM(Tubes[Tube '#])", "SUM(Tubes[[Size '[Fr']]])"],
    ["SUM(Tubes[[Kind]:[Notes]])", "SUM(Tubes[[Type of tube]:[Notes]])"],
    ["Tubes[[#Totals],[Kind]]+Tubes[#All]", "Tubes[[#Totals],[Type of tube]]+Tubes[#All]"],
    ["Others[Kind]&\"Tubes[Kind]\"&MyTubes[Kind]", "Others[Kind]&\"Tubes[Kind]\"&MyTubes[Kind]"],
    ["A1+1", "A1+1"],
  ])("%s", (from, to) => {
    expect(renameColumns(from, renames)).toBe(to);
  });

  it("writes special characters with an apostrophe", () => {
    expect(escapedColumn("Tube's [#]")).toBe("Tube''s '['#']");
  });
});
