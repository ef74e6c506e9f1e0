/**
 * A ready-made caseload is worked out by the reader of formulas instead of by the engine: the same caseload beside it,
 * whose formulas say the same by way of a function that the reader does not know, is left to the engine, and both read
 * alike after everything that people do.
 */
import { ReorderRangeCommand } from "@univerjs/sheets";
import "@univerjs/sheets-data-validation/facade";
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { BookDescription, TableDescription } from "../../../src/caseload/book";
import { caseloadBookOf } from "../../../src/caseload/index";
import { inventedCaseload } from "../../../src/caseload/invented/index";
import { rowsTables, sheetNames, tableNames, type RowsTable } from "../../../src/caseload/names";
import { formula } from "../../../src/columns/formula";
import { day } from "../../../src/worksheet/dates";
import { FormulaDependencyGenerator } from "@univerjs/engine-formula";
import { isRefusal, openPackage } from "../../../taskpane/workbook/package";
import type { GridWorkbookPort } from "../../../taskpane/workbook/embedded/book/workbook";
import { writeBook } from "../../../taskpane/workbook/file";
import { leftToEngine, plain, startGrid, type InGrid } from "../../workbooks/new-file/in-grid";
import { shortOrLong } from "../../budget";
import { atRest } from "./at-rest";

const TODAY = day("2026-11-26");
/** The engine works all of it out after each edit, so the short run has the first of the invented people only. */
const all = inventedCaseload(TODAY);
const [TUBES, LOGGED] = shortOrLong([24, 24], [all.tubes.length, Infinity]);
const rows = {
  tubes: all.tubes.slice(0, TUBES),
  checks: all.checks.slice(0, LOGGED),
  changes: all.changes.slice(0, LOGGED),
};
const ours = caseloadBookOf(rows, { asOf: TODAY, groups: ["fit", "plan", "spare"], people: "invented" });
const tableOf = (book: BookDescription, table: RowsTable): TableDescription =>
  book.sheets.find((sheet) => sheet.table?.name === tableNames[table])!.table!;

/** The same, with a function that only the engine knows in each formula of a list. */
const otherwise: BookDescription = {
  ...ours,
  sheets: ours.sheets.map((sheet) =>
    sheet.table
      ? {
          ...sheet,
          table: {
            ...sheet.table,
            columns: sheet.table.columns.map((column) =>
              column.formula ? { ...column, formula: formula`IF(PI()>0,${column.formula},"")` } : column,
            ),
          },
        }
      : sheet,
  ),
};

type Side = InGrid;

async function started(book: BookDescription): Promise<Side> {
  const there = startGrid(TODAY);
  const opened = await there.grid.open(await writeBook(book), "Invented caseload.xlsx");
  expect(opened).toMatchObject({ outcome: "opened", remarks: [] });
  return there;
}

/** Everything in the three tables, by table. */
async function read({ grid }: Side) {
  const found: Record<string, unknown> = {};
  for (const table of rowsTables) {
    const { values } = await grid.workbook.read({ table: tableNames[table] }, ["values"]);
    found[table] = values!.map((row) => row.map(plain));
  }
  return found;
}

let [own, engine]: Side[] = [];
beforeAll(async () => {
  own = await started(ours);
  engine = await started(otherwise);
});
afterAll(async () => {
  await atRest();
  for (const side of [own!, engine!]) side.engine.univer.dispose();
});

const sheetOf = ({ engine }: Side, table: RowsTable) =>
  engine.api.getActiveWorkbook()!.getSheetByName(sheetNames[table])!;
const cellOf = (side: Side, table: RowsTable, place: number, header: string) => {
  const { top, left, columns } = tableOf(ours, table);
  return sheetOf(side, table).getRange(top + 1 + place, left + columns.findIndex((one) => one.header === header));
};

/** On both sides; then both read alike. */
async function both(change: (side: Side) => unknown): Promise<void> {
  for (const side of [own!, engine!]) await change(side);
  const alike = async () => {
    const [one, other] = [await read(own!), await read(engine!)];
    expect(one).toEqual(other);
  };
  await atRest();
  await alike();
}

const asSet = (value: string | number | null) =>
  value === null ? { v: null } : typeof value === "number" ? { v: value, t: 2 } : { v: value, t: 1 };
