/** Check this sheet, behind the port: on a list of somebody's own, and on the ready-made caseload. All people are invented. */
import { describe, expect, it } from "vitest";
import { checkSheet } from "../../../taskpane/actions/check-sheet";
import { fakeWorkbook } from "../../../taskpane/workbook/fake/workbook";
import { day } from "../../../src/worksheet/dates";

const TODAY = day("2026-11-30");
const date = (text: string) => ({ value: day(text), format: "d mmm yyyy" });

const own = () =>
  fakeWorkbook({
    sheets: [
      {
        name: "List",
        rows: [
          ["Invented"],
          ["ID", "Kind", "Last change", "Stoma made", "Size"],
          ["D-1", "balloon", date("2026-09-01"), date("2025-01-01"), 14],
          ["D-2", "PEG", "3/4/24", date("2025-01-01"), "14G"],
          ["d-1 ", "balloon", date("2024-09-01"), date("2025-01-01"), 14],
          ["D-4", "RIG", date("2026-09-01"), date("2025-01-01"), 14],
        ],
      },
    ],
    selection: { sheet: "List", area: "B4" },
  });

describe("a list of somebody's own", () => {
  it("names every contradiction with its cells and whose they are; the count falls as they are put right", async () => {
    const workbook = own();
    const found = await checkSheet(workbook, { today: TODAY });
    expect(found.groups).toEqual([
      {
        reason: "last change is before the stoma was made",
        cells: [{ address: "C5", text: "d-1: 1 Sep 2024" }],
      },
      { reason: "last change is text, not a date", cells: [{ address: "C4", text: "D-2: 3/4/24" }] },
      {
        reason: "the kind says how it was placed or its shape, not how it is held",
        cells: [
          { address: "B4", text: "D-2: PEG" },
          { address: "B6", text: "D-4: RIG" },
        ],
      },
      { reason: "size: G means gauge; write Fr", cells: [{ address: "E4", text: "D-2: 14G" }] },
      {
        reason: "the same identifier, but for capitals or spaces",
        cells: [
          { address: "A3", text: "D-1" },
          { address: "A5", text: "d-1" },
        ],
      },
    ]);
    expect([found.rows, found.doubtful]).toEqual([4, 4]);
    expect(found.notLookedFor).toContain("changed by");
    workbook.type("List", "B6", "bumper adult");
    workbook.type("List", "A5", "D-3");
    const after = await checkSheet(workbook, { today: TODAY });
    expect([after.groups.length, after.doubtful]).toEqual([4, 2]);
  });

  it("knows a column of dates by its texts, as twenty people type them", async () => {
    const rows = ["3/4/24", "13 Jun 2026", "22/10/2026", "see letter"].map((text, i) => [`D-${i + 1}`, text]);
    const workbook = fakeWorkbook({
      sheets: [{ name: "List", rows: [["ID", "Last change"], ...rows] }],
      selection: { sheet: "List", area: "B2" },
    });
    expect((await checkSheet(workbook, { today: TODAY })).groups).toMatchObject([
      { reason: "last change is text, not a date", cells: [{}, {}, {}, {}] },
    ]);
  });

  it("says so where there is no list", async () => {
    const empty = fakeWorkbook({ sheets: [{ name: "List", rows: [] }], selection: { sheet: "List", area: "A1" } });
    expect(await checkSheet(empty, { today: TODAY })).toMatchObject({ list: null, groups: [], doubtful: 0 });
  });
});

describe("the ready-made caseload", () => {
  it("each of its own words is a group", async () => {
    const workbook = fakeWorkbook({
      sheets: [
        {
          name: "Tubes in use",
          rows: [
            ["ID", "To do", "Missing or contradictory"],
            ["D-1", "x", "no status; no weight"],
            ["D-2", "x", null],
            ["D-3", "x", "no weight"],
          ],
          tables: [{ name: "Tubes_in_use", area: "A1:C4" }],
        },
      ],
      selection: { sheet: "Tubes in use", area: "A2" },
    });
    const found = await checkSheet(workbook, { today: TODAY });
    expect(found.groups.map(({ reason, cells }) => [reason, cells.map(({ address }) => address)])).toEqual([
      ["no weight", ["C2", "C4"]],
      ["no status", ["C2"]],
    ]);
    expect([found.rows, found.doubtful, found.notLookedFor]).toEqual([3, 2, []]);
  });
});
