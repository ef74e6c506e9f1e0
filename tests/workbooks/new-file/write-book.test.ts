/** A new file with every feature, read by two programs that did not write it, by our own reader and by an XML parser. */
import type ExcelJS from "exceljs";
import { beforeAll, describe, expect, it } from "vitest";
import type { WorkBook } from "@e965/xlsx";
import type { BookDescription, SheetDescription, TableDescription } from "../../../src/caseload/book";
import { formula } from "../../../src/columns/formula";
import { isRefusal, openPackage, patchPackage, type OpenedPackage } from "../../../taskpane/workbook/package";
import { writeBook } from "../../../taskpane/workbook/file";
import { COMMA_LIST, everything, LONG_LIST, TREACHEROUS } from "./book";
import { all, byExcelJs, bySheetJs, parsed, partsOf, sheetJsCell } from "./reading";

const LIST = "Nina's list";
let bytes: Uint8Array;
let js: ExcelJS.Workbook;
let sheetJs: WorkBook;
let parts: ReadonlyMap<string, string>;
let ours: OpenedPackage;
beforeAll(async () => {
  bytes = await writeBook(everything);
  js = await byExcelJs(bytes);
  sheetJs = bySheetJs(bytes);
  parts = partsOf(bytes);
  const opened = openPackage(bytes);
  if (isRefusal(opened)) throw new Error(opened.refused);
  ours = opened;
});

const list = () => js.getWorksheet(LIST)!;
const part = (name: string) => parsed(parts.get(name)!);

describe("the package", () => {
  it("is well-formed XML in every part", () => {
    expect(parts.size).toBeGreaterThan(10);
    for (const [name, xml] of parts) expect(() => parsed(xml), name).not.toThrow();
  });

  it("names every part, and nothing that is not there", () => {
    const types = part("[Content_Types].xml");
    const named = all(types, "Override").map(({ attributes }) => attributes["PartName"]!.slice(1));
    const plain = [...parts.keys()].filter((name) => !name.endsWith(".rels") && name !== "[Content_Types].xml");
    expect(named.sort()).toEqual(plain.sort());
  });

  it("has the elements of each sheet in the order that Excel asks for", () => {
    // ECMA-376 part 1, CT_Worksheet (18.3.1.99), those that are written here.
    const order =
      "sheetPr dimension sheetViews sheetFormatPr cols sheetData mergeCells conditionalFormatting dataValidations pageMargins pageSetup headerFooter ignoredErrors tableParts".split(
        " ",
      );
    for (const number of [1, 2, 3, 4]) {
      const places = part(`xl/worksheets/sheet${number}.xml`).children.map(({ name }) => order.indexOf(name));
      expect(places).not.toContain(-1);
      expect(places).toEqual([...places].sort((a, b) => a - b));
    }
  });

  it("is the same, byte for byte, for the same description", async () => {
    expect(Buffer.compare(await writeBook(everything), bytes)).toBe(0);
  });

  it("tells of nobody, and asks for no full calculation, which would lose the values of our functions elsewhere", () => {
    const core = part("docProps/core.xml");
    expect(core.children.map(({ name, text }) => [name, text])).toEqual([["dc:title", "Invented <book> & more"]]);
    expect(all(part("xl/workbook.xml"), "calcPr").map(({ attributes }) => attributes)).toEqual([{ calcId: "191029" }]);
  });

  it("is opened by our own reader and left byte for byte as it was when nothing changes", () => {
    expect(ours.sheets.map(({ name, state }) => [name, state])).toEqual([
      ["Read first", "visible"],
      [LIST, "visible"],
      ["Settings", "visible"],
      ["Lists", "hidden"],
    ]);
    const saved = patchPackage(ours, { sheets: new Map() });
    if (isRefusal(saved)) throw new Error(saved.refused);
    const again = partsOf(saved.bytes);
    expect([...again.keys()].sort()).toEqual([...parts.keys()].sort());
    for (const [name, xml] of parts) expect(again.get(name) === xml, name).toBe(true);
  });
});

