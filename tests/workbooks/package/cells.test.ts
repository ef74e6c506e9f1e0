/** Cells changed in an opened package. */
import { read } from "@e965/xlsx";
import { describe, expect, it } from "vitest";
import { patchPackage } from "../../../taskpane/workbook/package";
import { encodeXml } from "../../../taskpane/workbook/xlsx/xml/encoding";
import { book, cellEdits, cellsOf, MAIN, oneSheet, opened, partText, patched, refusalOf, SHEET, STYLES } from "./build";

const refused = (bytes: Uint8Array, edits: Record<string, unknown>) => refusalOf(patchPackage(opened(bytes), cellEdits(edits)));
const after = (bytes: Uint8Array, edits: Record<string, unknown>) => partText(patched(bytes, cellEdits(edits)).bytes, SHEET);
const data = (text: string) => text.slice(text.indexOf("<sheetData"), text.indexOf("</sheetData>"));

describe("values", () => {
  const bytes = oneSheet(`<row r="2" spans="1:2"><c r="A2" s="1"><v>1</v></c><c r="B2"><v>2</v></c></row>`);

  it("of every kind, in rows and places that were not there", () => {
    const text = after(bytes, {
      A1: { value: "=1+1" },
      B2: { value: " a<b>&\r\n\u0001_x0041_ " },
      C2: { value: true },
      A3: { value: { error: "#N/A" } },
      B3: { value: -0.1 },
    });
    expect(data(text)).toBe(
      `<sheetData><row r="1"><c r="A1" s="4" t="inlineStr"><is><t xml:space="preserve">=1+1</t></is></c></row>` +
        `<row r="2"><c r="A2" s="1"><v>1</v></c><c r="B2" t="inlineStr"><is><t xml:space="preserve"> a&lt;b&gt;&amp;_x000d_\n_x0001__x005f_x0041_ </t></is></c>` +
        `<c r="C2" t="b"><v>1</v></c></row><row r="3"><c r="A3" t="e"><v>#N/A</v></c><c r="B3"><v>-0.1</v></c></row>`,
    );
  });

  it("read the same by another program", () => {
    const { bytes: saved } = patched(bytes, cellEdits({ A1: { value: "=1+1" }, B2: { value: " é\n🙂 " }, C2: { value: false }, D9: { value: 1e-7 } }));
    const sheet = read(saved, { cellFormula: true }).Sheets.S;
    expect(sheet?.A1).toMatchObject({ t: "s", v: "=1+1" });
    expect(sheet?.A1.f).toBeUndefined();
    expect(sheet?.B2.v).toBe(" é\n🙂 ");
    expect(sheet?.C2.v).toBe(false);
    expect(sheet?.D9.v).toBe(1e-7);
    expect(sheet?.A2.v).toBe(1);
  });

  it("taken away: the style stays, a bare cell goes", () => {
    expect(data(after(bytes, { A2: { value: null }, B2: { value: null } }))).toBe(`<sheetData><row r="2"><c r="A2" s="1"/></row>`);
  });

  it("leave every other part as it was, byte for byte, and say which changed", () => {
    const answer = patched(bytes, cellEdits({ A2: { value: 5 } }));
    expect(answer.changedParts).toEqual([SHEET]);
    const [was, is] = [opened(bytes), opened(answer.bytes)];
    expect(is.parts.files.entries.map((entry) => entry.name)).toEqual(was.parts.files.entries.map((entry) => entry.name));
    for (const { name, packed } of was.parts.files.entries) {
      if (name !== SHEET) expect(is.parts.files.entries.find((entry) => entry.name === name)?.packed).toEqual(packed);
    }
  });

  it("nothing changed: the file itself", () => {
    expect(patched(bytes, {}).bytes).toEqual(bytes);
    expect(patched(bytes, { sheets: new Map([["S", {}]]) }).changedParts).toEqual([]);
  });

  it("that no workbook holds are refused", () => {
    expect(refused(bytes, { A1: { value: Number.NaN } })).toMatch(/A1 on the sheet "S"/);
    expect(refused(bytes, { A0: { value: 1 } })).toMatch(/"A0" is no cell/);
    expect(refused(bytes, { A1: { value: 1, formula: { text: "=1" } } })).toMatch(/without "="/);
    expect(refused(bytes, { A1: { value: 1, formula: { keep: true } } })).toMatch(/no formula that could be kept/);
    expect(refusalOf(patchPackage(opened(bytes), cellEdits({}, "none")))).toMatch(/no sheet "none"/);
  });
});

