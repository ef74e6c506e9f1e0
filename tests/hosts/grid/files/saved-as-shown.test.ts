/**
 * What a saved file holds is what the screen showed: results that became errors, results of rows that were sorted, results
 * that the engine still owed. Files come from a writer, and are read by a reader, that are not ours.
 */
import { read as readElsewhere, utils, write as writeElsewhere, type CellObject, type WorkSheet } from "@e965/xlsx";
import { strFromU8, unzipSync } from "fflate";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { caseloadBook } from "../../../../src/caseload/index";
import { tableNames } from "../../../../src/caseload/names";
import { formula } from "../../../../src/columns/formula";
import { day } from "../../../../src/worksheet/dates";
import { parseArea } from "../../../../taskpane/workbook/area";
import type { NewColumn } from "../../../../taskpane/workbook/port";
import { writeBook } from "../../../../taskpane/workbook/file";
import { plain, startGrid, type InGrid } from "../../../workbooks/new-file/in-grid";
import { randoms } from "../../../bench/measure";

const TODAY = day("2026-11-26");

let there: InGrid;
beforeAll(() => {
  there = startGrid(TODAY);
});
afterAll(() => there.engine.univer.dispose());

const written = (sheet: WorkSheet): Uint8Array => {
  const book = utils.book_new();
  utils.book_append_sheet(book, sheet, "List");
  return new Uint8Array(writeElsewhere(book, { type: "array", bookType: "xlsx" }) as ArrayBuffer);
};

async function open(bytes: Uint8Array): Promise<void> {
  expect(await there.grid.open(bytes, "list.xlsx")).toMatchObject({ outcome: "opened" });
}

async function save() {
  const saved = await there.grid.save();
  if (saved.outcome === "refused") throw new Error(saved.sentence);
  return { ...saved, sheets: readElsewhere(saved.bytes, { cellFormula: true }).Sheets };
}

const sheetNow = () => there.engine.api.getActiveWorkbook()!.getActiveSheet();
const firstSheet = async () => (await there.grid.workbook.overview()).sheets[0]!.id;

/** What a reader that is not ours says of a cell, as the grid's own values are said. */
function told(sheet: WorkSheet, address: string): string | number {
  const cell = sheet[address] as CellObject | undefined;
  if (cell === undefined || cell.v === undefined) return "";
  if (cell.t === "e") return String(cell.w);
  return typeof cell.v === "boolean" ? Number(cell.v) : (cell.v as string | number);
}

/** All cells of a stretch, by address, as the screen shows them. */
async function shown(area: string): Promise<ReadonlyMap<string, string | number>> {
  const place = parseArea(area)!;
  const { values } = await there.grid.workbook.read({ sheet: await firstSheet(), area: place }, ["values"]);
  return new Map(
    values!.flatMap((row, r) =>
      row.map((value, c) => [utils.encode_cell({ r: place.top + r, c: place.left + c }), plain(value)] as const),
    ),
  );
}

function differences(sheet: WorkSheet, screen: ReadonlyMap<string, string | number>): string[] {
  return [...screen].flatMap(([address, value]) => {
    const stored = told(sheet, address);
    const isSame = stored === value || (typeof value === "number" && Math.abs(value - Number(stored)) < 1e-9);
    return isSame ? [] : [`${address}: ${stored} in the file, ${value} on the screen`];
  });
}

async function addColumns(area: string, columns: readonly NewColumn[]): Promise<void> {
  const list = { sheet: await firstSheet(), area: parseArea(area)! };
  const change = { steps: [{ kind: "addColumns", to: { list }, columns } as const], expects: [] };
  const signal = new AbortController().signal;
  const receipt = await there.grid.workbook.apply(change, { report: () => undefined, signal });
  expect(receipt.outcome, receipt.sentence).toBe("done");
}

const changed = { header: "Last change", index: 1 };
const size = { header: "Size", index: 2 };
const columns: readonly NewColumn[] = [
  { header: "Change due", formula: formula`TUBE.CHANGEDUE(${changed},3)`, format: "d mmm yyyy" },
  { header: "Size mm", formula: formula`TUBE.FRTOMM(${size})`, format: "0.0" },
];