describe("texts, numbers and dates", () => {
  it("keeps a text a text, whatever it looks like", () => {
    const book = { sheets: [{ name: "S", cells: TREACHEROUS.map((value, row) => ({ row, column: 0, value })) }], names: [] };
    return writeBook(book).then(async (written) => {
      const [one, other] = [await byExcelJs(written), bySheetJs(written)];
      TREACHEROUS.forEach((text, row) => {
        expect(one.getWorksheet("S")!.getCell(row + 1, 1).value).toBe(text);
        expect(sheetJsCell(other, "S", `A${row + 1}`)).toMatchObject({ t: "s", v: text });
        expect(sheetJsCell(other, "S", `A${row + 1}`)?.f).toBeUndefined();
      });
      const xfs = all(parsed(partsOf(written).get("xl/styles.xml")!), "xf");
      expect(xfs.filter(({ attributes }) => attributes["quotePrefix"] === "1")).toHaveLength(1);
    });
  });

  it("keeps identifiers and lots in the text format, and markup in texts", () => {
    expect(list().getCell("A7").value).toBe("007");
    expect(list().getCell("A7").numFmt).toBe("@");
    expect(list().getCell("B6").value).toBe("1E5");
    expect(sheetJsCell(sheetJs, LIST, "M9")?.v).toBe(" two\nlines & <tag> _x0041_");
    expect([...ours.cells(LIST)].find(({ ref }) => ref === "M9")?.value).toBe(" two\nlines & <tag> _x0041_");
  });

  it("lets Excel not mark identifiers that look like numbers", () => {
    expect(all(part("xl/worksheets/sheet2.xml"), "ignoredError").map(({ attributes }) => attributes)).toEqual([
      { sqref: "A5:A10004 B5:B10004", numberStoredAsText: "1" },
    ]);
  });

  it("writes dates as day numbers with their format", () => {
    expect(sheetJsCell(sheetJs, LIST, "C5")).toMatchObject({ t: "n", v: 46_000, z: "d mmm yyyy" });
    // Day 46,000 is 9 December 2025 (calendar: 1 January 2026 is 46,023).
    expect(list().getCell("C5").value).toEqual(new Date(Date.UTC(2025, 11, 9)));
  });

  it("refuses what a cell cannot hold", async () => {
    const holding = (value: number | string): BookDescription => ({
      sheets: [{ name: "S", cells: [{ row: 0, column: 0, value }] }],
      names: [],
    });
    await expect(writeBook(holding(Number.NaN))).rejects.toThrow("cannot hold NaN");
    await expect(writeBook(holding("x".repeat(32_768)))).rejects.toThrow("longer than a cell holds");
  });
});

