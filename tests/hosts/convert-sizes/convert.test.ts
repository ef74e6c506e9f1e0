/** Convert sizes, from looking at a workbook to taking back, behind the port. All people and figures are invented. */
import { describe, expect, it } from "vitest";
import { convertSizes, roomFor, spillCells } from "../../../taskpane/actions/convert-sizes";
import type { Choices, Room, SizesPlan, SizesSurvey } from "../../../taskpane/actions/convert-sizes/interface";
import type { SheetDescription, WorkbookDescription } from "../../../taskpane/workbook/fake/description";
import { fakeWorkbook } from "../../../taskpane/workbook/fake/workbook";
import type { Progress } from "../../../taskpane/workbook/port";

const TODAY = 46_000;
const heads = ["ID", "Size", "Notes"];
/** By hand: 4 read (24 Fr is 8 mm, 15 is 5 mm, 12 is 4 mm, 4.5 is 1.5 mm and looks like mm), 2 not, 1 blank. */
const people: NonNullable<SheetDescription["rows"]> = [
  ["D-1", "24 Fr", "well"],
  ["D-2", "CH15", null],
  ["D-3", "12/14", null],
  ["D-4", 12, null],
  ["D-5", null, null],
  ["D-6", "14G", null],
  ["D-7", 4.5, null],
];
const MM = [8, 5, "#VALUE!", 4, "", "#VALUE!", 1.5];
const TABLE: SheetDescription = {
  name: "Adults",
  rows: [["Invented"], [], heads, ...people],
  tables: [{ name: "Caseload", area: "A3:C10" }],
};
const PLAIN: SheetDescription = { name: "Adults", rows: [["Invented"], [], heads, ...people] };

const open = (sheet: SheetDescription, at = "B4:B10", more: Partial<WorkbookDescription> = {}) =>
  fakeWorkbook({ sheets: [sheet], selection: { sheet: sheet.name, area: at }, ...more });
const look = (workbook: ReturnType<typeof fakeWorkbook>): Promise<SizesSurvey> =>
  convertSizes.survey(workbook, { today: TODAY });
type Looked = Choices & { readonly room?: Room | null };
const planned = (survey: SizesSurvey, { room = null, ...choices }: Looked): SizesPlan => {
  const plan = convertSizes.plan(survey, choices, room);
  expect(plan).toMatchObject({ outcome: "planned" });
  return plan as SizesPlan;
};
const refused = (survey: SizesSurvey, { room = null, ...choices }: Looked): string => {
  const plan = convertSizes.plan(survey, choices, room);
  expect(plan.outcome).toBe("problem");
  return plan.outcome === "problem" ? plan.sentence : "";
};
const spilling = async (
  workbook: ReturnType<typeof fakeWorkbook>,
  survey: SizesSurvey,
  more: Partial<Choices> = {},
): Promise<Looked> => {
  const choices: Choices = { ...survey.proposal, put: "spill", ...more };
  const cells = spillCells(survey, choices);
  return { ...choices, room: cells && (await roomFor(workbook, cells)) };
};
const watch: Progress = { report: () => undefined, signal: new AbortController().signal };
const text = (value: unknown) => (typeof value === "object" && value !== null && "code" in value ? value.code : value);

async function column(workbook: ReturnType<typeof fakeWorkbook>, left: number, top = 2, rows = 8) {
  const [sheet] = (await workbook.overview()).sheets;
  const area = { top, left, rows, columns: 1 };
  const block = await workbook.read({ sheet: sheet!.id, area }, ["values", "formulas", "formats"]);
  return {
    values: block.values!.map((row) => text(row[0])),
    formulas: block.formulas!.map((row) => row[0]),
    formats: block.formats!.map((row) => row[0]),
  };
}

