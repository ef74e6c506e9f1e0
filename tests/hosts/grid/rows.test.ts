/** Rows added, removed and filtered in a workbook of our own making: saved, read by another program's reader, opened again. */
import { read as readElsewhere } from "@e965/xlsx";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { BookDescription, TableColumn } from "../../../src/caseload/book";
import { formula } from "../../../src/columns/formula";
import { gridOn } from "../../../taskpane/workbook/embedded/face";
import type { Engine } from "../../../taskpane/workbook/embedded/engine";
import type { Grid } from "../../../taskpane/workbook/embedded/interface";
import { writeBook } from "../../../taskpane/workbook/file";
import { isRefusal, openPackage, type OpenedPackage } from "../../../taskpane/workbook/package";
import type { Change, Receipt, Step } from "../../../taskpane/workbook/port";
import { parseArea } from "../../../taskpane/workbook/area";
import { atRest } from "./at-rest";
import { startHeadless } from "./headless";

const TODAY = 46_352; // 26 November 2026
const typedColumn = { width: 12, format: "General", kind: "typed" } as const;
const id: TableColumn = { ...typedColumn, header: "ID", format: "@" };
const idSlot = { header: "ID", index: 0 };
const sizeSlot = { header: "Size", index: 1 };

/** Two tables of which one reads the other through a name, as the ready-made caseload does. People and numbers invented. */
const BOOK: BookDescription = {
  sheets: [
    {
      name: "People",
      cells: [{ row: 0, column: 0, value: "Invented for tests" }],
      table: {
        name: "People",
        top: 2,
        left: 0,
        columns: [
          id,
          { ...typedColumn, header: "Size" },
          { ...typedColumn, kind: "computed", header: "Twice", formula: formula`${sizeSlot}*2` },
          { ...typedColumn, kind: "computed", header: "Checks", formula: formula`COUNTIF(Check_ID,${idSlot})` },
          { ...typedColumn, kind: "computed", header: "Share", formula: formula`${sizeSlot}/SUM(People[Size])` },
        ],
        rows: [
          ["A1", 10, 20, 2, 0.1],
          ["A2", 20, 40, 1, 0.2],
          ["A3", 30, 60, 0, 0.3],
          ["A4", 40, 80, 0, 0.4],
        ],
      },
    },
    {
      name: "Checks",
      cells: [],
      table: {
        name: "Checks",
        top: 0,
        left: 0,
        columns: [id, { ...typedColumn, header: "mL" }],
        rows: [
          ["A1", 5],
          ["A2", 4],
          ["A1", 3],
        ],
      },
    },
    {
      name: "Sums",
      cells: [
        { row: 0, column: 0, formula: "SUM(Checks[mL])", value: 12 },
        { row: 1, column: 1, formula: "SUM(Checks!$B$2:$B$4)", value: 12 },
        { row: 2, column: 2, formula: "SUM(Plain_range)", value: 12 },
        { row: 3, column: 0, value: 7 },
      ],
    },
  ],
  names: [
    { name: "Check_ID", refersTo: "Checks[ID]" },
    { name: "Plain_range", refersTo: "Checks!$B$2:$B$4" },
    { name: "Limit", refersTo: "Sums!$A$4" },
  ],
};

const NO_CHECKS: BookDescription = {
  ...BOOK,
  sheets: BOOK.sheets.map((sheet) =>
    sheet.name === "Checks" ? { ...sheet, table: { ...sheet.table!, rows: [[null, null]] } } : sheet,
  ),
  names: BOOK.names.map((name) =>
    name.name === "Plain_range" ? { name: name.name, refersTo: "Checks!$B$2:$B$2" } : name,
  ),
};

let engine: Engine;
let grid: Grid;
const said: string[] = [];
beforeAll(() => {
  engine = startHeadless();
  grid = gridOn(engine, { today: TODAY, dayFirst: true, say: (one) => said.push(one), hush: () => undefined });
});
afterAll(async () => {
  await atRest();
  engine.univer.dispose();
});

async function opened(book: BookDescription): Promise<Uint8Array> {
  const bytes = await writeBook(book);
  expect(await grid.open(bytes, "own.xlsx")).toMatchObject({ outcome: "opened" });
  await atRest();
  return bytes;
}

async function saved(): Promise<{ bytes: Uint8Array; opened: OpenedPackage; report: readonly string[] }> {
  const outcome = await grid.save();
  if (outcome.outcome === "refused") throw new Error(outcome.sentence);
  const again = openPackage(outcome.bytes);
  if (isRefusal(again)) throw new Error(again.refused);
  return { bytes: outcome.bytes, opened: again, report: outcome.report };
}

async function done(...steps: Step[]): Promise<Receipt> {
  const change: Change = { steps, expects: [] };
  const receipt = await grid.workbook.apply(change, {
    report: () => undefined,
    signal: new AbortController().signal,
  });
  expect(receipt).toMatchObject({ outcome: "done" });
  await atRest();
  return receipt;
}

