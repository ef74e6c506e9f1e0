/**
 * What the reader makes of single formulas. Unless a line says otherwise the examples are those of Microsoft's page on
 * the function (support.microsoft.com, "Excel functions (alphabetical)"), from memory of those pages.
 */
import { describe, expect, it } from "vitest";
import { Reader } from "../../../src/formula/reader/reader";
import type { Value } from "../../../src/formula/reader/values";
import { CellError } from "../../../src/worksheet/error";
import { day } from "../../../src/worksheet/dates";

const NA = new CellError("#N/A");

/** Columns from A on, rows from 1 on; the formula stands in H1. */
function workedOut(formula: string, columns: readonly (readonly Value[])[] = []): unknown {
  const reader = new Reader({
    sheets: ["S", "It's"],
    tables: [],
    names: [
      { name: "Rate", refersTo: "S!$B$1" },
      { name: "Seven", refersTo: "7" },
      { name: "Twice", refersTo: "Seven*2" },
      { name: "Left", refersTo: "S!A1" },
    ],
    today: day("2026-11-30"),
    ours: () => undefined,
  });
  columns.forEach((values, column) => values.forEach((value, row) => reader.put({ sheet: "S", row, column }, value)));
  reader.fill({ sheet: "S", row: 0, column: 7 }, 0, formula);
  reader.work();
  if (reader.unknown.length > 0) return `not known: ${reader.unknown[0]!.because}`;
  const found = reader.at({ sheet: "S", row: 0, column: 7 });
  return found instanceof CellError ? found.code : found;
}

describe("operators and kinds of values", () => {
  const cells: readonly Value[][] = [[null, 5, "5", "x", true, NA, ""]];
  it.each([
    // "Calculation operators and precedence in Excel"
    ["5+2*3", 11],
    ["-2^2", 4],
    ["50%*2", 1],
    ['"North"&"wind"', "Northwind"],
    // the same page, "How Excel converts values in formulas"
    ['"1"+"2"', 3],
    ["A2+A3", 10],
    ["A4+1", "#VALUE!"],
    ["1/0", "#DIV/0!"],
    ["A5+1", 2],
    ["A6&1", "#N/A"],
    // an empty cell is 0 in sums, "" in texts, and equal to both
    ["A1+1", 1],
    ['A1&"x"', "x"],
    ["A1", 0],
    ['AND(A1=0,A1="",A1=FALSE)', true],
    ["A7=0", false],
    // numbers are less than texts, texts less than TRUE; case does not count
    ['AND(9<"1","z"<FALSE,"ABC"="abc")', true],
    ["1E21&0", "1E+210"],
    ["(0.1+0.2)&0", "0.30"],
    ["IF(A4,1,2)", "#VALUE!"],
    ["Rate+Seven+Twice", 21],
    ["'It''s'!A1+S!A2", 5],
  ])("%s", (formula, expected) => expect(workedOut(formula, cells)).toBe(expected));

  // ISO 8601 dates are read in every language; no other date is
  it.each([
    ['"2026-05-14"+0', day("2026-05-14")],
    ['"2026-02-30"+0', "#VALUE!"],
    ['"3/4/26"+0', "#VALUE!"],
    ['"1,5"+0', "#VALUE!"],
  ])("%s", (formula, expected) => expect(workedOut(formula)).toBe(expected));
});

