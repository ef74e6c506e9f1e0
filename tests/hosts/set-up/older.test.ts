/**
 * A caseload that 0.1.0 set up: it is told to be older, and made anew with everything that was entered in it; the old one is
 * not changed. What 0.1.0 wrote is a fixture; its people are invented.
 */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { shownHeaders } from "../../../src/caseload/headers";
import { sheetNames, tableNames, type RowsTable } from "../../../src/caseload/names";
import { columnLetters } from "../../../src/columns/formula";
import { SCHEMA, SCHEMA_NAME } from "../../../src/caseload/schema";
import { requiredHeaders } from "../../../taskpane/actions/caseload/recognise";
import { fakeWorkbook } from "../../../taskpane/workbook/fake/workbook";
import type { BookDescription, SheetDescription } from "../../../src/caseload/book";
import { clinicSettingNamed } from "../../../src/settings/index";
import { day } from "../../../src/worksheet/dates";
import { newsSince, previewOfOlder } from "../../../taskpane/actions/bring-up-to-date/preview";
import type { OlderCaseload } from "../../../taskpane/actions/bring-up-to-date/interface";
import { isOlder, schemaOf } from "../../../taskpane/actions/caseload/schema";
import { maker } from "../../../taskpane/actions/set-up/make";
import type { Step, Value } from "../../../taskpane/workbook/port";
import { plain, startGrid, type InGrid } from "../../workbooks/new-file/in-grid";
import { atRest } from "../grid/at-rest";
import { writeBook } from "../../../taskpane/workbook/file";

const TODAY = day("2026-11-26");
const file = readFileSync(join(__dirname, "../fixtures/caseload-0.1.0.xlsx"));

let there: InGrid;
let older: OlderCaseload;
let book: BookDescription;

const apply = (...steps: Step[]) =>
  there.grid.workbook.apply({ expects: [], steps }, { report: () => undefined, signal: new AbortController().signal });
const overview = () => there.grid.workbook.overview();
const rowsOf = async (table: string) => (await there.grid.workbook.read({ table }, ["values"])).values!;
const sheetOf = (name: string): SheetDescription => book.sheets.find((sheet) => sheet.name === name)!;
const cellsUnder = (header: string, sheet: string = sheetNames.tubes): readonly Value[] => {
  const { columns, rows } = sheetOf(sheet).table!;
  const at = columns.findIndex((column) => column.header === header);
  expect(at, header).toBeGreaterThanOrEqual(0);
  return rows.map((row) => row[at]!);
};
const settingIn = (label: string) => {
  const { cells } = sheetOf(sheetNames.settings);
  const row = cells.find(({ column, value }) => column === 0 && value === label)!.row;
  return cells.filter((cell) => cell.row === row);
};

beforeAll(async () => {
  there = startGrid(TODAY);
  await there.grid.open(new Uint8Array(file), "Caseload.xlsx");
  /* A clinic's own entries: a setting, who agreed, an empty identifier is none, a note that looks like a number. */
  await apply(
    { kind: "writeNamed", name: "Soon_Days", value: 3 },
    { kind: "writeNamed", name: "Agreed_By", value: "Team" },
    { kind: "writeNamed", name: "Call_Day", value: "0000 000000" },
    { kind: "changeRow", table: tableNames.tubes, row: 1, values: { Notes: "007" } },
  );
  await atRest();
  older = (await maker.surveyOlder(there.grid.workbook))!;
  book = maker.describeAnew(older, TODAY);
});
afterAll(() => there.engine.univer.dispose());

it("is told to be older, by what is at hand", async () => {
  expect(schemaOf(await overview())).toBe(1);
  expect(isOlder(await overview())).toBe(true);
  expect(newsSince(1).length).toBeGreaterThan(3);
  expect(newsSince(SCHEMA)).toEqual([]);
});