describe("the part's own spelling", () => {
  it("keeps prefix, quotes, comments, CDATA, spaces and every untouched character", () => {
    const source =
      `<?xml version='1.0' encoding='UTF-8'?>\n<x:worksheet xmlns:x='${MAIN}'>\n<!-- <x:c r='A1'/> -->\n<x:dimension ref='A1:B1'/>` +
      `<x:sheetData >\n <x:row r = '1' spans='1:2' >\n  <x:c r='A1' ><x:v>1</x:v></x:c><!--x--> <x:c r='B1' t='str'><x:f><![CDATA[A1&"<"]]></x:f><x:v>1&lt;</x:v></x:c>\n </x:row>\n` +
      `</x:sheetData ><x:pageMargins left='1'/></x:worksheet>`;
    const bytes = book({ sheets: [{ name: "S", xml: encodeXml(source, { name: "utf-8", hasMark: true }) }] });
    const saved = patched(bytes, cellEdits({ A1: { value: 2 }, D1: { value: "Ä", formula: { text: '"Ä"' } }, B3: { value: 3 } }));
    expect(partText(saved.bytes, SHEET)).toBe(
      source
        .replace(`<x:c r='A1' ><x:v>1</x:v></x:c>`, `<x:c r="A1"><x:v>2</x:v></x:c>`)
        .replace(`1&lt;</x:v></x:c>`, `1&lt;</x:v></x:c><x:c r="D1" t="str"><x:f>"Ä"</x:f><x:v>Ä</x:v></x:c>`)
        .replace(`</x:row>`, `</x:row><x:row r="3"><x:c r="B3"><x:v>3</x:v></x:c></x:row>`)
        .replace(` spans='1:2'`, "")
        .replace("A1:B1", "A1:D3"),
    );
    expect([...opened(saved.bytes).parts.files.content(SHEET).subarray(0, 3)]).toEqual([0xef, 0xbb, 0xbf]);
  });

  it.each(["utf-16le", "utf-16be"] as const)("stays %s", (name) => {
    const source = `<worksheet xmlns="${MAIN}"><sheetData/></worksheet>`;
    const bytes = book({ sheets: [{ name: "S", xml: encodeXml(source, { name, hasMark: true }) }] });
    const saved = patched(bytes, cellEdits({ B2: { value: "🙂" } })).bytes;
    expect(opened(saved).parts.files.xml(SHEET).encoding).toEqual({ name, hasMark: true });
    expect(cellsOf(saved).get("B2")?.value).toBe("🙂");
  });

  it("gives implied addresses where something is put in or taken out before them", () => {
    const bytes = oneSheet(`<row><c r="B1"><v>1</v></c><c><v>2</v></c></row><row r="4"/><row><c><v>5</v></c><c><v>6</v></c></row>`);
    const saved = patched(bytes, cellEdits({ A1: { value: 0 }, A3: { value: 3 }, A5: { value: null } })).bytes;
    const values = Object.fromEntries([...cellsOf(saved)].map(([ref, cell]) => [ref, cell.value]));
    expect(values).toEqual({ A1: 0, B1: 1, C1: 2, A3: 3, B5: 6 });
  });

  it("a row between rows without numbers", () => {
    const bytes = oneSheet(`<row r="3"/><row><c><v>4</v></c></row><row><c><v>5</v></c></row>`);
    const saved = patched(bytes, cellEdits({ A1: { value: 1 }, A9: { value: 9 } })).bytes;
    expect([...cellsOf(saved).keys()]).toEqual(["A1", "A4", "A5", "A9"]);
  });

  it("keeps what a cell carries beside its value", () => {
    const bytes = oneSheet(`<row r="1"><c r="A1" ph="1" s="1" vm="3"><v>1</v><extLst><ext uri="u"/></extLst></c></row>`);
    expect(after(bytes, { A1: { value: 2 } })).toContain(`<c r="A1" s="1" ph="1"><v>2</v><extLst><ext uri="u"/></extLst></c>`);
    expect(after(bytes, { A1: { style: 2 } })).toContain(`<c r="A1" s="2" vm="3" ph="1"><v>1</v><extLst><ext uri="u"/></extLst></c>`);
  });
});

