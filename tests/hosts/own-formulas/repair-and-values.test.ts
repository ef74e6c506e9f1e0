/** Lost formulas entered again, and added columns kept as values and given back. All people are invented. */
import { describe, expect, it } from "vitest";
import { addColumns } from "../../../taskpane/actions/add-columns";
import { planValues, surveyValues, type ValuesPlan } from "../../../taskpane/actions/as-values";
import { surveyRepair } from "../../../taskpane/actions/repair";
import { readOwnDay } from "../../../taskpane/actions/today/own-list";
import type { SheetDescription } from "../../../taskpane/workbook/fake/description";
import { fakeWorkbook, type FakeWorkbook } from "../../../taskpane/workbook/fake/workbook";
import { parseArea } from "../../../taskpane/workbook/area";
import type { Progress, Workbook } from "../../../taskpane/workbook/port";
import { functions } from "../../../src/index";
import { day } from "../../../src/worksheet/dates";

const TODAY = day("2026-06-01");
const watch: Progress = { report: () => undefined, signal: new AbortController().signal };
const rows: NonNullable<SheetDescription["rows"]> = [
  ["ID", "Kind", "Size", "Last change"],
  ["D-1", "balloon", "14 Fr", { value: day("2026-02-01"), format: "dd/mm/yyyy" }],
  ["D-2", "bumper", 15, { value: day("2026-05-01"), format: "dd/mm/yyyy" }],
  ["D-3", "balloon", 16, null],
];
const lists: readonly (readonly [string, SheetDescription])[] = [
  ["a plain list", { name: "Adults", rows }],
  ["a table", { name: "Adults", rows, tables: [{ name: "Caseload", area: "A1:D4" }] }],
];

const cells = async (workbook: Workbook, address: string) => {
  const { sheets } = await workbook.overview();
  return workbook.read({ sheet: sheets[0]!.id, area: parseArea(address)! }, ["values", "formulas"]);
};

async function withColumns(sheet: SheetDescription): Promise<FakeWorkbook> {
  const workbook = fakeWorkbook({ sheets: [sheet], selection: { sheet: "Adults", area: "B2" } });
  const survey = await addColumns.survey(workbook, { today: TODAY });
  const kinds = { from: "words", words: { balloon: "balloon gastrostomy", bumper: "bumper adult" } } as const;
  const plan = addColumns.plan(survey, { ...survey.proposal, recipes: ["changeDue", "change", "sizeMm"], kinds });
  if (plan.outcome !== "planned") throw new Error(plan.sentence);
  expect((await workbook.apply(plan.change, watch)).outcome).toBe("done");
  return workbook;
}

const planned = async (workbook: Workbook, headers: readonly string[]): Promise<ValuesPlan> => {
  const survey = await surveyValues(workbook, { today: TODAY });
  const all = [...survey.columns, ...survey.kept];
  const plan = planValues(
    survey,
    headers.map((header) => all.find((one) => one.header === header)!.column),
  );
  if (plan.outcome !== "planned") throw new Error(plan.sentence);
  return plan;
};

describe.each(lists)("as values, on %s", (_, sheet) => {
  it("keeps what columns say with the day beside the list, and gives the formulas back", async () => {
    const workbook = await withColumns(sheet);
    const before = await cells(workbook, "E2:G4");
    const receipt = await workbook.apply((await planned(workbook, ["Change due", "Change"])).change, watch);
    expect(receipt.outcome).toBe("done");
    const after = await cells(workbook, "E2:H4");
    expect(after.formulas!.map((row) => row.map((one) => one !== null))).toEqual([
      [false, false, true, false],
      [false, false, true, false],
      [false, false, true, false],
    ]);
    expect(after.values!.map((row) => row[3])).toEqual([
      "1 Jun 2026: Change due, Change",
      "1 Jun 2026: Change due, Change",
      "1 Jun 2026: Change due, Change",
    ]);
    /* An old word must not pass for today's. */
    expect((await readOwnDay(workbook, TODAY))?.read ?? []).not.toContain("Change");
    expect((await workbook.apply((await planned(workbook, ["Change due"])).change, watch)).outcome).toBe("done");
    const half = await cells(workbook, "H2:H2");
    expect(half.values).toEqual([["1 Jun 2026: Change"]]);
    expect((await workbook.apply((await planned(workbook, ["Change"])).change, watch)).outcome).toBe("done");
    const back = await cells(workbook, "E2:H4");
    expect(back.formulas!.map((row) => row.slice(0, 3))).toEqual(before.formulas);
    expect(back.values!.map((row) => row[3])).toEqual([null, null, null]);
  });

  it("is taken back as a whole", async () => {
    const workbook = await withColumns(sheet);
    const before = await cells(workbook, "A1:H4");
    const receipt = await workbook.apply((await planned(workbook, ["Size mm"])).change, watch);
    expect(await workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
    expect(await cells(workbook, "A1:H4")).toEqual(before);
  });

  it("gives no formula back that would read another column", async () => {
    const workbook = await withColumns(sheet);
    await workbook.apply((await planned(workbook, ["Change due"])).change, watch);
    workbook.type("Adults", "D1", "Changed on");
    await expect(planned(workbook, ["Change due"])).rejects.toThrow(/reads the column “Last change”/);
  });
});

describe("repair", () => {
  const SHEET: SheetDescription = {
    name: "Adults",
    rows: [
      ["ID", "Size", "mm", "Rate", "Other"],
      ["D-1", 14, { formula: "=_xldudf_TUBE_FRTOMM(B2)", error: "#NAME?" }, { formula: "=RATE(1,2,3)", value: 1 }, 1],
      ["D-2", 15, { formula: "=FRTOMM(B3)", error: "#NAME?" }, null, { formula: "=THEIRS(B3)", error: "#NAME?" }],
      ["D-3", 16, { formula: "=TUBE.FRTOMM(B4)", value: 5.33 }, null, null],
      ["D-4", 18, { formula: "=TUBE.FRTOMM(B5)", error: "#NAME?" }, null, null],
    ],
  };
  it("enters ours again that show #NAME? or stand in a file's spelling, and nothing else; and back", async () => {
    const workbook = fakeWorkbook({ sheets: [SHEET] });
    const before = await cells(workbook, "A1:E5");
    const survey = await surveyRepair(workbook, functions);
    expect(survey.broken.map(({ address, after }) => [address, after])).toEqual([
      ["C2", "=TUBE.FRTOMM(B2)"],
      ["C3", "=TUBE.FRTOMM(B3)"],
      ["C5", "=TUBE.FRTOMM(B5)"],
    ]);
    const receipt = await workbook.apply(survey.change!, watch);
    expect(receipt.outcome).toBe("done");
    const { formulas } = await cells(workbook, "C2:E5");
    expect(formulas!.map((row) => row[0])).toEqual([2, 3, 4, 5].map((row) => `=TUBE.FRTOMM(B${row})`));
    expect(formulas![1]![2]).toBe("=THEIRS(B3)");
    expect(await workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
    expect(await cells(workbook, "A1:E5")).toEqual(before);
  });

  it("says which sheets are protected, and leaves them", async () => {
    const survey = await surveyRepair(fakeWorkbook({ sheets: [{ ...SHEET, isProtected: true }] }), functions);
    expect(survey).toMatchObject({ locked: ["Adults"], change: null });
    expect(survey.broken).toHaveLength(3);
  });
});