describe("the new one", () => {
  it("is by the present description, and says so", () => {
    const named = book.names.find(({ name }) => name === SCHEMA_NAME)!;
    expect(named.refersTo).toContain(sheetNames.settings);
    expect(settingIn("Number of this caseload's description").map(({ value }) => value)).toContain(SCHEMA);
    for (const table of ["tubes", "checks", "changes"] as const)
      expect(sheetOf(sheetNames[table]).table!.columns.map(({ header }) => header)).toEqual(
        expect.arrayContaining([...shownHeaders[table]]),
      );
  });

  it("has every typed cell of every row, as it stood, in its order", async () => {
    for (const [table, sheet] of [
      [tableNames.tubes, sheetNames.tubes],
      [tableNames.checks, sheetNames.checks],
      [tableNames.changes, sheetNames.changes],
    ] as const) {
      const [headers, ...rows] = await rowsOf(table);
      const typed = sheetOf(sheet).table!.columns.filter(({ kind }) => kind !== "computed");
      for (const { header } of typed) {
        const at = headers!.indexOf(header);
        if (at < 0) continue;
        expect(cellsUnder(header, sheet), header).toEqual(rows.map((row) => row[at]));
      }
      expect(sheetOf(sheet).table!.rows).toHaveLength(rows.length);
    }
    expect(cellsUnder("Notes")[1]).toBe("007");
    expect(cellsUnder("Status since")).toEqual([null, null, null, null]);
  });

  it("has the clinic's settings, and defaults for those that came since", () => {
    expect(settingIn(clinicSettingNamed("Soon_Days").label).map(({ value }) => value)).toContain(3);
    expect(settingIn(clinicSettingNamed("Hold_Days").label).map(({ value }) => value)).toContain(
      clinicSettingNamed("Hold_Days").default,
    );
    expect(older.carried.settings.get("Soon_Days")!.value).toBe(3);
    expect(older.carried.settings.get("Call_Day")!.value).toBe("0000 000000");
    expect(older.carried.settings.has("Agreed_Until")).toBe(false);
    expect(older.newSettings).toEqual(["Site_Act", "Hold_Days", "Hospital_Days"]);
  });

  it("counts with them: no result is worked out by a default that the clinic has changed", () => {
    const counted = (value: number) => {
      const settings = new Map(older.carried.settings);
      settings.set("Soon_Days", { ...settings.get("Soon_Days")!, value });
      const made = maker.describeAnew({ ...older, carried: { ...older.carried, settings } }, TODAY);
      const { columns, rows } = made.sheets.find(({ name }) => name === sheetNames.tubes)!.table!;
      return rows.map((row) => row[columns.findIndex(({ header }) => header === "Change")]);
    };
    expect(counted(3)).not.toEqual(counted(400));
  });

  it("is marked as invented as the old one was", () => {
    expect(older.carried.inventedOn).toBe(46_352);
  });
});

it("tells what is new and what comes along before anything is made", () => {
  const { says } = previewOfOlder(older);
  expect(says.join("\n")).toContain(
    "4 rows of Tubes in use, 15 rows of Balloon checks and 4 rows of Changes come along",
  );
  expect(says.join("\n")).toContain('New columns: "Status since".');
  expect(says.join("\n")).toMatch(/New clinic settings, for your clinic to agree: .*days/);
  expect(says.at(-1)).toContain("this one is not changed");
});

it("tells what does not come along, cell by cell, before anything is made", async () => {
  const error = { error: "#N/A" };
  const worked = (value: string) => ({ formula: `="${value}"`, value });
  const sheet = (key: RowsTable, headers: readonly string[], ...rows: readonly (readonly unknown[])[]) => ({
    name: sheetNames[key],
    rows: [headers, ...rows],
    tables: [{ name: tableNames[key], area: `A1:${columnLetters(headers.length - 1)}${rows.length + 1}` }],
  });
  const workbook = fakeWorkbook({
    dateSystem: 1900,
    sheets: [
      sheet(
        "tubes",
        [...requiredHeaders.tubes, "To do", "Ward", "Our sum"],
        ["D-1", "active", 20_000, "G", 45_000, "balloon", "long", 14, error, worked("x"), "3 West", worked("1")],
        ["D-2", worked("left"), 20_000, "G", 45_000, "bumper", "long", 14, 45_000, "call Ann", "4", worked("2")],
      ),
      sheet("checks", requiredHeaders.checks, ["D-1", 45_100, 5, 5]),
      sheet("changes", requiredHeaders.changes, [null, null, null, null, null, null]),
      { name: "Rota", rows: [["Mon"]] },
    ] as never,
  });
  const found = (await maker.surveyOlder(workbook))!;
  expect(found.left).toEqual({
    errors: ["Tubes in use I2"],
    typedOver: ["Tubes in use J3"],
    ownFormulas: ["Tubes in use: Our sum"],
    fixed: ["Tubes in use B3"],
    sheets: ["Rota"],
  });
  const made = maker.describeAnew(found, TODAY).sheets.find(({ name }) => name === sheetNames.tubes)!.table!;
  const under = (header: string) => made.rows.map((row) => row[made.columns.findIndex((one) => one.header === header)]);
  expect([under("Ward"), under("Status"), under("Device in")]).toEqual([
    ["3 West", "4"],
    ["active", "left"],
    [null, 45_000],
  ]);
  const { says } = previewOfOlder(found);
  expect(says[0]).toBe("Blank there, because an error stands here: Tubes in use I2.");
  expect(says.slice(0, 5).join(" ")).toMatch(/typed over.*Our sum.*Tubes in use B3.*Rota/);
});

it("opens, and is older no more; its words are those of the present rules", async () => {
  const fresh = startGrid(TODAY);
  const opened = await fresh.grid.open(await writeBook(book), "New.xlsx");
  expect(opened).toMatchObject({ outcome: "opened", remarks: [] });
  const now = await fresh.grid.workbook.overview();
  expect([schemaOf(now), isOlder(now)]).toEqual([SCHEMA, false]);
  const [headers, ...rows] = (await fresh.grid.workbook.read({ table: tableNames.tubes }, ["values"])).values!;
  const at = headers!.indexOf("To do");
  expect(rows.map((row) => plain(row[at]!))).toEqual(cellsUnder("To do").map(plain));
  fresh.engine.univer.dispose();
});

it("leaves the old one as it was", async () => {
  expect(there.grid.isChanged()).toBe(true);
  const [headers, ...rows] = await rowsOf(tableNames.tubes);
  expect(headers).not.toContain("Status since");
  expect(rows).toHaveLength(4);
});
