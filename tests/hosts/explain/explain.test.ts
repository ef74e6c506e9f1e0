/** Why a cell says what it says, behind the port. All people and figures are invented; the answers are by hand. */
import { describe, expect, it } from "vitest";
import { explainCell } from "../../../taskpane/actions/explain";
import { isExplanation, type Explanation } from "../../../taskpane/actions/explain/interface";
import type { CellDescription, WorkbookDescription } from "../../../taskpane/workbook/fake/description";
import { fakeWorkbook } from "../../../taskpane/workbook/fake/workbook";
import { rowsTables, tableNames } from "../../../src/caseload/names";
import { TO_DO } from "../../../src/caseload/sort-key";
import { boundColumns, columnsOf } from "../../../src/caseload/tables";
import { functions } from "../../../src/index";
import { columnsRead } from "../../../taskpane/actions/explain/read-headers";
import { day } from "../../../src/worksheet/dates";

const date = (iso: string) => ({ value: day(iso), format: "d mmm yyyy" });
const book = (formula: CellDescription, more: Partial<WorkbookDescription> = {}): WorkbookDescription => ({
  sheets: [
    {
      name: "Adults",
      rows: [
        ["ID", "Kind", "Size", "Last change", "Put in", "Answer"],
        ["D-1", "balloon", "12/14", date("2026-03-14"), 5, formula],
        ["D-2", "bumper", 14, date("2025-11-30"), 5, null],
        ["D-3", "balloon", null, "3/4/26", null, null],
      ],
      tables: [{ name: "Caseload", area: "A1:F4" }],
    },
    {
      name: "Old list",
      rows: [
        ["Size", "Days"],
        ["CH18", 14],
      ],
    },
  ],
  selection: { sheet: "Adults", area: "F2" },
  ...more,
});

async function explained(description: WorkbookDescription): Promise<Explanation> {
  const said = await explainCell(fakeWorkbook(description), functions);
  expect(isExplanation(said), JSON.stringify(said)).toBe(true);
  return said as Explanation;
}
const of = (formula: string, shown: Partial<CellDescription> = {}, more: Partial<WorkbookDescription> = {}) =>
  explained(book({ formula, ...shown }, more));