describe("the table", () => {
  it("has its name, range, columns, filter buttons", () => {
    const [table] = ours.tables;
    expect(table).toMatchObject({ name: "Invented_list", ref: "A4:M9", headerRowCount: 1, totalsRowCount: 0 });
    expect(table?.filter).toMatchObject({ ref: "A4:M9", isActive: false });
    expect(table?.columns.map(({ name }) => name)).toEqual(
      everything.sheets[1]!.table!.columns.map(({ header }) => header),
    );
    const held = (list() as unknown as { tables: Record<string, { table: { tableRef: string; name: string } }> }).tables;
    expect(Object.values(held).map(({ table: one }) => [one.name, one.tableRef])).toEqual([["Invented_list", "A4:M9"]]);
  });

  it("has one formula a column, and the same in every cell, in the spelling of files", () => {
    const formulas = Object.fromEntries(
      ours.tables[0]!.columns.flatMap(({ name, calculatedColumnFormula: text }) => (text ? [[name, text]] : [])),
    );
    expect(formulas).toEqual({
      "Days in place":
        'IF(ISNUMBER(Invented_list[[#This Row],[Device in]]),As_of-Invented_list[[#This Row],[Device in]],"no date")',
      "Size mm": "_xldudf_TUBE_FRTOMM(Invented_list[[#This Row],[Size Fr]])",
      Latest:
        'IF(COUNTIFS(Invented_list[ID],Invented_list[[#This Row],[ID]],Invented_list[Device in],">0")=0,"",' +
        "_xlfn.MAXIFS(Invented_list[Device in],Invented_list[ID],Invented_list[[#This Row],[ID]]))",
      "Is large": "N(Invented_list[[#This Row],[Size Fr]])>=20",
      "Odd again": `IF(EXACT(Invented_list[[#This Row],[O''dd '['#'] & <name>]],"yes"),1,NA())`,
    });
    for (let row = 5; row <= 9; row++) {
      expect(list().getCell(`F${row}`).formula).toBe(formulas["Size mm"]);
      expect(list().getCell(`K${row}`).formula).toBe(formulas["Odd again"]);
      /* SheetJS takes prefixes of newer functions off. */
      expect(sheetJsCell(sheetJs, LIST, `G${row}`)?.f).toBe(formulas["Latest"]!.replace("_xlfn.", ""));
    }
  });

  it("stores a result beside every formula: number, text, yes or no, error", () => {
    expect(sheetJsCell(sheetJs, LIST, "E5")).toMatchObject({ t: "n", v: 352 });
    expect(sheetJsCell(sheetJs, LIST, "E7")).toMatchObject({ t: "s", v: "no date" });
    expect(sheetJsCell(sheetJs, LIST, "H6")).toMatchObject({ t: "b", v: true });
    expect(sheetJsCell(sheetJs, LIST, "K6")).toMatchObject({ t: "e", w: "#N/A" });
    expect(list().getCell("E7").result).toBe("no date");
    expect(list().getCell("H6").result).toBe(true);
    expect(list().getCell("K6").result).toEqual({ error: "#N/A" });
    expect(sheetJsCell(sheetJs, LIST, "F7")).toMatchObject({ t: "s", v: "" });
  });

  it("shows groups above the headers, hides what only formulas read, freezes the left and the headers", () => {
    expect(["A3", "B3", "C3", "D3"].map((address) => list().getCell(address).value)).toEqual([
      "Person",
      null,
      "Device",
      null,
    ]);
    expect(list().getColumn("G").hidden).toBe(true);
    expect(list().getColumn("M").width).toBe(40);
    expect(list().views[0]).toMatchObject({ state: "frozen", xSplit: 1, ySplit: 4, topLeftCell: "B5" });
  });

  it("lets a cell inside it have its own look and format, and keeps its value", () => {
    expect(list().getCell("D7").numFmt).toBe("0.0");
    expect(list().getCell("D6").numFmt).toBe("0.##");
    expect(list().getCell("D7").value).toBeNull();
  });
});