describe("a list whose columns stand in the file since an earlier saving", () => {
  it("an entry that nobody can read makes its results errors in the file too, saved at once", async () => {
    await open(
      written(
        utils.aoa_to_sheet([
          ["ID", "Last change", "Size"],
          ["A1", day("2026-03-05"), 12],
          ["A2", day("2026-04-01"), 18],
        ]),
      ),
    );
    await addColumns("A1:C3", columns);
    const first = await save();
    // 12 Fr / 3 and 18 Fr / 3, the definition of the French gauge
    expect([told(first.sheets["List"]!, "E2"), told(first.sheets["List"]!, "E3")]).toEqual([4, 6]);

    await open(first.bytes);
    sheetNow().getRange("B2").setValue("see letter");
    sheetNow().getRange("C3").setValue({ v: "14G", t: 1 });
    const { sheets, report } = await save();
    expect(told(sheets["List"]!, "D2")).toBe("#VALUE!");
    expect(told(sheets["List"]!, "E3")).toBe("#VALUE!");
    expect((sheets["List"]!["D2"] as CellObject).f).toBe("_xldudf_TUBE_CHANGEDUE(B2,3)");
    expect(told(sheets["List"]!, "E2")).toBe(4);
    expect(differences(sheets["List"]!, await shown("A1:E3"))).toEqual([]);
    expect(report).toEqual([]);
  });

  it("sorted: every row carries its own results", async () => {
    const random = randoms(7);
    const kinds = [12, "14 Fr", "14G", "see letter", "", 16, "18 Ch", 20];
    const sizes = Array.from({ length: 300 }, () => kinds[Math.floor(random() * kinds.length)]!);
    const rows = sizes.map((one, i) => [`A${i}`, day("2026-01-01") + i, one]);
    await open(written(utils.aoa_to_sheet([["ID", "Last change", "Size"], ...rows])));
    await addColumns("A1:C301", columns);
    const before = await save();
    const resultOf = new Map(
      rows.map((_, i) => [told(before.sheets["List"]!, `A${i + 2}`), told(before.sheets["List"]!, `E${i + 2}`)]),
    );
    await open(before.bytes);
    sheetNow()
      .getRange("A2:E301")
      .sort([{ column: 2, ascending: false }]);
    const { sheets } = await save();
    const wrong = rows.flatMap((_, i) => {
      const id = told(sheets["List"]!, `A${i + 2}`);
      return resultOf.get(id) === told(sheets["List"]!, `E${i + 2}`) ? [] : [id];
    });
    expect(told(sheets["List"]!, "A2")).not.toBe("A0");
    expect(wrong).toEqual([]);
    expect(differences(sheets["List"]!, await shown("A1:E301"))).toEqual([]);
  });

  it("opened on a later day: nothing is written for that, but with an entry all is written as it is shown", async () => {
    const sheet = utils.aoa_to_sheet([["Changed", "Days", "Size"]]);
    for (let row = 2; row <= 4; row++) {
      sheet[`A${row}`] = { t: "n", v: TODAY - 10 * row };
      sheet[`B${row}`] = { t: "n", v: 1, f: `TODAY()-A${row}` };
    }
    sheet["C2"] = { t: "n", v: 1, f: "_xldudf_TUBE_FRTOMM(12)" };
    sheet["!ref"] = "A1:C5";
    const bytes = written(sheet);
    await open(bytes);
    const untouched = await save();
    expect(Buffer.compare(untouched.bytes, bytes)).toBe(0);
    expect(untouched.report).toEqual([]);
    sheetNow().getRange("A5").setValue("a note");
    const { sheets } = await save();
    expect(told(sheets["List"]!, "C2")).toBe(4);
    expect(differences(sheets["List"]!, await shown("A1:C5"))).toEqual([]);
  });
});

it("the ready-made caseload sorted by To do, then saved", async () => {
  const book = caseloadBook({ asOf: TODAY, groups: ["fit", "plan", "spare"], people: "invented" });
  await open(await writeBook(book));
  const { workbook } = there.grid;
  const table = (await workbook.overview()).tables.find(({ name }) => name === tableNames.tubes)!;
  const sheetName = (await workbook.overview()).sheets.find(({ id }) => id === table.sheet)!.name;
  const { top, left, rows, columns: width } = table.area;
  const range = there.engine.api
    .getActiveWorkbook()!
    .getSheetByName(sheetName)!
    .getRange(top + 1, left, rows - 1, width);
  const byId = async () => {
    const { values } = await workbook.read({ table: tableNames.tubes }, ["values"]);
    return values!.slice(1).map((row) => row.map(plain));
  };
  const before = await byId();
  // The invented people stand in the order of urgency, by which this column is sorted, already.
  range.sort([{ column: table.columns.indexOf("To do"), ascending: false }]);
  const { sheets } = await save();
  const after = await byId();
  expect(after).not.toEqual(before);
  const cells = new Map(
    after.flatMap((row, r) =>
      row.map((value, c) => [utils.encode_cell({ r: top + 1 + r, c: left + c }), value] as const),
    ),
  );
  expect(differences(sheets[sheetName]!, cells)).toEqual([]);
});

