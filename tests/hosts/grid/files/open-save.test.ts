/** Workbooks of other programs: opened in the real engine, changed through the port or as a person would, saved, compared. */
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { read as readElsewhere, type CellObject, type WorkSheet } from "@e965/xlsx";
import { SaxesParser } from "saxes";
import { unzipSync } from "fflate";
import { readXlsx } from "hucre/xlsx";
import { formula, type FormulaTemplate } from "../../../../src/columns/formula";
import { parseArea } from "../../../../taskpane/workbook/area";
import { gridOn } from "../../../../taskpane/workbook/embedded/face";
import type { Grid } from "../../../../taskpane/workbook/embedded/interface";
import type { Engine } from "../../../../taskpane/workbook/embedded/engine";
import { isRefusal, openPackage } from "../../../../taskpane/workbook/package";
import type { NewColumn, NewSheet, Receipt, Step } from "../../../../taskpane/workbook/port";
import { atRest } from "../at-rest";
import { startHeadless } from "../headless";

const FILES = new URL("../../../workbooks/files/", import.meta.url);
const file = (name: string) => new Uint8Array(readFileSync(new URL(name, FILES)));
const openable = readdirSync(FILES).filter((name) => !isRefusal(openPackage(file(name))));

/** 20 April 2026, an invented today. */
const TODAY = 46_132;

let engine: Engine;
let grid: Grid;
const said: string[] = [];
beforeAll(() => {
  engine = startHeadless();
  grid = gridOn(engine, {
    today: TODAY,
    dayFirst: true,
    say: (sentence) => said.push(sentence),
    hush: () => undefined,
  });
});
afterAll(() => engine.univer.dispose());

async function opened(name: string): Promise<Uint8Array> {
  const bytes = file(name);
  expect((await grid.open(bytes, name)).outcome).toBe("opened");
  return bytes;
}

async function saved(): Promise<{ bytes: Uint8Array; report: readonly string[] }> {
  const outcome = await grid.save();
  if (outcome.outcome === "refused") throw new Error(outcome.sentence);
  return outcome;
}

/** Names of parts that are not byte for byte the same. */
function changedParts(before: Uint8Array, after: Uint8Array): string[] {
  const [one, other] = [unzipSync(before), unzipSync(after)];
  return Object.keys({ ...one, ...other })
    .filter((name) => !one[name] || !other[name] || Buffer.compare(one[name], other[name]) !== 0)
    .sort();
}

/** As a reader that did not write it understands it. */
const elsewhere = (bytes: Uint8Array) => readElsewhere(bytes, { cellFormula: true, cellNF: true, cellStyles: true });
const cellOf = (sheet: WorkSheet, address: string) => sheet[address] as CellObject | undefined;

/** Throws for what is no XML. */
const strict = (xml: string): void => void new SaxesParser({ xmlns: true }).write(xml).close();

type Told = { readonly v?: unknown; readonly f?: string | undefined; readonly z?: unknown } | undefined;

/** The same by another reader, which knows XML with prefixes. */
async function prefixed(bytes: Uint8Array, sheetName: string): Promise<(address: string) => Told> {
  const book = await readXlsx(bytes, { readStyles: true });
  const sheet = book.sheets.find((one) => one.name === sheetName)!;
  return (address) => {
    const { top, left } = parseArea(address)!;
    const cell = sheet.cells?.get(`${top},${left}`);
    const value = cell?.formulaResult ?? cell?.value ?? sheet.rows[top]?.[left];
    const v = value instanceof Date ? value.getTime() / 86_400_000 + 25_569 : value;
    return { v, f: cell?.formula, z: cell?.style?.numFmt };
  };
}

const sheetNamed = (name: string) => engine.api.getActiveWorkbook()!.getSheetByName(name)!;

async function apply(...steps: Step[]): Promise<Receipt> {
  const receipt = await grid.workbook.apply(
    { steps, expects: [] },
    { report: () => undefined, signal: new AbortController().signal },
  );
  expect(receipt.outcome, receipt.sentence).toBe("done");
  return receipt;
}

const column = (header: string, template: FormulaTemplate, format = "General"): NewColumn => ({
  header,
  formula: template,
  format,
});

