/** Today: every row in use is counted once, by what its word asks for, and silence counts as missing. */
import { expect, test } from "vitest";
import { inventedCaseload } from "../../../src/caseload/invented/index";
import { urgencies, urgencyOf } from "../../../src/caseload/urgency";

import { CellError } from "../../../src/worksheet/error";
import { day } from "../../../src/worksheet/dates";
import { readDay } from "../../../taskpane/actions/today";
import { weekOf } from "../../../taskpane/actions/today/week";
import { fakeWorkbook } from "../../../taskpane/workbook/fake/workbook";
import { workOut } from "../../examples/caseload/worked-rows";
import { caseloadBook, type RowOf } from "./book";

const TODAY = day("2026-11-26");

async function dayOf(tubes: readonly RowOf[]) {
  const workbook = fakeWorkbook(caseloadBook({ tubes }));
  const read = await readDay(workbook, await workbook.overview());
  if (read.is !== "day") throw new Error(read.sentence);
  return read;
}
const row = (ID: string, says: RowOf[string], more: RowOf = {}): RowOf => ({
  ID,
  Status: "active",
  "To do": says,
  ...more,
});

test("the invented caseload: every word once, in the order of urgency", async () => {
  const { tubes } = workOut(inventedCaseload(TODAY), { asOf: TODAY, groups: ["fit", "plan", "spare"] });
  const { rows, counts } = await dayOf(tubes as readonly RowOf[]);
  const words = tubes.map((one) => String(one["To do"] ?? "")).filter((text) => urgencyOf(text));
  for (const asks of ["act", "soon", "missing", "arranged", "quiet"] as const)
    expect(counts[asks], asks).toBe(words.filter((text) => urgencyOf(text)!.asks === asks).length);
  expect(rows).toHaveLength(words.length);
  const places = rows.map(({ says }) => urgencies.indexOf(urgencyOf(says)! as (typeof urgencies)[number]));
  expect(places).toEqual([...places].sort((one, other) => one - other));
});

test("a row in use that says nothing, or something else, is missing a word: it counts, and stands near the top", async () => {
  const { rows, counts } = await dayOf([
    row("A", "nothing due"),
    row("B", null),
    row("C", new CellError("#NAME?") as never),
    row("D", "all well"),
    row("E", "", { Status: null }),
    row("F", "balloon empty"),
  ]);
  expect(counts).toEqual({ act: 1, soon: 0, missing: 4, arranged: 0, quiet: 1 });
  expect(rows.map(({ id }) => id)).toEqual(["F", "B", "C", "D", "E", "A"]);
  expect(rows[1]!.says).toBe("");
});

test("who has left and says nothing is not counted; a blank row is none", async () => {
  const { rows } = await dayOf([row("A", "", { Status: "left" }), { ID: null }, row("B", "booked 4 Jan 2027")]);
  expect(rows.map(({ id }) => id)).toEqual(["B"]);
});

test("a row in use whose identifier is missing is counted, whatever else is", async () => {
  const { rows, counts } = await dayOf([
    row("", null),
    { ID: null, "To do": new CellError("#NAME?") as never, "Size Fr": 14 },
    { ID: null, "Booked for": TODAY + 2 },
  ]);
  expect(counts.missing).toBe(3);
  expect(rows.map(({ id }) => id)).toEqual(["", "", ""]);
});

test("a row leads to its place on the sheet, with the tube to take along", async () => {
  const { rows } = await dayOf([
    row("A", "nothing due"),
    row("B", "overdue 3 days, not booked", { "Size Fr": 14, Shape: "low-profile", "Length cm": 2.3, "Fill mL": 5 }),
  ]);
  expect(rows[0]).toMatchObject({ id: "B", asks: "soon", tube: "14 Fr, low-profile, 2.3 cm, balloon 5 mL" });
  /* The header stands in the fourth row of the small caseload. */
  expect(rows[0]!.place).toMatchObject({ area: { top: 5, rows: 1 } });
});

test("the week list names everybody who asks for something, each once", async () => {
  const { tubes } = workOut(inventedCaseload(TODAY), { asOf: TODAY, groups: ["fit", "plan", "spare"] });
  const read = await dayOf(tubes as readonly RowOf[]);
  const { act, due, arrange, ask } = weekOf(read, TODAY);
  const named = [...act, ...due, ...arrange, ...ask].map(({ place }) => JSON.stringify(place));
  expect(new Set(named).size).toBe(named.length);
  for (const { asks, place } of read.rows)
    if (["act", "soon", "missing"].includes(asks)) expect(named).toContain(JSON.stringify(place));
  expect(ask).toHaveLength(read.counts.missing);
});

test("a day counts in the week until the seventh, past ones too; booked days come first", async () => {
  const read = await dayOf([
    row("A", "due in 6 days, not booked", { "Change due": TODAY + 6 }),
    row("B", "due in 7 days, not booked", { "Change due": TODAY + 7 }),
    row("C", "overdue 3 days, not booked", { "Change due": TODAY - 3 }),
    row("D", "booked 28 Nov", { "Change due": TODAY + 90, "Booked for": TODAY + 2 }),
    row("E", "booked 30 Dec", { "Change due": TODAY + 2, "Booked for": TODAY + 34 }),
    row("F", "nothing due", { "Change due": TODAY + 1 }),
  ]);
  const { due, arrange } = weekOf(read, TODAY);
  expect(due.map(({ id, day, isBooked }) => [id, day! - TODAY, isBooked])).toEqual([
    ["C", -3, false],
    ["A", 6, false],
    ["D", 2, true],
    // whatever its word says, its day is in this week
    ["F", 1, false],
  ]);
  expect(arrange.map(({ id }) => id)).toEqual(["B"]);
});
