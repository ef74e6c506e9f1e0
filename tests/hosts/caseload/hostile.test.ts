/**
 * Hostile rows, edits and spoilt settings: the grid's engine gives what the columns promise, and never an error. Cells
 * that are typed over each other's results go in one by one in `npm run endurance`, else several between two looks.
 */
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { BookDescription, TableDescription } from "../../../src/caseload/book";
import { caseloadBookOf } from "../../../src/caseload/index";
import type { RowsTable } from "../../../src/caseload/tables";
import type { SheetValue } from "../../../src/columns/sheet-block";
import type { ClinicSettingName } from "../../../src/settings/index";
import { CellError } from "../../../src/worksheet/error";
import { AS_OF, hostileRows, joined, OPTIONS } from "../../examples/caseload/hostile-rows";
import { shortOrLong } from "../../budget";
import { workOut } from "../../examples/caseload/worked-rows";
import { differences, startBook, tablesOf, type Grid } from "./book-engine";

/** What is done between two looks, each lot with its name. */
function severalAtOnce<T extends readonly unknown[]>(edits: readonly T[]): [string, readonly T[]][] {
  const size = shortOrLong(4, 1);
  const lots = Array.from({ length: Math.ceil(edits.length / size) }, (_, i) => edits.slice(i * size, (i + 1) * size));
  return lots.map((lot) => [lot.map((edit) => edit.join(" ")).join("; "), lot]);
}

describe("hostile rows", () => {
  const [people, changes] = shortOrLong([130, 30], [240, 40]) as [number, number];
  const book = caseloadBookOf(joined(hostileRows(people, people, changes)), OPTIONS);
  let grid: Grid;
  beforeAll(async () => {
    grid = await startBook(book, AS_OF);
  });
  afterAll(() => grid.stop());

  it("are worked out by the engine as promised", () => expect(differences(grid, book)).toEqual([]));
  it("meet most words, so that they test something", () => {
    const [tubes, checks] = tablesOf(book);
    const wordsOf = (table: TableDescription, header: string) => {
      const c = table.columns.findIndex((one) => one.header === header);
      return new Set(table.rows.map((row) => row[c]));
    };
    expect(wordsOf(checks!, "State").size).toBeGreaterThan(7);
    expect(wordsOf(tubes!, "Change").size).toBeGreaterThan(6);
    expect(wordsOf(tubes!, "Fit").size).toBeGreaterThan(5);
    expect(wordsOf(tubes!, "Balloon").size).toBeGreaterThan(7);
  });
  it("show no error anywhere but where a size cannot be read", () => {
    const faulty = tablesOf(book).flatMap((table) =>
      table.columns.filter(
        ({ header, formula }, c) =>
          formula && header !== "Size mm" && table.rows.some((row) => row[c] instanceof CellError),
      ),
    );
    expect(faulty).toEqual([]);
  });
});

describe("edits", () => {
  let rows = joined(hostileRows(30, 40, 10));
  const settings: Partial<Record<ClinicSettingName, SheetValue>> = {};
  const first = caseloadBookOf(rows, OPTIONS);
  let grid: Grid;
  beforeAll(async () => {
    grid = await startBook(first, AS_OF);
  });
  afterAll(() => grid.stop());

  /** The book as it should stand now. */
  const now = (): BookDescription => {
    const worked = workOut(rows, { ...OPTIONS, settings });
    const sheets = first.sheets.map((sheet) => {
      const key = (["tubes", "checks", "changes"] as const)[tablesOf(first).indexOf(sheet.table!)];
      if (!sheet.table || !key) return sheet;
      const { columns } = sheet.table;
      return {
        ...sheet,
        table: { ...sheet.table, rows: worked[key].map((row) => columns.map(({ header }) => row[header] ?? null)) },
      };
    });
    return { ...first, sheets };
  };
  const NAMES = { tubes: "Tubes_in_use", checks: "Balloon_checks", changes: "Device_changes" };
  const edited = (...cells: readonly (readonly [RowsTable, number, string, SheetValue])[]) => {
    for (const [table, r, header, value] of cells)
      rows = { ...rows, [table]: rows[table].map((row, i) => (i === r ? { ...row, [header]: value as null } : row)) };
    return grid.edit(...cells.map(([table, row, header, value]) => ({ table: NAMES[table], row, header, value })));
  };

  it.each([
    ["tubes", 22, "Device in", AS_OF - 50],
    ["tubes", 22, "Fill mL", 4],
    ["tubes", 23, "ID", "P-22"],
    ["tubes", 22, "ID", "Q"],
    ["checks", 3, "Out mL", 0],
    ["checks", 4, "Checked on", AS_OF - 2],
    ["checks", 4, "ID", "P-26"],
    ["tubes", 26, "Status", "active"],
    ["changes", 2, "Out", AS_OF - 60],
  ] as const)("%s row %i, %s: %s", async (...cell) => {
    await edited(cell);
    expect(differences(grid, now())).toEqual([]);
  });

  const typedOver = [
    ["tubes", 24, "Change due", AS_OF - 4],
    ["tubes", 25, "Change due", "see letter"],
    ["tubes", 26, "At the latest", true],
    ["tubes", 27, "At the latest", AS_OF + 3],
    ["tubes", 26, "Change", "changed"],
    ["tubes", 27, "Change", 12],
    ["tubes", 28, "Tract", null],
    ["tubes", 24, "Balloon", 7],
    ["tubes", 25, "Balloon", true],
    ["tubes", 26, "Balloon", "As filled"],
    ["tubes", 27, "Balloon", null],
    ["tubes", 28, "Check due", "soon"],
    ["tubes", 24, "Last check", "yesterday"],
    ["tubes", 25, "Fit", 3],
    ["tubes", 26, "Mark", null],
    ["tubes", 28, "Missing or contradictory", null],
    ["tubes", 27, "Missing or contradictory", 5],
    ["tubes", 24, "To do", "nothing due"],
    ["checks", 6, "Device in", "?"],
    ["checks", 7, "Device in", AS_OF - 90],
    ["checks", 8, "Expected mL", "5"],
    ["checks", 9, "Loss mL", 3],
    ["checks", 11, "State", "Low"],
    ["checks", 12, "State", 0],
    ["checks", 13, "State", "low"],
    ["checks", 14, "Low in a row", 3],
    ["checks", 15, "Days since fill", -1],
    ["changes", 3, "Failed", "perhaps"],
  ] as const;
  it.each(severalAtOnce(typedOver))("typed over: %s", async (_, cells) => {
    await edited(...cells);
    expect(differences(grid, now())).toEqual([]);
  });

  it.each([
    ["Soon_Days", null],
    ["Soon_Days", 14],
    ["Call_Day", "01632 960001"],
    ["Tract_High", 3],
    ["Check_Days", "weekly"],
    ["Play_Least", 0],
    ["Lim_Balloon_G", null],
    ["Int_Bumper_Adult", 6],
    ["Volume_Most", null],
  ] as const)("setting %s: %s", async (name, value) => {
    settings[name] = value;
    await grid.editNamed(name, value);
    expect(differences(grid, now())).toEqual([]);
  });
});
