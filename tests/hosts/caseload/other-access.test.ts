/**
 * Rows whose Access is another than that of the device before: every way in which a check, the list and the log may
 * agree or not. The grid's engine gives what the columns promise.
 */
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { caseloadBookOf } from "../../../src/caseload/index";
import type { CaseloadRow } from "../../../src/caseload/rows";
import type { SheetValue } from "../../../src/columns/sheet-block";
import { AS_OF, OPTIONS } from "../../examples/caseload/hostile-rows";
import { differences, startBook, tablesOf, type Grid } from "./book-engine";

const [CAME, CHANGED] = [AS_OF - 100, AS_OF - 9];
const accesses: readonly SheetValue[] = ["G", null, "GJ", " g ", "*", 7];
const days: readonly SheetValue[] = [
  ...[CAME - 1, CAME, CAME + 0.5, CHANGED - 1, CHANGED, CHANGED + 1, AS_OF + 1, null, "3/4/24", 0],
];
/** What the log says of the device before. */
const logs: readonly CaseloadRow[] = [
  { Access: "G", In: CAME, Out: CHANGED, "Fill mL": 5 },
  { Access: " g", In: CAME, Out: CHANGED, "Fill mL": null },
  { Access: "J", In: CAME, Out: CHANGED, "Fill mL": 6 },
  { Access: "G", In: null, Out: CHANGED, "Fill mL": 5 },
  { Access: "G", In: 0, Out: AS_OF + 9, "Fill mL": 5 },
  { Access: "G", In: CAME, Out: "n/k", "Fill mL": "5cc" },
];
const tube: CaseloadRow = {
  ...{
    Status: "active",
    Access: "GJ",
    "Held by": "balloon",
    Shape: "long",
    "Size Fr": 14,
    "Fill mL": 7,
    "Most mL": 10,
  },
  ...{ "Stoma made": AS_OF - 900, "Slow healing": "no", "Device in": CHANGED, "Checked by": "nurse" },
};

const people = logs.flatMap((log, l) =>
  accesses.map((access, a) => ({
    id: `P-${l}-${a}`,
    log,
    // Every fourth has a second device.
    tubes: (l + a) % 4 === 0 ? [tube, { ...tube, Access: "J" }] : [tube],
    checks: days.map((day, d): CaseloadRow => ({
      Access: access as string | null,
      "Checked on": day as number | null,
      "Out mL": d % 3 ? 4.8 : 2,
      "Put in mL": d % 2 ? 5 : null,
    })),
  })),
);
const withId = (ID: string) => (row: CaseloadRow) => ({ ID, ...row });
const book = caseloadBookOf(
  {
    tubes: people.flatMap(({ id, tubes }) => tubes.map(withId(id))),
    checks: people.flatMap(({ id, checks }) => checks.map(withId(id))),
    changes: people.map(({ id, log }) => withId(id)(log)),
  },
  OPTIONS,
);

describe("checks of a device with another access", () => {
  let grid: Grid;
  beforeAll(async () => {
    grid = await startBook(book, AS_OF);
  });
  afterAll(() => grid.stop());

  it("are worked out by the engine as promised", () => expect(differences(grid, book)).toEqual([]));

  it("are laid to devices of the list, to devices of the log, and to none", () => {
    const { columns, rows } = tablesOf(book)[1]!;
    const at = (header: string) => columns.findIndex((one) => one.header === header);
    const found = new Set(rows.map((row) => `${row[at("Tube")] === "" ? "log" : "list"} ${row[at("Key")] !== ""}`));
    expect([...found].sort()).toEqual(["list true", "log false", "log true"]);
    expect(new Set(rows.map((row) => row[at("Device in")]))).toEqual(new Set([CAME, CHANGED, ""]));
  });
});
