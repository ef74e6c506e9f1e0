/** A list of somebody's own as rows of the caseload: what means one thing is taken, all else is kept beside with its reason. */
import { describe, expect, it } from "vitest";
import { bringList, notBroughtSheet, type OwnListRows } from "../../../src/caseload/brought";
import { carriedBook } from "../../../src/caseload/index";
import { tableNames } from "../../../src/caseload/names";
import { guessKind } from "../../../src/columns/kind-guess";
import { CellError } from "../../../src/worksheet/error";

const HEADERS = ["No", "Kind", "Size", "Last change", "Access", "Last check", "Out", "Due", "Ward"];
const columns = { kind: 1, size: 2, last: 3, access: 4, lastCheck: 5, out: 6, due: 7 } as const;

const list = (...rows: OwnListRows["rows"]): OwnListRows => ({
  headers: HEADERS,
  rows,
  rowNumbers: rows.map((_, i) => 2 + i),
  columns,
  identifier: 0,
  kindOf: guessKind,
});

describe("a row", () => {
  it("becomes a device and, where it holds one, a check", () => {
    const { carried, notBrought, beside } = bringList(
      list(["D-1", "balloon", "CH 14", 46_000, "G", 46_100, 4.5, 46_090, "East"]),
    );
    expect(carried.rows.tubes).toEqual([
      { ID: "D-1", "Device in": 46_000, "Size Fr": 14, "Held by": "balloon", Access: "G" },
    ]);
    expect(carried.rows.checks).toEqual([{ ID: "D-1", Access: "G", "Checked on": 46_100, "Out mL": 4.5 }]);
    expect(notBrought).toEqual([]);
    // the caseload works a due date out by itself; the ward has no column there
    expect(beside).toEqual(["Due", "Ward"]);
    expect(carried.own.tubes.map(({ header, cells }) => [header, cells])).toEqual([
      ["Due", [46_090]],
      ["Ward", ["East"]],
    ]);
  });

  it("keeps what cannot be read, in its row and with a reason; nothing is assumed for it", () => {
    const brought = bringList(list(["D-2", "PEG", "14G", "3/4/24", "", "", 3, null, null]));
    expect(brought.carried.rows.tubes).toEqual([{ ID: "D-2", "Held by": "not known" }]);
    expect(brought.carried.rows.checks).toEqual([]);
    expect(brought.notBrought.map(({ column, text }) => [column, text])).toEqual([
      ["Last change", "3/4/24"],
      ["Size", "14G"],
      ["Kind", "PEG"],
      ["Out", "3"],
    ]);
    expect(brought.carried.own.tubes.map(({ header, cells }) => [header, cells[0]])).toEqual([
      ["Kind, as typed", "PEG"],
      ["Size, as typed", "14G"],
      ["Last change, as typed", "3/4/24"],
      ["Out, as typed", 3],
    ]);
    const sheet = notBroughtSheet(brought)!;
    expect(sheet.cells.filter(({ row }) => row === 4).map(({ value }) => value)).toEqual([
      2,
      "D-2",
      "Last change",
      "3/4/24",
      "no date that can be read",
    ]);
  });

  it("whose kind and access contradict each other is taken for neither", () => {
    const { carried, notBrought } = bringList(list(["D-3", "balloon", null, 46_000, "GJ", null, null, null, null]));
    expect(carried.rows.tubes).toEqual([{ ID: "D-3", "Device in": 46_000, "Held by": "not known" }]);
    expect(notBrought.map(({ column }) => column).sort()).toEqual(["Access", "Kind"]);
  });

  it("of a bumper or of GJ is given no end and no hold that the word does not say", () => {
    const { carried } = bringList(
      list(
        ["D-4", "bumper adult", null, null, "", null, null, null, null],
        ["D-5", "GJ", null, null, "", null, null, null, null],
      ),
    );
    expect(carried.rows.tubes).toEqual([
      { ID: "D-4", "Held by": "bumper" },
      { ID: "D-5", "Held by": "not known", Access: "GJ" },
    ]);
  });

  it("with an error, and one with nothing in it", () => {
    const { carried, notBrought } = bringList(
      list(
        ["D-6", "balloon", null, new CellError("#REF!"), "G", null, null, null, null],
        [null, " ", null, null, "", null, null, null, null],
      ),
    );
    expect(carried.rows.tubes).toHaveLength(1);
    expect(notBrought).toMatchObject([{ row: 2, column: "Last change", why: "an error" }]);
  });
});

it("nothing is lost: every filled cell stands in the caseload, as an entry or in a column of its own", () => {
  const rows = [
    ["D-1", "balloon", "14", 46_000, "G", 46_100, 4, 46_090, "East"],
    ["D-2", "PEG", "CH14 ?", "n/k", "jej", "soon", "5 mL", "June", "West"],
    ["", "button", 4.7, -3, "J", 46_100, null, "", true],
  ] as const;
  const { carried, notBrought } = bringList(list(...rows));
  rows.forEach((row, r) =>
    row.forEach((cell, c) => {
      if (cell === null || String(cell).trim() === "") return;
      const own = carried.own.tubes.some(({ header, cells }) => header.startsWith(HEADERS[c]!) && cells[r] === cell);
      const isFailed = notBrought.some(({ row: at, column }) => at === 2 + r && column === HEADERS[c]);
      const isKept = ["Due", "Ward"].includes(HEADERS[c]!);
      expect(own, `${HEADERS[c]!} of row ${r}`).toBe(isFailed || isKept);
    }),
  );
});

it("as a workbook: a caseload whose list says what is missing", () => {
  const { carried } = bringList(list(["D-2", "PEG", "14G", "3/4/24", "", "", 3, null, null]));
  const book = carriedBook(carried, { asOf: 46_132, groups: [] });
  const tubes = book.sheets.flatMap(({ table }) => table ?? []).find(({ name }) => name === tableNames.tubes)!;
  const at = tubes.columns.findIndex(({ header }) => header === "Missing or contradictory");
  expect(String(tubes.rows[0]![at])).toMatch(/device in|kind|held/i);
});
