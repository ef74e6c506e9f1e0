/** Tables: columns and rows added, headings and totals edited. */
import { read } from "@e965/xlsx";
import { describe, expect, it } from "vitest";
import { columnLetters, patchPackage } from "../../../taskpane/workbook/package";
import type { PackageEdits } from "../../../taskpane/workbook/package";
import { book, cellEdits, cellsOf, MAIN, opened, partText, patched, refusalOf, SHEET, STYLES } from "./build";

const TABLE = "xl/tables/table1.xml";

/** Invented: a table Tubes with the columns `Tube #` and `Notes [x]`. */
function tubes(options: { totals?: boolean; more?: string; cells?: string; tableMore?: string; others?: string[] } = {}): Uint8Array {
  const last = options.totals ? 5 : 4;
  const table =
    `<table xmlns="${MAIN}" id="1" name="Tubes" displayName="Tubes" ref="A1:B${last}"${options.totals ? ' totalsRowCount="1"' : ""}${options.tableMore ?? ""}>` +
    `<autoFilter ref="A1:B4"/><tableColumns count="2"><tableColumn id="1" name="Tube #"${options.totals ? ' totalsRowLabel="Sum"' : ""}/>` +
    `<tableColumn id="5" name="Notes [x]"${options.totals ? ' totalsRowFunction="count"' : ""}><calculatedColumnFormula>Tubes[[#This Row],[Tube '#]]*2</calculatedColumnFormula></tableColumn>` +
    `</tableColumns><tableStyleInfo name="TableStyleMedium2"/></table>`;
  const rows = [2, 3, 4].map(
    (row) => `<row r="${row}" spans="1:2"><c r="A${row}"><v>${row}</v></c><c r="B${row}" s="2"><f>Tubes[[#This Row],[Tube '#]]*2</f><v>${row * 2}</v></c>${row === 3 ? (options.cells ?? "") : ""}</row>`,
  );
  const totals = options.totals
    ? `<row r="5"><c r="A5" t="inlineStr"><is><t>Sum</t></is></c><c r="B5" s="2"><f>SUBTOTAL(103,Tubes[Notes '[x']])</f><v>3</v></c></row>`
    : "";
  const header = `<row r="1" spans="1:2"><c r="A1" t="inlineStr"><is><t>Tube #</t></is></c><c r="B1" s="1" t="inlineStr"><is><t>Notes [x]</t></is></c></row>`;
  return book({
    styles: STYLES,
    sheets: [
      {
        name: "S",
        inside: `<dimension ref="A1:B${last}"/><sheetData>${header}${rows.join("")}${totals}</sheetData>${options.more ?? ""}`,
        tables: [table, ...(options.others ?? [])],
      },
      { name: "Other", inside: `<sheetData><row r="1"><c r="A1"><f>SUM(Tubes[Tube '#])</f><v>9</v></c></row></sheetData>` },
    ],
    workbookTail: `<definedNames><definedName name="Sizes">Tubes[Tube '#]</definedName></definedNames>`,
  });
}

const due = {
  header: "Change due",
  calculatedColumnFormula: "_xldudf_TUBE_CHANGEDUE(Tubes[[#This Row],[Tube '#]],30)",
  valueAt: (row: number) => 46_000 + row,
  style: { numberFormat: "d mmm yyyy" },
  width: 12,
};
const late = { header: "Line\nbreak & <'\"# [y]", valueAt: (row: number) => `t${row}` };
const add = (...addColumns: object[]): PackageEdits => ({ tables: [{ table: "Tubes", addColumns: addColumns as never }] });
const refused = (bytes: Uint8Array, edits: PackageEdits) => refusalOf(patchPackage(opened(bytes), edits));

