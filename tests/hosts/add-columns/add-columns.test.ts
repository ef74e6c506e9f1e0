/** The action, from looking at a workbook to taking back, behind the port. All people and figures are invented. */
import { describe, expect, it } from "vitest";
import { recipes } from "../../../src/columns/recipes/index";
import { addColumns } from "../../../taskpane/actions/add-columns";
import { kindWords } from "../../../taskpane/actions/add-columns/kind-words";
import type { AddColumnsPlan, Choices, Survey } from "../../../taskpane/actions/add-columns/interface";
import type { SurveyedList } from "../../../taskpane/actions/list/interface";
import type { SheetDescription, WorkbookDescription } from "../../../taskpane/workbook/fake/description";
import { fakeWorkbook } from "../../../taskpane/workbook/fake/workbook";
import type { Progress } from "../../../taskpane/workbook/port";
import { day } from "../../../src/worksheet/dates";

const TODAY = day("2026-06-01");
const date = (iso: string) => ({ value: day(iso), format: "dd/mm/yyyy" });
const heads = ["ID", "Kind", "Size", "Last change", "Put in", "Water out", "Notes"];
const people: NonNullable<SheetDescription["rows"]> = [
  ["D-1", "balloon", 14, date("2026-04-01"), 5, 4.8, "well"],
  ["D-2", "BGT ", "14FR", date("2025-11-01"), 5, 4, null],
  ["D-3", "bumper", 15, date("2023-02-01"), null, null, null],
  ["D-4", "PEG", "12/14", date("2026-03-01"), 5, null, null],
  ["D-5", null, 12, null, 5, 0, null],
  ["D-6", "Balloon", null, "2026-03-05", 5, 4.4, "=x"],
  ["D-7", "balloon", 4.7, date("2052-03-01"), 5, 5, null],
  ["D-8", "balloon", 12, "3/4/24", 5, 7, null],
  ["D-9", "loop", 10, date("2026-05-01"), 5, 5, null],
];
const TABLE: SheetDescription = {
  name: "Adults",
  rows: [
    ["Invented"],
    [],
    heads,
    ...people,
    ["Total", null, null, null, null, { formula: "=SUM(F4:F12)", value: 30.2 }, null],
  ],
  tables: [{ name: "Caseload", area: "A3:G13", hasTotals: true }],
};
const PLAIN: SheetDescription = { name: "List", rows: [["Invented"], [], heads, ...people, [], [], ["Kept by hand"]] };

const open = (sheet: SheetDescription, more: Partial<WorkbookDescription> = {}, at = "B5") =>
  fakeWorkbook({ sheets: [sheet], selection: { sheet: sheet.name, area: at }, ...more });
const look = (workbook: ReturnType<typeof fakeWorkbook>, asked = {}): Promise<Survey> =>
  addColumns.survey(workbook, { today: TODAY, ...asked });
const listOf = (survey: Survey): SurveyedList => {
  expect(survey.sentence).not.toBe("");
  expect(survey.list).not.toBeNull();
  return survey.list!;
};
const ALL: Choices["recipes"] = ["changeDue", "atTheLatest", "change", "sizeMm", "balloon"];
const choosing = (survey: Survey, recipes: Choices["recipes"], more: Partial<Choices> = {}): Choices => ({
  ...survey.proposal,
  recipes,
  ...more,
});
const saidKinds: Choices["kinds"] = {
  from: "words",
  words: {
    balloon: "balloon gastrostomy",
    bgt: "balloon gastrostomy",
    bumper: "bumper adult",
    loop: "placing team",
    peg: "not known",
  },
};
const planned = (survey: Survey, choices: Choices): AddColumnsPlan => {
  const plan = addColumns.plan(survey, choices);
  expect(plan).toMatchObject({ outcome: "planned" });
  return plan as AddColumnsPlan;
};
const refusedPlan = (survey: Survey, choices: Choices): string => {
  const plan = addColumns.plan(survey, choices);
  expect(plan.outcome).toBe("problem");
  return plan.outcome === "problem" ? plan.sentence : "";
};
const watch = (signal = new AbortController().signal): Progress => ({ report: () => undefined, signal });