describe("a size of which a spreadsheet made a date", () => {
  // 12-14 typed in 2026: 14 December, 46370 (ECMA-376 part 1, 18.17.4).
  const rows = [heads, ["D-1", "24 Fr"], ["D-2", { value: 46370, format: "d-mmm" }], ["D-3", 46370]] as const;
  const sheet: SheetDescription = { name: "Adults", rows };
  it.each([
    ["in a list", "B2", {}],
    ["selected beside a list", "E1:E3", { cells: { E1: "24 Fr", E2: { value: 46370, format: "d-mmm" }, E3: 46370 } }],
  ])("%s is told as that date, and a number as a number", async (_, at, more) => {
    const workbook = open({ ...sheet, ...more }, at, { dateSystem: 1900 });
    const survey = await look(workbook);
    const { reading } = planned(survey, await spilling(workbook, survey, { way: "toMm" }));
    expect(reading.notRead).toBe(2);
    expect(reading.unread.map(({ reason, cells }) => [reason, cells.map(({ text }) => text)])).toEqual([
      ["the cell holds a date: spreadsheets make one of 12-14 or 12/14; type it anew as text", ["14 Dec 2026"]],
      ["must be above 0 and at most 60 Fr", ["46370"]],
    ]);
  });
});

describe.each([
  ["a table", TABLE, "Caseload[[#This Row],[Size]]"],
  ["a plain list", PLAIN, "B4"],
])("a column of %s", (_, sheet, reference) => {
  it("is proposed, with the way it goes and a new column beside the list", async () => {
    const survey = await look(open(sheet));
    expect(survey.list).toMatchObject({ headerRow: 3, firstRow: 4, lastRow: 10 });
    expect(survey.proposal).toMatchObject({ way: "toMm", from: { of: "column", column: 1 }, put: "beside" });
    expect(survey.selected).toBeNull();
  });

  it("is counted before anything is written, and each cell that is not read is listed", async () => {
    const survey = await look(open(sheet));
    const plan = planned(survey, survey.proposal);
    expect(plan.says).toEqual([
      "4 read, 2 not; 1 blank.",
      "1 size was read but needs a look.",
      `Adds the column "Size mm" at the right end of the ${survey.list!.label}: column D, 7 rows, one formula in each. Nothing is overwritten.`,
    ]);
    expect(plan.reading.unread).toEqual([
      { reason: expect.stringContaining("more than one number"), cells: [{ address: "B6", row: 6, text: "12/14" }] },
      { reason: "G means gauge; write Fr", cells: [{ address: "B9", row: 9, text: "14G" }] },
    ]);
    expect(plan.reading.doubts).toEqual([
      { reason: "looks like mm?", cells: [{ address: "B10", row: 10, text: "4.5" }] },
    ]);
    expect(plan.formula).toBe(`=IF(LEN(TRIM(${reference}))=0,"",TUBE.FRTOMM(${reference}))`);
  });

  it("gets its column, one formula a row, and gives it back", async () => {
    const workbook = open(sheet);
    const survey = await look(workbook);
    const plan = planned(survey, survey.proposal);
    const receipt = await workbook.apply(plan.change, watch);
    expect(receipt).toMatchObject({ outcome: "done" });
    const added = await column(workbook, 3);
    expect(added.values[0]).toBe("Size mm");
    expect(added.formulas.slice(1).every((formula) => formula?.includes("TUBE.FRTOMM("))).toBe(true);
    expect(added.formats.slice(1).every((format) => format === "0.0")).toBe(true);
    const [step] = plan.change.steps;
    expect(step).toMatchObject({ kind: "addColumns" });
    if (step?.kind !== "addColumns" || !("results" in step.columns[0]!)) throw new Error("no results");
    expect(step.columns[0].results!.map(text)).toEqual(MM);
    const said = convertSizes.afterwards(plan, receipt);
    expect(said.sentences[0]).toBe("4 read, 2 not; 1 blank.");
    expect(said.sentences.at(-1)).toBe('The column "Size mm" was added: D3:D10.');
    expect(await workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
    expect((await column(workbook, 3)).values.every((value) => value === null)).toBe(true);
  });

  it("is not written over a cell that was filled meanwhile, nor from a size that was changed", async () => {
    for (const [address, typed] of [
      ["D5", "mine"],
      ["B5", "16 Fr"],
    ] as const) {
      const workbook = open(sheet);
      const survey = await look(workbook);
      const plan = planned(survey, survey.proposal);
      workbook.type("Adults", address, typed);
      const receipt = await workbook.apply(plan.change, watch);
      expect(receipt).toMatchObject({ outcome: "refused", done: [] });
      expect(receipt.sentence).toContain(address);
    }
  });
});

describe("the new column's header", () => {
  it("does not clash with one that is there", async () => {
    const rows = people.map((row, i) => [...row.slice(0, 2), i]);
    const sheet = { name: "Adults", rows: [["ID", "Size", "size MM"], ...rows] };
    const survey = await look(open(sheet, "B2:B8"));
    expect(planned(survey, survey.proposal).header).toBe("Size mm 2");
  });

  it("is another one on the way back", async () => {
    const sheet = {
      name: "Adults",
      rows: [
        ["ID", "Diameter mm"],
        ["D-1", 4.7],
        ["D-2", "6 mm"],
        ["D-3", "18 Fr"],
      ],
    };
    const survey = await look(open(sheet, "B2:B4"));
    expect(survey.proposal.way).toBe("toFr");
    const plan = planned(survey, survey.proposal);
    expect(plan.header).toBe("Fr from mm");
    expect(plan.says[0]).toBe("2 read, 1 not.");
    expect(plan.formula).toContain("TUBE.MMTOFR(B2)");
  });
});

describe("one formula that fills the cells below it", () => {
  it("stands in a free cell, one column away from the list, and says which cells it fills", async () => {
    const workbook = open(PLAIN);
    const survey = await look(workbook);
    const choices = await spilling(workbook, survey);
    expect(choices.start).toBe("E4");
    const plan = planned(survey, choices);
    expect(plan.formula).toBe("=TUBE.FRTOMM(B4:B10)");
    expect(plan.change.steps).toEqual([
      expect.objectContaining({
        kind: "writeFormula",
        row: 3,
        column: 4,
        formula: "=TUBE.FRTOMM(B4:B10)",
        format: "0.0",
      }),
    ]);
    expect(plan.says).toContainEqual(expect.stringContaining("E4:E10"));
    const receipt = await workbook.apply(plan.change, watch);
    expect(receipt.outcome).toBe("done");
    expect((await column(workbook, 4, 3, 1)).formulas).toEqual(["=TUBE.FRTOMM(B4:B10)"]);
    await workbook.takeBack(receipt);
    expect((await column(workbook, 4, 3, 1)).formulas).toEqual([null]);
  });

  it("is refused where its cells are not free, and says which", async () => {
    const workbook = open({ ...PLAIN, cells: { F7: "mine" } });
    const survey = await look(workbook);
    expect(refused(survey, await spilling(workbook, survey, { start: "F4" }))).toContain("F7");
  });

  it("is refused in a table, with the reason", async () => {
    const workbook = open(TABLE);
    const survey = await look(workbook);
    const sentence = refused(survey, await spilling(workbook, survey, { start: "C4" }));
    expect(sentence).toContain('the table "Caseload"');
    expect(sentence).toContain("cannot fill");
  });

  it.each([
    ["on the sizes themselves", "B4", /on the sizes/],
    ["where no cell is named", "next door", /such as H2/],
    ["where more than one is named", "F4:F5", /such as H2/],
    ["at the end of the sheet", "F1048576", /such as H2/],
  ])("is refused %s", async (_, start, says) => {
    const workbook = open(PLAIN);
    const survey = await look(workbook);
    expect(refused(survey, await spilling(workbook, survey, { start }))).toMatch(says);
  });

  it("never goes ahead before anybody has looked whether there is room", async () => {
    const survey = await look(open(PLAIN));
    expect(refused(survey, { ...survey.proposal, put: "spill" })).toContain("Looking");
  });
});

describe("selected cells", () => {
  it("of a list: the whole column is proposed, only they can be chosen", async () => {
    const workbook = open(PLAIN, "B4:B6");
    const survey = await look(workbook);
    expect(survey.proposal.from).toEqual({ of: "column", column: 1 });
    expect(survey.selected?.area).toEqual({ top: 3, left: 1, rows: 3, columns: 1 });
    const choices = await spilling(workbook, survey, { from: { of: "selected" } });
    const plan = planned(survey, choices);
    expect(plan.says[0]).toBe("2 read, 1 not.");
    expect(plan.formula).toBe("=TUBE.FRTOMM(B4:B6)");
    expect(refused(survey, { ...choices, put: "beside" })).toContain("whole column");
  });

  it("without a header are converted by one formula", async () => {
    const workbook = open({ name: "Bare", rows: [["14 Fr"], ["CH16"], ["12/14"]] }, "A1:A3");
    const survey = await look(workbook);
    const choices = await spilling(workbook, survey, survey.list ? { from: { of: "selected" }, start: "C1" } : {});
    expect(planned(survey, choices)).toMatchObject({
      formula: "=TUBE.FRTOMM(A1:A3)",
      place: { area: { top: 0, left: 2 } },
    });
  });

  it("of a whole sheet's column are taken as far as the sheet is used", async () => {
    const workbook = open(PLAIN, "B1:B1048576");
    const survey = await look(workbook);
    expect(survey.proposal.from).toEqual({ of: "column", column: 1 });
    expect(survey.selected).toBeNull();
  });
});

describe("what cannot be done is refused with a sentence", () => {
  it("a protected sheet", async () => {
    const workbook = open({ ...PLAIN, isProtected: true });
    const survey = await look(workbook);
    expect(refused(survey, survey.proposal)).toContain("protected");
    expect(refused(survey, await spilling(workbook, survey))).toContain("protected");
  });
  it("an empty column", async () => {
    const survey = await look(open(PLAIN));
    const emptied = { ...survey, list: { ...survey.list!, rows: survey.list!.rows.map(() => ["x", null, null]) } };
    expect(refused(emptied, survey.proposal)).toContain("Nothing stands");
  });
  it("no column chosen", async () => {
    const survey = await look(open(PLAIN));
    expect(refused(survey, { ...survey.proposal, from: { of: "column", column: null } })).toContain("which column");
  });
  it("two columns of a table by one name", async () => {
    const sheet = { ...TABLE, rows: [["Invented"], [], ["ID", "Size", "Size"], ...people] };
    const survey = await look(open(sheet));
    const choices: Choices = { ...survey.proposal, from: { of: "column", column: 1 }, put: "beside" };
    expect(refused(survey, choices)).toContain("Two columns are called");
  });
  it("no list and nothing selected", async () => {
    const survey = await look(fakeWorkbook({ sheets: [{ name: "Empty" }] }));
    expect(survey.list).toBeNull();
    expect(refused(survey, survey.proposal)).toBe(survey.sentence);
  });
  it("no room beside the list; a free cell farther on still takes one formula", async () => {
    const workbook = open({ ...TABLE, cells: { D6: "mine" } });
    const survey = await look(workbook);
    expect(refused(survey, survey.proposal)).toContain("D6");
    planned(survey, await spilling(workbook, survey, { start: "F4" }));
  });
});

it("a stop takes everything back", async () => {
  const controller = new AbortController();
  const workbook = fakeWorkbook(
    { sheets: [PLAIN], selection: { sheet: "Adults", area: "B4:B10" } },
    { rowsPerBlock: 2, between: (done) => (done > 2 ? controller.abort() : undefined) },
  );
  const survey = await look(workbook);
  const plan = planned(survey, survey.proposal);
  const receipt = await workbook.apply(plan.change, { report: () => undefined, signal: controller.signal });
  expect(receipt).toMatchObject({ outcome: "stopped", done: [] });
  expect(convertSizes.afterwards(plan, receipt).sentences).toContain("Nothing was changed.");
  expect((await column(workbook, 3)).values.every((value) => value === null)).toBe(true);
});
