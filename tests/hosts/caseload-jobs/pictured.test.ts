/** What the pictures are drawn from, on the invented caseload: every row is counted once or left out with its reason. */
import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { inventedCaseload } from "../../../src/caseload/invented/index";
import { day } from "../../../src/worksheet/dates";
import { readPictured } from "../../../taskpane/actions/pictures";
import { fakeWorkbook } from "../../../taskpane/workbook/fake/workbook";
import { workOut } from "../../examples/caseload/worked-rows";
import { devicesText } from "../../witness/r/devices";
import { caseloadBook, type RowOf } from "./book";

const TODAY = day("2026-11-26");

test("the invented caseload: all its changes and tubes, and the days that are due", async () => {
  const { tubes, changes } = workOut(inventedCaseload(TODAY), { asOf: TODAY, groups: ["fit", "plan", "spare"] });
  const book = caseloadBook({ tubes: tubes as readonly RowOf[], changes: changes as readonly RowOf[] });
  const workbook = fakeWorkbook(book);
  const pictured = await readPictured(workbook, await workbook.overview(), TODAY);
  if (pictured.is !== "pictured") throw new Error(pictured.sentence);
  expect(pictured.asOf).toBe(TODAY);
  const isFilled = (row: RowOf): boolean => String(row.ID ?? "") !== "";
  const filled = [...tubes, ...changes].filter((row) => isFilled(row as RowOf)).length;
  expect(pictured.devices.length + pictured.leftOut.length).toBe(filled);
  // By the words that stand in Failed, counted here and not by the reading.
  const failed = changes.filter((row) => (row as RowOf).Failed === "yes" && (row as RowOf)["Days in place"] !== "");
  expect(pictured.devices.filter((device) => device.failed)).toHaveLength(failed.length);
  expect(failed.length).toBeGreaterThan(8);
  /* What R has worked on in tests/witness/r is this caseload. */
  expect(devicesText(pictured.devices)).toBe(
    readFileSync(new URL("../../witness/r/devices.csv", import.meta.url), "utf8"),
  );
  const inUse = tubes.filter((row) => (row as RowOf).Status === "active");
  expect(pictured.tubes).toHaveLength(inUse.length);
  const withDay = inUse.filter((row) =>
    ["Booked for", "Change due"].some((header) => typeof (row as RowOf)[header] === "number"),
  );
  expect(pictured.tubes.filter((tube) => tube.day !== null)).toHaveLength(withDay.length);
});

test("a workbook without a list has no pictures, and says so", async () => {
  const workbook = fakeWorkbook({ sheets: [{ name: "Sheet1", cells: { A1: "a" } }] });
  expect((await readPictured(workbook, await workbook.overview(), TODAY)).is).toBe("none");
});