describe("texts", () => {
  it.each([
    ['TRIM(" First Quarter  Earnings ")', "First Quarter Earnings"],
    ['SUBSTITUTE("Sales Data","Sales","Cost")', "Cost Data"],
    ['SUBSTITUTE("Quarter 1, 2008","1","2",1)', "Quarter 2, 2008"],
    ['SUBSTITUTE("Quarter 1, 2011","1","2",3)', "Quarter 1, 2012"],
    ['SUBSTITUTE("a$b","$","$&")', "a$&b"],
    ['FIND("M","Miriam McGovern")', 1],
    ['FIND("m","Miriam McGovern")', 6],
    ['FIND("M","Miriam McGovern",3)', 8],
    ['FIND("q","Miriam McGovern")', "#VALUE!"],
    ['SEARCH("e","Statements",6)', 7],
    ['SEARCH("margin","Profit Margin")', 8],
    ['SEARCH("t?n*","Profit, ten.")', 9],
    ['SEARCH("~?","who?")', 4],
    ['SEARCH("x","Profit Margin")', "#VALUE!"],
    ['LEFT("Sale Price",4)', "Sale"],
    ['LEFT("Sweden")', "S"],
    ['MID("Fluid Flow",1,5)', "Fluid"],
    ['MID("Fluid Flow",7,20)', "Flow"],
    ['MID("Fluid Flow",20,5)', ""],
    ['MID("Fluid Flow",0,5)', "#VALUE!"],
    ['LEN("Phoenix, AZ")', 11],
    ['EXACT("Word","word")', false],
    ['LOWER("E. E. Cummings")', "e. e. cummings"],
    ['UPPER("total")', "TOTAL"],
  ])("%s", (formula, expected) => expect(workedOut(formula)).toBe(expected));

  const currencies: readonly Value[][] = [["US Dollar", "Australian Dollar", null, "Euro"]];
  it.each([
    ['TEXTJOIN(", ",TRUE,A1:A4)', "US Dollar, Australian Dollar, Euro"],
    ['TEXTJOIN(", ",FALSE,A1:A4)', "US Dollar, Australian Dollar, , Euro"],
  ])("%s", (formula, expected) => expect(workedOut(formula, currencies)).toBe(expected));
});

describe("numbers", () => {
  it.each([
    ["INT(8.9)", 8],
    ["MOD(3,2)&MOD(-3,2)&MOD(3,-2)&MOD(-3,-2)", "11-1-1"],
    ["MOD(3,0)", "#DIV/0!"],
    ["INT(-8.9)", -9],
    ["ROUND(2.15,1)", 2.2],
    ["ROUND(2.149,1)", 2.1],
    ["ROUND(-1.475,2)", -1.48],
    ["ROUND(21.5,-1)", 20],
    ["ROUND(626.3,-3)", 1000],
    ["ROUND(-50.55,-2)", -100],
    ["ABS(-2)", 2],
  ])("%s", (formula, expected) => expect(workedOut(formula)).toBe(expected));

  const cells: readonly Value[][] = [
    [10, 7, 9, 27, 2],
    [day("2008-12-08"), null, 19, 22.24, true, new CellError("#DIV/0!")],
    ["Sales", day("2008-12-08"), null, 19, 22.24, true, new CellError("#DIV/0!")],
    ["x", true, null],
  ];
  it.each([
    ["MAX(A1:A5)", 27],
    ["MAX(A1:A5,30)", 30],
    ["MIN(A1:A5,0)", 0],
    ["SUM(A1:A5)", 55],
    ["COUNT(B1:B6)", 3],
    ["COUNT(B1:B6,2)", 4],
    ["COUNTA(C1:C7)", 6],
    ["MAX(B1:B6)", "#DIV/0!"],
    // texts and TRUE in cells are no numbers; written out they are read as such
    ["MAX(D1:D3)", 0],
    ['SUM("3",TRUE)', 4],
    ['MAX("x",1)', "#VALUE!"],
  ])("%s", (formula, expected) => expect(workedOut(formula, cells)).toBe(expected));
});

