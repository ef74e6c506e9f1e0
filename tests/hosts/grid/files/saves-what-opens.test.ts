/**
 * A file that opens can be saved: workbooks of many programs, and small ones with a fault, each with one entry on every
 * sheet. What could not be saved is turned down when it is opened, before anybody has worked in it.
 */
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { SetRangeValuesMutation } from "@univerjs/sheets";
import { read as readElsewhere, type CellObject } from "@e965/xlsx";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { startGrid, type InGrid } from "../../../workbooks/new-file/in-grid";
import { book, MAIN, oneSheet, sheetXml, STYLES } from "../../../workbooks/package/build";

const FIXTURES = new URL("../../../workbooks/files/", import.meta.url);
/** A folder of workbooks that belong to others and are not part of this project. */
const CORPUS = process.env["FORMULA_CORPUS"] ?? "";
const TODAY = 46_132;

let there: InGrid;
beforeAll(() => {
  there = startGrid(TODAY);
});
afterAll(() => there.engine.univer.dispose());

/** Opens it, types below everything on each sheet that may be typed on, saves. */
async function openTypeSave(bytes: Uint8Array, name: string) {
  const opened = await there.grid.open(bytes, name);
  if (opened.outcome === "refused") return { opened };
  const api = there.engine.api.getActiveWorkbook()!;
  const { sheets } = await there.grid.workbook.overview();
  const typed = sheets.filter(({ kind, isProtected }) => kind === "worksheet" && !isProtected);
  for (const { id, name: sheet, used } of typed) {
    const merges = api.getSheetBySheetId(id)!.getSheet().getMergeData();
    const row = Math.max(used ? used.top + used.rows + 1 : 0, ...merges.map(({ endRow }) => endRow + 1));
    const cellValue = { [row]: { 0: { v: `typed on ${sheet}`, t: 1 } } };
    const params = { unitId: api.getId(), subUnitId: id, cellValue };
    await there.engine.api.executeCommand(SetRangeValuesMutation.id, params);
  }
  return { opened, typed, saved: await there.grid.save() };
}

async function isSaved(bytes: Uint8Array, name: string): Promise<void> {
  const { opened, saved } = await openTypeSave(bytes, name);
  if (!saved) return expect((opened as { sentence: string }).sentence).toMatch(/[.?)]$/);
  expect(saved.outcome === "refused" ? saved.sentence : "saved").toBe("saved");
}

describe("workbooks of many programs", () => {
  it.each(readdirSync(FIXTURES))("%s", (name) => isSaved(new Uint8Array(readFileSync(new URL(name, FIXTURES))), name));
});

const hasCorpus = CORPUS !== "" && existsSync(CORPUS);

describe.skipIf(!hasCorpus)("other people's workbooks (where FORMULA_CORPUS names a folder of them)", () => {
  const names = hasCorpus ? readdirSync(CORPUS).filter((name) => /\.xl/.test(name)) : [];
  it.each(names)("%s", (name) => isSaved(new Uint8Array(readFileSync(join(CORPUS, name))), name));
});

const HYPERLINK = `<row r="1"><c r="A1"><f>HYPERLINK("https://example.org","open")</f><v>0</v></c></row>`;

/** What writers do, and the format does not want: mended, or told at opening. */
const FAULTS: Readonly<Record<string, () => Uint8Array>> = {
  "a HYPERLINK with a stored 0": () => oneSheet(HYPERLINK),
  "a row height that is none": () => oneSheet('<row r="1" ht="tall" customHeight="1"><c r="A1"><v>1</v></c></row>'),
  "an endless row height": () => oneSheet('<row r="1" ht="1e999"><c r="A1"><v>1</v></c></row>'),
  "a column width that is none": () =>
    oneSheet(
      '<cols><col min="1" max="1" width="wide"/></cols><sheetData><row r="1"><c r="A1"><v>1</v></c></row></sheetData>',
    ),
  "a name that is there twice": () =>
    oneSheet('<row r="1"><c r="A1"><v>1</v></c></row>', {
      workbookTail:
        '<definedNames><definedName name="Twice">S!$A$1</definedName><definedName name="twice">S!$A$2</definedName></definedNames>',
    }),
  "styles without a cell style": () =>
    oneSheet('<row r="1"><c r="A1"><v>1</v></c></row>', { styles: `<styleSheet xmlns="${MAIN}"/>` }),
  "a cell whose style is not there": () => oneSheet('<row r="1"><c r="A1" s="99"><v>1</v></c></row>'),
  "a filter with a column twice": () =>
    oneSheet(
      '<sheetData><row r="1"><c r="A1"><v>1</v></c></row></sheetData><autoFilter ref="A1:B9">' +
        '<filterColumn colId="0"><filters><filter val="1"/></filters></filterColumn>' +
        '<filterColumn colId="0"><filters><filter val="2"/></filters></filterColumn></autoFilter>',
    ),
  "a table with one column id twice": () => withTable('<tableColumn id="1" name="a"/><tableColumn id="1" name="b"/>'),
  "a table with one heading twice": () => withTable('<tableColumn id="1" name="a"/><tableColumn id="2" name="a"/>'),
  "two sheets of one name": () =>
    book({
      styles: STYLES,
      sheets: [
        { name: "S", inside: "<sheetData/>" },
        { name: "S", inside: "<sheetData/>" },
      ],
    }),
  "an empty sheet without a place for columns": () => oneSheet("<sheetData/>"),
  "two sheets that share a part": () => sharing(),
};

function withTable(columns: string): Uint8Array {
  const table = `<table xmlns="${MAIN}" id="1" name="T" displayName="T" ref="A1:B2"><tableColumns count="2">${columns}</tableColumns></table>`;
  const cells =
    '<sheetData><row r="1"><c r="A1" t="str"><v>a</v></c><c r="B1" t="str"><v>b</v></c></row><row r="2"><c r="A2"><v>1</v></c></row></sheetData>';
  return book({ styles: STYLES, sheets: [{ name: "S", inside: cells, tables: [table] }] });
}

function sharing(): Uint8Array {
  const one = { name: "One", xml: sheetXml('<sheetData><row r="1"><c r="A1"><v>1</v></c></row></sheetData>') };
  return book({ styles: STYLES, sheets: [one, { ...one, name: "Two" }], samePart: true });
}

describe("a workbook with a fault", () => {
  it.each(Object.keys(FAULTS))("%s", async (name) => isSaved(FAULTS[name]!(), `${name}.xlsx`));

  it("two sheets in one part are turned down with a sentence, before anything is typed", async () => {
    const { opened } = await openTypeSave(sharing(), "shared.xlsx");
    expect(opened).toMatchObject({ outcome: "refused" });
    expect((opened as { sentence: string }).sentence).toContain('the sheet "One" and the sheet "Two"');
  });

  it("a HYPERLINK is saved with what it shows", async () => {
    const { saved } = await openTypeSave(FAULTS["a HYPERLINK with a stored 0"]!(), "link.xlsx");
    if (saved?.outcome !== "saved") throw new Error(saved?.sentence);
    const cell = readElsewhere(saved.bytes, { cellFormula: true }).Sheets["S"]!["A1"] as CellObject;
    expect(cell).toMatchObject({ f: 'HYPERLINK("https://example.org","open")', v: "open" });
  });
});
