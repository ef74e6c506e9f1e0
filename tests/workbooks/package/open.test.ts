import { strToU8 } from "fflate";
import { describe, expect, it } from "vitest";
import { isRefusal, openPackage } from "../../../taskpane/workbook/package";
import { encodeXml } from "../../../taskpane/workbook/xlsx/xml/encoding";
import { book, cellsOf, MAIN, oneSheet, opened, OFFICE, STYLES } from "./build";

const values = (bytes: Uint8Array) => Object.fromEntries([...cellsOf(bytes)].map(([ref, cell]) => [ref, cell.value]));
const formulas = (bytes: Uint8Array) =>
  Object.fromEntries([...cellsOf(bytes)].filter(([, cell]) => cell.formula).map(([ref, cell]) => [ref, cell.formula?.text]));

describe("cells", () => {
  it("of every type", () => {
    const bytes = oneSheet(
      `<row r="1"><c r="A1"><v>1.5e3</v></c><c r="B1" t="s"><v>1</v></c><c r="C1" t="inlineStr"><is><t>in</t><r><t>line</t></r></is></c>` +
        `<c r="D1" t="b"><v>1</v></c><c r="E1" t="e"><v>#N/A</v></c><c r="F1" t="str"><f>A1&amp;""</f><v></v></c>` +
        `<c r="G1" t="d"><v>2026-03-04</v></c><c r="H1" s="1"/><c r="I1" t="str"><f>"x"</f><v>a_x000d_b</v></c></row>`,
      {
        strings:
          `<sst xmlns="${MAIN}"><si><t>zero</t></si><si><r><rPr><b/></rPr><t xml:space="preserve">rich </t></r><r><t>text</t></r>` +
          `<rPh sb="0" eb="1"><t>not read</t></rPh></si></sst>`,
      },
    );
    expect(values(bytes)).toEqual({
      ...{ A1: 1500, B1: "rich text", C1: "inline", D1: true, E1: { error: "#N/A" }, F1: "", G1: "2026-03-04", H1: null, I1: "a\rb" },
    });
    expect(cellsOf(bytes).get("G1")?.type).toBe("date");
    expect(cellsOf(bytes).get("H1")).toMatchObject({ type: "blank", styleIndex: 1 });
  });

  it("with a prefix, single quotes, comments that look like cells, CDATA and odd spaces", () => {
    const bytes = book({
      sheets: [
        {
          name: "S",
          xml:
            `<?xml version='1.0'?><x:worksheet xmlns:x='${MAIN}'>\n<!--<x:c r='Z9'/>--><x:sheetData >\n<x:row r = '2'>` +
            `<x:c r='B2' t='inlineStr' ><x:is><x:t><![CDATA[<c r="A1">]]></x:t></x:is></x:c><!-- --><x:c r='D2'><x:f>A1&lt;2</x:f><x:v> 7\n</x:v></x:c>` +
            `</x:row></x:sheetData ></x:worksheet>`,
        },
      ],
    });
    expect(values(bytes)).toEqual({ B2: '<c r="A1">', D2: 7 });
    expect(formulas(bytes)).toEqual({ D2: "A1<2" });
  });

  it("without addresses, in rows without numbers", () => {
    const bytes = oneSheet(`<row><c><v>1</v></c><c r="D1"><v>2</v></c><c><v>3</v></c></row><row r="5"/><row><c><v>4</v></c></row>`);
    expect(values(bytes)).toEqual({ A1: 1, D1: 2, E1: 3, A6: 4 });
    expect(opened(bytes).sheets[0]?.usedRange).toBe("A1:E6");
  });

  it("in UTF-16 and with a byte order mark", () => {
    for (const name of ["utf-8", "utf-16le", "utf-16be"] as const) {
      const text = `<worksheet xmlns="${MAIN}"><sheetData><row r="1"><c r="A1" t="inlineStr"><is><t>Ä🙂</t></is></c></row></sheetData></worksheet>`;
      expect(values(book({ sheets: [{ name: "S", xml: encodeXml(text, { name, hasMark: true }) }] }))).toEqual({ A1: "Ä🙂" });
    }
  });

  it("of an empty sheet, and of one without a dimension", () => {
    expect(values(oneSheet("<sheetData/>"))).toEqual({});
    expect(opened(oneSheet("<sheetData/>")).sheets[0]).toMatchObject({ name: "S", kind: "worksheet", state: "visible" });
  });
});

