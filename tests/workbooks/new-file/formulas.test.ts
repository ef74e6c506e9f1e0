/** Formulas on their way into a new file. */
import { describe, expect, it } from "vitest";
import { inFile } from "../../../taskpane/workbook/file/formula";

describe("formulas in the spelling of files", () => {
  it.each([
    // [MS-XLSX] 2.2.2 lists the functions that carry _xlfn.
    ["MAXIFS(T[a],T[b],1)", "_xlfn.MAXIFS(T[a],T[b],1)"],
    ["tube.FrToMm(A1)", "_xldudf_TUBE_FRTOMM(A1)"],
    ['IF(A1="TUBE.X(MAXIFS(",1,2)', 'IF(A1="TUBE.X(MAXIFS(",1,2)'],
    ["Table[[#This Row],[MAXIFS(]]", "Table[[#This Row],[MAXIFS(]]"],
    ["Ifs", "Ifs"],
    ['LET(a,1,b,IF(A1="a",a,2),a+b)', '_xlfn.LET(_xlpm.a,1,_xlpm.b,IF(A1="a",_xlpm.a,2),_xlpm.a+_xlpm.b)'],
  ])("%s", (typed, filed) => expect(inFile(typed)).toBe(filed));

  it.each(["FILTER(A:A,1)", "LAMBDA(a,a)(1)", `A1&"${"b".repeat(256)}"`, `${"A1+".repeat(3000)}1`])("is refused: %s", (typed) => {
    expect(() => inFile(typed)).toThrow();
  });

  it("counts a formula's length as Excel shows it", () => {
    // "=" and 8,191 characters are allowed; a cell of the same row is shown as [@ID].
    const cell = "[@[ID]]";
    const filler = "1+".repeat((8191 - cell.length - 1) / 2 + 1).slice(0, 8191 - cell.length);
    expect(`=${filler}${cell}`).toHaveLength(8192);
    const row = "A_long_name_of_a_table[[#This Row],[ID]]";
    expect(inFile(filler + row)).toBe(filler + row);
    expect(() => inFile(`1${filler}${row}`)).toThrow("longer than Excel allows");
  });

});