describe("a workbook that nobody changed", () => {
  it.each(openable)("%s is saved byte for byte as it was", async (name) => {
    const before = await opened(name);
    await atRest();
    expect(grid.isChanged()).toBe(false);
    const after = await saved();
    expect(changedParts(before, after.bytes)).toEqual([]);
    expect(after.report).toEqual([]);
  });
});

describe("columns added to a table", () => {
  const size = { header: "Tube #", index: 3 };
  const last = { header: "Last change", index: 4 };
  const notes = { header: "Notes [x]", index: 8 };
  const added = [
    column("Change due", formula`IF(ISNUMBER(${last}),TUBE.CHANGEDUE(${last},3),"no date")`, "d mmm yyyy"),
    column("Size mm", formula`IF(${size}="","",TUBE.FRTOMM(${size}))`, "0.0"),
    column("Long note", formula`LEN(${notes})>20`),
  ];

  it.each(["table-with-totals.xlsx", "prefixed-single-quoted.xlsx"])(
    "%s: structured formulas, values and formats; nothing else changes",
    async (name) => {
      const before = await opened(name);
      await apply({ kind: "addColumns", to: { table: "Caseload" }, columns: added });
      const after = await saved();
      expect(after.report).toEqual([]);
      const parts = changedParts(before, after.bytes);
      expect(parts).toContain("xl/tables/table1.xml");
      expect(parts).toContain("xl/worksheets/sheet1.xml");
      expect(
        parts.filter((part) => !/^xl\/(tables\/table1|worksheets\/sheet1|styles|calcChain)\.xml$/.test(part)),
      ).toEqual(parts.filter((part) => part === "[Content_Types].xml" || part === "xl/_rels/workbook.xml.rels"));
      const sheet = elsewhere(after.bytes).Sheets["Tube list"]!;
      const told =
        name === "prefixed-single-quoted.xlsx"
          ? await prefixed(after.bytes, "Tube list")
          : (address: string): Told => cellOf(sheet, address);
      expect(told("J5")?.v).toBe("Change due");
      expect(told("K5")?.v).toBe("Size mm");
      expect(told("L5")?.v).toBe("Long note");
      // row 6: 27 October 2025 and three months, 14 Fr in full-width digits
      expect(told("J6")).toMatchObject({ v: 46_049, z: "d mmm yyyy" });
      expect(told("J6")?.f).toBe(
        'IF(ISNUMBER(Caseload[[#This Row],[Last change]]),_xldudf_TUBE_CHANGEDUE(Caseload[[#This Row],[Last change]],3),"no date")',
      );
      expect(told("K6")).toMatchObject({ v: 14 / 3, z: "0.0" });
      expect(told("L6")?.f).toBe("LEN(Caseload[[#This Row],[Notes '[x']]])>20");
      // row 7: the date is a text nobody can read, so no answer
      expect(told("J7")?.v).toBe("no date");
      expect(told("J66")?.f).toBeUndefined();
      const [table] = (openPackage(after.bytes) as Exclude<ReturnType<typeof openPackage>, { refused: string }>).tables;
      expect(table).toMatchObject({ name: "Caseload", ref: "A5:L66", totalsRowCount: 1 });
      expect(table!.columns.slice(9).map((one) => one.name)).toEqual(["Change due", "Size mm", "Long note"]);
      expect(table!.columns[10]!.calculatedColumnFormula).toBe(
        "IF(Caseload[[#This Row],[Tube " + "'#]]" + '="","",_xldudf_TUBE_FRTOMM(Caseload[[#This Row],[Tube ' + "'#]]))",
      );
    },
  );

  it("is one undo, after which the file is as it was", async () => {
    const before = await opened("table-with-totals.xlsx");
    await apply({ kind: "addColumns", to: { table: "Caseload" }, columns: added });
    await engine.api.getActiveWorkbook()!.undo();
    await atRest();
    const overview = await grid.workbook.overview();
    expect(overview.tables[0]!.columns).toHaveLength(9);
    expect(changedParts(before, (await saved()).bytes)).toEqual([]);
    await engine.api.getActiveWorkbook()!.redo();
    await atRest();
    expect((await grid.workbook.overview()).tables[0]!.columns.slice(9)).toEqual(added.map((one) => one.header));
  });

  it("is taken back without a trace", async () => {
    const before = await opened("table-with-totals.xlsx");
    const receipt = await apply(
      { kind: "defineName", name: "As_of", refersTo: "=TODAY()" },
      { kind: "addColumns", to: { table: "Caseload" }, columns: added },
    );
    expect(await grid.workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
    await atRest();
    expect(changedParts(before, (await saved()).bytes)).toEqual([]);
  });

  it("finds odd column names", async () => {
    await opened("list-odd-names.xlsx");
    const [table] = (await grid.workbook.overview()).tables;
    const slots = table!.columns.map((header, index) => ({ header, index }));
    const template = slots.reduce((sum, slot) => formula`${sum}&${slot}`, formula`""`);
    await apply({ kind: "addColumns", to: { table: table!.name }, columns: [column("All", template)] });
    const { bytes } = await saved();
    const again = openPackage(bytes) as Exclude<ReturnType<typeof openPackage>, { refused: string }>;
    const told = again.tables.find((one) => one.name === table!.name)!.columns.at(-1)!;
    expect(told.name).toBe("All");
    // opened once more, the structured form gives the same texts as the A1 form gave
    const before = await grid.workbook.read({ table: table!.name }, ["values"]);
    expect((await grid.open(bytes, "again.xlsx")).outcome).toBe("opened");
    const after = await grid.workbook.read({ table: table!.name }, ["values", "formulas"]);
    expect(after.values).toEqual(before.values);
    expect(after.formulas!.slice(1).every((row) => row.at(-1) !== null)).toBe(true);
  });
});

describe("columns added to a plain list", () => {
  it("go in as A1 formulas beside it, with As_of as TODAY()", async () => {
    const before = await opened("libreoffice-list.xlsx");
    const overview = await grid.workbook.overview();
    const list = { sheet: overview.sheets[0]!.id, area: parseArea("A3:G43")! };
    const late = formula`IF(ISNUMBER(${{ header: "Last", index: 3 }}),As_of-${{ header: "Last", index: 3 }},"")`;
    await apply(
      { kind: "defineName", name: "As_of", refersTo: "=TODAY()" },
      { kind: "addColumns", to: { list }, columns: [column("Days", late, "0")] },
    );
    expect((await grid.workbook.overview()).names.find((name) => name.name === "As_of")).toEqual({
      name: "As_of",
      refersTo: "=TODAY()",
      value: TODAY,
    });
    const { values } = await grid.workbook.read({ sheet: list.sheet, area: parseArea("D4:H43")! }, ["values"]);
    const day = values!.findIndex((row) => typeof row[0] === "number");
    expect(values![day]![4]).toBe(TODAY - (values![day]![0] as number));
    const after = await saved();
    const book = elsewhere(after.bytes);
    expect(book.Workbook!.Names!.find((name) => name.Name === "As_of")!.Ref).toBe("TODAY()");
    const sheet = book.Sheets[overview.sheets[0]!.name]!;
    expect(cellOf(sheet, "H3")?.v).toBe("Days");
    expect(cellOf(sheet, `H${day + 4}`)?.f).toBe(`IF(ISNUMBER(D${day + 4}),As_of-D${day + 4},"")`);
    expect(changedParts(before, after.bytes).filter((part) => /drawing|comment|chart|sheet[2-9]/.test(part))).toEqual(
      [],
    );
  });

  it("midnight moves As_of on and is no change of the workbook", async () => {
    await opened("libreoffice-list.xlsx");
    const { sheets } = await grid.workbook.overview();
    await apply(
      { kind: "defineName", name: "As_of", refersTo: "=TODAY()" },
      { kind: "writeFormula", sheet: sheets[0]!.id, row: 60, column: 0, formula: "=As_of+1" },
    );
    grid.markSaved();
    grid.setToday(TODAY + 1);
    await atRest();
    const place = { sheet: sheets[0]!.id, area: parseArea("A61")! };
    expect((await grid.workbook.read(place, ["values"])).values).toEqual([[TODAY + 2]]);
    expect(grid.isChanged()).toBe(false);
    grid.setToday(TODAY);
  });
});

describe("what a person changes", () => {
  it("a value: only its cell and what hangs on it", async () => {
    const before = await opened("table-with-totals.xlsx");
    sheetNamed("Tube list").getRange("G6").setValue(3);
    await atRest();
    expect(grid.isChanged()).toBe(true);
    const after = await saved();
    expect(changedParts(before, after.bytes)).toEqual(["xl/worksheets/sheet1.xml"]);
    const [old, now] = [elsewhere(before), elsewhere(after.bytes)].map((book) => book.Sheets["Tube list"]!);
    const different = Object.keys(now!).filter(
      (address) => !address.startsWith("!") && JSON.stringify(now![address].v) !== JSON.stringify(old![address]?.v),
    );
    // water out, the loss beside it, and the totals below
    expect(different.sort()).toEqual(["G6", "H6", "H66"].filter((address) => different.includes(address)));
    expect(different).toContain("G6");
    expect(cellOf(now!, "H6")).toMatchObject({ v: 2, f: cellOf(old!, "H6")!.f });
  });

  it("rows sorted: cells move with their styles, formulas keep the file's words", async () => {
    await opened("tables-on-two-sheets.xlsx");
    const size = formula`${{ header: "Size", index: 2 }}`;
    await apply({ kind: "addColumns", to: { table: "Adults" }, columns: [column("As typed", formula`""&${size}`)] });
    const { bytes } = await saved();
    expect((await grid.open(bytes, "sortable.xlsx")).outcome).toBe("opened");
    const sheet = sheetNamed("Adults");
    const ids = sheet.getRange("A4:A17").getRawValues().flat();
    sheet.getRange("A4:H17").sort([{ column: 0, ascending: false }]);
    await atRest();
    const sorted = [...ids].sort().reverse();
    expect(sheet.getRange("A4:A17").getRawValues().flat()).toEqual(sorted);
    const [old, now] = [bytes, (await saved()).bytes].map((one) => elsewhere(one).Sheets["Adults"]!);
    for (let row = 4; row <= 17; row++) {
      const from = 4 + ids.indexOf(cellOf(now!, `A${row}`)!.v as string);
      for (const letter of ["C", "D", "E"]) {
        const [before, after] = [cellOf(old!, letter + from), cellOf(now!, letter + row)];
        expect({ v: after?.v, z: after?.z, f: after?.f }).toEqual({ v: before?.v, z: before?.z, f: before?.f });
      }
      // the size as it stands in its row, as a text
      const size = cellOf(now!, `C${row}`)?.v ?? "";
      expect(cellOf(now!, `H${row}`)).toMatchObject({ f: '""&Adults[[#This Row],[Size]]', v: String(size) });
    }
  });

  it.each(["A4:A17", "B4:G17"])("%s of a list is not sorted alone: its rows would be torn apart", async (some) => {
    const before = await opened("tables-on-two-sheets.xlsx");
    said.length = 0;
    sheetNamed("Adults")
      .getRange(some)
      .sort([{ column: 0, ascending: false }]);
    await atRest();
    expect(said.join()).toContain(`Only ${some} would be sorted`);
    expect(changedParts(before, (await saved()).bytes)).toEqual([]);
  });

  it("rows with notes are not sorted: in the file a note would come to stand beside somebody else", async () => {
    const before = await opened("table-with-totals.xlsx");
    said.length = 0;
    sheetNamed("Tube list")
      .getRange("A6:I65")
      .sort([{ column: 0, ascending: false }]);
    await atRest();
    expect(said.join()).toMatch(/Rows with notes \(C8\)/);
    expect(changedParts(before, (await saved()).bytes)).toEqual([]);
  });

  it("a header of a table: the column is renamed, in the formulas of the file too", async () => {
    await opened("table-with-totals.xlsx");
    sheetNamed("Tube list").getRange("G5").setValue("Water back");
    await atRest();
    const { bytes, report } = await saved();
    expect(report.join()).toContain("Water back");
    const again = openPackage(bytes) as Exclude<ReturnType<typeof openPackage>, { refused: string }>;
    expect(again.tables[0]!.columns[6]!.name).toBe("Water back");
    const cell = [...again.cells("Tube list")].find((one) => one.ref === "H6")!;
    expect(cell.formula!.text).toContain("[Water back]");
  });

  it("bold and a number format: like the cell's own style, but so", async () => {
    await opened("table-with-totals.xlsx");
    const range = sheetNamed("Tube list").getRange("E6");
    range.setFontWeight("bold");
    range.setNumberFormat("yyyy-mm-dd");
    await atRest();
    const { bytes, report } = await saved();
    expect(report).toEqual([]);
    const again = openPackage(bytes) as Exclude<ReturnType<typeof openPackage>, { refused: string }>;
    const cell = [...again.cells("Tube list")].find((one) => one.ref === "E6")!;
    expect(again.numberFormat(cell.styleIndex)).toBe("yyyy-mm-dd");
    expect(cell.value).toBe(45_957);
  });

  it("a formula the engine cannot work out keeps its stored value, and so does its file", async () => {
    const before = await opened("error-cells.xlsx");
    const { sheets } = await grid.workbook.overview();
    const place = { sheet: sheets[0]!.id, area: parseArea("H4:H5")! };
    const block = await grid.workbook.read(place, ["values", "formulas"]);
    expect(block).toMatchObject({ values: [[0.8], [1]], formulas: [[null], [null]] });
    sheetNamed(sheets[0]!.name).getRange("A30").setValue("typed");
    await atRest();
    const { bytes } = await saved();
    const [old, now] = [before, bytes].map((one) => elsewhere(one).Sheets[sheets[0]!.name]!);
    for (const address of ["H4", "H5", "C11", "D10", "E9", "G11"]) {
      expect(now![address]).toEqual(old![address]);
    }
    expect(cellOf(now!, "A30")?.v).toBe("typed");
  });
});

describe("a sheet that is added", () => {
  const sheet: NewSheet = {
    name: "Kept beside & more",
    cells: [
      [
        { value: "Wörter", look: "header" },
        { value: "Day", look: "header" },
      ],
      ["03-04", { value: 46_132, format: "d mmm yyyy" }],
      ["=A1", { value: 46_142, formula: "=B2+10", format: "d mmm yyyy" }],
    ],
    widths: [30, 14],
    held: { rows: 1, columns: 0 },
    print: { landscape: true, titleRow: 0, footer: "Invented & kept" },
  };
  /** Of chart sheets and of other encodings one of the two readers knows nothing. */
  const otherwise = ["utf16-part.xlsx", "chartsheet-only-and-list.xlsx"];
  const own =
    /^(?:\[Content_Types\]\.xml|docProps\/app\.xml|xl\/(?:[wW]orkbook\.xml|_rels\/.*|styles\.xml|calcChain\.xml))$/;

  it.each([
    "list-odd-names.xlsx",
    "prefixed-single-quoted.xlsx",
    "utf16-part.xlsx",
    "many-sheets-other-language.xlsx",
    "libreoffice-list.xlsx",
    "chartsheet-only-and-list.xlsx",
    "with-macro.xlsm",
  ])("%s: comes into the file with what names it, and nothing else changes", async (name) => {
    const before = await opened(name);
    const receipt = await apply({ kind: "addSheet", sheet });
    const after = await saved();
    const added = Object.keys(unzipSync(after.bytes)).filter((part) => !(part in unzipSync(before)));
    expect(added).toHaveLength(1);
    expect(changedParts(before, after.bytes).filter((part) => !own.test(part))).toEqual(added);
    if (otherwise.includes(name)) {
      const last = elsewhere(after.bytes).Sheets["Kept beside & more"]!;
      expect(["A1", "A2", "A3"].map((cell) => cellOf(last, cell)?.v)).toEqual(["Wörter", "03-04", "=A1"]);
      expect(cellOf(last, "B3")).toMatchObject({ v: 46_142, f: "B2+10", z: "d mmm yyyy" });
    } else {
      const sheets = (await readXlsx(after.bytes, { readStyles: true })).sheets;
      const last = sheets.at(-1)!;
      expect(last.rows.slice(0, 3).map((row) => row[0])).toEqual(["Wörter", "03-04", "=A1"]);
      expect(last).toMatchObject({ name: "Kept beside & more", freezePane: { rows: 1 } });
      expect(last.cells?.get("0,0")?.style?.font?.bold).toBe(true);
      expect(last.cells?.get("2,1")?.formula).toBe("B2+10");
      // the file's own sheets are as they were, to another reader too
      const were = (await readXlsx(before)).sheets.map(({ rows }) => rows);
      expect(sheets.slice(0, -1).map(({ rows }) => rows)).toEqual(were);
    }
    const again = openPackage(after.bytes);
    if (isRefusal(again)) throw new Error(again.refused);
    const titles = again.definedNames.find((one) => one.name === "_xlnm.Print_Titles" && one.sheetName === sheet.name);
    expect(titles?.text).toBe("'Kept beside & more'!$1:$1");
    expect(await grid.workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
    expect(changedParts(before, (await saved()).bytes)).toEqual([]);
  });

  it.each(["table-with-totals.xlsx", "libreoffice-list.xlsx", null])(
    "%s: brings its charts along, drawn from its own cells",
    async (name) => {
      if (name === null) await grid.openEmpty();
      const before = name === null ? {} : unzipSync(await opened(name));
      const kinds = ["columns", "bars", "lines", "scatter"] as const;
      const charts = kinds.map((kind, i) => ({
        ...{ kind, title: `By ${kind} & more`, header: 0, rows: 2, names: 0, series: i === 0 ? [1, 2] : [1] },
        at: { row: 20 * i, column: 4 },
      }));
      const cells = [
        ["When", "Due", "Unplanned"],
        ["May", 3, 1],
        ["June", 5, 2],
      ];
      const receipt = await apply({ kind: "addSheet", sheet: { name: "It's drawn", cells, charts } });
      const { bytes } = await saved();
      const parts = unzipSync(bytes);
      const text = (part: string): string => new TextDecoder().decode(parts[part]);
      const drawn = Object.keys(parts)
        .filter((part) => /^xl\/charts\/chart\d+\.xml$/.test(part) && !(part in before))
        .map(text);
      expect(drawn).toHaveLength(4);
      for (const [part, bytesOf] of Object.entries(parts))
        if (/\.(xml|rels)$/.test(part) && /charts|drawings|Content_Types/.test(part))
          strict(new TextDecoder().decode(bytesOf));
      const asked = drawn.map((xml) => [...xml.matchAll(/<c:f>([^<]*)<\/c:f>/g)].map(([, f]) => f));
      expect(asked[0]).toEqual(
        ["$B$1", "$A$2:$A$3", "$B$2:$B$3", "$C$1", "$A$2:$A$3", "$C$2:$C$3"].map((ref) => `'It''s drawn'!${ref}`),
      );
      /* The sheet leads to its drawing and that to its charts, each of a type that the package tells. */
      const sheetPart = Object.keys(parts).find(
        (part) =>
          /worksheets\/[^/]+\.xml$/.test(part) &&
          !(part in before && name !== null) &&
          text(part).includes("<drawing "),
      )!;
      const drawing = /Target="\/([^"]+)"/.exec(
        text(sheetPart.replace("worksheets/", "worksheets/_rels/") + ".rels"),
      )![1]!;
      const led = [...text(drawing.replace("drawings/", "drawings/_rels/") + ".rels").matchAll(/Target="\/([^"]+)"/g)];
      expect(led.map(([, part]) => part! in parts)).toEqual([true, true, true, true]);
      for (const part of [drawing, ...led.map(([, one]) => one!)])
        expect(text("[Content_Types].xml")).toContain(`PartName="/${part}"`);
      expect(elsewhere(bytes).Sheets["It's drawn"]!.B3).toMatchObject({ v: 5 });
      if (process.env.CHARTS_TO) writeFileSync(process.env.CHARTS_TO, bytes);
      expect(await grid.workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
      if (name !== null) expect(changedParts(file(name), (await saved()).bytes)).toEqual([]);
    },
  );

  it("leaves the chain of calculation as it is where it holds no formula, and counts itself in the file's titles", async () => {
    const before = await opened("table-with-totals.xlsx");
    await apply({ kind: "addSheet", sheet: { name: "Notes", isHidden: true, cells: [["kept"]] } });
    const after = await saved();
    expect(Object.keys(unzipSync(after.bytes))).toEqual(expect.arrayContaining(Object.keys(unzipSync(before))));
    const app = new TextDecoder().decode(unzipSync(after.bytes)["docProps/app.xml"]);
    expect(app).toContain("<vt:lpstr>Notes</vt:lpstr>");
    const sheets = elsewhere(after.bytes).Workbook!.Sheets!;
    expect(sheets.at(-1)).toMatchObject({ name: "Notes", Hidden: 1 });
  });

  it("in a workbook from no file, and after its undo and redo", async () => {
    await grid.openEmpty();
    await apply({ kind: "addSheet", sheet });
    await engine.api.undo();
    await engine.api.redo();
    await atRest();
    const book = elsewhere((await saved()).bytes);
    expect(book.SheetNames).toEqual(["Sheet1", "Kept beside & more"]);
    expect(cellOf(book.Sheets["Kept beside & more"]!, "B3")).toMatchObject({ v: 46_142, f: "B2+10" });
  });
});

