/** A filter that is on in a file: seen, changed and taken off in the grid, and otherwise left to the byte. */
import { readFileSync } from "node:fs";
import { ICommandService } from "@univerjs/core";
import {
  ClearSheetsFilterCriteriaCommand,
  SetSheetsFilterCriteriaCommand,
  SheetsFilterService,
} from "@univerjs/sheets-filter";
import { SetSheetTableFilterCommand, TableManager } from "@univerjs/sheets-table";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { parseArea } from "../../../../taskpane/workbook/area";
import type { Engine } from "../../../../taskpane/workbook/embedded/engine";
import { gridOn } from "../../../../taskpane/workbook/embedded/face";
import type { Grid } from "../../../../taskpane/workbook/embedded/interface";
import type { Change, PlainList } from "../../../../taskpane/workbook/port";
import { book, MAIN, oneSheet, opened, STYLES } from "../../../workbooks/package/build";
import { atRest } from "../at-rest";
import { startHeadless } from "../headless";

const fixture = (name: string) =>
  new Uint8Array(readFileSync(new URL(`../../../workbooks/files/${name}`, import.meta.url)));

let engine: Engine;
let grid: Grid;
beforeAll(() => {
  engine = startHeadless();
  grid = gridOn(engine, { today: 46_132, dayFirst: true, say: () => undefined, hush: () => undefined });
});
afterAll(async () => {
  await atRest();
  engine.univer.dispose();
});

async function open(bytes: Uint8Array): Promise<readonly string[]> {
  const answer = await grid.open(bytes, "filtered.xlsx");
  if (answer.outcome === "refused") throw new Error(answer.sentence);
  await atRest();
  return answer.remarks;
}

async function save() {
  const saved = await grid.save();
  if (saved.outcome === "refused") throw new Error(saved.sentence);
  const after = opened(saved.bytes);
  const hidden = [...after.layout(after.sheets[0]!.name).rows].filter(([, row]) => row.isHidden).map(([row]) => row);
  return { ...saved, after, hidden };
}

const unitId = () => engine.api.getActiveWorkbook()!.getId();
const sheet = () => engine.api.getActiveWorkbook()!.getActiveSheet();
const ids = () => ({ unitId: unitId(), subUnitId: sheet().getSheetId() });
const model = () => engine.injector.get(SheetsFilterService).getFilterModel(unitId(), sheet().getSheetId());
const criterion = (column: number) => model()?.getFilterColumn(column)?.getColumnData();
const table = () => engine.injector.get(TableManager).getTableById(unitId(), "table1")!;
const run = (id: string, params: object) =>
  engine.injector.get(ICommandService).executeCommand(id, { ...ids(), ...params });

/** Counted from 1, as in the file. */
function hiddenNow(): number[] {
  const worksheet = sheet().getSheet();
  return Array.from({ length: worksheet.getRowCount() }, (_, row) => row + 1).filter(
    (row) => !worksheet.getRowVisible(row - 1),
  );
}

function hiddenInFile(bytes: Uint8Array): number[] {
  const file = opened(bytes);
  return [...file.layout(file.sheets[0]!.name).rows].filter(([, { isHidden }]) => isHidden).map(([row]) => row);
}

const showAll = (of: { table: string } | { list: PlainList }): Change => ({
  steps: [{ kind: "showRows", of, criteria: [] }],
  expects: [],
});
const apply = (change: Change) =>
  grid.workbook.apply(change, { report: () => undefined, signal: new AbortController().signal });

/** Numbers 1, 2, ... below a heading. */
function numbers(filter: string, hidden: readonly number[], count = 5): Uint8Array {
  const rows = Array.from({ length: count }, (_, at) => {
    const row = at + 2;
    return `<row r="${row}"${hidden.includes(row) ? ' hidden="1"' : ""}><c r="A${row}"><v>${at + 1}</v></c></row>`;
  });
  const heading = '<row r="1"><c r="A1" t="inlineStr"><is><t>Size</t></is></c></row>';
  const inside = `<sheetData>${heading}${rows.join("")}</sheetData>`;
  return oneSheet(`${inside}<autoFilter ref="A1:A${count + 1}">${filter}</autoFilter>`);
}