const typed = (table: RowsTable, place: number, header: string, value: string | number | null) => (side: Side) =>
  cellOf(side, table, place, header).setValue(asSet(value) as { v: number });

it("a sheet's own name, as copying the settings in Excel leaves it, stands for nothing elsewhere", async () => {
  const parts = unzipSync(await writeBook(ours));
  const book = strFromU8(parts["xl/workbook.xml"]!);
  // 'Read first'!J70 is blank: as a setting it would turn every word into `check settings`
  const own = `<definedName name="Soon_Days" localSheetId="0">'Read first'!$J$70</definedName>`;
  const changed = book.replace(/<definedName name="Soon_Days">.*?<\/definedName>/, (whole) => whole + own);
  expect(changed).toContain(own);
  const there = startGrid(TODAY);
  const file = zipSync({ ...parts, "xl/workbook.xml": strToU8(changed) });
  expect(await there.grid.open(file, "Invented caseload.xlsx")).toMatchObject({ outcome: "opened" });
  const { values } = await there.grid.workbook.read({ table: tableNames.tubes }, ["values"]);
  expect(values!.flat()).not.toContain("check settings");
  await atRest();
  there.engine.univer.dispose();
});

describe("a ready-made caseload", () => {
  it("leaves no formula to the engine; the one beside it leaves it all in its lists", async () => {
    expect(leftToEngine(own!)).toBe(0);
    expect(leftToEngine(engine!)).toBeGreaterThan(40 * TUBES);
    await both(() => undefined);
  });

  it.each([
    ["tubes", 0, "Device in", TODAY - 700],
    ["tubes", 3, "Fill mL", 4],
    ["tubes", 5, "ID", "D-001"],
    ["tubes", 6, "ID", null],
    ["tubes", 7, "Status", "left"],
    ["checks", 2, "Out mL", 0],
    ["checks", 4, "ID", "D-017 "],
    ["checks", 5, "Checked on", "yesterday"],
    ["changes", 1, "In", TODAY - 5],
    ["changes", 2, "Reason", "fell out"],
    ["tubes", 8, "Change due", TODAY + 3],
    ["tubes", 9, "Balloon", "seen by nurse"],
    ["checks", 6, "State", "low"],
  ] as const)("%s, row %i, %s: %s", async (table, place, header, value) => {
    await both(typed(table, place, header, value));
  });

  it("a formula typed over one of ours is the engine's, and ours go by its result", async () => {
    await both((side) => cellOf(side, "tubes", 10, "Change due").setFormula("=As_of-2"));
    expect(cellOf(own!, "tubes", 10, "Change due").getRawValue()).toBe(TODAY - 2);
  });

  it("a typed cell may hold a formula, which reads one of ours in its turn", async () => {
    const todo = cellOf(own!, "tubes", 0, "To do").getA1Notation();
    await both((side) => cellOf(side, "tubes", 12, "Notes").setFormula(`=IF(LEN(${todo})>0,"first: "&${todo},"")`));
    const first = String(cellOf(own!, "tubes", 0, "To do").getRawValue());
    await expect.poll(() => cellOf(own!, "tubes", 12, "Notes").getRawValue()).toBe(`first: ${first}`);
    await both(typed("tubes", 0, "Status", "in hospital"));
    await expect.poll(() => cellOf(own!, "tubes", 12, "Notes").getRawValue()).toBe("first: in hospital");
  });

  it("undo and redo", async () => {
    const status = () => cellOf(own!, "tubes", 17, "Status").getRawValue();
    await both(typed("tubes", 17, "Status", "on hold"));
    await both(({ engine }) => engine.api.getActiveWorkbook()!.undo());
    expect(status()).not.toBe("on hold");
    await both(({ engine }) => engine.api.getActiveWorkbook()!.redo());
    expect(status()).toBe("on hold");
  });

  it("a formula of somebody's own that was typed over is not asked any more", async () => {
    const [first, last] = [2, 7].map((place) => cellOf(own!, "tubes", place, "Fill mL").getA1Notation());
    const total = (side: Side) => cellOf(side, "tubes", 13, "Notes");
    await both((side) => total(side).setFormula(`=SUM(${first}:${last})`));
    await both((side) => cellOf(side, "tubes", 4, "Fill mL").setFormula("=2+3"));
    const before = Number(total(own!).getRawValue());
    // 7 in place of 5
    await both(typed("tubes", 4, "Fill mL", 7));
    expect(total(own!).getRawValue()).toBe(before + 2);
    await both(({ engine }) => engine.api.getActiveWorkbook()!.undo());
    expect(total(own!).getRawValue()).toBe(before);
  });

  it("one of our formulas copied over another column says there what it says in its own", async () => {
    // as filling to the right does it: the cell joins the group that the copied one is in
    const { si } = cellOf(own!, "tubes", 10, "To do").getCellData()!;
    const { si: other } = cellOf(engine!, "tubes", 10, "To do").getCellData()!;
    await both((side) =>
      cellOf(side, "tubes", 11, "Balloon").setValue({ si: side === own ? si : other, f: null, v: null }),
    );
    const toDo = String(cellOf(own!, "tubes", 11, "To do").getRawValue());
    await expect.poll(() => cellOf(own!, "tubes", 11, "Balloon").getRawValue()).toBe(toDo);
    await both(() => undefined);
    await both(({ engine }) => engine.api.getActiveWorkbook()!.undo());
  });

  it("what spills beside a list goes with its formula; what spills into one is read there", async () => {
    const { top, left, columns } = tableOf(ours, "tubes");
    const place = { row: top + 2, column: left + columns.length + 1 };
    const sheet = sheetOf(own!, "tubes");
    const value = (row: number, column: number) =>
      (own!.grid.workbook as GridWorkbookPort).reader(sheet.getSheetId()).value(row, column);
    sheet.getRange(place.row, place.column).setFormula("=SEQUENCE(3)");
    await atRest();
    expect(value(place.row + 2, place.column)).toBe(3);
    sheet.getRange(place.row, place.column).clearContent();
    await atRest();
    expect(value(place.row + 2, place.column)).toBeNull();

    await both((side) => Promise.all([21, 22].map((one) => typed("tubes", one, "Device in", null)(side))));
    cellOf(own!, "tubes", 21, "Device in").setFormula("=As_of-SEQUENCE(2)");
    typed("tubes", 21, "Device in", TODAY - 1)(engine!);
    const next = cellOf(own!, "tubes", 22, "Device in");
    await expect.poll(() => value(next.getRow(), next.getColumn())).toBe(TODAY - 2);
    own!.engine.api.getActiveWorkbook()!.undo();
    engine!.engine.api.getActiveWorkbook()!.undo();
    await both(() => undefined);
  });

  it("settings, and a setting's own formula", async () => {
    const setting = (name: string, value: number | null) => (side: Side) => {
      const place = side.engine.api.getActiveWorkbook()!.getDefinedName(name)!.getFormulaOrRefString();
      const [, address] = /!\$([A-Z]+\$\d+)$/.exec(place)!;
      const sheet = side.engine.api.getActiveWorkbook()!.getSheetByName(sheetNames.settings)!;
      return sheet.getRange(address!.replace("$", "")).setValue(asSet(value) as { v: number });
    };
    await both(setting("Soon_Days", 60));
    await both(setting("Check_Days", null));
    await both(setting("Check_Days", 7));
  });

  it("rows added by the pane, inserted, removed and sorted by hand", async () => {
    const signal = new AbortController().signal;
    await both(({ grid }) =>
      grid.workbook.apply(
        {
          expects: [],
          steps: [
            {
              kind: "appendRows",
              table: tableNames.checks,
              rows: [{ ID: "D-003", "Checked on": TODAY, "Out mL": 2, "Put in mL": 5 }],
            },
          ],
        },
        { report: () => undefined, signal },
      ),
    );
    const order = (side: Side, from: number, until: number) => {
      const rows = tableOf(ours, "tubes").top + 1;
      const range = { startRow: rows + from, endRow: rows + until, startColumn: 0, endColumn: 67 };
      const turned = Object.fromEntries(
        Array.from({ length: until - from + 1 }, (_, i) => [rows + from + i, rows + until - i]),
      );
      const unitId = side.engine.api.getActiveWorkbook()!.getId();
      const params = { unitId, subUnitId: sheetOf(side, "tubes").getSheetId(), range, order: turned };
      return side.engine.api.executeCommand(ReorderRangeCommand.id, params).catch(() => false);
    };
    await both((side) => order(side, 2, 20));
    const rowsCommand = (kind: string, row: number) => (side: Side) => {
      const range = { startRow: row, endRow: row, startColumn: 0, endColumn: 2 };
      const unitId = side.engine.api.getActiveWorkbook()!.getId();
      const params = { unitId, subUnitId: sheetOf(side, "tubes").getSheetId(), range };
      return side.engine.api.executeCommand(`sheet.command.${kind}`, params).catch(() => false);
    };
    await both(rowsCommand("insert-row-before", 12));
    await both(rowsCommand("remove-row", 9));
  });

  it("tells days that may be entered from others, also after midnight", async () => {
    const status = async (value: string | number | null) => {
      typed("tubes", 20, "Weighed on", value)(own!);
      await atRest();
      return (await cellOf(own!, "tubes", 20, "Weighed on").getValidatorStatus())[0]![0];
    };
    const days = [TODAY, TODAY + 0.5, TODAY + 1, day("1902-01-01"), "3/4/24", null];
    const found: unknown[] = [];
    for (const one of days) found.push(await status(one));
    expect(found).toEqual(["valid", "valid", "invalid", "invalid", "invalid", "valid"]);
    await both((side) => side === engine && typed("tubes", 20, "Weighed on", null)(side));
  });

  it("midnight", async () => {
    await both(({ grid }) => grid.setToday(TODAY + 1));
    await both(typed("tubes", 20, "Weighed on", TODAY + 1));
    expect((await cellOf(own!, "tubes", 20, "Weighed on").getValidatorStatus())[0]![0]).toBe("valid");
  });

  it("asks little of the engine: an edit works out none of its formulas there", async () => {
    const generator = FormulaDependencyGenerator.prototype as unknown as {
      _calculateRunList(trees: unknown): readonly { readonly formulaId: string | null }[];
    };
    const list = generator._calculateRunList;
    const runs: number[] = [];
    generator._calculateRunList = function (trees) {
      const found = list.call(this, trees);
      // formulas of cells, not of colours and of what may be entered
      runs.push(found.filter(({ formulaId }) => (formulaId ?? null) === null).length);
      return found;
    };
    typed("tubes", 14, "Device in", TODAY - 90)(own!);
    await atRest();
    generator._calculateRunList = list;
    await both((side) => side === engine && typed("tubes", 14, "Device in", TODAY - 90)(side));
    expect(runs.length).toBeGreaterThan(0);
    expect(Math.max(...runs)).toBe(0);
  });

  it("is saved with its formulas as they were, and with the results", async () => {
    const saved = await own!.grid.save();
    if (saved.outcome !== "saved") throw new Error(saved.sentence);
    const again = openPackage(saved.bytes);
    if (isRefusal(again)) throw new Error(again.refused);
    const cells = [...again.cells(sheetNames.tubes)];
    const { top, columns } = tableOf(ours, "tubes");
    const place = columns.findIndex(({ header }) => header === "To do") + 1;
    const toDo = cells.filter(({ row, column }) => column === place && row > top + 1);
    expect(toDo.length).toBeGreaterThanOrEqual(TUBES);
    expect(new Set(toDo.map(({ formula }) => formula?.text)).size).toBe(1);
    const shown = toDo.map(({ row }) =>
      sheetOf(own!, "tubes")
        .getRange(row - 1, place - 1)
        .getRawValue(),
    );
    expect(toDo.map(({ value }) => value)).toEqual(shown);
  });

  it("reads on where a hidden formula is typed over, and comes back with undo", async () => {
    const before = await read(own!);
    await both(typed("tubes", 1, "Live", "live"));
    own!.engine.api.getActiveWorkbook()!.undo();
    await atRest();
    expect(await read(own!)).toEqual(before);
  });

  it("a hidden formula in other words counts as it stands, and leaves the others where they were", async () => {
    await both((side) => cellOf(side, "tubes", 1, "Live").setFormula('=IF(1>2,"live","")'));
    expect(cellOf(own!, "tubes", 1, "To do").getRawValue()).toBe("");
    await both((side) => cellOf(side, "tubes", 1, "Live").setFormula('=IF(SHEETS()>1,"live","")'));
  });
});