describe("what may be entered", () => {
  const rules = () => all(part("xl/worksheets/sheet2.xml"), "dataValidation");
  const rule = (column: string) => rules().find(({ attributes }) => attributes["sqref"]!.startsWith(`${column}5:`))!;
  const validationAt = (address: string) => list().getCell(address).dataValidation;

  it("reaches far below the last row", () => {
    expect(rules().map(({ attributes }) => attributes["sqref"])).toEqual(
      ["A", "C", "D", "I", "J", "L"].map((column) => `${column}5:${column}10004`),
    );
  });

  it("stops or asks, with its sentence and its hint", () => {
    expect(rule("A").attributes).toMatchObject({
      type: "custom",
      errorStyle: "warning",
      errorTitle: "Two rows",
      error: "Another row has this ID.",
      prompt: "The clinic's own, no name.",
      showErrorMessage: "1",
      showInputMessage: "1",
      allowBlank: "1",
    });
    expect(rule("A").children.map(({ text }) => text)).toEqual(["COUNTIF(All_IDs,A5)=1"]);
    expect(rule("D").attributes).toMatchObject({ type: "decimal", error: 'French, 5 to 30 <& "no" mm>.' });
    expect(rule("D").attributes["errorStyle"]).toBeUndefined();
    expect(rule("D").attributes["showInputMessage"]).toBeUndefined();
  });

  it("is read by another program: whole day numbers, lists in the rule and lists on the hidden sheet", () => {
    expect(validationAt("C5")).toMatchObject({ type: "whole", formulae: [36_526, 73_050] });
    expect(validationAt("J5")).toMatchObject({ type: "list", formulae: ['"yes,no"'], errorStyle: "warning" });
    expect(validationAt("I5")).toMatchObject({ type: "list", formulae: ["'Lists'!$A$1:$A$3"] });
    expect(validationAt("L9")).toMatchObject({ type: "list", formulae: ["'Lists'!$B$1:$B$30"] });
    const lists = js.getWorksheet("Lists")!;
    expect(lists.state).toBe("hidden");
    expect(COMMA_LIST.map((_, row) => lists.getCell(row + 1, 1).value)).toEqual(COMMA_LIST);
    expect(LONG_LIST.map((_, row) => lists.getCell(row + 1, 2).value)).toEqual(LONG_LIST);
    expect(js.getWorksheet("Settings")!.getCell("B1").dataValidation).toMatchObject({
      type: "whole",
      formulae: [1, 2000],
    });
  });

  it("cuts a title and refuses a sentence that is longer than Excel shows, and formulas that Excel does not take in a rule", async () => {
    const first = everything.sheets[1]!.table!.columns[0]!;
    const holding = (validation: object): BookDescription => ({
      sheets: [
        {
          name: "S",
          cells: [],
          table: { name: "T", top: 0, left: 0, rows: [[null]], columns: [{ ...first, group: undefined, validation }] },
        } as unknown as SheetDescription,
      ],
      names: [],
    });
    const rule = { ...first.validation!, formula: formula`TRUE` };
    const long = { ...rule, title: "First balloon check, after the stoma is made" };
    const [cut] = all(parsed(partsOf(await writeBook(holding(long))).get("xl/worksheets/sheet1.xml")!), "dataValidation");
    expect(cut!.attributes["errorTitle"]).toBe("First balloon check, after the…");
    await expect(writeBook(holding({ ...rule, sentence: "x".repeat(226) }))).rejects.toThrow("longer than 225");
    await expect(writeBook(holding({ ...rule, formula: formula`COUNTIF(T[ID],1)=1` }))).rejects.toThrow("Table[Column]");
    const wordy = formula`OR(${Array.from({ length: 40 }, (_, i) => `A1=${i}00`).join(",")})`;
    await expect(writeBook(holding({ ...rule, formula: wordy }))).rejects.toThrow("longer than 255");
    await expect(writeBook(holding({ ...rule, formula: formula`TUBE.FRTOMM(1)>0` }))).rejects.toThrow("our functions");
  });
});

describe("words in colour", () => {
  const formats = () =>
    (list() as unknown as { conditionalFormattings: { ref: string; rules: Record<string, unknown>[] }[] })
      .conditionalFormattings;

  it("is by words and by formula, far below the last row, the first rule first", () => {
    expect(formats().map(({ ref }) => ref)).toEqual(["E5:E10004", "I5:I10004"]);
    const [days, checked] = formats();
    expect(days!.rules.map(({ type, priority, formulae }) => [type, priority, formulae])).toEqual([
      ["expression", 1, ['EXACT(E5,"no date")']],
      ["expression", 2, ['OR(EXACT(E5,"past limit"),EXACT(LEFT(E5,8),"overdue "))']],
      ["expression", 3, ["AND(ISNUMBER(C5),As_of-C5>Most_days)"]],
    ]);
    expect(checked!.rules[0]).toMatchObject({ formulae: ['EXACT(A5,"D-002")'] });
  });

  it("says more than colour: what asks to act is bold, missing is slanted", () => {
    const [missing, urgent] = formats()[0]!.rules as { style: { font: { bold?: boolean; italic?: boolean } } }[];
    expect(urgent!.style.font.bold).toBe(true);
    expect(missing!.style.font.italic).toBe(true);
  });
});