/** The same sum, of a column by its name, of cells, of a name. */
async function sums() {
  const held = (await values("Sums", "A1:C3"))!;
  return [held[0]![0], held[1]![1], held[2]![2]];
}

async function values(sheet: string, address: string) {
  const { sheets } = await grid.workbook.overview();
  const place = { sheet: sheets.find((one) => one.name === sheet)!.id, area: parseArea(address)! };
  return (await grid.workbook.read(place, ["values"])).values;
}

const cellsOf = (bytes: Uint8Array, sheet: string) =>
  readElsewhere(bytes, { cellFormula: true }).Sheets[sheet]! as Record<string, { v?: unknown; f?: string } | undefined>;

const refOf = (book: OpenedPackage, table: string) => book.tables.find((one) => one.name === table)!.ref;
const nameOf = (book: OpenedPackage, name: string) => book.definedNames.find((one) => one.name === name)!.text;

const check: Step = {
  kind: "appendRows",
  table: "Checks",
  rows: [
    { ID: "A3", mL: 8 },
    { ID: "A1", mL: 1 },
  ],
};

describe("rows appended in the grid", () => {
  it("are seen by names and by whole columns, through saving and opening again", async () => {
    await opened(BOOK);
    await done(check);
    expect(await values("People", "D4:D7")).toEqual([[3], [1], [1], [0]]);
    expect(await sums()).toEqual([21, 21, 21]);

    const { bytes, opened: book } = await saved();
    expect(refOf(book, "Checks")).toBe("A1:B6");
    expect(nameOf(book, "Check_ID")).toBe("Checks[ID]");
    expect(nameOf(book, "Plain_range")).toBe("Checks!$B$2:$B$6");
    const written = cellsOf(bytes, "Sums");
    expect(written["A1"]).toMatchObject({ f: "SUM(Checks[mL])", v: 21 });
    expect(written["B2"]).toMatchObject({ f: "SUM(Checks!$B$2:$B$6)", v: 21 });
    expect(cellsOf(bytes, "People")["D4"]).toMatchObject({ f: "COUNTIF(Check_ID,People[[#This Row],[ID]])", v: 3 });

    expect((await grid.open(bytes, "again.xlsx")).outcome).toBe("opened");
    await done({ kind: "appendRows", table: "Checks", rows: [{ ID: "A4", mL: 2 }] });
    expect(await sums()).toEqual([23, 23, 23]);
    expect(await values("People", "D7:D7")).toEqual([[1]]);
  });

  it("come with formulas in the file's own words", async () => {
    await opened(BOOK);
    await done({ kind: "appendRows", table: "People", rows: [{ ID: "0012", Size: 100 }, { ID: "=A9" }] });
    expect(await values("People", "A8:E9")).toEqual([
      ["0012", 100, 200, 0, 0.5],
      ["=A9", null, 0, 0, 0],
    ]);
    expect(await values("People", "E4:E4")).toEqual([[0.05]]);
    const { bytes, opened: book, report } = await saved();
    expect(report).toEqual([]);
    expect(refOf(book, "People")).toBe("A3:E9");
    const cells = cellsOf(bytes, "People");
    for (const row of [4, 7, 8, 9]) {
      expect(cells[`C${row}`]!.f).toBe("People[[#This Row],[Size]]*2");
      expect(cells[`E${row}`]!.f).toBe("People[[#This Row],[Size]]/SUM(People[Size])");
    }
    expect(cells["A8"]).toMatchObject({ v: "0012" });
    expect(cells["A9"]).toMatchObject({ v: "=A9" });
    expect(cells["A9"]!.f).toBeUndefined();
    expect(book.numberFormat([...book.cells("People")].find((cell) => cell.ref === "A9")!.styleIndex)).toBe("@");
  });

  it("fill an empty table and are seen from its second row on", async () => {
    await opened(NO_CHECKS);
    await done({ kind: "appendRows", table: "Checks", rows: [{ ID: "A1", mL: 5 }] });
    expect(await values("People", "D4:D4")).toEqual([[1]]);
    await done({ kind: "appendRows", table: "Checks", rows: [{ ID: "A1", mL: 6 }] });
    expect(await values("People", "D4:D4")).toEqual([[2]]);
    expect(await sums()).toEqual([11, 11, 11]);
    expect(refOf((await saved()).opened, "Checks")).toBe("A1:B3");
  });

  it("are one undo with all that goes with them, and the file is then as it was", async () => {
    const bytes = await opened(BOOK);
    await done(
      check,
      { kind: "changeRow", table: "People", row: 1, values: { Size: 50 } },
      { kind: "writeNamed", name: "Limit", value: 9 },
    );
    expect(await values("Sums", "A4:A4")).toEqual([[9]]);
    engine.api.getActiveWorkbook()!.undo();
    await atRest();
    expect(await values("People", "B4:D7")).toEqual([
      [10, 20, 2],
      [20, 40, 1],
      [30, 60, 0],
      [40, 80, 0],
    ]);
    expect(await sums()).toEqual([12, 12, 12]);
    expect(await values("Sums", "A4:A4")).toEqual([[7]]);
    expect(Buffer.compare((await saved()).bytes, bytes)).toBe(0);
    engine.api.getActiveWorkbook()!.redo();
    await atRest();
    expect(await sums()).toEqual([21, 21, 21]);
    expect(await values("Sums", "A4:A4")).toEqual([[9]]);
  });

  it("are taken back without a trace", async () => {
    const bytes = await opened(BOOK);
    const receipt = await done(check, { kind: "appendRows", table: "People", rows: [{ ID: "A9", Size: 1 }] });
    expect(await grid.workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
    await atRest();
    expect(await sums()).toEqual([12, 12, 12]);
    expect(Buffer.compare((await saved()).bytes, bytes)).toBe(0);
  });
});

describe("rows removed in the grid", () => {
  it("shorten the table in the file too; formulas, names and sums follow", async () => {
    const bytes = await opened(BOOK);
    const receipt = await done(
      { kind: "removeRows", table: "Checks", rows: [0] },
      { kind: "removeRows", table: "People", rows: [0, 2] },
    );
    expect(await values("People", "A4:E6")).toEqual([
      ["A2", 20, 40, 1, 20 / 60],
      ["A4", 40, 80, 0, 40 / 60],
      [null, null, null, null, null],
    ]);
    expect(await sums()).toEqual([7, 7, 7]);
    const { bytes: after, opened: book } = await saved();
    expect([refOf(book, "People"), refOf(book, "Checks")]).toEqual(["A3:E5", "A1:B3"]);
    expect(nameOf(book, "Plain_range")).toBe("Checks!$B$2:$B$3");
    const cells = cellsOf(after, "People");
    expect(cells["A5"]!.v).toBe("A4");
    expect(cells["C5"]).toMatchObject({ f: "People[[#This Row],[Size]]*2", v: 80 });
    expect([cells["A6"]?.v, cells["C6"]?.f, cells["C7"]?.f]).toEqual([undefined, undefined, undefined]);

    expect(await grid.workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
    await atRest();
    expect(await values("People", "A4:D7")).toEqual([
      ["A1", 10, 20, 2],
      ["A2", 20, 40, 1],
      ["A3", 30, 60, 0],
      ["A4", 40, 80, 0],
    ]);
    expect(Buffer.compare((await saved()).bytes, bytes)).toBe(0);
  });

  it("are refused where a formula elsewhere reads one of the rows", async () => {
    await opened({
      ...BOOK,
      sheets: BOOK.sheets.map((sheet) =>
        sheet.name === "Sums"
          ? { ...sheet, cells: [...sheet.cells, { row: 5, column: 1, formula: "People!$B$6+1", value: 31 }] }
          : sheet,
      ),
    });
    const change: Change = { steps: [{ kind: "removeRows", table: "People", rows: [0] }], expects: [] };
    const watch = { report: () => undefined, signal: new AbortController().signal };
    const receipt = await grid.workbook.apply(change, watch);
    expect(receipt.outcome).toBe("refused");
    expect(receipt.sentence).toContain("Sums!B6");
  });
});

describe("rows shown in the grid", () => {
  const few: Step = {
    kind: "showRows",
    of: { table: "People" },
    criteria: [{ column: 0, keeps: ["A2", "A4"] }],
  };

  it("are the table's filter in the file, and shown again from there", async () => {
    await opened(BOOK);
    await done(few);
    const { bytes, opened: book, report } = await saved();
    expect(report).toEqual([]);
    const table = book.tables.find((one) => one.name === "People")!;
    expect(table.filter).toMatchObject({ isActive: true, columns: [{ offset: 0, values: ["A2", "A4"] }] });
    const hidden = [...book.layout("People").rows].filter(([, row]) => row.isHidden).map(([row]) => row);
    expect(hidden).toEqual([4, 6]);

    expect((await grid.open(bytes, "again.xlsx")).outcome).toBe("opened");
    expect((await grid.workbook.overview()).tables[0]!.isFiltered).toBe(true);
    await done({ kind: "showRows", of: { table: "People" }, criteria: [] });
    expect((await grid.workbook.overview()).tables[0]!.isFiltered).toBe(false);
    const again = (await saved()).opened;
    expect(again.tables[0]!.filter!.isActive).toBe(false);
    expect([...again.layout("People").rows].some(([, row]) => row.isHidden)).toBe(false);
  });

  it("come back with one undo", async () => {
    const bytes = await opened(BOOK);
    await done(few);
    engine.api.getActiveWorkbook()!.undo();
    await atRest();
    expect((await grid.workbook.overview()).tables[0]!.isFiltered).toBe(false);
    expect(Buffer.compare((await saved()).bytes, bytes)).toBe(0);
  });
});