describe("formulas", () => {
  const column =
    `<row r="1"><c r="B1"><f t="shared" ref="B1:B4" si="3">A1*2</f><v>2</v></c></row>` +
    [2, 3, 4].map((row) => `<row r="${row}"><c r="B${row}"><f t="shared" si="3"/><v>${row * 2}</v></c></row>`).join("");
  const texts = (bytes: Uint8Array) => Object.fromEntries([...cellsOf(bytes)].map(([ref, cell]) => [ref, cell.formula?.text]));

  it("new, changed, and renewed in value only", () => {
    const bytes = oneSheet(`<row r="1"><c r="A1"><f ca="1">NOW()</f><v>1</v></c><c r="B1"><v>1</v></c></row>`);
    const text = after(bytes, { A1: { value: "x", formula: { keep: true } }, B1: { value: 3, formula: { text: "1<A1" } } });
    expect(text).toContain(`<c r="A1" t="str"><f ca="1">NOW()</f><v>x</v></c><c r="B1"><f>1&lt;A1</f><v>3</v></c>`);
  });

  it("of a group whose first cell changes: the next cell takes its place", () => {
    const bytes = oneSheet(column);
    const saved = patched(bytes, cellEdits({ B1: { value: 1 }, B3: { value: 9, formula: { text: "A3+6" } } })).bytes;
    expect(texts(saved)).toEqual({ B1: undefined, B2: "A2*2", B3: "A3+6", B4: "A4*2" });
    expect(partText(saved, SHEET)).toContain(`<c r="B2"><f t="shared" ref="B2:B4" si="3">A2*2</f><v>4</v></c>`);
    expect(read(saved, { cellFormula: true }).Sheets.S?.B4.f).toBe("A4*2");
  });

  it("of a group whose first cells change while the rest is renewed", () => {
    const saved = patched(
      oneSheet(column),
      cellEdits({ B1: { value: null }, B2: { value: 40, formula: { keep: true } }, B4: { value: 80, formula: { keep: true } } }),
    ).bytes;
    expect(texts(saved)).toEqual({ B2: "A2*2", B3: "A3*2", B4: "A4*2" });
  });

  it("of a group over several columns: each cell gets its own text", () => {
    const bytes = oneSheet(
      `<row r="1"><c r="B1"><f t="shared" ref="B1:C2" si="0">A1+$A$9</f><v>1</v></c><c r="C1"><f t="shared" si="0"/><v>1</v></c></row>` +
        `<row r="2"><c r="B2"><f t="shared" si="0"/><v>1</v></c><c r="C2"><f t="shared" si="0"/><v>1</v></c></row>`,
    );
    const saved = patched(bytes, cellEdits({ B1: { value: 0 } })).bytes;
    expect(texts(saved)).toEqual({ B1: undefined, C1: "B1+$A$9", B2: "A2+$A$9", C2: "B2+$A$9" });
    expect(partText(saved, SHEET)).not.toContain("shared");
  });

  it("filled down a column, by one text, by the first row's, or row by row", () => {
    const fills = [
      { column: 2, firstRow: 2, lastRow: 4, formula: { same: "T[[#This Row],[A]]" }, valueAt: (row: number) => row },
      { column: 3, firstRow: 2, lastRow: 4, formula: { fromFirst: "A2*$A$1" }, valueAt: () => "t" },
      { column: 4, firstRow: 2, lastRow: 4, formula: { of: (row: number) => (row === 3 ? null : `ROW()+${row}`) }, valueAt: () => 0 },
    ];
    const saved = patched(oneSheet(""), { sheets: new Map([["S", { fills, cells: new Map([["B3", { value: "mine" }]]) }]]) }).bytes;
    expect(texts(saved)).toEqual({
      ...{ B2: "T[[#This Row],[A]]", B3: undefined, B4: "T[[#This Row],[A]]", C2: "A2*$A$1", C3: "A3*$A$1", C4: "A4*$A$1" },
      ...{ D2: "ROW()+2", D3: undefined, D4: "ROW()+4" },
    });
  });

  it("the calculation chain goes when cells gain or lose a formula, and stays otherwise", () => {
    const calcChain = `<calcChain xmlns="${MAIN}"><c r="A1" i="1"/></calcChain>`;
    const bytes = oneSheet(`<row r="1"><c r="A1"><f>1</f><v>1</v></c><c r="B1"><v>1</v></c></row>`, { calcChain });
    const kept = patched(bytes, cellEdits({ A1: { value: 2, formula: { text: "2" } }, B1: { value: 2 } }));
    expect(kept.report.removedParts).toEqual([]);
    const gone = patched(bytes, cellEdits({ A1: { value: 2 } }));
    expect(gone.report.removedParts).toEqual(["xl/calcChain.xml"]);
    expect(partText(gone.bytes, "[Content_Types].xml")).not.toContain("calcChain");
    expect(partText(gone.bytes, "xl/_rels/workbook.xml.rels")).not.toContain("calcChain");
    expect(opened(gone.bytes).parts.files.find("xl/calcChain.xml")).toBeUndefined();
  });
});