describe("formulas", () => {
  it("of a shared group are written out for each cell", () => {
    const bytes = oneSheet(
      `<row r="1"><c r="B1"><f t="shared" ref="B1:C3" si="0">A1*$E$1+"A1"</f><v>1</v></c><c r="C1"><f t="shared" si="0"/><v>1</v></c></row>` +
        `<row r="2"><c r="B2"><f t="shared" si="0"/><v>1</v></c></row><row r="3"><c r="C3"><f t="shared" si="0"/><v>1</v></c></row>`,
    );
    expect(formulas(bytes)).toEqual({ B1: 'A1*$E$1+"A1"', C1: 'B1*$E$1+"A1"', B2: 'A2*$E$1+"A1"', C3: 'B3*$E$1+"A1"' });
    expect(cellsOf(bytes).get("B2")?.formula).toMatchObject({ kind: "shared", group: 0 });
  });

  it("of a group number that is used twice, and of a cell before the group's first", () => {
    const bytes = oneSheet(
      `<row r="1"><c r="A1"><f t="shared" si="1"/></c></row><row r="2"><c r="A2"><f t="shared" ref="A2:A3" si="1">B2</f></c></row>` +
        `<row r="3"><c r="A3"><f t="shared" si="1"/></c></row><row r="4"><c r="A4"><f t="shared" ref="A4:A5" si="1">C4</f></c></row>` +
        `<row r="5"><c r="A5"><f t="shared" si="1"/></c></row>`,
    );
    expect(formulas(bytes)).toEqual({ A1: "B1", A2: "B2", A3: "B3", A4: "C4", A5: "C5" });
  });

  it("tell a spilling array from an old one by the metadata", () => {
    const metadata =
      `<metadata xmlns="${MAIN}" xmlns:xda="http://schemas.microsoft.com/office/spreadsheetml/2017/dynamicarray">` +
      `<metadataTypes count="2"><metadataType name="XLRICHVALUE"/><metadataType name="XLDAPR"/></metadataTypes>` +
      `<futureMetadata name="XLDAPR" count="1"><bk><extLst><ext><xda:dynamicArrayProperties fDynamic="1"/></ext></extLst></bk></futureMetadata>` +
      `<cellMetadata count="2"><bk><rc t="1" v="0"/></bk><bk><rc t="2" v="0"/></bk></cellMetadata></metadata>`;
    const bytes = oneSheet(
      `<row r="1"><c r="A1" cm="2"><f t="array" ref="A1:A2">B1:B2</f><v>1</v></c><c r="C1"><f t="array" ref="C1:C2">B1:B2</f><v>1</v></c>` +
        `<c r="D1" cm="1"><f t="array" ref="D1">B1</f><v>1</v></c></row>`,
      { metadata },
    );
    const cells = cellsOf(bytes);
    expect(["A1", "C1", "D1"].map((ref) => cells.get(ref)?.formula?.isDynamic)).toEqual([true, false, false]);
    expect(cells.get("A1")?.formula).toMatchObject({ kind: "array", ref: "A1:A2", text: "B1:B2" });
  });
});