describe("dates", () => {
  it.each([
    ["DATE(2008,14,2)", day("2009-02-02")],
    ["DATE(2008,-3,2)", day("2007-09-02")],
    ["DATE(2008,1,35)", day("2008-02-04")],
    ["DATE(2008,1,-15)", day("2007-12-16")],
    ["DATE(108,1,2)", day("2008-01-02")],
    ["DATE(-1,1,2)", "#NUM!"],
    ["YEAR(DATE(2008,7,5))", 2008],
    ["EDATE(DATE(2011,1,15),1)", day("2011-02-15")],
    ["EDATE(DATE(2011,1,15),-1)", day("2010-12-15")],
    ["EDATE(DATE(2024,8,31),6)", day("2025-02-28")],
    ["EOMONTH(DATE(2011,1,1),1)", day("2011-02-28")],
    ["EOMONTH(DATE(2011,1,1),-3)", day("2010-10-31")],
    // ECMA-376 part 1, 18.17.4.1: day 60 is 29 February 1900, day 1 is 1 January 1900
    ["DAY(60)", 29],
    ["MONTH(59)&DAY(59)", "228"],
    ["YEAR(1)&MONTH(1)&DAY(1)", "190011"],
    ["DATE(1900,1,1)", 1],
    ["DATE(1900,3,1)", 61],
    ["MONTH(-1)", "#NUM!"],
    ["TODAY()", day("2026-11-30")],
  ])("%s", (formula, expected) => expect(workedOut(formula)).toBe(expected));
});

describe("questions and choices", () => {
  const cells: readonly Value[][] = [[null, "", "x", 1, true, NA]];
  it.each([
    ['IFERROR(55/0,"Error in calculation")', "Error in calculation"],
    ["IFERROR(210/35,0)", 6],
    ["IF(A6,1,2)", "#N/A"],
    ["IF(FALSE,1)", false],
    ["IF(TRUE,,3)", 0],
    ['CHOOSE(2,"1st","2nd")', "2nd"],
    ['CHOOSE(3,"1st","2nd")', "#VALUE!"],
    ["AND(TRUE,TRUE,FALSE)", false],
    ["OR(1,FALSE)", true],
    ["AND(A1:A3)", "#VALUE!"],
    ["AND(A4,A3)", true],
    ['OR("x")', "#VALUE!"],
    ["AND(A5,A6)", "#N/A"],
    ["ISNUMBER(A4)&ISNUMBER(A5)&ISNUMBER(A1)", "TRUEFALSEFALSE"],
    ["ISBLANK(A1)&ISBLANK(A2)", "TRUEFALSE"],
    ["ISTEXT(A2)&ISERROR(A6)", "TRUETRUE"],
    ["N(7)&N(TRUE)&N(A3)", "710"],
    ['T("Rainfall")&T(19)&T(TRUE)', "Rainfall"],
    ["N(A6)", "#N/A"],
    ["LET(x,5,SUM(x,1))", 6],
    ["LET(x,5,y,x*2,LET(x,1,x+y)+x)", 16],
    // a name for an empty cell still is an empty cell
    ["LET(x,A1,ISBLANK(x))", true],
    ["LET(x,IF(TRUE,A1,A2),ISBLANK(x))", true],
  ])("%s", (formula, expected) => expect(workedOut(formula, cells)).toBe(expected));
});