describe("a function of ours", () => {
  it("that is an error: the sentence, and the argument at fault with its cell and column", async () => {
    const said = await of("=TUBE.FRTOMM([@Size])", { error: "#VALUE!" });
    expect(said.headline).toBe(
      'F2 is an error, #VALUE!: size "12/14" holds more than one number: write one size. Look at cell C2, column "Size" in this row.',
    );
    expect(said.isError).toBe(true);
    expect(said.calls).toHaveLength(1);
    expect(said.calls[0]).toMatchObject({ name: "TUBE.FRTOMM", isError: true, formula: "TUBE.FRTOMM([@Size])" });
    expect(said.calls[0]!.given).toEqual([
      {
        name: "size",
        help: functions.find(({ name }) => name === "FRTOMM")!.params["size"]!.help,
        value: '"12/14"',
        from: 'cell C2, column "Size" in this row',
        isAtFault: true,
      },
    ]);
    expect(said.calls[0]!.cautions).toContain("A leak is not cured by a larger tube.");
    expect(said.notes).toEqual([]);
  });

  it("that gives a date: the date, where each argument came from, and what was left out", async () => {
    // 14 March 2026 and 3 months: 14 June 2026.
    const said = await of("=TUBE.CHANGEDUE(Caseload[[#This Row],[Last change]],3)", date("2026-06-14"));
    expect(said.headline).toBe("F2 shows 14 Jun 2026.");
    const { given, result, isError } = said.calls[0]!;
    expect([result, isError]).toEqual(["14 Jun 2026.", false]);
    expect(given.map(({ name, value, from }) => [name, value, from])).toEqual([
      ["lastchange", "14 Mar 2026", 'cell D2, column "Last change" in this row'],
      ["interval", expect.stringContaining("3"), "written in the formula"],
      ["unit", "left out", "months is used"],
      ["closed", "left out", "no closed days"],
    ]);
  });

  it.each([
    ["A1 with dollars", "=TUBE.FRTOMM($C$3)", 'cell C3, column "Size"', "14 Fr"],
    ["another sheet", "=TUBE.FRTOMM('Old list'!A2)", 'cell A2 on "Old list"', '"CH18"'],
    ["the table by name", "=TUBE.FRTOMM(Caseload[@Size])", 'cell C2, column "Size" in this row', '"12/14"'],
    ["written out", '=TUBE.FRTOMM("CH 15")', "written in the formula", '"CH 15"'],
    ["a name", "=TUBE.FRTOMM(Usual_size)", "the name Usual_size", "16 Fr"],
    ["a guard", '=TUBE.FRTOMM(IF(LEN(C3)=0,"",C3))', 'worked out from IF(LEN(C3)=0,"",C3)', "14 Fr"],
    ["an array", "=TUBE.FRTOMM({14})", "written in the formula", "1 cell: 14 Fr"],
    ["as files store it", "=_xldudf_TUBE_FRTOMM(C3)", 'cell C3, column "Size"', "14 Fr"],
  ])("finds its argument: %s", async (_, formula, from, value) => {
    const names = [{ name: "Usual_size", refersTo: "=16", value: 16 }];
    const said = await of(formula, {}, { names });
    expect(said.calls[0]!.given[0]).toMatchObject({ from, value });
  });

  it("inside another one: both, the outer one first", async () => {
    const said = await of("=TUBE.DUESTATE(TUBE.CHANGEDUE(D2,3),WORKDAY(D2,9),14)", { value: "due soon" });
    expect(said.calls.map(({ name }) => name)).toEqual(["TUBE.DUESTATE", "TUBE.CHANGEDUE"]);
    // WORKDAY is not worked out here: so the outer one is not, and it is said; the inner one is.
    expect(said.calls[0]!.result).toContain("not worked out");
    expect(said.calls[0]!.given[1]).toMatchObject({ value: "this part was not worked out here" });
    expect(said.calls[1]!.result).toBe("14 Jun 2026.");
    expect(said.notes[0]).toBe("This part was not worked out here: WORKDAY is not worked out here.");
  });

  it("over a whole column", async () => {
    const said = await of("=TUBE.STOCKSIZE(C3,C2:C4)", { error: "#VALUE!" });
    expect(said.headline).toContain('stocked holds "12/14"');
    expect(said.calls[0]!.given[1]).toMatchObject({ from: "cells C2 to C4", isAtFault: true });
  });
});

describe("a date is never told as its number", () => {
  /* D2 and D3 fall due once in these months: counted on a calendar. */
  const load = "=TUBE.CHANGELOAD(D2:D3,{12},D2,2)";
  const months = [day("2026-03-01"), day("2026-04-01")];

  it("where the function gives it, whatever the cell's format: its own cell, all it gives, a cell that it fills", async () => {
    const cells = { H2: { formula: load, value: months[0]! }, H3: { value: months[1]! } };
    const sheets = (at: string): WorkbookDescription => {
      const description = book({ value: null }, { selection: { sheet: "Adults", area: at } });
      return { ...description, sheets: description.sheets.map((sheet, i) => (i === 0 ? { ...sheet, cells } : sheet)) };
    };
    const own = await explained(sheets("H2"));
    expect(own.headline).toBe("H2 shows 1 Mar 2026.");
    expect(own.calls[0]!.result).toMatch(/^4 cells: 1 Mar 2026, \d, 1 Apr 2026, …\.$/);
    expect((await explained(sheets("H3"))).headline).toBe("H3 shows 1 Apr 2026.");
  });

  it("where another word is asked of the same function, the number stays one", async () => {
    const code = '"(01)95012345678903(17)261231(30)12"';
    // 31 December 2026 and 12 pieces, as written in the code.
    const expiry = await of(`=TUBE.READCODE(${code},"expiry")`, { value: day("2026-12-31") });
    expect(expiry.headline).toBe("F2 shows 31 Dec 2026.");
    const quantity = await of(`=TUBE.READCODE(${code},"quantity")`, { value: 12 });
    expect(quantity.headline).toBe("F2 shows 12.");
  });

  it("where a cell shows one that is read as something else", async () => {
    const size = { value: day("2026-10-14"), format: "d-mmm" };
    const said = await explained(
      book(
        { formula: "=TUBE.FRTOMM(H2)", error: "#VALUE!" },
        {
          sheets: [
            { name: "Adults", rows: [[]], cells: { F2: { formula: "=TUBE.FRTOMM(H2)", error: "#VALUE!" }, H2: size } },
          ],
        },
      ),
    );
    expect(said.calls[0]!.given[0]).toMatchObject({ value: "14 Oct 2026" });
  });

  it("where the rest of the formula reads a block or a name", async () => {
    const names = [{ name: "Began_On", refersTo: "=Adults!$D$3", value: day("2025-11-30") }];
    const said = await of("=IF(COUNT(D2:D4)>1,Began_On,0)", date("2025-11-30"), { names });
    expect(said.reads.map(({ name, value }) => [name, value])).toEqual([
      ["D2:D4", '3 cells: 14 Mar 2026, 30 Nov 2025, "3/4/26"'],
      ["Began_On", "30 Nov 2025"],
    ]);
  });

  it("but a small number in a cell that is formatted as a date is no date", async () => {
    const said = await of("=TUBE.CHANGEDUE(D2,H2)", date("2026-06-14"), {
      sheets: [
        {
          name: "Adults",
          rows: [[], [null, null, null, date("2026-03-14")]],
          cells: {
            F2: { formula: "=TUBE.CHANGEDUE(D2,H2)", ...date("2026-06-14") },
            H2: { value: 3, format: "d mmm yyyy" },
          },
        },
      ],
    });
    expect(said.calls[0]!.given[1]).toMatchObject({ value: "3" });
  });
});

