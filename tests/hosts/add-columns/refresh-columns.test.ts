/** Add columns on a list that has some of ours: written anew instead of twice. All people and figures are invented. */
import { describe, expect, it } from "vitest";
import { addColumns } from "../../../taskpane/actions/add-columns";
import type { AddColumnsPlan, Choices, Survey } from "../../../taskpane/actions/add-columns/interface";
import type { SheetDescription } from "../../../taskpane/workbook/fake/description";
import { fakeWorkbook, type FakeWorkbook } from "../../../taskpane/workbook/fake/workbook";
import { parseArea } from "../../../taskpane/workbook/area";
import type { Progress } from "../../../taskpane/workbook/port";
import { day } from "../../../src/worksheet/dates";

const TODAY = day("2026-06-01");
const date = (iso: string) => ({ value: day(iso), format: "dd/mm/yyyy" });
const heads = ["ID", "Kind", "Size", "Last change", "Notes"];
const people: NonNullable<SheetDescription["rows"]> = [
  ["D-1", "balloon", 14, date("2026-04-01"), "well"],
  ["D-2", "GJ", "14FR", date("2025-11-01"), null],
  ["D-3", "balloon", 15, null, null],
];
const TABLE: SheetDescription = {
  name: "Adults",
  rows: [heads, ...people],
  tables: [{ name: "Caseload", area: "A1:E4" }],
};
const PLAIN: SheetDescription = { name: "Adults", rows: [heads, ...people] };

const watch: Progress = { report: () => undefined, signal: new AbortController().signal };
const open = (sheet: SheetDescription): FakeWorkbook =>
  fakeWorkbook({ sheets: [sheet], selection: { sheet: sheet.name, area: "B2" } });
const look = (workbook: FakeWorkbook): Promise<Survey> => addColumns.survey(workbook, { today: TODAY });
const planned = (survey: Survey, recipes: Choices["recipes"], more: Partial<Choices> = {}): AddColumnsPlan => {
  const plan = addColumns.plan(survey, { ...survey.proposal, recipes, ...more });
  expect(plan).toMatchObject({ outcome: "planned" });
  return plan as AddColumnsPlan;
};
const read = async (workbook: FakeWorkbook, address: string) =>
  workbook.read({ sheet: (await workbook.overview()).sheets[0]!.id, area: parseArea(address)! }, [
    "values",
    "formulas",
  ]);
async function withColumns(sheet: SheetDescription): Promise<FakeWorkbook> {
  const workbook = open(sheet);
  const plan = planned(await look(workbook), ["changeDue", "sizeMm"]);
  expect((await workbook.apply(plan.change, watch)).outcome).toBe("done");
  return workbook;
}
const presentIn = (survey: Survey) =>
  survey.list!.recipes.flatMap(({ key, present }) => (present ? [[key, present.header]] : []));