describe("names and print", () => {
  it("has today, one cell and a table's column under their names", () => {
    expect(ours.definedNames.map(({ name, sheetName, text }) => [name, sheetName, text])).toEqual([
      ["As_of", undefined, "TODAY()"],
      ["Most_days", undefined, "Settings!$B$1"],
      ["All_IDs", undefined, "Invented_list[ID]"],
      ["_xlnm.Print_Titles", LIST, "'Nina''s list'!$A:$A,'Nina''s list'!$4:$4"],
    ]);
    expect(sheetJs.Workbook?.Names?.find(({ Name }) => Name === "Most_days")?.Ref).toBe("Settings!$B$1");
  });

  it("prints on A4 with page numbers, the header row on every page", () => {
    expect(list().pageSetup).toMatchObject({
      orientation: "landscape",
      paperSize: 9,
      fitToPage: true,
      fitToWidth: 1,
      fitToHeight: 0,
      printTitlesRow: "4:4",
    });
    expect(list().headerFooter.oddFooter).toBe("&LInvented list&RPage &P of &N");
    expect(js.getWorksheet("Read first")!.headerFooter.oddFooter).toBe("&L 24 h && more&RPage &P of &N");
  });

  it("spreads a list over more pages rather than printing it too small to read", async () => {
    const wide: TableDescription = {
      name: "Wide",
      top: 0,
      left: 0,
      columns: Array.from({ length: 50 }, (_, i) => ({ header: `H${i}`, width: 10, format: "General", kind: "typed" })),
      rows: [[]],
    };
    const print = { landscape: true, footer: "" };
    const book = await byExcelJs(await writeBook({ sheets: [{ name: "S", cells: [], table: wide, print }], names: [] }));
    // 500 characters, 220 on a page.
    expect(book.getWorksheet("S")!.pageSetup.fitToWidth).toBe(3);
  });
});

describe("a long text across columns", () => {
  it("is merged, wrapped and tall enough", () => {
    const sheet = js.getWorksheet("Read first")!;
    expect(sheet.getCell("C4").master.address).toBe("B4");
    expect(sheet.getCell("B4").alignment.wrapText).toBe(true);
    // 103 characters over columns of 60 and 20: two lines of 15 points.
    expect(sheet.getRow(4).height).toBe(30);
  });
});

describe("a description that Excel would have to repair", () => {
  const sheet = (name: string, more: Partial<SheetDescription> = {}): SheetDescription => ({ name, cells: [], ...more });
  const table = (name: string, headers = ["ID"]): TableDescription => ({
    name,
    top: 0,
    left: 0,
    columns: headers.map((header) => ({ header, width: 9, format: "General", kind: "typed" })),
    rows: [[null]],
  });
  it.each([
    ["two sheets of one name", [sheet("Tubes"), sheet("tubes")], "stands twice"],
    ["a name that Excel refuses", [sheet("a/b")], "cannot name a sheet"],
    ["two tables of one name", [sheet("A", { table: table("T") }), sheet("B", { table: table("t") })], "stands twice"],
    ["two headers of one name", [sheet("A", { table: table("T", ["ID", "id"]) })], "stands twice"],
    ["a table without a row", [sheet("A", { table: { ...table("T"), rows: [] } })], "needs a row"],
    [
      "two cells in one place",
      [sheet("A", { table: table("T"), cells: [{ row: 0, column: 0, value: "x" }] })],
      "Two things stand in A A1",
    ],
    [
      "a text across another cell",
      [
        sheet("A", {
          cells: [
            { row: 0, column: 1, value: "x" },
            { row: 0, column: 0, value: "wide", across: 2 },
          ],
        }),
      ],
      "Two things stand in A B1",
    ],
  ])("is refused: %s", async (_, sheets, sentence) => {
    await expect(writeBook({ sheets, names: [] })).rejects.toThrow(sentence);
  });
});
