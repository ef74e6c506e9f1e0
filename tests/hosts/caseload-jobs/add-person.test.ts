/** Add a person: the must-have columns, nobody twice, no names, dates that can be. */
import { describe, expect, test } from "vitest";
import { day } from "../../../src/worksheet/dates";
import { planPerson, startOfPerson, surveyPerson, type PersonForm } from "../../../taskpane/actions/add-person";
import type { Parts, RowOf } from "./book";
import { apply, everything, faultsOf, open, planned, rowsIn } from "./kit";

const TODAY = day("2026-11-26");
const form: PersonForm = {
  ...startOfPerson,
  ...{
    id: "D-002",
    born: "2019-05-04",
    access: "G",
    made: "2024-01-08",
    slow: "no",
    heldBy: "balloon",
    knownFrom: "label",
  },
  ...{ shape: "low-profile", size: "CH 14", length: "2,3", deviceIn: "2026-09-01", fill: "5", most: "7" },
  ...{ changedBy: "carer", spare: "same size" },
};
const there: RowOf = { ID: "D-001", Access: "G", Status: "active" };
const names = { Age_Most: 120, Size_Least: 5, Size_Most: 30, Length_Most: 10 };

async function add(typed: Partial<PersonForm> = {}, parts: Parts = {}) {
  const opened = await open({ tubes: [there], names, ...parts }, "D-001");
  const survey = await surveyPerson(opened.workbook, opened.caseload);
  return { ...opened, plan: planPerson(survey, { ...form, ...typed }, TODAY) };
}

test("a row at the end of the list, and back", async () => {
  const { workbook, plan } = await add();
  const recording = planned(plan);
  expect(recording.asks).toEqual([]);
  const before = await everything(workbook);
  const receipt = await apply(workbook, recording.change);
  expect((await rowsIn(workbook, "tubes"))[1]).toEqual({
    ...{
      ID: "D-002",
      Status: "active",
      Born: day("2019-05-04"),
      Access: "G",
      "Stoma made": day("2024-01-08"),
      "Slow healing": "no",
    },
    ...{ "Held by": "balloon", "Known from": "label", Shape: "low-profile", "Size Fr": 14, "Length cm": 2.3 },
    ...{
      "Device in": day("2026-09-01"),
      "Fill mL": 5,
      "Most mL": 7,
      "Changed by": "carer",
      "Spare at home": "same size",
    },
  });
  expect(await workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
  expect(await everything(workbook)).toBe(before);
});

test("the first person fills the blank row", async () => {
  const { workbook, plan } = await add({}, { tubes: [] });
  await apply(workbook, planned(plan).change);
  expect(await rowsIn(workbook, "tubes")).toHaveLength(1);
});

test.each(["03-04", "1E5", "007", "=A1", "+44", "@x"])("%s stays a text", async (id) => {
  const { workbook, plan } = await add({ id });
  await apply(workbook, planned(plan).change);
  const row = (await rowsIn(workbook, "tubes"))[1]!;
  expect(row.ID).toBe(id);
  const { formulas } = await workbook.read({ table: "Tubes_in_use" }, ["formulas"]);
  expect(formulas!.flat().every((formula) => formula === null)).toBe(true);
});

describe("nobody twice", () => {
  test.each([
    ["D-001", "G", /with this access is in the list already \(row 5\)/],
    [" d-001", "G", /with this access is in the list already/],
    ["d-001", "J", /is spelt "D-001" in row 5/],
  ])("%s %s is refused", async (id, access, sentence) => {
    expect(faultsOf((await add({ id, access })).plan).join(" ")).toMatch(sentence);
  });

  test("another access of the same person is asked about", async () => {
    expect(planned((await add({ id: "D-001", access: "J", changedBy: "radiology" })).plan).asks.join(" ")).toContain(
      "a second device of the same person?",
    );
  });

  test("beside a row whose access is not known nothing is added", async () => {
    const { plan } = await add({ id: "D-001", access: "J" }, { tubes: [{ ...there, Access: null }] });
    expect(faultsOf(plan).join(" ")).toContain("is in the list already");
  });

  test("an identifier of the past is asked about", async () => {
    const changes = [{ ID: "d-002", Access: "G", Reason: "left" }];
    expect(planned((await add({}, { changes })).plan).asks.join(" ")).toContain("stands in Changes already");
  });

  test("nothing is written when a row came in meanwhile", async () => {
    const { workbook, caseload, plan } = await add();
    const other = planned(planPerson(await surveyPerson(workbook, caseload), { ...form, id: "D-003" }, TODAY));
    await apply(workbook, other.change);
    expect((await apply(workbook, planned(plan).change)).outcome).toBe("refused");
    expect(await rowsIn(workbook, "tubes")).toHaveLength(2);
  });
});

test.each([
  ["Jane Example", true],
  ["EXAMPLE, Jane", true],
  ["Élodie Exemple 3", true],
  ["D-017", false],
  ["Ward 3", false],
  ["NHS 000 000", false],
])("%s as an identifier: asked %s", async (id, isAsked) => {
  const asks = planned((await add({ id })).plan).asks.join(" ");
  expect(asks.includes("Identifiers only, no names")).toBe(isAsked);
});

test.each([
  [{ born: "2026-11-27" }, "born: Born: this day is in the future."],
  [{ born: "1904-12-31" }, "born: Born: more than 120 years ago."],
  [{ made: "2019-05-03" }, "made: Stoma made on: this is before the birth."],
  [{ made: "2026-11-27" }, "made: Stoma made on: this day is in the future."],
  [{ deviceIn: "2024-01-07" }, "deviceIn: This tube went in on: this is before the stoma was made."],
  [{ size: "14?" }, 'size: Size, Fr: "14?" is in doubt: look at the tube, then write one size.'],
  [{ access: "" }, "access: Where the feed ends: choose one; “not known” is an answer."],
  [{ id: " " }, "id: Identifier: give the clinic’s own."],
])("%j is refused", async (typed, fault) => {
  expect(faultsOf((await add(typed)).plan)).toContain(fault);
});

test("what is blank is asked about, one by one", async () => {
  const blank = {
    born: "",
    made: "",
    slow: "",
    deviceIn: "",
    changedBy: "",
    spare: "",
    knownFrom: "",
    size: "",
    length: "",
    fill: "",
    most: "",
  };
  const { asks } = planned((await add(blank)).plan);
  for (const of of [
    "Born",
    "Stoma made",
    "Slow healing",
    "Device in",
    "Changed by",
    "Spare at home",
    "how it is known",
    "Size Fr",
    "Length cm",
    "Fill mL",
    "Most mL",
  ])
    expect(asks.join(" ")).toContain(of);
  expect(asks).toHaveLength(11);
});

test.each([
  [{ access: "GJ" }, "a GJ tube is never changed at home"],
  [{ heldBy: "bumper", fill: "", most: "" }, "held by bumper"],
])("%j with carer asks", async (typed, ask) => {
  expect(planned((await add(typed)).plan).asks.join(" ")).toContain(ask);
});