describe.each([
  ["a table", TABLE],
  ["a plain list", PLAIN],
])("on %s", (_, sheet) => {
  it("knows its own columns again, also renamed", async () => {
    const workbook = await withColumns(sheet);
    expect(presentIn(await look(workbook))).toEqual([
      ["changeDue", "Change due"],
      ["sizeMm", "Size mm"],
    ]);
    workbook.type("Adults", "G1", "Diameter, ours");
    expect(presentIn(await look(workbook))).toContainEqual(["sizeMm", "Diameter, ours"]);
  });

  it("writes them anew with today's numbers, adds what is new, and takes both back", async () => {
    const workbook = await withColumns(sheet);
    const before = await read(workbook, "A1:J8");
    const survey = await look(workbook);
    const plan = planned(survey, ["changeDue", "change"], { numbers: { Int_Balloon_G: 2 } });
    expect(plan.change.steps.map(({ kind }) => kind)).toEqual(["defineName", "refreshColumn", "addColumns"]);
    expect(plan.columns.map(({ header, refresh }) => [header, refresh !== null])).toEqual([
      ["Change due", true],
      ["Change", false],
    ]);
    const receipt = await workbook.apply(plan.change, watch);
    expect(receipt.outcome).toBe("done");
    const { values, formulas } = await read(workbook, "F1:H2");
    expect(values![0]).toEqual(["Change due", "Size mm", "Change"]);
    expect(formulas![1]![0]).toContain(",2)");
    expect(formulas![1]![0]).toBe(`=${plan.columns[0]!.formula}`);
    // On a column that is ours "Change" needs the short form only.
    expect(formulas![1]![2]).not.toContain("|no set change|");
    expect(addColumns.afterwards(plan, receipt).sentences.at(-1)).toContain("Wrote Change due anew");
    expect(await workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
    expect(await read(workbook, "A1:J8")).toEqual(before);
  });

  it("says first what somebody has typed over a formula, and gives it back", async () => {
    const workbook = await withColumns(sheet);
    workbook.type("Adults", "G3", "5 mm");
    const plan = planned(await look(workbook), ["sizeMm"]);
    expect(plan.columns[0]!.refresh).toMatchObject({ typed: [3] });
    expect(plan.says[1]).toContain('"Size mm": in 1 row somebody has typed over the formula (row 3).');
    expect(plan.says.at(-1)).toContain("Writes 1 column anew (Size mm)");
    const receipt = await workbook.apply(plan.change, watch);
    expect((await read(workbook, "G3")).formulas![0]![0]).toContain("TUBE.FRTOMM");
    expect(await workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
    expect((await read(workbook, "G3")).values![0]![0]).toBe("5 mm");
  });

  it("leaves a column of that name alone that is not ours", async () => {
    const workbook = open(sheet);
    workbook.type("Adults", "E1", "Size mm");
    workbook.type("Adults", "E2", "=C2/3");
    const survey = await look(workbook);
    const size = survey.list!.recipes.find(({ key }) => key === "sizeMm")!;
    expect(size).toMatchObject({ present: null });
    expect(size.refused).toContain("does not hold our formula, so it is left alone");
    expect(addColumns.plan(survey, { ...survey.proposal, recipes: ["sizeMm"] }).outcome).toBe("problem");
  });

  it("is refused when the column has changed since the preview", async () => {
    const workbook = await withColumns(sheet);
    const plan = planned(await look(workbook), ["sizeMm"]);
    workbook.type("Adults", "G3", "mine");
    expect((await workbook.apply(plan.change, watch)).outcome).toBe("refused");
  });
});

it("knows Check due again, on a list that says what holds each tube in and on one that does not", async () => {
  const sheet: SheetDescription = {
    name: "Adults",
    rows: [
      ["ID", "Kind", "Stoma made", "Last change", "Last check"],
      ...["balloon", "bumper", "GJ", null].map((kind, i) => [
        ...[`D-${i}`, kind, date("2024-04-01"), date("2026-04-01"), date("2026-05-30")],
      ]),
    ],
  };
  const everyone = { from: "everyone", kind: "bumper adult" } as const;
  const kinds = { from: "words", words: { balloon: "balloon gastrostomy", bumper: "bumper adult" } } as const;
  const words = ["no balloon", "no balloon", "no balloon", "no balloon"];
  for (const [kindsSaid, column, expected] of [
    // SickKids: weekly, so 7 days after 30 May.
    [kinds, 1, [day("2026-06-06"), "no balloon", "kind not known", "kind not known"]],
    [kinds, null, new Array<number>(4).fill(day("2026-06-06"))],
    [everyone, null, words],
  ] as const) {
    const workbook = open(sheet);
    const survey = await look(workbook);
    const columns = { ...survey.proposal.columns, kind: column };
    const plan = planned(survey, ["checkDue"], { kinds: kindsSaid, columns });
    const [step] = plan.change.steps;
    expect(step?.kind === "addColumns" && step.columns[0]).toMatchObject({ results: expected });
    expect((await workbook.apply(plan.change, watch)).outcome).toBe("done");
    workbook.type("Adults", "F1", "Next balloon check");
    expect(presentIn(await look(workbook))).toEqual([["checkDue", "Next balloon check"]]);
  }
});

it("asks for a kind of Check due only where a column is said to hold it", async () => {
  const survey = await look(
    open({
      ...PLAIN,
      rows: [
        ["Kind", "Stoma made", "Last change", "Last check"],
        ["x", 45000, 46000, null],
      ],
    }),
  );
  const plan = (kind: number | null) =>
    addColumns.plan(survey, {
      ...survey.proposal,
      recipes: ["checkDue"],
      columns: { stomaMade: 1, last: 2, lastCheck: 3, kind },
    });
  expect(plan(null)).toMatchObject({ outcome: "planned" });
  expect(plan(0)).toMatchObject({
    outcome: "problem",
    sentence: expect.stringContaining("at least one word") as string,
  });
});

it("asks of a renamed date which of two it is, unless only one is left", async () => {
  const workbook = await withColumns(PLAIN);
  workbook.type("Adults", "F1", "Next");
  const unclear = await look(workbook);
  expect(presentIn(unclear)).toEqual([["sizeMm", "Size mm"]]);
  expect(unclear.list!.notices.map(({ sentence }) => sentence).join()).toContain('Column "Next" (column F)');
});

it("gives the formulas to rows that were typed below a plain list since", async () => {
  const workbook = await withColumns(PLAIN);
  ["D-4", "balloon", 12].forEach((value, i) => workbook.type("Adults", `${"ABC"[i]!}5`, value));
  workbook.type("Adults", "D5", day("2026-05-01"));
  const plan = planned(await look(workbook), ["changeDue", "sizeMm"]);
  expect(plan.columns[0]!.refresh!.changing).toContain(5);
  await workbook.apply(plan.change, watch);
  const { formulas } = await read(workbook, "F5:G5");
  expect(formulas![0]!.map((text) => /EDATE\(|TUBE\.FRTOMM\(/.test(text ?? ""))).toEqual([true, true]);
});

it("refuses to read a column from one that is being written anew", async () => {
  const workbook = await withColumns(PLAIN);
  const survey = await look(workbook);
  const plan = addColumns.plan(survey, {
    ...survey.proposal,
    recipes: ["sizeMm"],
    columns: { ...survey.proposal.columns, size: 6 },
  });
  expect(plan).toMatchObject({ outcome: "problem" });
  expect(plan.outcome === "problem" && plan.sentence).toContain("is about to be written anew");
});

it("needs no room for columns that are there", async () => {
  const workbook = await withColumns(TABLE);
  workbook.type("Adults", "H2", "mine");
  const survey = await look(workbook);
  expect(survey.list).toMatchObject({ room: 0, obstacles: [] });
  planned(survey, ["sizeMm"]);
  const more = addColumns.plan(survey, { ...survey.proposal, recipes: ["sizeMm", "tract"] });
  expect(more.outcome).toBe("problem");
});