describe("columns added to a table", () => {
  it("change range, filter, columns, cells and dimension, and nothing else", () => {
    const answer = patched(tubes(), add(due, late));
    expect(answer.changedParts).toEqual([SHEET, TABLE, "xl/styles.xml"]);
    const workbook = opened(answer.bytes);
    expect(workbook.tables[0]).toMatchObject({ ref: "A1:D4", filter: { ref: "A1:D4" } });
    expect(workbook.tables[0]?.columns.map(({ id, name }) => [id, name])).toEqual([
      [1, "Tube #"],
      [5, "Notes [x]"],
      [6, "Change due"],
      [7, late.header],
    ]);
    expect(partText(answer.bytes, TABLE)).toContain(`<tableColumns count="4">`);
    expect(partText(answer.bytes, TABLE)).toContain(`name="Line_x000a_break &amp; &lt;&apos;&quot;# [y]"/></tableColumns><tableStyleInfo`);
    expect(workbook.sheets[0]?.dimension).toBe("A1:D4");
    expect(partText(answer.bytes, SHEET)).not.toContain("spans");
    const cells = cellsOf(answer.bytes);
    expect(cells.get("C1")?.value).toBe("Change due");
    expect(cells.get("C1")?.styleIndex).toBe(1);
    expect(cells.get("D1")?.value).toBe(late.header);
    expect(cells.get("C3")).toMatchObject({ value: 46_003, formula: { text: due.calculatedColumnFormula, kind: "normal" } });
    expect(workbook.numberFormat(cells.get("C3")?.styleIndex ?? -1)).toBe("d mmm yyyy");
    // The neighbour is a date aligned to the left: the alignment is taken over, the format is not.
    expect(workbook.numberFormat(cells.get("D3")?.styleIndex ?? -1)).toBe("General");
    expect(cells.get("D3")?.styleIndex).not.toBe(0);
    expect(workbook.layout("S").columns).toEqual([{ first: 3, last: 3, width: 12, isHidden: false }]);
    const sheet = read(answer.bytes, { cellFormula: true, cellNF: true }).Sheets.S;
    expect(sheet?.C3).toMatchObject({ v: 46_003, f: due.calculatedColumnFormula, z: "d mmm yyyy" });
    expect(sheet?.D1.v).toBe(late.header);
  });

  it("leave the totals row outside the filter, with a cell of their own or an empty one", () => {
    const totals = { formula: "SUBTOTAL(104,Tubes[Change due])", value: 46_004 };
    const answer = patched(tubes({ totals: true }), add({ ...due, totals }, late, { header: "Last", totals: { label: "end" } }));
    const table = opened(answer.bytes).tables[0];
    expect(table).toMatchObject({ ref: "A1:E5", filter: { ref: "A1:E4" }, totalsRowCount: 1 });
    expect(table?.columns[2]).toMatchObject({ totalsRowFunction: "custom" });
    expect(table?.columns[4]).toMatchObject({ totalsRowLabel: "end" });
    expect(partText(answer.bytes, TABLE)).toContain(`<totalsRowFormula>${totals.formula}</totalsRowFormula></tableColumn>`);
    const cells = cellsOf(answer.bytes);
    expect(cells.get("C5")).toMatchObject({ value: 46_004, formula: { text: totals.formula } });
    expect(cells.get("D5")?.value).toBe(null);
    expect(cells.get("E5")?.value).toBe("end");
    expect(cells.get("E3")?.value).toBe(null);
  });

  it("take body cells from the sheet's own edits when they bring none", () => {
    const edits = { ...add({ header: "Mine" }), ...cellEdits({ C2: { value: 7, style: 1 } }) };
    expect(cellsOf(patched(tubes(), edits).bytes).get("C2")).toMatchObject({ value: 7, styleIndex: 1 });
  });

  it("are refused where there is no room or no good name", () => {
    expect(refused(tubes({ cells: `<c r="C3"><v>1</v></c>` }), add(due))).toMatch(/C3 .*is not empty/);
    expect(refused(tubes({ cells: `<c r="D3"><f>1</f></c>` }), add(due, late))).toMatch(/D3 .*is not empty/);
    expect(refused(tubes({ more: `<mergeCells count="1"><mergeCell ref="C2:D3"/></mergeCells>` }), add(due))).toMatch(/merged cells C2:D3/);
    const other = `<table xmlns="${MAIN}" id="2" name="O" displayName="Next" ref="D1:D2"><tableColumns count="1"><tableColumn id="1" name="x"/></tableColumns></table>`;
    expect(refused(tubes({ others: [other] }), add(due, late))).toMatch(/the table "Next" is in the way/);
    expect(refused(tubes(), add({ ...due, header: "TUBE #" }))).toMatch(/two columns called "TUBE #"/);
    expect(refused(tubes(), add(due, { ...late, header: "change DUE" }))).toMatch(/two columns/);
    expect(refused(tubes(), add({ ...due, header: "" }))).toMatch(/needs a heading/);
    expect(refused(tubes({ tableMore: ' tableType="queryTable"' }), add(due))).toMatch(/filled by a query/);
    expect(refused(tubes({ more: `<sheetProtection sheet="1"/>` }), add(due))).toMatch(/protected/);
    expect(refused(tubes(), { tables: [{ table: "None" }] })).toMatch(/no table "None"/);
    const many = Array.from({ length: 16_383 }, (_, at) => ({ header: `c${at}` }));
    expect(refused(tubes(), add(...many))).toMatch(/beyond column XFD/);
    expect(columnLetters(16_384)).toBe("XFD");
  });

  it("may stand where the edits say that a cell was emptied", () => {
    const bytes = tubes({ cells: `<c r="C3"><v>1</v></c>` });
    expect(cellsOf(patched(bytes, { ...add(due), ...cellEdits({ C3: { value: null } }) }).bytes).get("C3")?.value).toBe(46_003);
  });
});