describe("arrays", () => {
  const METADATA =
    `<metadata xmlns="${MAIN}"><metadataTypes count="1"><metadataType name="XLRICHVALUE"/></metadataTypes>` +
    `<futureMetadata name="XLRICHVALUE" count="1"><bk/></futureMetadata><valueMetadata count="1"><bk><rc t="1" v="0"/></bk></valueMetadata></metadata>`;
  const spill = { A1: { value: 1, formula: { text: "_xldudf_TUBE_SEQ(2)", spill: "A1:A2" } }, A2: { value: "two" } };

  it("that spill bring their metadata along", () => {
    const answer = patched(oneSheet(""), cellEdits(spill));
    expect(answer.report.addedParts).toEqual(["xl/metadata.xml"]);
    expect(cellsOf(answer.bytes).get("A1")?.formula).toMatchObject({ isDynamic: true, kind: "array", ref: "A1:A2" });
    expect(partText(answer.bytes, SHEET)).toContain(`<c r="A2" t="str"><v>two</v></c>`);
    expect(partText(answer.bytes, "[Content_Types].xml")).toContain(`PartName="/xl/metadata.xml"`);
    const again = patched(answer.bytes, cellEdits({ C1: { value: 1, formula: { text: "X()", spill: "C1:D1" } }, D1: { value: 2 } }));
    expect(again.changedParts).toEqual([SHEET]);
  });

  it("that spill extend metadata that says something else", () => {
    const answer = patched(oneSheet("", { metadata: METADATA }), cellEdits(spill));
    expect(answer.changedParts).toContain("xl/metadata.xml");
    const text = partText(answer.bytes, "xl/metadata.xml");
    expect(text).toContain(`<metadataTypes count="2"><metadataType name="XLRICHVALUE"/><metadataType name="XLDAPR"`);
    expect(text).toContain(`</futureMetadata><futureMetadata name="XLDAPR" count="1">`);
    expect(text).toContain(`<cellMetadata count="1"><bk><rc t="2" v="0"/></bk></cellMetadata><valueMetadata`);
    expect(cellsOf(answer.bytes).get("A1")?.formula?.isDynamic).toBe(true);
  });

  const spilled = patched(oneSheet(""), cellEdits({ ...spill, A1: { ...spill.A1, formula: { text: "F()", spill: "A1:A3" } }, A3: { value: 3 } })).bytes;

  it("that shrink, grow or go take their cells along", () => {
    const values = (edits: Record<string, unknown>) =>
      Object.fromEntries([...cellsOf(patched(spilled, cellEdits(edits)).bytes)].map(([ref, cell]) => [ref, cell.value]));
    expect(values({ A1: { value: 9, formula: { keep: true, spill: "A1:A2" } } })).toEqual({ A1: 9, A2: "two" });
    expect(values({ A1: { value: 9, formula: { keep: true } } })).toEqual({ A1: 9, A2: "two", A3: 3 });
    expect(values({ A1: { value: 9 } })).toEqual({ A1: 9 });
    expect(values({ A1: { value: 9, formula: { keep: true, spill: "A1:B1" } }, B1: { value: 8 } })).toEqual({ A1: 9, B1: 8 });
  });

  it("do not spill over what stands there, nor elsewhere", () => {
    const bytes = oneSheet(`<row r="2"><c r="A2"><v>7</v></c></row>`);
    expect(refused(bytes, { A1: spill.A1 })).toMatch(/something else is in the way\. \(A2/);
    expect(refused(bytes, { A1: { value: 1, formula: { text: "X()", spill: "B1:B2" } } })).toMatch(/does not begin there/);
    expect(refused(spilled, { A2: { value: 1, formula: { text: "1" } } })).toMatch(/filled by the formula in A1/);
  });

  it("of the old kind change as one or not at all", () => {
    const bytes = oneSheet(
      `<row r="1"><c r="A1"><f t="array" ref="A1:A2">B1:B2</f><v>1</v></c></row><row r="2"><c r="A2"><v>2</v></c></row>` +
        `<row r="4"><c r="A4"><f t="dataTable" ref="A4:A5" dt2D="0" r1="Z1"/><v>1</v></c></row><row r="5"><c r="A5"><v>2</v></c></row>`,
    );
    for (const ref of ["A1", "A2", "A4", "A5"]) expect(refused(bytes, { [ref]: { value: 5 } })).toMatch(/part of an array formula/);
    const saved = patched(bytes, cellEdits({ A1: { value: 5, formula: { keep: true } }, A2: { value: 6, formula: { keep: true } } })).bytes;
    expect(partText(saved, SHEET)).toContain(`<c r="A1"><f t="array" ref="A1:A2">B1:B2</f><v>5</v></c></row><row r="2"><c r="A2"><v>6</v></c>`);
  });
});

describe("where nothing may be written", () => {
  it("a locked cell of a protected sheet; results may be renewed and unlocked cells changed", () => {
    const bytes = oneSheet(
      `<sheetData><row r="1"><c r="A1"><f>B1</f><v>1</v></c><c r="B1" s="3"><v>1</v></c></row></sheetData><sheetProtection sheet="1"/>`,
    );
    expect(refused(bytes, { A1: { value: 2 } })).toMatch(/is protected and its cell A1 is locked/);
    expect(refused(bytes, { C9: { value: 2 } })).toMatch(/C9 is locked/);
    expect(refused(bytes, { A1: { style: 3 } })).toMatch(/A1 is locked/);
    const saved = patched(bytes, cellEdits({ A1: { value: 5, formula: { keep: true } }, B1: { value: 5 } })).bytes;
    expect(cellsOf(saved).get("A1")?.value).toBe(5);
    const sheets = (edits: object) => patchPackage(opened(bytes), { sheets: new Map([["S", edits]]) });
    expect(refusalOf(sheets({ hiddenRows: new Map([[1, true]]) }))).toMatch(/which rows it shows/);
    expect(refusalOf(sheets({ columnWidths: [{ first: 1, last: 1, width: 9 }] }))).toMatch(/width of its columns/);
    expect(refusalOf(sheets({ filter: { ref: "A1:B2" } }))).toMatch(/its filter/);
  });

  it("under merged cells", () => {
    const bytes = oneSheet(`<sheetData/><mergeCells count="1"><mergeCell ref="A1:B2"/></mergeCells>`);
    expect(refused(bytes, { B2: { value: 1 } })).toMatch(/lies under the merged cells A1:B2/);
    expect(cellsOf(patched(bytes, cellEdits({ A1: { value: 1 } })).bytes).get("A1")?.value).toBe(1);
  });

  it("a signed workbook", () => {
    const type = "http://schemas.openxmlformats.org/package/2006/relationships/digital-signature/origin";
    const bytes = oneSheet("", { rootRelationships: `<Relationship Id="s" Type="${type}" Target="_xmlsignatures/origin.sigs"/>` });
    expect(opened(bytes).isSigned).toBe(true);
    expect(refused(bytes, { A1: { value: 1 } })).toMatch(/digital signature/);
    expect(patched(bytes, {}).bytes).toEqual(bytes);
  });
});

describe("styles", () => {
  it("are copied with a difference, found again, and counted", () => {
    const bytes = oneSheet(`<row r="1"><c r="A1" s="2"><v>1</v></c></row>`);
    const answer = patched(
      bytes,
      cellEdits({
        A1: { style: { numberFormat: "0.00", wrap: true } },
        B1: { value: 1, style: { from: 1, numberFormat: "d\\ mmm\\ yyyy" } },
        C1: { value: 1, style: { from: 1, numberFormat: 'yyyy "<&>"', bold: true, fontColor: "c00000", fill: "FFFF00" } },
        D1: { value: 1, style: { numberFormat: "General" } },
        E1: { value: 1, style: { from: 1, numberFormat: 'yyyy "<&>"', bold: true, fontColor: "c00000", fill: "FFFF00" } },
      }),
    );
    const workbook = opened(answer.bytes);
    const cells = cellsOf(answer.bytes);
    const format = (ref: string) => workbook.numberFormat(cells.get(ref)?.styleIndex ?? -1);
    expect(["A1", "B1", "C1", "D1"].map(format)).toEqual(["0.00", "d\\ mmm\\ yyyy", 'yyyy "<&>"', "General"]);
    expect(cells.get("D1")?.styleIndex).toBe(0);
    expect(cells.get("E1")?.styleIndex).toBe(cells.get("C1")?.styleIndex);
    expect(answer.report.stylesAdded).toBe(3);
    const styles = partText(answer.bytes, "xl/styles.xml");
    expect(styles).toContain(`<numFmts count="2"><numFmt numFmtId="170" formatCode="d\\ mmm\\ yyyy"/><numFmt numFmtId="171"`);
    expect(styles).toContain(`<cellXfs count="7">`);
    expect(styles).toContain(`<font><b/><sz val="11"/><color rgb="FFC00000"/><name val="Calibri"/></font></fonts>`);
    expect(styles).toContain(`<fgColor rgb="FFFFFF00"/>`);
    expect(styles).toContain(`<alignment horizontal="left" wrapText="1"/>`);
    expect(read(answer.bytes, { cellNF: true }).Sheets.S?.C1.z).toBe('yyyy "<&>"');
  });

  it("of new cells are those of their row or column", () => {
    const bytes = oneSheet(`<cols><col min="2" max="2" style="1"/></cols><sheetData><row r="1" s="2" customFormat="1"/></sheetData>`);
    const cells = cellsOf(patched(bytes, cellEdits({ B1: { value: 1 }, B2: { value: 1 }, C2: { value: 1 } })).bytes);
    expect(["B1", "B2", "C2"].map((ref) => cells.get(ref)?.styleIndex)).toEqual([2, 1, 0]);
  });

  it("come with a workbook that had none", () => {
    const bytes = book({ sheets: [{ name: "S" }] });
    const answer = patched(bytes, cellEdits({ A1: { value: 1, style: { numberFormat: "d mmm yyyy" } } }));
    expect(answer.report.addedParts).toEqual(["xl/styles.xml"]);
    expect(opened(answer.bytes).numberFormat(cellsOf(answer.bytes).get("A1")?.styleIndex ?? -1)).toBe("d mmm yyyy");
  });

  it("keep the prefix of their part", () => {
    const styles = STYLES.replaceAll("</", "</p:").replaceAll(/<(?=[a-z])/g, "<p:").replace("xmlns=", "xmlns:p=");
    const answer = patched(oneSheet("", { styles }), cellEdits({ A1: { value: 1, style: { numberFormat: "0.000", italic: true } } }));
    const text = partText(answer.bytes, "xl/styles.xml");
    expect(text).toContain(`<p:numFmt numFmtId="171" formatCode="0.000"/>`);
    expect(text).toContain(`<p:font><p:i/><p:sz val="11"/>`);
    expect(opened(answer.bytes).numberFormat(cellsOf(answer.bytes).get("A1")?.styleIndex ?? -1)).toBe("0.000");
  });
});

describe("beside the cells", () => {
  const sheets = (edits: object) => ({ sheets: new Map([["S", edits]]) });

  it("rows are hidden and shown", () => {
    const bytes = oneSheet(`<row r="1" hidden="1" ht="20"><c r="A1"><v>1</v></c></row><row r="2" hidden="0"/>`);
    const text = partText(patched(bytes, sheets({ hiddenRows: new Map([[1, false], [2, true], [4, true], [5, false]]) })).bytes, SHEET);
    expect(data(text)).toBe(`<sheetData><row r="1" ht="20"><c r="A1"><v>1</v></c></row><row r="2" hidden="1"/><row r="4" hidden="1"/>`);
  });

  it("columns get a width: stretches are split, the rest keeps its own", () => {
    const bytes = oneSheet(`<cols><col min="2" max="5" width="9" style="1"/></cols><sheetData/>`);
    const text = partText(patched(bytes, sheets({ columnWidths: [{ first: 1, last: 3, width: 14.5 }] })).bytes, SHEET);
    expect(text).toContain(
      `<cols><col min="1" max="1" width="14.5" customWidth="1"/><col min="2" max="3" width="14.5" style="1" customWidth="1"/><col min="4" max="5" width="9" style="1"/></cols>`,
    );
    const bare = patched(oneSheet(`<sheetFormatPr/><sheetData/>`), sheets({ columnWidths: [{ first: 2, last: 2, width: 9 }] })).bytes;
    expect(partText(bare, SHEET)).toContain(`<sheetFormatPr/><cols><col min="2" max="2" width="9" customWidth="1"/></cols><sheetData/>`);
  });

  it("the sheet's filter: criteria by column, others kept, the hidden name in step", () => {
    const custom = `<filterColumn colId="2"><customFilters><customFilter operator="greaterThan" val="3"/></customFilters></filterColumn>`;
    const bytes = oneSheet(`<sheetData/><autoFilter ref="A1:D9">${custom}</autoFilter>`);
    const columns = new Map([[0, { values: ['a & "b"'], showsBlanks: true }]]);
    const saved = patched(bytes, sheets({ filter: { columns } })).bytes;
    expect(partText(saved, SHEET)).toContain(
      `<autoFilter ref="A1:D9"><filterColumn colId="0"><filters blank="1"><filter val="a &amp; &quot;b&quot;"/></filters></filterColumn>${custom}</autoFilter>`,
    );
    expect(partText(saved, SHEET)).toContain(`<sheetPr filterMode="1"/><sheetData/>`);
    const cleared = patched(saved, sheets({ filter: { columns: new Map([[0, null], [2, null]]) } })).bytes;
    expect(opened(cleared).sheets[0]?.filter).toMatchObject({ isActive: false });
    expect(partText(cleared, SHEET)).not.toContain("filterMode");
    const made = patched(oneSheet(""), sheets({ filter: { ref: "B2:C5" } })).bytes;
    expect(opened(made).definedNames).toEqual([{ name: "_xlnm._FilterDatabase", sheetName: "S", text: "'S'!$B$2:$C$5", isHidden: true }]);
    const removed = patched(made, sheets({ filter: { remove: true } })).bytes;
    expect(opened(removed).sheets[0]?.filter).toBeUndefined();
    expect(opened(removed).definedNames).toEqual([]);
    expect(partText(removed, "xl/workbook.xml")).not.toContain("definedNames");
  });

  it("names are added, changed and removed, in their place among the workbook's elements", () => {
    const bytes = book({ sheets: [{ name: "S" }, { name: "Two" }], workbookTail: "<calcPr/>" });
    const saved = patched(bytes, {
      definedNames: [
        { name: "As_of", text: "TODAY()<1" },
        { name: "As_of", sheetName: "Two", text: "2" },
      ],
    }).bytes;
    expect(partText(saved, "xl/workbook.xml")).toContain(
      `</sheets><definedNames><definedName name="As_of">TODAY()&lt;1</definedName><definedName name="As_of" localSheetId="1">2</definedName></definedNames><calcPr/>`,
    );
    const changed = patched(saved, { definedNames: [{ name: "as_of", text: "5" }, { name: "As_of", sheetName: "Two", text: null }] }).bytes;
    expect(opened(changed).definedNames).toEqual([{ name: "As_of", text: "5", isHidden: false }]);
  });
});
