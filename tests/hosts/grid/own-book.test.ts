/** Rows that a person inserts, removes and types below a table in a ready-made caseload; in other files nothing moves. */
import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { tableNames } from "../../../src/caseload/names";
import type { BookDescription, SheetDescription, TableColumn } from "../../../src/caseload/book";
import { formula } from "../../../src/columns/formula";
import { parseArea } from "../../../taskpane/workbook/area";
import { gridOn } from "../../../taskpane/workbook/embedded/face";
import type { Engine } from "../../../taskpane/workbook/embedded/engine";
import type { Grid } from "../../../taskpane/workbook/embedded/interface";
import { writeBook } from "../../../taskpane/workbook/file";
import { isRefusal, openPackage } from "../../../taskpane/workbook/package";
import { atRest } from "./at-rest";
import { startHeadless } from "./headless";

const plain = { width: 12, format: "General", kind: "typed" } as const;
const id: TableColumn = { ...plain, header: "ID", format: "@" };
const sheetOf = (name: string, rows: SheetDescription["table"]): SheetDescription => ({
  name,
  cells: [],
  table: rows!,
});
const small = (name: string) => ({ name, top: 0, left: 0, columns: [id], rows: [["A1"]] });

/** As small as a caseload can be: its tables' names, and a column that looks into another table. Invented. */
const CASELOAD: BookDescription = {
  sheets: [
    sheetOf("Tubes in use", {
      name: tableNames.tubes,
      top: 2,
      left: 0,
      columns: [
        id,
        { ...plain, header: "Size" },
        {
          ...plain,
          kind: "computed",
          header: "Checks",
          formula: formula`COUNTIF(Check_ID,${{ header: "ID", index: 0 }})`,
        },
      ],
      rows: [
        ["A1", 10, 2],
        ["A2", 20, 1],
        ["A3", 30, 0],
      ],
    }),
    sheetOf("Balloon checks", {
      name: tableNames.checks,
      top: 0,
      left: 0,
      columns: [id, { ...plain, header: "mL" }],
      rows: [
        ["A1", 5],
        ["A2", 4],
        ["A1", 3],
      ],
    }),
    sheetOf("Changes", small(tableNames.changes)),
    { name: "Clinic settings", cells: [] },
  ],
  names: [{ name: "Check_ID", refersTo: `${tableNames.checks}[ID]` }],
};

const OTHER: BookDescription = {
  ...CASELOAD,
  sheets: CASELOAD.sheets.filter(({ table }) => table?.name !== tableNames.changes),
};

let engine: Engine;
let grid: Grid;
const said: string[] = [];
beforeAll(() => {
  engine = startHeadless();
  grid = gridOn(engine, { today: 46_352, dayFirst: true, say: (one) => said.push(one), hush: () => undefined });
});
beforeEach(() => void said.splice(0));
afterAll(async () => {
  await atRest();
  engine.univer.dispose();
});

async function opened(book: BookDescription): Promise<Uint8Array> {
  const bytes = await writeBook(book);
  expect((await grid.open(bytes, "caseload.xlsx")).outcome).toBe("opened");
  await atRest();
  return bytes;
}

const sheetNamed = (name: string) => engine.api.getActiveWorkbook()!.getSheetByName(name)!;

async function command(kind: string, sheet: string, startRow: number, endRow = startRow): Promise<void> {
  const range = { startRow, endRow, startColumn: 0, endColumn: 2 };
  const params = { unitId: engine.api.getActiveWorkbook()!.getId(), subUnitId: sheetNamed(sheet).getSheetId(), range };
  await engine.api.executeCommand(`sheet.command.${kind}`, params).catch(() => undefined);
  await atRest();
}

async function rows() {
  const { values } = await grid.workbook.read({ table: tableNames.tubes }, ["values"]);
  return values!.slice(1);
}

async function refs(): Promise<string[]> {
  const saved = await grid.save();
  if (saved.outcome === "refused") throw new Error(saved.sentence);
  const again = openPackage(saved.bytes);
  if (isRefusal(again)) throw new Error(again.refused);
  return again.tables.slice(0, 2).map((table) => table.ref);
}

describe("in a ready-made caseload", () => {
  it("a row is inserted within the table, with its formulas", async () => {
    const bytes = await opened(CASELOAD);
    await command("insert-row-before", "Tubes in use", 4);
    expect(await rows()).toEqual([
      ["A1", 10, 2],
      [null, null, 0],
      ["A2", 20, 1],
      ["A3", 30, 0],
    ]);
    expect(said).toEqual([]);
    expect(await refs()).toEqual(["A3:C7", "A1:B4"]);
    engine.api.getActiveWorkbook()!.undo();
    await atRest();
    expect(await rows()).toEqual([
      ["A1", 10, 2],
      ["A2", 20, 1],
      ["A3", 30, 0],
    ]);
    const saved = await grid.save();
    expect(saved.outcome === "saved" && Buffer.compare(saved.bytes, bytes)).toBe(0);
  });

  it("rows are removed, and those below move up with their formulas", async () => {
    await opened(CASELOAD);
    await command("remove-row", "Tubes in use", 3, 4);
    expect(await rows()).toEqual([["A3", 30, 0]]);
    await command("remove-row", "Balloon checks", 1);
    await command("remove-row", "Tubes in use", 3);
    expect(await rows()).toEqual([[null, null, 0]]);
    expect(await refs()).toEqual(["A3:C4", "A1:B3"]);
  });

  it("a row typed right below the table becomes part of it", async () => {
    await opened(CASELOAD);
    sheetNamed("Tubes in use").getRange("A7").setValue({ v: "A1", t: 1 });
    await atRest();
    expect(await rows()).toEqual([
      ["A1", 10, 2],
      ["A2", 20, 1],
      ["A3", 30, 0],
      ["A1", null, 2],
    ]);
    sheetNamed("Balloon checks").getRange("A5").setValue({ v: "A3", t: 1 });
    await atRest();
    expect((await rows()).map((row) => row[2])).toEqual([2, 1, 1, 2]);
    expect(await refs()).toEqual(["A3:C7", "A1:B5"]);
  });

  it("what stands further below, or beside, is left alone", async () => {
    await opened(CASELOAD);
    sheetNamed("Tubes in use").getRange("A8").setValue("a remark");
    sheetNamed("Tubes in use").getRange("E7").setValue("beside");
    await atRest();
    const { tables } = await grid.workbook.overview();
    expect(tables[0]!.area).toEqual(parseArea("A3:C6"));
    await command("insert-row-after", "Tubes in use", 5, 6);
    await command("insert-multi-rows-above", "Tubes in use", 3, 4);
    expect(said.join()).toContain("A8");
    expect((await rows()).length).toBe(3);
  });

  it("rows outside the table are not moved", async () => {
    await opened(CASELOAD);
    await command("insert-row-before", "Tubes in use", 1);
    expect(said.join()).toMatch(/Rows are not inserted/);
    expect((await grid.workbook.overview()).tables[0]!.area).toEqual(parseArea("A3:C6"));
  });
});

describe("in any other file", () => {
  it("rows are not inserted, and what is typed below a table stays below it", async () => {
    await opened(OTHER);
    await command("insert-row-before", "Tubes in use", 4);
    expect(said.join()).toMatch(/Rows are not inserted/);
    sheetNamed("Tubes in use").getRange("A7").setValue({ v: "A1", t: 1 });
    await atRest();
    expect((await rows()).length).toBe(3);
    expect((await refs())[0]).toBe("A3:C6");
  });
});