describe("what else is told", () => {
  it("sheets in order, their kind and state, protection, filter, layout", () => {
    const bytes = book({
      styles: STYLES,
      workbookHead: `<workbookPr date1904="1"/><workbookProtection lockStructure="1"/>`,
      workbookTail: `<definedNames><definedName name="Interval">30</definedName><definedName name="Local" localSheetId="1" hidden="1">One!$A$1</definedName></definedNames>`,
      sheets: [
        {
          name: "One &amp; all",
          inside:
            `<dimension ref="A1:B9"/><cols><col min="2" max="3" width="20" hidden="1" style="1"/></cols><sheetData><row r="2" hidden="1" ht="30"><c r="A2"><v>1</v></c></row></sheetData>` +
            `<sheetProtection sheet="1"/><autoFilter ref="A1:B9"><filterColumn colId="1"><filters blank="1"><filter val="x"/></filters></filterColumn></autoFilter><mergeCells count="1"><mergeCell ref="C1:D1"/></mergeCells>`,
        },
        { name: "Two", state: "veryHidden" },
      ],
    });
    const workbook = opened(bytes);
    expect(workbook).toMatchObject({ date1904: true, structureIsLocked: true, hasMacros: false, isSigned: false, styleCount: 4 });
    expect(workbook.sheets.map((sheet) => [sheet.name, sheet.kind, sheet.state, sheet.isProtected])).toEqual([
      ["One & all", "worksheet", "visible", true],
      ["Two", "worksheet", "veryHidden", false],
    ]);
    expect(workbook.sheets[0]).toMatchObject({
      dimension: "A1:B9",
      filter: { ref: "A1:B9", isActive: true, columns: [{ offset: 1, values: ["x"], showsBlanks: true }] },
    });
    expect(workbook.definedNames).toEqual([
      { name: "Interval", text: "30", isHidden: false },
      { name: "Local", sheetName: "Two", text: "One!$A$1", isHidden: true },
    ]);
    const layout = workbook.layout("One & all");
    expect(layout.merges).toEqual(["C1:D1"]);
    expect(layout.rows.get(2)).toEqual({ isHidden: true, height: 30 });
    expect(layout.columns).toEqual([{ first: 2, last: 3, width: 20, isHidden: true, styleIndex: 1 }]);
    expect([0, 1, 2].map((style) => workbook.numberFormat(style))).toEqual(["General", "mm-dd-yy", "d\\ mmm\\ yyyy"]);
    expect([0, 3].map((style) => workbook.isLocked(style))).toEqual([true, false]);
  });

  it("tables with special column names", () => {
    const table =
      `<table xmlns="${MAIN}" id="4" name="T" displayName="Tubes" ref="A1:C4" totalsRowCount="1"><autoFilter ref="A1:C3"/><tableColumns count="3">` +
      `<tableColumn id="1" name="Tube #" totalsRowLabel="Sum"/><tableColumn id="7" name="Notes [x]"><calculatedColumnFormula>Tubes[[#This Row],[Tube '#]]</calculatedColumnFormula></tableColumn>` +
      `<tableColumn id="3" name="Last_x000a_change &amp; &quot;more&quot;"/></tableColumns></table>`;
    expect(opened(book({ sheets: [{ name: "S", tables: [table] }] })).tables).toEqual([
      {
        name: "Tubes",
        id: 4,
        sheetName: "S",
        partName: "xl/tables/table1.xml",
        ref: "A1:C4",
        headerRowCount: 1,
        totalsRowCount: 1,
        filter: { ref: "A1:C3", isActive: false, columns: [] },
        columns: [
          { id: 1, name: "Tube #", totalsRowLabel: "Sum" },
          { id: 7, name: "Notes [x]", calculatedColumnFormula: "Tubes[[#This Row],[Tube '#]]" },
          { id: 3, name: 'Last\nchange & "more"' },
        ],
      },
    ]);
  });

  it("finds parts wherever the relationships say they are", async () => {
    const { files, relationshipsXml } = await import("./build");
    const { zipSync } = await import("fflate");
    const parts = files({ sheets: [{ name: "S", inside: `<sheetData><row r="1"><c r="A1"><v>5</v></c></row></sheetData>` }] });
    const sheet = parts["xl/worksheets/sheet1.xml"] as Uint8Array;
    delete parts["xl/worksheets/sheet1.xml"];
    parts["odd/My Sheet.xml"] = sheet;
    parts["xl/_rels/workbook.xml.rels"] = strToU8(
      relationshipsXml(`<Relationship Id="rId1" Type="${OFFICE}/worksheet" Target="/odd/./deep/../My%20Sheet.xml"/>`),
    );
    expect(values(zipSync(parts))).toEqual({ A1: 5 });
  });

  it("nothing of a name that is no worksheet", () => {
    expect(() => opened(oneSheet("")).cells("none")).toThrow(/no worksheet/);
    expect(isRefusal(openPackage(oneSheet("")))).toBe(false);
  });
});