describe("plain Excel around ours", () => {
  const BY_KIND =
    '=IF(EXACT(LOWER(TRIM([@Kind])),"balloon"),TUBE.CHANGEDUE([@[Last change]],3),' +
    'IF(EXACT(LOWER(TRIM([@Kind])),"bumper"),TUBE.CHANGEDUE([@[Last change]],24),"kind not known"))';

  it("only what counts for this row is explained, the rest is counted", async () => {
    const said = await of(BY_KIND, date("2026-06-14"));
    expect(said.calls).toHaveLength(1);
    expect(said.calls[0]!.formula).toBe("TUBE.CHANGEDUE([@[Last change]],3)");
    expect(said.notes).toEqual(["1 other function of this add-in in the formula does not count for this cell."]);
    expect(said.headline).toBe("F2 shows 14 Jun 2026.");
    expect(said.reads).toEqual([
      expect.objectContaining({ name: "[@Kind]", value: '"balloon"', from: 'cell B2, column "Kind" in this row' }),
    ]);
  });

  it("a branch that cannot be decided leaves both standing, and says so", async () => {
    const said = await of("=IF(WEEKDAY(D2)=1,TUBE.FRTOMM(C3),TUBE.FRTOMM(14))", { value: 4.67 });
    expect(said.calls).toHaveLength(2);
    expect(said.notes.join(" ")).toContain("which part counts");
    expect(said.notes.join(" ")).not.toContain("Worked out again");
  });

  it("settings and today are named with their values and units", async () => {
    const names = [
      { name: "Soon_Days", refersTo: "='Old list'!B2", value: 14 },
      { name: "As_of", refersTo: "=TODAY()", value: day("2026-06-01") },
    ];
    const said = await of('=IF(D2<As_of+Soon_Days+1,"due soon","later")', { value: "due soon" }, { names });
    expect(said.calls).toEqual([]);
    expect(said.notes).toContain("The formula holds none of this add-in's functions.");
    expect(said.reads.map(({ name, value }) => [name, value])).toEqual([
      ["D2", "14 Mar 2026"],
      ["As_of", "1 Jun 2026"],
      ["Soon_Days", "14 days"],
    ]);
    expect(said.reads[2]!.from).toMatch(/^the name Soon_Days \(.+\)$/);
  });

  it("what LET names is worked out with it, and is no name of the workbook", async () => {
    const said = await of('=LET(in,D2,size,C3,IF(LEN(size)=0,"",TUBE.CHANGEDUE(in,3)))', date("2026-06-14"));
    expect(said.headline).toBe("F2 shows 14 Jun 2026.");
    expect(said.notes).toEqual([]);
    expect(said.calls[0]!.given[0]).toMatchObject({ name: "lastchange", value: "14 Mar 2026" });
    expect(said.reads.map(({ name }) => name)).toEqual(["D2", "C3"]);
  });

  it("in any formula that the reader knows, by way of names and whole columns", async () => {
    const names = [{ name: "Newest", refersTo: "=EDATE(MAX(Adults!$D$2:$D$4),1)" }];
    // 14 March 2026 stands in row 1 of D2:D4; a month later is 14 April, and three more 14 July.
    const formula = "=IFERROR(TUBE.CHANGEDUE(INDEX(D:D,1+MATCH(14,C2:C4,0)),24),0)+LET(k,Newest,TUBE.CHANGEDUE(k,3)-k)";
    const said = await of(formula, { value: day("2027-11-30") + 91 }, { names });
    expect(said.notes).toEqual([]);
    expect(said.calls.map(({ result }) => result)).toEqual(["30 Nov 2027.", "14 Jul 2026."]);
  });

  it("a text that is a number in every language counts as one, as in Excel", async () => {
    const said = await of('=IF("14"+0=C3,TUBE.FRTOMM(C3),0)', { value: 14 / 3 });
    expect([said.notes, said.calls.length]).toEqual([[], 1]);
  });

  it("a plain formula that is not worked out here says so once, with what it reads", async () => {
    const said = await of("=LET(day,D2,WORKDAY(day,3))", date("2026-06-14"));
    expect(said.notes).toEqual([expect.stringContaining("was not worked out again here")]);
    expect(said.reads.map(({ name, value }) => [name, value])).toEqual([["D2", "14 Mar 2026"]]);
  });

  it("a column of ours is known by its header, with its help and words", async () => {
    const rows = [
      ["ID", "Change due", "Change"],
      ["D-1", date("2026-06-14"), { formula: '=IF(B2<As_of,"overdue","later")', value: "overdue" }],
    ];
    const said = await explained({
      sheets: [{ name: "Adults", rows, tables: [{ name: "Caseload", area: "A1:C2" }] }],
      names: [{ name: "As_of", refersTo: "=TODAY()", value: day("2026-11-26") }],
      selection: { sheet: "Adults", area: "C2" },
    });
    expect(said.column).toMatchObject({ header: "Change", words: expect.arrayContaining(["past limit", "overdue"]) });
    expect(said.column!.help).toContain("today");
  });
});