describe("a workbook from no file", () => {
  it("is saved with values, formulas, spills and formats", async () => {
    await grid.openEmpty();
    const sheet = engine.api.getActiveWorkbook()!.getActiveSheet();
    sheet.getRange("A1").setValue({ v: "007", t: 1 });
    sheet.getRange("A2").setValue({ v: 45_957, t: 2, s: { n: { pattern: "d mmm yyyy" }, bl: 1 } });
    sheet.getRange("B1").setFormula("=TUBE.FRTOMM(A4)");
    sheet.getRange("A4").setValue(12);
    sheet.getRange("D1").setFormula("=SEQUENCE(2,2)");
    await atRest();
    const { bytes } = await saved();
    const now = elsewhere(bytes).Sheets["Sheet1"]!;
    expect(cellOf(now, "A1")).toMatchObject({ t: "s", v: "007" });
    expect(cellOf(now, "A2")).toMatchObject({ v: 45_957, z: "d mmm yyyy" });
    expect(cellOf(now, "B1")).toMatchObject({ v: 4, f: "_xldudf_TUBE_FRTOMM(A4)" });
    expect(cellOf(now, "D1")).toMatchObject({ v: 1, F: "D1:E2" });
    expect(cellOf(now, "E2")?.v).toBe(4);
    expect((await grid.open(bytes, "new.xlsx")).outcome).toBe("opened");
    expect(engine.api.getActiveWorkbook()!.getActiveSheet().getRange("A1").getRawValue()).toBe("007");
  });
});

