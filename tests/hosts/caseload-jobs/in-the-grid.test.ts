/** The jobs on the ready-made caseload itself, written as a file, opened in the grid, with its own formulas at work. */
import { afterAll, beforeAll, expect, test } from "vitest";
import { caseloadBookOf, type CaseloadRow } from "../../../src/caseload/index";
import { day } from "../../../src/worksheet/dates";
import { planPerson, startOfPerson, surveyPerson } from "../../../taskpane/actions/add-person";
import { whoIsMeant } from "../../../taskpane/actions/caseload/identity";
import { readCaseload, textIn, valueIn, type Caseload } from "../../../taskpane/actions/caseload/read";
import { planChange, retyped, startOfChange, surveyChange } from "../../../taskpane/actions/record-change";
import { planCheck, startOfCheck, surveyCheck } from "../../../taskpane/actions/record-check";
import { tubeOut } from "../../../taskpane/actions/tube-out";
import { gridOn } from "../../../taskpane/workbook/embedded/face";
import type { Engine } from "../../../taskpane/workbook/embedded/engine";
import type { Grid } from "../../../taskpane/workbook/embedded/interface";
import { writeBook } from "../../../taskpane/workbook/file";
import type { Change } from "../../../taskpane/workbook/port";
import { atRest } from "../grid/at-rest";
import { startHeadless } from "../grid/headless";
import { planned } from "./kit";

const TODAY = day("2026-11-26");

/** Invented. */
const person: CaseloadRow = {
  ...{ ID: "D-001", Status: "active", Born: day("2019-05-04"), Access: "G", "Stoma made": day("2024-01-08") },
  ...{ "Slow healing": "no", "Held by": "balloon", "Known from": "record", Shape: "low-profile", "Size Fr": 14 },
  ...{
    "Length cm": 2.3,
    "Device in": day("2026-09-01"),
    Lot: "03-04",
    "Fill mL": 5,
    "Most mL": 7,
    "Checked by": "nurse",
  },
};
const rows = {
  tubes: [person, { ...person, ID: "D-002" }],
  checks: [{ ID: "D-001", "Checked on": day("2026-11-19"), "Out mL": 4.9, "Put in mL": 5 }],
  changes: [{ ID: "D-001", Access: "G", In: day("2026-06-01"), Out: day("2026-09-01"), Reason: "planned" }],
};

let engine: Engine;
let grid: Grid;
beforeAll(async () => {
  engine = startHeadless();
  grid = gridOn(engine, { today: TODAY, dayFirst: true, say: () => undefined, hush: () => undefined });
  const book = caseloadBookOf(rows, { asOf: TODAY, groups: ["fit", "plan", "spare"], people: "none" });
  expect(await grid.open(await writeBook(book), "caseload.xlsx")).toMatchObject({ outcome: "opened" });
  await atRest();
});
afterAll(async () => {
  await atRest();
  engine.univer.dispose();
});

async function read(): Promise<Caseload> {
  const found = await readCaseload(grid.workbook);
  if (found.is !== "caseload") throw new Error(found.sentence);
  return found;
}
const apply = (change: Change) =>
  grid.workbook.apply(change, { report: () => undefined, signal: new AbortController().signal });
const typedIn = async (table: "tubes" | "checks" | "changes") =>
  (await read())[table].rows.map((row) => JSON.stringify([...row.values].filter(([header]) => typed.includes(header))));
const typed = [
  "id",
  "access",
  "checked on",
  "out ml",
  "put in ml",
  "device in",
  "held by",
  "lot",
  "out",
  "reason",
  "in",
];

async function somebody() {
  const caseload = await read();
  const meant = whoIsMeant(caseload.tubes, "D-001");
  return { caseload, meant, device: meant.devices[0]!, id: "D-001" };
}

test("the caseload is read, its settings by name", async () => {
  const caseload = await read();
  expect(caseload.tubes.rows.map((row) => textIn(row, "Tract"))).toEqual(["mature by weeks", "mature by weeks"]);
  expect([caseload.names.get("tract_low"), caseload.names.get("ph_max")]).toEqual([6, 5]);
  const { meant, device } = await somebody();
  expect(tubeOut(caseload, meant, device, TODAY).doubts).toEqual([]);
});