describe("formulas that this page cannot work out", () => {
  const book = (): Uint8Array => {
    const sheet = utils.aoa_to_sheet([
      ["Size", "Theirs", "On it", "Elsewhere"],
      [12, null, null, null],
      [18, null, null, null],
    ]);
    for (const row of [2, 3]) {
      sheet[`B${row}`] = { t: "n", v: row * 10, f: `_xldudf_OTHER_GUESS(A${row})` };
      sheet[`C${row}`] = { t: "n", v: row * 20, f: `B${row}*2` };
      sheet[`D${row}`] = { t: "n", v: row, f: `_xldudf_OTHER_GUESS([1]Other!A${row})` };
    }
    return written(sheet);
  };
  const elementOf = (bytes: Uint8Array, address: string): string =>
    new RegExp(`<c r="${address}"[^>]*>.*?</c>`).exec(strFromU8(unzipSync(bytes)["xl/worksheets/sheet1.xml"]!))![0];

  it("keep their result where nothing that they read has changed, and the report names them", async () => {
    await open(book());
    sheetNow().getRange("F9").setValue("a note");
    const { sheets, report } = await save();
    expect(["B2", "B3", "C2", "D3"].map((address) => told(sheets["List"]!, address))).toEqual([20, 30, 40, 3]);
    expect(report.join()).toContain("not worked out here: B2, D2, B3, D3");
  });

  it("lose it where something has, and so does what hangs on them", async () => {
    await open(book());
    sheetNow().getRange("A2").setValue(30);
    const { bytes, sheets, report } = await save();
    expect(["B2", "C2", "B3", "C3", "D2"].map((address) => told(sheets["List"]!, address))).toEqual([
      "#N/A",
      "#N/A",
      30,
      60,
      2,
    ]);
    expect((sheets["List"]!["B2"] as CellObject).f).toBe("_xldudf_OTHER_GUESS(A2)");
    expect(elementOf(bytes, "B2")).toContain('<f ca="1">');
    expect(elementOf(bytes, "B3")).not.toContain("ca=");
    expect(report[0]).toContain("cannot work out B2, and what they read has changed");
    expect(differences(sheets["List"]!, await shown("A1:D3"))).toEqual([]);
  });

  it("have it back when the change is undone", async () => {
    await open(book());
    sheetNow().getRange("A2").setValue(30);
    await save();
    await there.engine.api.getActiveWorkbook()!.undo();
    const { sheets, report } = await save();
    expect(["B2", "C2"].map((address) => told(sheets["List"]!, address))).toEqual([20, 40]);
    expect(report).toEqual([]);
  });

  it("typed over they are what was typed, without the formula", async () => {
    await open(book());
    sheetNow().getRange("A2").setValue(30);
    await save();
    sheetNow().getRange("B2").setValue(7);
    const { sheets } = await save();
    expect(sheets["List"]!["B2"]).toMatchObject({ t: "n", v: 7 });
    expect((sheets["List"]!["B2"] as CellObject).f).toBeUndefined();
    expect(told(sheets["List"]!, "C2")).toBe(14);
  });

  it("old array formulas too, with all their cells", async () => {
    const sheet = utils.aoa_to_sheet([[1], [2], [3]]);
    utils.sheet_set_array_formula(sheet, "B1:B3", "A1:A3*2");
    [2, 4, 6].forEach((value, row) => Object.assign(sheet[`B${row + 1}`] as CellObject, { t: "n", v: value }));
    await open(written(sheet));
    sheetNow().getRange("A3").setValue(5);
    const { sheets, report } = await save();
    expect(["B1", "B2", "B3"].map((address) => told(sheets["List"]!, address))).toEqual(["#N/A", "#N/A", "#N/A"]);
    expect(sheets["List"]!["B1"]).toMatchObject({ f: "A1:A3*2", F: "B1:B3" });
    expect(report.join()).toContain("B1");
  });
});