describe("looking things up", () => {
  const fruit: readonly Value[][] = [
    ["apples", "oranges", "peaches", "apples"],
    [32, 54, 75, 86],
  ];
  it.each([
    ['COUNTIF(A1:A4,"apples")', 2],
    ['COUNTIF(B1:B4,">55")', 2],
    ['COUNTIF(B1:B4,"<>75")', 3],
    ['COUNTIF(A1:A4,"*")', 4],
    ['COUNTIF(A1:A4,"?????es")', 2],
    ['COUNTIF(A1:A4,"APPLES")', 2],
    ['COUNTIFS(A1:A4,"apples",B1:B4,">=86")', 1],
    ['COUNTIFS(A1:A4,"a*",B1:B4,"<86")', 1],
    ["COUNTIFS(A1:A4,A1,B1:B4,86)", 1],
    ['COUNTIFS(A1:A4,"apples",B1:B3,1)', "#VALUE!"],
    ["MATCH(75,B1:B4,0)", 3],
    ['MATCH("PEACHES",A1:A4,0)', 3],
    ['MATCH("p*",A1:A4,0)', 3],
    ['MATCH("p~*",A1:A4,0)', "#N/A"],
    ["INDEX(A1:A4,2)", "oranges"],
    ["INDEX(A1:B4,3,2)", 75],
    ["INDEX(A1:A4,5)", "#REF!"],
    ["LARGE(B1:B4,2)", 75],
    ["LARGE(B1:B4,5)", "#NUM!"],
    ["RANK.EQ(54,B1:B4)", 3],
    ["RANK.EQ(55,B1:B4)", "#N/A"],
  ])("%s", (formula, expected) => expect(workedOut(formula, fruit)).toBe(expected));

  // Microsoft's pages on MATCH (rising values), LOOKUP and SMALL
  const rising: readonly Value[][] = [
    [25, 38, 40, 41],
    [4.14, 4.19, 5.17, 5.77, 6.39],
    ["red", "orange", "yellow", "green", "blue"],
    [3, 4, 5, 2, 3, 4, 6, 4, 7],
    [1, 2, "x", null, 5, NA],
  ];
  it.each([
    ["MATCH(39,A1:A4,1)", 2],
    ["MATCH(41,A1:A4,0)", 4],
    ["MATCH(24,A1:A4,1)", "#N/A"],
    ['MATCH("x",A1:A4,1)', "#N/A"],
    ["LOOKUP(4.19,B1:B5,C1:C5)", "orange"],
    ["LOOKUP(5.75,B1:B5,C1:C5)", "yellow"],
    ["LOOKUP(7.66,B1:B5,C1:C5)", "blue"],
    ["LOOKUP(0,B1:B5,C1:C5)", "#N/A"],
    ["LOOKUP(5.75,B1:B5)", 5.17],
    ["SMALL(D1:D9,4)", 4],
    ["SMALL(D1:D9,10)", "#NUM!"],
    // texts, empty cells and errors are passed over
    ["MATCH(3,E1:E6,1)", 2],
    ["MATCH(10^9,E1:E6,1)", 5],
    ["ROWS(A1:C4)", 4],
    ["ROW(C3)", 3],
  ])("%s", (formula, expected) => expect(workedOut(formula, rising)).toBe(expected));

  const grades: readonly Value[][] = [
    [89, 93, 96, 85, 91, 88],
    [1, 2, 2, 3, 1, 1],
  ];
  it.each([
    ["MAXIFS(A1:A6,B1:B6,1)", 91],
    ["MINIFS(A1:A6,B1:B6,1)", 88],
    ["MAXIFS(A1:A6,B1:B6,9)", 0],
    ['MAXIFS(A1:A6,B1:B6,">1",A1:A6,"<96")', 93],
  ])("%s", (formula, expected) => expect(workedOut(formula, grades)).toBe(expected));

  // "COUNTIF": a criterion of "" or an empty text counts empty cells and ""; a number counts texts that read as it
  const odd: readonly Value[][] = [
    [null, "", "5", 5, "k:*", "k:x", true, NA],
    [1, null],
  ];
  it.each([
    ['COUNTIF(A1:A8,"")', 2],
    ["COUNTIF(A1:A8,5)", 2],
    ['COUNTIF(A1:A8,"5")', 2],
    ['COUNTIF(A1:A8,"=")', 1],
    ['COUNTIF(A1:A8,"<>")', 7],
    ['COUNTIF(A1:A8,"k:*")', 2],
    ['COUNTIF(A1:A8,"k:~*")', 1],
    ["COUNTIF(A1:A8,TRUE)", 1],
    ['COUNTIF(A1:A8,"#N/A")', 1],
    ['COUNTIF(C1:C9,"")', 9],
    // an empty cell as the criterion counts as 0
    ["COUNTIF(A1:A8,B2)", 0],
    ['MATCH("5",A1:A8,0)', 3],
    ["MATCH(5,A1:A8,0)", 4],
    ['MATCH("",A1:A8,0)', 2],
    ["LARGE(A1:A8,1)", "#N/A"],
  ])("%s", (formula, expected) => expect(workedOut(formula, odd)).toBe(expected));
});