const inTable = (filter: string, hidden: readonly number[]): Uint8Array => {
  const rows = [3, 5, 7].map(
    (value, at) =>
      `<row r="${at + 2}"${hidden.includes(at + 2) ? ' hidden="1"' : ""}><c r="A${at + 2}"><v>${value}</v></c></row>`,
  );
  const cells = `<sheetData><row r="1"><c r="A1" t="inlineStr"><is><t>Size</t></is></c></row>${rows.join("")}</sheetData>`;
  const xml = `<table xmlns="${MAIN}" id="1" name="T" displayName="T" ref="A1:A4"><autoFilter ref="A1:A4">${filter}</autoFilter><tableColumns count="1"><tableColumn id="1" name="Size"/></tableColumns></table>`;
  return book({ styles: STYLES, sheets: [{ name: "S", inside: cells, tables: [xml] }] });
};

const column = (inside: string, offset = 0) => `<filterColumn colId="${offset}">${inside}</filterColumn>`;

describe("a sheet's filter by values", () => {
  const bytes = fixture("filter-on.xlsx");

  it("has its arrows and its criterion, hides the same rows, and is no change", async () => {
    const remarks = await open(bytes);
    expect(model()?.getRange()).toMatchObject({ startRow: 2, endRow: 32, startColumn: 0, endColumn: 6 });
    expect(criterion(1)?.filters?.filters).toEqual(expect.arrayContaining(["GJ", "balloon"]));
    expect(hiddenNow()).toEqual(hiddenInFile(bytes));
    expect(hiddenNow().length).toBeGreaterThan(0);
    expect(grid.isChanged()).toBe(false);
    expect(remarks.filter((remark) => remark.includes("ilter"))).toEqual([expect.stringContaining("A filter is on")]);
    const saved = await save();
    expect(saved.bytes).toEqual(bytes);
    expect(saved.report).toEqual([]);
  });

  it("stays as it was written where something else changes", async () => {
    await open(bytes);
    sheet().getRange("J1").setValue("z");
    const { after, report } = await save();
    expect(report).toEqual([]);
    expect(after.sheets[0]!.filter).toEqual(opened(bytes).sheets[0]!.filter);
  });

  it("is cleared at its arrow: all rows are there, in the file too", async () => {
    await open(bytes);
    await run(ClearSheetsFilterCriteriaCommand.id, {});
    expect(hiddenNow()).toEqual([]);
    expect(grid.isChanged()).toBe(true);
    const { after, hidden, report } = await save();
    expect({ hidden, report }).toEqual({ hidden: [], report: [] });
    expect(after.sheets[0]!.filter).toEqual({ ref: "A3:G33", isActive: false, columns: [] });
  });

  it("is changed at its arrow", async () => {
    await open(bytes);
    await run(SetSheetsFilterCriteriaCommand.id, { col: 1, criteria: { colId: 1, filters: { filters: ["GJ"] } } });
    const { after, hidden } = await save();
    expect(hidden.length).toBeGreaterThan(hiddenInFile(bytes).length);
    expect(after.sheets[0]!.filter?.columns).toEqual([{ offset: 1, values: ["GJ"], showsBlanks: false }]);
  });

  it("is taken off by Show all rows, and put back", async () => {
    await open(bytes);
    const { id } = (await grid.workbook.overview()).sheets[0]!;
    const receipt = await apply(showAll({ list: { sheet: id, area: parseArea("A3:G33")! } }));
    expect(receipt.outcome).toBe("done");
    expect(hiddenNow()).toEqual([]);
    const { after, hidden, report } = await save();
    expect({ hidden, report }).toEqual({ hidden: [], report: [] });
    expect(after.sheets[0]!.filter).toEqual({ ref: "A3:G33", isActive: false, columns: [] });
    expect(await grid.workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
    expect(hiddenNow()).toEqual(hiddenInFile(bytes));
  });

  it("is taken off with its arrows: those stay in the file", async () => {
    await open(bytes);
    await run("sheet.command.remove-sheet-filter", {});
    expect(hiddenNow()).toEqual([]);
    const { after, hidden, report } = await save();
    expect(hidden).toEqual([]);
    expect(report).toEqual([expect.stringContaining("arrows")]);
    expect(after.sheets[0]!.filter).toEqual({ ref: "A3:G33", isActive: false, columns: [] });
  });

  it("by two columns and blanks at once; one is cleared, the other stands", async () => {
    const cells = [
      ["a", "1"],
      ["A", ""],
      ["b", "1"],
      ["a", "2"],
    ].map(([word, number], at) => {
      const row = at + 2;
      const second = number ? `<c r="B${row}"><v>${number}</v></c>` : "";
      return `<row r="${row}"${at >= 2 ? ' hidden="1"' : ""}><c r="A${row}" t="inlineStr"><is><t>${word}</t></is></c>${second}</row>`;
    });
    const both =
      column('<filters><filter val="a"/></filters>') + column('<filters blank="1"><filter val="1"/></filters>', 1);
    await open(
      oneSheet(
        `<sheetData><row r="1"><c r="A1" t="inlineStr"><is><t>Word</t></is></c></row>${cells.join("")}</sheetData><autoFilter ref="A1:B5">${both}</autoFilter>`,
      ),
    );
    expect(criterion(0)?.filters?.filters).toEqual(["a", "A"]);
    await run(SetSheetsFilterCriteriaCommand.id, { col: 0, criteria: null });
    expect(hiddenNow()).toEqual([5]);
    const { after, hidden } = await save();
    expect(hidden).toEqual([5]);
    expect(after.sheets[0]!.filter?.columns).toEqual([{ offset: 1, values: ["1"], showsBlanks: true }]);
  });
});

describe("a table's filter by values", () => {
  const bytes = fixture("table-with-totals.xlsx");
  const values = () => (table().getTableFilterColumn(2) as { values: unknown[] } | undefined)?.values;
  const asOff = async () => {
    expect(hiddenNow()).toEqual([]);
    const { after, hidden, report } = await save();
    expect({ hidden, report }).toEqual({ hidden: [], report: [] });
    expect(after.tables[0]!.filter).toEqual({ ref: "A5:I65", isActive: false, columns: [] });
  };

  it("is marked at its column, hides the same rows, and is no change", async () => {
    await open(bytes);
    expect(values()).toEqual(expect.arrayContaining(["balloon", "Balloon button", "PEG"]));
    expect(hiddenNow()).toEqual(hiddenInFile(bytes));
    expect((await grid.workbook.overview()).tables[0]!.isFiltered).toBe(true);
    expect(grid.isChanged()).toBe(false);
    expect((await save()).bytes).toEqual(bytes);
  });

  it("is cleared at its arrow", async () => {
    await open(bytes);
    await run(SetSheetTableFilterCommand.id, { tableId: "table1", column: 2, tableFilter: undefined });
    await asOff();
  });

  it("is taken off by Show all rows, and put back", async () => {
    await open(bytes);
    const { name } = (await grid.workbook.overview()).tables[0]!;
    const receipt = await apply(showAll({ table: name }));
    await asOff();
    expect(await grid.workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
    expect(hiddenNow()).toEqual(hiddenInFile(bytes));
  });
});

describe("a filter by comparisons", () => {
  // ECMA-376 part 1, 18.3.2.1 and 18.18.31: the operator is "equal" where none is stated
  const CASES: readonly (readonly [name: string, filter: string, hidden: readonly number[]])[] = [
    ["more than 2", '<customFilters><customFilter operator="greaterThan" val="2"/></customFilters>', [2, 3]],
    [
      "from 2 to 4",
      '<customFilters and="1"><customFilter operator="greaterThanOrEqual" val="2"/><customFilter operator="lessThanOrEqual" val="4"/></customFilters>',
      [2, 6],
    ],
    [
      "1 or at least 4",
      '<customFilters><customFilter val="1"/><customFilter operator="greaterThanOrEqual" val="4"/></customFilters>',
      [3, 4],
    ],
  ];
  it.each(CASES)("%s", async (_, filter, hidden) => {
    const bytes = numbers(column(filter), hidden);
    await open(bytes);
    expect(criterion(0)?.customFilters).toBeDefined();
    expect(hiddenNow()).toEqual(hidden);
    expect((await save()).bytes).toEqual(bytes);
    await run(ClearSheetsFilterCriteriaCommand.id, {});
    expect(hiddenNow()).toEqual([]);
    expect((await save()).after.sheets[0]!.filter?.isActive).toBe(false);
  });

  it("in a table", async () => {
    const bytes = inTable(column('<customFilters><customFilter operator="lessThan" val="5"/></customFilters>'), [3, 4]);
    await open(bytes);
    expect(table().getTableFilterColumn(0)?.filterType).toBe("condition");
    expect(hiddenNow()).toEqual([3, 4]);
    expect((await save()).bytes).toEqual(bytes);
    await run(SetSheetTableFilterCommand.id, { tableId: "table1", column: 0, tableFilter: undefined });
    const { after, hidden } = await save();
    expect({ hidden, isActive: after.tables[0]!.filter?.isActive }).toEqual({ hidden: [], isActive: false });
  });

  it("that is changed to another which is not saved leaves no old one behind", async () => {
    await open(inTable(column('<customFilters><customFilter operator="lessThan" val="5"/></customFilters>'), [3, 4]));
    const filterInfo = { conditionType: "number", compareType: "greaterThan", expectedValue: 5 };
    const tableFilter = { filterType: "condition", filterInfo };
    await run(SetSheetTableFilterCommand.id, { tableId: "table1", column: 0, tableFilter });
    const { after, hidden, report } = await save();
    expect(hidden).toEqual([2, 3]);
    expect(report).toEqual([expect.stringContaining("condition is not saved")]);
    expect(after.tables[0]!.filter?.columns).toEqual([]);
  });
});

describe("a filter that the grid cannot hold", () => {
  const KINDS: readonly (readonly [said: RegExp, filter: string])[] = [
    [/by colour/, '<colorFilter dxfId="0"/>'],
    [/by icon/, '<iconFilter iconSet="3Arrows" iconId="0"/>'],
    [/highest or lowest/, '<top10 val="3" filterVal="3"/>'],
    [/moves with the day/, '<dynamicFilter type="aboveAverage" val="2"/>'],
    [/dates/, '<filters><dateGroupItem year="2026" dateTimeGrouping="year"/></filters>'],
    // the row was entered after the filter was set: Excel filters it only when asked to again
    [/works out otherwise/, '<filters><filter val="3"/><filter val="2"/></filters>'],
  ];
  const hidden = [2, 3];

  it.each(KINDS)("%s: rows stay hidden, the arrow is there, and it is told", async (said, filter) => {
    const bytes = numbers(column(filter), hidden);
    const remarks = await open(bytes);
    expect(remarks.filter((remark) => remark.includes("filter"))).toEqual([expect.stringMatching(said)]);
    expect(model()?.getRange()).toMatchObject({ startRow: 0, endRow: 5 });
    expect(criterion(0)).toBeUndefined();
    expect(hiddenNow()).toEqual(hidden);
    expect(grid.isChanged()).toBe(false);
    expect((await save()).bytes).toEqual(bytes);

    sheet().getRange("C1").setValue("z");
    const kept = await save();
    expect(kept.hidden).toEqual(hidden);
    expect(kept.report).toEqual([]);
    expect(kept.after.sheets[0]!.filter).toEqual(opened(bytes).sheets[0]!.filter);

    const { id } = (await grid.workbook.overview()).sheets[0]!;
    await apply(showAll({ list: { sheet: id, area: parseArea("A1:A6")! } }));
    expect(hiddenNow()).toEqual([]);
    const shown = await save();
    expect({ hidden: shown.hidden, report: shown.report }).toEqual({ hidden: [], report: [] });
    expect(shown.after.sheets[0]!.filter).toEqual({ ref: "A1:A6", isActive: false, columns: [] });
  });

  it("in a table", async () => {
    const bytes = inTable(column('<colorFilter dxfId="0"/>'), [2]);
    const remarks = await open(bytes);
    expect(remarks).toEqual([expect.stringMatching(/"T".*by colour/)]);
    expect(hiddenNow()).toEqual([2]);
    expect((await save()).bytes).toEqual(bytes);
    await apply(showAll({ table: "T" }));
    const { after, hidden: left } = await save();
    expect({ left, isActive: after.tables[0]!.filter?.isActive }).toEqual({ left: [], isActive: false });
  });
});