describe("what does not add up is said, never passed over", () => {
  it("the sheet shows something else than its cells give now", async () => {
    const said = await of("=TUBE.FRTOMM(C3)", { value: 5 });
    expect(said.headline).toBe("F2 shows 5.");
    expect(said.notes[0]).toContain("it gives 4.66666666667");
  });

  it("the functions were not there when the sheet was worked out", async () => {
    const said = await of("=TUBE.FRTOMM(C3)", { error: "#NAME?" });
    expect(said.headline).toMatch(/^F2 is an error, #NAME\?: a function or name in the formula was not known/);
    expect(said.notes[0]).toContain("4.66666666667");
  });

  it.each([
    ["a spilled range", "=TUBE.STOCKSIZE(C3,C2#)"],
    ["half an array", "=TUBE.STOCKSIZE(C3,{12,"],
    ["an unknown name", "=TUBE.FRTOMM(Nobody)"],
    ["another workbook", "=TUBE.FRTOMM([1]Sheet1!A1)"],
    ["a column that is not there", "=TUBE.FRTOMM([@Nothing])"],
    ["half a formula", "=TUBE.FRTOMM(C3"],
    ["a function that is not ours", "=TUBE.FRTOMM(VLOOKUP(A2,A:C,3,0))"],
    ["a name that leads in a circle", "=TUBE.FRTOMM(Round)"],
  ])("%s is not guessed", async (_, formula) => {
    const names = [
      { name: "Round", refersTo: "=About" },
      { name: "About", refersTo: "=Round" },
    ];
    const said = await of(formula, { value: 4.67 }, { names });
    expect(said.notes.some((note) => note.startsWith("This part was not worked out here: "))).toBe(true);
    expect(said.calls.every(({ result }) => result.startsWith("Not worked out"))).toBe(true);
  });

  it("a reference to cells that are gone", async () => {
    const said = await of("=TUBE.FRTOMM(#REF!)", { error: "#VALUE!" });
    expect(said.headline).toBe("F2 is an error, #VALUE!: size is an error.");
    expect(said.calls[0]!.given[0]).toMatchObject({ value: "#REF!", isAtFault: true });
  });
});

describe("a cell without a formula", () => {
  const at = (area: string, more: Partial<WorkbookDescription> = {}) =>
    explainCell(fakeWorkbook({ ...book({ value: null }), selection: { sheet: "Adults", area }, ...more }), functions);

  it("in a column of sizes: why it cannot be read", async () => {
    const said = (await at("C2")) as Explanation;
    expect(said.headline).toBe('C2 holds "12/14", and cannot be read: it holds more than one number: write one size.');
    expect(said.notes[0]).toBe("It holds no formula: it was typed, pasted or brought in.");
    expect(said.notes[1]).toMatch(/^The column "Size" is taken for: Size \(header "Size"/);
    expect(said.isError).toBe(true);
  });

  it("in a column of sizes: what it is read as", async () => {
    expect(((await at("C3")) as Explanation).headline).toBe("C3 holds 14. It is read as 14 Fr.");
  });

  it("in a column of dates: a date that may be turned round is not guessed", async () => {
    const said = (await at("D4")) as Explanation;
    expect(said.headline).toMatch(/^D4 holds "3\/4\/26", and cannot be read: must be a date/);
    expect(((await at("D2")) as Explanation).headline).toBe("D2 holds 14 Mar 2026. It is read as 14 Mar 2026.");
  });

  it("in another column: what it holds, and nothing more", async () => {
    const said = (await at("A2")) as Explanation;
    expect(said.headline).toBe('A2 holds "D-1".');
    expect(said.isError).toBe(false);
  });

  it.each([
    ["an empty cell", "C4", "C4 is empty."],
    ["a cell far away", "Z99", "Z99 is empty."],
  ])("%s", async (_, area, sentence) => {
    expect(await at(area)).toEqual({ sentence });
  });

  it("no cell, or a chart", async () => {
    const sheets = [{ name: "Picture", kind: "chart sheet" as const }];
    expect(await explainCell(fakeWorkbook({ sheets }), functions)).toMatchObject({
      sentence: expect.stringContaining("No cell is selected"),
    });
  });
});

describe("a cell that another cell's formula fills", () => {
  const spilled: WorkbookDescription = {
    sheets: [
      {
        name: "Adults",
        rows: [
          ["Size", null, null],
          ["24 Fr", null, { formula: "=TUBE.FRTOMM(A2:A5)", value: 8 }],
          ["14G", null, { error: "#VALUE!" }],
          [null, null, null],
          [15, null, 5],
          [7, null, 5],
        ],
        spills: ["C2:C5"],
      },
    ],
  };
  const at = async (area: string) =>
    (await explainCell(fakeWorkbook({ ...spilled, selection: { sheet: "Adults", area } }), functions)) as Explanation;

  it("is explained by that formula, by the row that it comes from", async () => {
    const said = await at("C3");
    expect(said.headline).toBe("C3 is an error, #VALUE!: size G means gauge; write Fr. Look at cell A3.");
    expect(said.notes[0]).toBe("C3 is filled by the formula in C2.");
    expect(said.calls[0]!.given[0]).toMatchObject({ value: '"14G"', from: "cell A3", isAtFault: true });
    expect((await at("C5")).headline).toBe("C5 shows 5 mm.");
    expect((await at("C4")).headline).toBe("C4 shows nothing.");
  });

  it("but not one that only stands below it", async () => {
    expect((await at("C6")).headline).toBe("C6 holds 5.");
  });
});

describe("the ready-made caseload", () => {
  // Table and headers: shared template; the words to choose from: src/caseload/words.
  const at = (area: string) =>
    explained({
      sheets: [
        {
          name: "Tubes in use",
          rows: [
            ["ID", "Status", "Change", "Days left"],
            [
              "T-1",
              "active",
              { formula: '=IF(As_of>0,"overdue","")', value: "overdue" },
              { formula: "=2-5", value: -3 },
            ],
          ],
          tables: [{ name: "Tubes_in_use", area: "A1:D2" }],
        },
      ],
      names: [{ name: "As_of", refersTo: "=TODAY()", value: day("2026-11-26") }],
      selection: { sheet: "Tubes in use", area },
    });

  it("says of a typed column what belongs in it, and which words there are", async () => {
    const { column } = await at("B2");
    expect(column).toMatchObject({
      header: "Status",
      kind: "list",
      words: ["active", "in hospital", "on hold", "left"],
    });
    expect(column!.help).toContain("active");
  });

  it("says of a worked-out column what it is, and which words it can show", async () => {
    const { column } = await at("C2");
    expect(column).toMatchObject({ header: "Change", kind: "computed" });
    expect(column!.words.slice(0, 2)).toEqual(["past limit", "overdue"]);
    expect((await at("D2")).column!.help).not.toBe("");
  });
});

describe("one sentence first", () => {
  /* 14 March 2026 and 3 months: 14 June 2026. */
  const own = (header: string, formula: CellDescription, names: WorkbookDescription["names"] = []) =>
    explained({
      sheets: [
        {
          name: "Adults",
          rows: [
            ["ID", "Kind", "Last change", header],
            ["D-1", "balloon", date("2026-03-14"), formula],
          ],
          tables: [{ name: "Mine", area: "A1:D2" }],
        },
      ],
      names,
      selection: { sheet: "Adults", area: "D2" },
    });

  it("of a column that was added: what it shows, and what stands in the cells that it read", async () => {
    const formula = 'IF(EXACT(LOWER(TRIM([@Kind])),"balloon"),TUBE.CHANGEDUE([@[Last change]],3),"no date")';
    const said = await own("Change due", { formula: `=${formula}`, ...date("2026-06-14") });
    expect(said.headline).toBe('D2 shows 14 Jun 2026: Kind is "balloon" and Last change is 14 Mar 2026.');
  });

  it("of somebody's own column: only what it shows", async () => {
    const said = await own("Mine", { formula: "=TUBE.CHANGEDUE(C2,3)", ...date("2026-06-14") });
    expect(said.headline).toBe("D2 shows 14 Jun 2026.");
  });

  it("of a word of To do: the columns that a person looks at, not the hidden ones, and today", async () => {
    const columns: Readonly<Record<string, CellDescription | string>> = {
      ID: "D-1",
      "To do": { formula: "=CHOOSE([@Urgency],1)", value: "overdue 36 days, not booked" },
      "Change due": date("2026-10-21"),
      "At the latest": date("2027-01-21"),
      "Booked for": { value: null },
      Urgency: { value: 16 },
    };
    const said = await explained({
      sheets: [
        {
          name: "Tubes in use",
          rows: [Object.keys(columns), Object.values(columns)],
          tables: [{ name: tableNames.tubes, area: "A1:F2" }],
        },
      ],
      names: [{ name: "As_of", refersTo: "=TODAY()", value: day("2026-11-26") }],
      selection: { sheet: "Tubes in use", area: "B2" },
    });
    expect(said.headline).toBe(
      'B2 shows "overdue 36 days, not booked": Change due is 21 Oct 2026, At the latest is 21 Jan 2027 and Booked for is blank; today is 26 Nov 2026.',
    );
  });

  it("every worked-out column of the caseload that people see has columns to look at, or is named here", () => {
    const silent = rowsTables.flatMap((key) =>
      boundColumns(columnsOf(key, ["fit", "plan", "spare"])).flatMap(({ header, kind, isHidden }) =>
        kind !== "computed" || isHidden || header === TO_DO || header in columnsRead[key] ? [] : [`${key}: ${header}`],
      ),
    );
    expect(silent).toEqual([
      /* It says itself what is wrong. */
      "tubes: Missing or contradictory",
      /* From another sheet. */
      ...["tubes: First tube", "tubes: Last check", "tubes: Out mL", "tubes: Put in mL"],
      ...["checks: Device in", "checks: Expected mL"],
    ]);
  });
});

describe("a name that no function has", () => {
  it.each([
    ["=TUBE.CHANGDUE(D2,3)", "there is no function TUBE.CHANGDUE. Did you mean TUBE.CHANGEDUE?"],
    ["=IF(A2=1,TUBE.FRTOM(C2))", "there is no function TUBE.FRTOM. Did you mean TUBE.FRTOMM?"],
    ["=changedue(D2,3)", "there is no function CHANGEDUE. Write TUBE.CHANGEDUE."],
    ["=TUBE.ZEBRA(D2)", "there is no function TUBE.ZEBRA. ‘All functions’ lists them."],
  ])("%s", async (formula, why) => {
    expect((await of(formula, { error: "#NAME?" })).headline).toBe(`F2 is an error, #NAME?: ${why}`);
  });
});