describe("what a file could not hold", () => {
  it.each([
    ["sheet.command.insert-row-before", /Rows are not inserted/],
    ["sheet.command.remove-col", /Columns are not inserted/],
    ["sheet.command.insert-sheet", /Sheets are not added/],
    ["sheet.command.set-worksheet-name", /Sheets are not added/],
    ["sheet.command.move-range", /Cells are not moved/],
  ])("%s is not begun, and a sentence says why", async (command, sentence) => {
    const before = await opened("table-with-totals.xlsx");
    said.length = 0;
    const sheet = engine.api.getActiveWorkbook()!.getActiveSheet();
    const range = { startRow: 5, endRow: 5, startColumn: 1, endColumn: 1 };
    const params = { unitId: engine.api.getActiveWorkbook()!.getId(), subUnitId: sheet.getSheetId(), range, name: "X" };
    await engine.api.executeCommand(command, params).catch(() => undefined);
    await atRest();
    expect(said.join()).toMatch(sentence);
    expect(changedParts(before, (await saved()).bytes)).toEqual([]);
  });

  it("a protected sheet is not typed into", async () => {
    const before = await opened("protected-sheet.xlsx");
    said.length = 0;
    engine.api.getActiveWorkbook()!.getSheets()[0]!.getRange("A1").setValue("x");
    await atRest();
    expect(said.join()).toMatch(/protected/);
    expect(changedParts(before, (await saved()).bytes)).toEqual([]);
  });

  it("a refused file leaves what was open", async () => {
    await opened("table-with-totals.xlsx");
    for (const name of ["encrypted.xlsx", "old-binary.xls", "not-a-workbook.xlsx", "truncated.xlsx", "doctype.xlsx"]) {
      const outcome = await grid.open(file(name), name);
      expect(outcome.outcome).toBe("refused");
    }
    expect((await grid.workbook.overview()).title).toBe("table-with-totals.xlsx");
  });
});