describe("headings, totals and rows edited in their cells", () => {
  it("a new heading renames the column, in the table and in every formula that names it", () => {
    const answer = patched(tubes({ totals: true }), cellEdits({ A1: { value: "Size ]" } }));
    expect(answer.report.renamedColumns).toEqual([{ table: "Tubes", from: "Tube #", to: "Size ]" }]);
    const workbook = opened(answer.bytes);
    expect(workbook.tables[0]?.columns.map((column) => column.name)).toEqual(["Size ]", "Notes [x]"]);
    expect(workbook.tables[0]?.columns[1]?.calculatedColumnFormula).toBe("Tubes[[#This Row],[Size ']]]*2");
    expect(cellsOf(answer.bytes).get("B3")?.formula?.text).toBe("Tubes[[#This Row],[Size ']]]*2");
    expect(cellsOf(answer.bytes, "Other").get("A1")).toMatchObject({ value: 9, formula: { text: "SUM(Tubes[[Size ']]])" } });
    expect(workbook.definedNames[0]?.text).toBe("Tubes[[Size ']]]");
  });

  it("a number becomes a text, nothing at all is refused, a twin is refused", () => {
    const bytes = patched(tubes(), cellEdits({ A1: { value: 2026 } })).bytes;
    expect(cellsOf(bytes).get("A1")).toMatchObject({ type: "text", value: "2026" });
    expect(opened(bytes).tables[0]?.columns[0]?.name).toBe("2026");
    expect(refused(tubes(), cellEdits({ A1: { value: null } }))).toMatch(/heading of the table "Tubes" \(A1\)/);
    expect(refused(tubes(), cellEdits({ A1: { value: "notes [X]" } }))).toMatch(/two columns called/);
  });

  it("totals follow their cells", () => {
    const edits = { A5: { value: "All & more" }, B5: { value: 4, formula: { text: "MAX(Tubes[Notes '[x']])" } } };
    const columns = opened(patched(tubes({ totals: true }), cellEdits(edits)).bytes).tables[0]?.columns;
    expect(columns).toMatchObject([{ totalsRowLabel: "All & more" }, { totalsRowFunction: "custom" }]);
    const bare = opened(patched(tubes({ totals: true }), cellEdits({ A5: { value: null }, B5: { value: 3 } })).bytes).tables[0]?.columns;
    expect(bare?.[0]).toEqual({ id: 1, name: "Tube #" });
    expect(bare?.[1]?.totalsRowFunction).toBeUndefined();
  });

  it("rows are appended, not below a totals row", () => {
    const grow = { tables: [{ table: "Tubes", lastRow: 6 }], ...cellEdits({ A5: { value: 5 }, A6: { value: 6 } }) };
    expect(opened(patched(tubes(), grow).bytes).tables[0]).toMatchObject({ ref: "A1:B6", filter: { ref: "A1:B6" } });
    expect(refused(tubes({ totals: true }), grow)).toMatch(/ends in a totals row/);
    expect(refused(tubes(), { tables: [{ table: "Tubes", lastRow: 1 }] })).toMatch(/keeps one row/);
    expect(refused(tubes({ totals: true }), { tables: [{ table: "Tubes", lastRow: 3 }] })).toMatch(/totals row/);
  });

  it("the filter of a table takes criteria and loses them", () => {
    const columns = new Map([[0, { values: ["3"] }]]);
    const saved = patched(tubes(), { tables: [{ table: "Tubes", filter: { columns } }] }).bytes;
    expect(opened(saved).tables[0]?.filter).toEqual({ ref: "A1:B4", isActive: true, columns: [{ offset: 0, values: ["3"], showsBlanks: false }] });
    const gone = patched(saved, { tables: [{ table: "Tubes", filter: { remove: true } }] }).bytes;
    expect(opened(gone).tables[0]?.filter).toBeUndefined();
  });

  it("a shorter table keeps its filter in step; what stood in the rows it loses is for the sheet's edits to say", () => {
    const shorter = { tables: [{ table: "Tubes", lastRow: 2 }] };
    const gone = cellEdits(Object.fromEntries(["A3", "B3", "A4", "B4"].map((ref) => [ref, { value: null }])));
    const { bytes, changedParts } = patched(tubes(), { ...shorter, ...gone });
    expect(changedParts).toContain(TABLE);
    expect(opened(bytes).tables[0]).toMatchObject({ ref: "A1:B2", filter: { ref: "A1:B2" } });
    const cells = cellsOf(bytes);
    expect([cells.get("A2")?.value, cells.get("B2")?.value]).toEqual([2, 4]);
    for (const ref of ["A3", "B3", "A4", "B4"]) expect([cells.get(ref)?.value ?? null, cells.get(ref)?.formula]).toEqual([null, undefined]);
    expect(read(bytes).Sheets["S"]?.["A4"]?.v).toBeUndefined();
    expect(cellsOf(patched(tubes(), shorter).bytes).get("A4")?.value).toBe(4);
  });
});
