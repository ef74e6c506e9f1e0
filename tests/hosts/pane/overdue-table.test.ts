/** What is overdue, counted by hand on a list of somebody's own and again from the cells of the invented caseload. */
import { expect, it } from "vitest";
import { inventedCaseload } from "../../../src/caseload/invented/index";
import { standingOf } from "../../../src/schedule/overdue-table";
import { day } from "../../../src/worksheet/dates";
import { readOverdue } from "../../../taskpane/actions/overdue-table";
import { fakeWorkbook } from "../../../taskpane/workbook/fake/workbook";
import { workOut } from "../../examples/caseload/worked-rows";
import { caseloadBook, type RowOf } from "../caseload-jobs/book";

const TODAY = day("2026-11-26");
const date = (text: string) => ({ value: day(text), format: "d mmm yyyy" });

it("a list of somebody's own, by kinds and not by the words that twenty people typed", async () => {
  const workbook = fakeWorkbook({
    sheets: [
      {
        name: "Adults",
        rows: [
          ["ID", "Kind", "Change due", "Changed by"],
          ["1", "balloon", date("2026-11-01"), "Carer"],
          ["2", "Balloon G", date("2026-12-01"), "radiology"],
          ["3", "PEG", null, "carer "],
          ["4", "bumper adult", "3/4/24", null],
          ["5", "balloon button", date("2027-05-01"), "carer"],
        ],
      },
    ],
    selection: { sheet: "Adults", area: "A2" },
  });
  const read = await readOverdue(workbook, TODAY);
  if (typeof read === "string") throw new Error(read);
  const lines = (way: string) =>
    read.tables.find((one) => one.way === way)!.lines.map(({ by, counts, all }) => [by, ...Object.values(counts), all]);
  expect(lines("kind")).toEqual([
    ["balloon, gastrostomy (G)", 1, 1, 0, 1, 3],
    [expect.stringContaining("bumper"), 0, 0, 1, 0, 1],
    ["not known", 0, 0, 1, 0, 1],
  ]);
  expect(lines("changedBy")).toEqual([
    ["carer", 1, 0, 1, 1, 3],
    ["not known", 0, 0, 1, 0, 1],
    ["radiology", 0, 1, 0, 0, 1],
  ]);
  expect(lines("place").map(([by]) => by)).toEqual(["at home", "in radiology", "not decided, or not known"]);
});

it("the invented caseload: each row in use once, by its own words", async () => {
  const { tubes, changes } = workOut(inventedCaseload(TODAY), { asOf: TODAY, groups: ["fit", "plan", "spare"] });
  const book = caseloadBook({ tubes: tubes as readonly RowOf[], changes: changes as readonly RowOf[] });
  const read = await readOverdue(fakeWorkbook(book), TODAY);
  if (typeof read === "string") throw new Error(read);
  const inUse = (tubes as readonly RowOf[]).filter((row) => row.ID !== "" && row.Status === "active");
  const past = inUse.filter((row) => row.Change === "overdue" || row.Change === "past limit").length;
  for (const { lines } of read.tables) {
    expect(lines.reduce((sum, { counts }) => sum + counts.overdue, 0)).toBe(past);
    expect(lines.reduce((sum, { all }) => sum + all, 0)).toBe(inUse.length);
  }
});

it("no word that is not known is ever taken for later", () => {
  for (const word of ["", "check date", "kind not known", "no date", "#N/A", "soon?"])
    expect(standingOf(word)).toBe("no date");
});