describe.each([
  ["a table", TABLE, "Caseload"],
  ["a plain list", PLAIN, null],
])("the whole path on %s", (_, sheet, table) => {
  it("finds the list, guesses its columns and kinds, and proposes them", async () => {
    const survey = await look(open(sheet));
    const list = listOf(survey);
    expect(list).toMatchObject({
      table,
      headerRow: 3,
      firstRow: 4,
      lastRow: 12,
      room: recipes.length,
      obstacles: [],
      notices: [],
    });
    expect(list.columns.map(({ header }) => header)).toEqual(heads);
    expect(list.columns[3]!.samples).toEqual(["1 Apr 2026", "1 Nov 2025", "1 Feb 2023", "1 Mar 2026"]);
    const { columns, ...others } = survey.proposal;
    expect(Object.entries(columns).filter(([, column]) => column !== null)).toEqual([
      ["last", 3],
      ["kind", 1],
      ["size", 2],
      ["out", 5],
      ["putIn", 4],
    ]);
    expect(others).toEqual({
      recipes: [],
      kinds: { from: "words", words: { balloon: "balloon gastrostomy", loop: "placing team" } },
      numbers: {},
      lengths: [],
      formulas: "plain where the same",
    });
    expect(kindWords(list, 1).map(({ word, rows, guess }) => [word, rows, guess])).toEqual([
      ["balloon", [4, 9, 10, 11], "balloon gastrostomy"],
      ["BGT", [5], null],
      ["bumper", [6], null],
      ["PEG", [7], null],
      ["", [8], null],
      ["loop", [12], "placing team"],
    ]);
  });

  it("says in numbers what would happen, what is missing first", async () => {
    const survey = await look(open(sheet));
    const plan = planned(survey, choosing(survey, ALL, { kinds: saidKinds }));
    const label = listOf(survey).label;
    expect(plan.says).toEqual([
      "6 of 9 rows get no usable answer in at least one column (rows 7, 8, 9, 10, 11 and 12). " +
        "By column: Change due: 4; At the latest: 4; Change: 5; Size mm: 2; Balloon: 1.",
      "Change due: 1 answer to look at.",
      "At the latest: 1 answer to look at.",
      "Size mm: 1 answer to look at.",
      `Adds 5 columns (Change due, At the latest, Change, Size mm and Balloon) to the right of "Notes" in the ${label}: 9 rows, nothing overwritten.`,
      'Puts in today’s date, under the name As_of; "Change" counts from it.',
    ]);
    const [due, , change, size, balloon] = plan.columns;
    expect(due).toMatchObject({ filled: 5, of: 9, counts: [] });
    expect(due!.groups.map(({ sentence }) => sentence)).toEqual([
      '1 row shows "kind not known": kind "PEG" (row 7).',
      '1 row shows "no date": no last change (row 8).',
      '1 row shows "#VALUE!": last change must be a date, or text such as 2026-05-14; other texts are not guessed (row 11).',
      '1 row shows "no date": the placing team sets the date (row 12).',
      "1 row needs a look: last change is in the future (row 10).",
    ]);
    // By hand for 1 June 2026: D-1 due 1 July; D-2 limit 1 May gone; D-3 limit 1 February 2025 gone; D-6 due 5 June.
    expect(change!.counts).toEqual([
      { word: "past limit", rows: 2 },
      { word: "check date", rows: 2 },
      { word: "no date", rows: 2 },
      { word: "kind not known", rows: 1 },
      { word: "due soon", rows: 1 },
      { word: "later", rows: 1 },
    ]);
    expect(size!.groups.map(({ rows, reason }) => [rows, reason])).toEqual([
      [[7], '"12/14" holds more than one number: write one size'],
      [[9], "no size"],
      [[10], "looks like mm?"],
    ]);
    expect(balloon!.counts).toEqual([
      { word: "empty", rows: 1 },
      { word: "low", rows: 2 },
      { word: "more than put in", rows: 1 },
      { word: "no balloon", rows: 1 },
      { word: "not measured", rows: 1 },
      { word: "as filled", rows: 3 },
    ]);
    expect(plan.numbers.map(({ setting, value, from }) => [setting.name, value, from])).toEqual([
      ["Int_Balloon_G", 3, "here"],
      ["Lim_Balloon_G", 6, "here"],
      ["Lim_Bumper_Adult", 24, "here"],
      ["Soon_Days", 14, "here"],
      ["Far_Months", 60, "here"],
      ["Fill_Small", 5, "here"],
      ["Loss_Small", 0.5, "here"],
      ["Loss_Large", 1, "here"],
      ["Loss_Half", 0.5, "function"],
      ["Over_Read", 0.5, "function"],
    ]);
  });

  it("does it, tells it, and takes it back", async () => {
    const workbook = open(sheet);
    const before = await workbook.read({ sheet: (await look(workbook)).list!.sheet, area: big }, [
      "values",
      "formulas",
    ]);
    const survey = await look(workbook);
    const plan = planned(survey, choosing(survey, ALL, { kinds: saidKinds }));
    const receipt = await workbook.apply(plan.change, watch());
    expect(receipt.outcome).toBe("done");
    const words = addColumns.afterwards(plan, receipt);
    expect(words).toMatchObject({ outcome: "done", canTakeBack: true });
    expect(words.sentences[0]).toBe("Change due: 4 rows of 9 without a usable answer (rows 7, 8, 11 and 12).");
    expect(words.sentences).toContain("Change due: 1 answer to look at (row 10).");
    expect(words.sentences.at(-1)).toContain("Added Change due, At the latest, Change, Size mm and Balloon to the ");
    const { values, formulas } = await workbook.read(plan.place, ["values", "formulas"]);
    expect(values![0]).toEqual(["Change due", "At the latest", "Change", "Size mm", "Balloon"]);
    const wanted = plan.columns.map(({ formula }) => `=${formula}`);
    expect(formulas![1]).toEqual(wanted);
    const second = await look(workbook);
    const present = listOf(second).recipes.flatMap(({ key, present: one, refused }) =>
      one ? [[key, one.letters, refused]] : [],
    );
    expect(present).toEqual([
      ["changeDue", "H", null],
      ["atTheLatest", "I", null],
      ["change", "J", null],
      ["sizeMm", "K", null],
      ["balloon", "L", null],
    ]);
    expect(second.asOf.from).toBe("name");
    expect(await workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
    const after = await workbook.read({ sheet: survey.list!.sheet, area: big }, ["values", "formulas"]);
    expect(after).toEqual(before);
  });

  it.each([
    ["a mapped cell", "D5", day("2026-01-01")],
    ["a kind", "B6", "PEG"],
    ["a column's name", "D3", "Other"],
    ["the cells beside", "I9", "here"],
  ])("is refused when %s has changed since the preview", async (__, address, typed) => {
    const workbook = open(sheet);
    const survey = await look(workbook);
    const plan = planned(survey, choosing(survey, ALL, { kinds: saidKinds }));
    workbook.type(sheet.name, address, typed);
    const receipt = await workbook.apply(plan.change, watch());
    expect(receipt.outcome).toBe("refused");
    const words = addColumns.afterwards(plan, receipt);
    expect(words.sentences).toEqual([receipt.sentence, "Nothing was changed."]);
    expect(words.canTakeBack).toBe(false);
  });

  it("is stopped when somebody says so, and nothing stays", async () => {
    const workbook = open(sheet);
    const survey = await look(workbook);
    const plan = planned(survey, choosing(survey, ALL, { kinds: saidKinds }));
    const controller = new AbortController();
    const receipt = await workbook.apply(plan.change, { report: () => controller.abort(), signal: controller.signal });
    expect(receipt.outcome).toBe("stopped");
    expect(addColumns.afterwards(plan, receipt).sentences.at(-1)).toBe("Nothing was changed.");
  });
});

const big = { top: 0, left: 0, rows: 30, columns: 20 };

describe("a plain list that somebody has added a row to", () => {
  it("is refused, because the new row would be left out", async () => {
    const workbook = open(PLAIN);
    const survey = await look(workbook);
    const plan = planned(survey, choosing(survey, ["sizeMm"]));
    workbook.type("List", "A13", "D-10");
    expect((await workbook.apply(plan.change, watch())).outcome).toBe("refused");
  });
});

describe("what somebody has to say first", () => {
  it("which columns, which kinds", async () => {
    const survey = await look(open(TABLE));
    const none = { ...survey.proposal.columns, kind: null, last: null, out: null };
    expect(refusedPlan(survey, choosing(survey, []))).toBe("Tick at least one column.");
    expect(refusedPlan(survey, choosing(survey, ["changeDue"], { columns: none }))).toContain('"Last change"');
    expect(refusedPlan(survey, choosing(survey, ["balloon"], { columns: none }))).toContain('"Water out"');
    expect(refusedPlan(survey, choosing(survey, ["change"]))).toContain('"Change due"');
    const noKind = { ...survey.proposal.columns, kind: null };
    expect(refusedPlan(survey, choosing(survey, ["changeDue"], { columns: noKind }))).toContain("kind of tube");
    const unsaid = { from: "words", words: {} } as const;
    expect(refusedPlan(survey, choosing(survey, ["changeDue"], { kinds: unsaid }))).toContain("at least one word");
    const everyone = { from: "everyone", kind: "not known" } as const;
    expect(refusedPlan(survey, choosing(survey, ["changeDue"], { kinds: everyone }))).toContain("everyone");
  });
  it("not the same column twice", async () => {
    const survey = await look(open(TABLE));
    const columns = { ...survey.proposal.columns, out: 4 };
    expect(refusedPlan(survey, choosing(survey, ["balloon"], { columns }))).toContain('Column "Put in" is chosen for');
  });
  it("numbers that are allowed, the limit not before the change is due", async () => {
    const survey = await look(open(TABLE));
    const both: Choices["recipes"] = ["changeDue", "atTheLatest"];
    expect(refusedPlan(survey, choosing(survey, both, { numbers: { Int_Balloon_G: 20 } }))).toContain("from 1 to 12");
    expect(refusedPlan(survey, choosing(survey, both, { numbers: { Int_Balloon_G: 8 } }))).toContain(
      "The limit lies before the change is due",
    );
    const plan = planned(survey, choosing(survey, both, { numbers: { Int_Balloon_G: 2 } }));
    expect(plan.columns[0]!.formula).toContain("[[#This Row],[Last change]],2)");
  });
  it("one interval for everyone, when a person says so", async () => {
    const survey = await look(open(TABLE));
    const kinds = { from: "everyone", kind: "balloon gastrostomy" } as const;
    const columns = { ...survey.proposal.columns, kind: null };
    const plan = planned(survey, choosing(survey, ["changeDue"], { kinds, columns }));
    expect(plan.columns[0]).toMatchObject({ filled: 7, of: 9 });
    expect(plan.columns[0]!.formula).not.toContain("EXACT(LOWER");
  });
  it("fewer words, when the formula would be too long for Excel", async () => {
    const words = Array.from({ length: 300 }, (_, i) => `tube of the sort ${i}`);
    const rows = words.map((word, i) => [`D-${i}`, word, date("2026-03-01")]);
    const survey = await look(open({ name: "List", rows: [["ID", "Kind", "Last change"], ...rows] }));
    const kinds: Choices["kinds"] = {
      from: "words",
      words: Object.fromEntries(words.map((word) => [word, "balloon gastrostomy"])),
    };
    expect(refusedPlan(survey, choosing(survey, ["changeDue"], { kinds }))).toContain("too many different words");
  });
});

describe("a due column of their own", () => {
  it("is enough for the state", async () => {
    const rows = [
      ["ID", "Next change"],
      ["D-1", date("2026-05-31")],
      ["D-2", date("2026-06-10")],
      ["D-3", "June"],
      ["D-4", null],
    ];
    const survey = await look(open({ name: "List", rows }));
    const plan = planned(survey, choosing(survey, ["change"]));
    expect(plan.columns[0]!.counts).toEqual([
      { word: "overdue", rows: 1 },
      { word: "no date", rows: 2 },
      { word: "due soon", rows: 1 },
    ]);
    expect(plan.columns[0]!.groups.map(({ reason }) => reason)).toEqual([
      "the due date is text, not a date",
      "no due date",
    ]);
  });
});

describe("what stands in the way", () => {
  const obstacle = async (sheet: SheetDescription, at = "B5", more: Partial<WorkbookDescription> = {}) => {
    const survey = await look(open(sheet, more, at));
    const [first] = listOf(survey).obstacles;
    expect(refusedPlan(survey, choosing(survey, ["sizeMm"]))).toBe(first?.sentence);
    return first?.sentence;
  };
  it("a protected sheet", async () => {
    expect(await obstacle({ ...PLAIN, isProtected: true })).toContain('"List" is protected');
  });
  it("cells to the right, all or some", async () => {
    expect(await obstacle({ ...TABLE, cells: { H7: "rang twice" } })).toContain("not empty (H7)");
    const survey = await look(open({ ...TABLE, cells: { I13: 1, J4: "a" } }));
    expect(listOf(survey)).toMatchObject({ room: 1, inTheWay: ["I13", "J4"], obstacles: [] });
    expect(refusedPlan(survey, choosing(survey, ["sizeMm", "balloon"]))).toContain("room for 1 column only");
    planned(survey, choosing(survey, ["sizeMm"]));
  });
  it("a spill, a merge and another table", async () => {
    const spill = { cells: { H4: { formula: "=UNIQUE(B4:B8)", value: "a" }, H5: "b" }, spills: ["H4:H5"] };
    expect(await obstacle({ ...TABLE, ...spill })).toContain("not empty (H4, H5)");
    expect(await obstacle({ ...PLAIN, merges: ["H4:J4"] })).toContain("H4:J4");
    const tables = [...TABLE.tables!, { name: "Other", area: "H2:I4" }];
    expect(await obstacle({ ...TABLE, tables })).toContain("table Other");
  });
  it("a table without its header row", async () => {
    const tables = [{ name: "Bare", area: "A4:G12", hasHeader: false }];
    expect(await obstacle({ ...TABLE, tables })).toContain("no header row");
  });
  it("the sheet's last column", async () => {
    const cells = { XFC1: "Size", XFD1: "Notes", XFC2: 14, XFC3: 12, XFD3: "x" };
    const tables = [{ name: "Edge", area: "XFC1:XFD3" }];
    expect(await obstacle({ name: "Edge", cells, tables }, "XFC2")).toContain("last column");
  });
  it("days counted from 1904, for dates only", async () => {
    const survey = await look(open(TABLE, { dateSystem: 1904 }));
    const list = listOf(survey);
    expect(list.recipes.filter(({ refused }) => refused !== null).map(({ key }) => key)).toEqual([
      ...["changeDue", "atTheLatest", "change", "tract", "checkDue"],
    ]);
    expect(list.notices[0]!.sentence).toContain("1904");
    expect(refusedPlan(survey, choosing(survey, ["changeDue"]))).toContain("1904");
    planned(survey, choosing(survey, ["sizeMm"]));
  });
  it("two columns of one name, only when one of them is needed", async () => {
    const rows = [
      ["ID", "Size", "Date", "Date"],
      ["D-1", 14, 46001, 46002],
      ["D-2", 12, 46001, 46002],
    ];
    const survey = await look(open({ name: "List", rows }));
    const columns = { ...survey.proposal.columns, last: 3 };
    const kinds = { from: "everyone", kind: "gastrojejunal" } as const;
    expect(refusedPlan(survey, choosing(survey, ["changeDue"], { columns, kinds }))).toContain('called "Date"');
    planned(survey, choosing(survey, ["sizeMm"]));
  });
  it("a name As_of that is something else", async () => {
    const names = [{ name: "as_of", refersTo: '="May"', value: "May" }];
    const survey = await look(open(TABLE, { names }));
    expect(survey.asOf.refused).toContain("not a date");
    expect(refusedPlan(survey, choosing(survey, ["changeDue", "change"], { kinds: saidKinds }))).toContain("As_of");
    planned(survey, choosing(survey, ["changeDue"], { kinds: saidKinds }));
  });
});

describe("what is told, and does not stand in the way", () => {
  it("a filter, and rows hidden by hand", async () => {
    const tables = [{ ...TABLE.tables![0]!, filteredRows: [5, 6] }];
    expect(listOf(await look(open({ ...TABLE, tables }))).notices[0]!.sentence).toBe(
      "A filter is on: 2 rows of this list are hidden now. Hidden rows get the columns too.",
    );
    expect(listOf(await look(open({ ...PLAIN, hiddenRows: [5] }))).notices[0]!.sentence).toContain(
      "1 row of this list is",
    );
  });
  it("a day that somebody has fixed", async () => {
    const names = [{ name: "As_of", refersTo: "=45000", value: 45000 }];
    const survey = await look(open(TABLE, { names }));
    expect(survey.asOf).toEqual({ day: 45000, from: "name", refused: null });
    expect(listOf(survey).notices[0]!.sentence).toContain("15 Mar 2023, which is not today");
    const plan = planned(survey, choosing(survey, ["changeDue", "change"], { kinds: saidKinds }));
    expect(plan.change.steps.map(({ kind }) => kind)).toEqual(["addColumns"]);
  });
});

describe("which list", () => {
  const chart: SheetDescription = { name: "Picture", kind: "chart sheet" };
  it("the only one, from a chart sheet", async () => {
    const workbook = fakeWorkbook({ sheets: [chart, PLAIN], selection: { sheet: "Picture", area: "A1" } });
    const survey = await look(workbook);
    expect(survey.sentence).toContain('"Picture" holds a chart');
    expect(listOf(survey).sheetName).toBe("List");
  });
  it("none, when there are several and one stands in none", async () => {
    const workbook = fakeWorkbook({ sheets: [chart, PLAIN, TABLE], selection: { sheet: "Picture", area: "A1" } });
    const survey = await look(workbook);
    expect(survey).toMatchObject({ list: null, lists: [{ key: "table Caseload" }, {}] });
    expect(survey.sentence).toContain("Choose one of the lists.");
    expect(listOf(await look(workbook, { list: "table Caseload" })).table).toBe("Caseload");
  });
  it("the table nearest, from a title above it", async () => {
    const survey = await look(open(TABLE, {}, "A1"));
    expect(listOf(survey).table).toBe("Caseload");
    expect(survey.sentence).toContain("nearest to the selected cell");
  });
  it("the table nearest, though the sheet holds one plain list further away", async () => {
    const cells = { K3: "ID", L3: "Size", K4: "E-1", L4: 14, K5: "E-2", L5: 12, K6: "E-3", L6: 10 };
    const survey = await look(open({ ...TABLE, cells }, {}, "A1"));
    expect(listOf(survey).table).toBe("Caseload");
  });
  it("and says where cells right below a table are no part of it", async () => {
    const sheet: SheetDescription = {
      name: "Adults",
      rows: [heads, ...people, ["D-10", "balloon", 14, date("2025-01-01"), 5, 5, null]],
      tables: [{ name: "Caseload", area: "A1:G10" }],
    };
    const said = (survey: Survey) => listOf(survey).notices.map(({ sentence }) => sentence);
    expect(said(await look(open(sheet)))).toEqual([
      'Row 11 stands right below the table "Caseload" and is no part of it: it gets no columns. Draw the table over it in Excel first.',
    ]);
    expect(said(await look(open(TABLE)))).toEqual([]);
  });
  it("the plain list beside a table, when one stands in it", async () => {
    const cells = { K3: "ID", L3: "Size", K4: "E-1", L4: 14, K5: "E-2", L5: 12, K6: "E-3", L6: 10 };
    const survey = await look(open({ ...TABLE, cells }, {}, "L4"));
    expect(listOf(survey)).toMatchObject({ table: null, area: { top: 2, left: 10, rows: 4, columns: 2 } });
  });
  it("the one that somebody corrects", async () => {
    const workbook = open(PLAIN);
    const { lists } = await look(workbook);
    const survey = await look(workbook, { list: lists[0]!.key, headerRow: 3, lastRow: 8 });
    expect(listOf(survey)).toMatchObject({ headerRow: 3, lastRow: 8, found: { sure: true } });
    expect(listOf(survey).rows).toHaveLength(5);
  });
  it("none on an empty sheet or one without a header, and that is said", async () => {
    const empty = await look(
      fakeWorkbook({ sheets: [{ name: "Sheet1" }], selection: { sheet: "Sheet1", area: "A1" } }),
    );
    expect(empty).toMatchObject({ list: null, lists: [] });
    expect(empty.sentence).toBe('The sheet "Sheet1" is empty. There is no list in this workbook.');
    expect(refusedPlan(empty, empty.proposal)).toBe(empty.sentence);
    const bare = await look(open({ name: "List", rows: people }));
    expect(bare.list).toBeNull();
    expect(bare.sentence).toContain("No header row was found");
  });
});