test("a check: the list follows by its own formulas, and both go back", async () => {
  const { caseload, meant, device, id } = await somebody();
  const before = [await typedIn("checks"), await typedIn("tubes")];
  const survey = await surveyCheck(grid.workbook, caseload, meant, device);
  const plan = planned(planCheck(survey, { ...startOfCheck(TODAY), out: "0", putIn: "5", looked: "clear" }, TODAY));
  expect(plan.change.steps.map(({ kind }) => kind)).toEqual(["appendRows"]);
  const receipt = await apply(plan.change);
  expect(receipt.outcome).toBe("done");
  await atRest();
  const row = whoIsMeant((await read()).tubes, id).devices[0]!.row;
  expect([valueIn(row, "Last check"), valueIn(row, "Out mL"), textIn(row, "Balloon")]).toEqual([TODAY, 0, "empty"]);
  expect(await grid.workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
  await atRest();
  expect([await typedIn("checks"), await typedIn("tubes")]).toEqual(before);
});

test("a change: both sheets in step, and both go back", async () => {
  const { caseload, device, id } = await somebody();
  const before = [await typedIn("changes"), await typedIn("tubes")];
  const survey = await surveyChange(grid.workbook, caseload, device);
  const form = { ...startOfChange(device, TODAY), reason: "planned", knownFrom: "label", lot: "1E5" };
  const receipt = await apply(planned(planChange(survey, form, TODAY)).change);
  expect(receipt.outcome).toBe("done");
  await atRest();
  const after = await read();
  const row = whoIsMeant(after.tubes, id).devices[0]!.row;
  const log = after.changes.rows.at(-1)!;
  expect([valueIn(row, "Device in"), valueIn(row, "Lot"), textIn(row, "Balloon")]).toEqual([
    TODAY,
    "1E5",
    "no check yet",
  ]);
  expect((["ID", "In", "Out", "Lot", "Failed"] as const).map((header) => valueIn(log, header))).toEqual([
    ...[valueIn(device.row, "ID"), valueIn(device.row, "Device in"), TODAY, valueIn(device.row, "Lot"), "no"],
  ]);
  expect(await grid.workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
  await atRest();
  expect([await typedIn("changes"), await typedIn("tubes")]).toEqual(before);
});

test("a change to a tube that ends elsewhere: checks stay with their devices, and all goes back", async () => {
  const { caseload, device, id } = await somebody();
  const before = [await typedIn("changes"), await typedIn("tubes")];
  const words = () => read().then(({ checks }) => checks.rows.map((row) => textIn(row, "State")));
  const wordsBefore = await words();
  expect(wordsBefore).toEqual(["as filled"]);
  const survey = await surveyChange(grid.workbook, caseload, device);
  const other = retyped(device, startOfChange(device, TODAY), { access: "GJ" });
  const form = { ...other, reason: "change of type", knownFrom: "label", length: "2.3", fill: "8", most: "10" };
  const receipt = await apply(planned(planChange(survey, form, TODAY)).change);
  expect(receipt.outcome).toBe("done");
  await atRest();
  const after = await read();
  const now = whoIsMeant(after.tubes, id);
  expect([now.doubt, now.devices.map(({ access }) => access)]).toEqual([null, ["GJ"]]);
  const { row } = now.devices[0]!;
  expect([textIn(row, "Key"), textIn(row, "Balloon"), valueIn(row, "Fill mL")]).toEqual([
    "k:d-001|gj",
    "no check yet",
    8,
  ]);
  expect(textIn(after.changes.rows.at(-1)!, "Access")).toBe("G");
  expect(await words()).toEqual(wordsBefore);

  /* Nothing of the old balloon counts for the new one: its agreed fill is expected, not what was put in before. */
  const check = await surveyCheck(grid.workbook, after, now, now.devices[0]!);
  const plan = planned(planCheck(check, { ...startOfCheck(TODAY), out: "8", putIn: "8" }, TODAY));
  expect([plan.meaning.expected, plan.meaning.state]).toEqual([8, "as filled"]);
  const checked = await apply(plan.change);
  await atRest();
  const newest = (await read()).checks.rows.at(-1)!;
  expect([valueIn(newest, "Device in"), valueIn(newest, "Expected mL"), textIn(newest, "State")]).toEqual([
    ...[TODAY, 8, "as filled"],
  ]);

  expect(await grid.workbook.takeBack(checked)).toEqual({ outcome: "taken back" });
  expect(await grid.workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
  await atRest();
  expect([await typedIn("changes"), await typedIn("tubes")]).toEqual(before);
  expect(textIn((await somebody()).device.row, "Key")).toBe("k:d-001|g");
});

test.each(["03-04", "1E5", "007", "=A1"])("somebody new with the identifier %s, as a text", async (id) => {
  const form = {
    ...startOfPerson,
    ...{
      id,
      born: "2019-05-04",
      access: "G",
      made: "2024-01-08",
      slow: "no",
      heldBy: "balloon",
      knownFrom: "label",
      shape: "long",
    },
    ...{ size: "14", deviceIn: "2026-09-01", fill: "5", most: "7", changedBy: "carer", spare: "none" },
  };
  const receipt = await apply(planned(planPerson(await surveyPerson(grid.workbook, await read()), form, TODAY)).change);
  expect(receipt.outcome).toBe("done");
  await atRest();
  const found = whoIsMeant((await read()).tubes, id);
  expect([found.doubt, found.devices.map(({ row }) => valueIn(row, "ID"))]).toEqual([null, [id]]);
  expect(textIn(found.devices[0]!.row, "Tract")).toBe("mature by weeks");
  expect(await grid.workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
  await atRest();
  expect(whoIsMeant((await read()).tubes, id).devices).toEqual([]);
});