describe("what is another engine's is said", () => {
  it.each([
    ["OFFSET(A1,1,0)", "not known: OFFSET"],
    ["Nowhere+1", "not known: Nowhere"],
    ["Elsewhere!A1", "not known: Elsewhere!A1"],
    // a name without $ means other cells in every cell
    ["Left+1", "not known: Left"],
    ["MATCH(1,A1:A9)", "not known: MATCH(1,A1:A9)"],
    ["A1:A3 A2:A4", "not known:  "],
    ["SUM(H:H)", "not known: the formula reads its own column"],
    ["1+", "not known: 1+"],
    ["[1]Sheet1!A1", "not known: [1]Sheet1!A1"],
    ["TUBE.FRTOMM(A1)", "not known: TUBE.FRTOMM"],
  ])("%s", (formula, expected) => expect(workedOut(formula)).toBe(expected));

  it("formulas that stand on each other are nobody's", () => {
    const reader = new Reader({ sheets: ["S"], tables: [], names: [], today: 0, ours: () => undefined });
    reader.fill({ sheet: "S", row: 0, column: 0 }, 0, "B1+1");
    reader.fill({ sheet: "S", row: 0, column: 1 }, 0, "A1+1");
    reader.fill({ sheet: "S", row: 0, column: 2 }, 0, "1+1");
    reader.work();
    expect(reader.unknown.map(({ column }) => column).sort()).toEqual([0, 1]);
    expect(reader.at({ sheet: "S", row: 0, column: 2 })).toBe(2);
  });

  it("a chain of ten thousand formulas is worked out", () => {
    const reader = new Reader({ sheets: ["S"], tables: [], names: [], today: 0, ours: () => undefined });
    reader.put({ sheet: "S", row: 0, column: 0 }, 1);
    for (let row = 1; row < 10_000; row++)
      reader.fill({ sheet: "S", row, column: row % 2 }, row, `${row % 2 ? "A" : "B"}${row}+1`);
    reader.work();
    expect(reader.at({ sheet: "S", row: 9_999, column: 1 })).toBe(10_000);
  });
});

describe("a change", () => {
  it("works out what reads the cell, and what reads that", () => {
    const reader = new Reader({ sheets: ["S"], tables: [], names: [], today: 0, ours: () => undefined });
    for (let row = 0; row < 10; row++) {
      reader.put({ sheet: "S", row, column: 0 }, row % 3);
      reader.put({ sheet: "S", row, column: 1 }, row);
    }
    reader.fill({ sheet: "S", row: 0, column: 2 }, 9, "COUNTIFS(A$1:A$10,A1)");
    reader.fill({ sheet: "S", row: 0, column: 3 }, 9, 'IF(C1>3,"many","few")&B1');
    reader.work();
    expect(reader.at({ sheet: "S", row: 0, column: 3 })).toBe("many0");
    // A1 held 0, as did A4, A7 and A10: four cells each give 3 now, and A1 stands alone
    const given = reader.change([{ sheet: "S", row: 0, column: 0, value: 9 }]);
    expect(given.map(({ row, column }) => `${column} ${row}`).sort()).toEqual([
      "2 0",
      "2 3",
      "2 6",
      "2 9",
      "3 0",
      "3 3",
      "3 6",
      "3 9",
    ]);
    expect(reader.at({ sheet: "S", row: 0, column: 2 })).toBe(1);
    expect(reader.at({ sheet: "S", row: 9, column: 3 })).toBe("few9");
  });

  it("over a formula stays, and is read like any other cell", () => {
    const reader = new Reader({ sheets: ["S"], tables: [], names: [], today: 0, ours: () => undefined });
    reader.put({ sheet: "S", row: 0, column: 0 }, 1);
    reader.fill({ sheet: "S", row: 0, column: 1 }, 0, "A1*2");
    reader.fill({ sheet: "S", row: 0, column: 2 }, 0, "B1*2");
    reader.work();
    reader.change([{ sheet: "S", row: 0, column: 1, value: 100 }]);
    reader.change([{ sheet: "S", row: 0, column: 0, value: 7 }]);
    expect(reader.at({ sheet: "S", row: 0, column: 2 })).toBe(200);
  });
});
