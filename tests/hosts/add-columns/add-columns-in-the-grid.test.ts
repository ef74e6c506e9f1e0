/** Add columns on the embedded grid's real engine: what stands in the cells is what the preview said. */
import type { IWorkbookData } from "@univerjs/core";
import { afterEach, describe, expect, it } from "vitest";
import { addColumns } from "../../../taskpane/actions/add-columns";
import type { AddColumnsPlan, Choices, Survey } from "../../../taskpane/actions/add-columns/interface";
import { parseArea } from "../../../taskpane/workbook/area";
import { GridWorkbookPort } from "../../../taskpane/workbook/embedded/book/workbook";
import type { SheetDescription } from "../../../taskpane/workbook/fake/description";
import type { Area, Value } from "../../../taskpane/workbook/port";
import { day } from "../../../src/worksheet/dates";
import { CellError } from "../../../src/worksheet/error";
import { described } from "../grid/described";
import { atRest } from "../grid/at-rest";
import { startHeadless } from "../grid/headless";

const TODAY = day("2026-06-01");
const date = (iso: string) => ({ value: day(iso), format: "dd/mm/yyyy" });
const heads = ["Tube #", "Kind (what sort?)", "Size [Fr]", "Last\nchange", "Put in", "Water out", "It's noted"];
/** Invented. */
const people: NonNullable<SheetDescription["rows"]> = [
  ["007", "balloon", 14, date("2026-04-01"), 5, 4.8, "well"],
  ["008", "BGT ", "14FR", date("2025-11-01"), 5, 4, null],
  ["009", "bumper", 15, date("2023-02-01"), null, null, null],
  ["010", "PEG", "12/14", date("2026-03-01"), 5, null, null],
  ["011", null, 12, null, 5, 0, null],
  ["012", "Balloon", null, "2026-03-05", 5, 4.4, "x"],
  ["013", "balloon", 4.7, date("2052-03-01"), 5, 5, null],
  ["014", "*", 12, date("2026-03-01"), 5, 7, null],
  ["015", "1/2", 10, date("2026-05-01"), 5, 5, null],
];
const TABLE: SheetDescription = {
  name: "Adults",
  rows: [["Invented"], [], heads, ...people],
  tables: [{ name: "Caseload", area: "A3:G12" }],
};
const PLAIN: SheetDescription = { name: "Adults", rows: [["Invented"], [], heads, ...people] };

const engines: ReturnType<typeof startHeadless>[] = [];
afterEach(() => engines.splice(0).forEach((engine) => engine.univer.dispose()));

async function open(sheet: SheetDescription): Promise<GridWorkbookPort> {
  const engine = startHeadless();
  engines.push(engine);
  const workbook = new GridWorkbookPort(engine, TODAY);
  const { snapshot, facts } = described({ sheets: [sheet] });
  workbook.load(snapshot as unknown as Partial<IWorkbookData>, facts);
  const { sheets } = await workbook.overview();
  await workbook.reveal({ sheet: sheets[0]!.id, area: parseArea("B5")! });
  return workbook;
}

const KINDS = {
  from: "words",
  words: {
    balloon: "balloon gastrostomy",
    bgt: "gastrojejunal",
    bumper: "bumper adult",
    "1/2": "balloon jejunostomy",
  },
} as const;
const COLUMNS = { kind: 1, size: 2, last: 3, putIn: 4, out: 5 };
const watch = () => ({ report: () => undefined, signal: new AbortController().signal });

/** What stands there once the engine has worked everything out. */
async function settled(workbook: GridWorkbookPort, sheet: string, area: Area): Promise<readonly (readonly Value[])[]> {
  await atRest();
  return (await workbook.read({ sheet, area }, ["values"])).values!;
}

describe.each([
  ["a table with odd column names", TABLE],
  ["a plain list", PLAIN],
])("columns added to %s", (_, sheet) => {
  it("show what was promised", async () => {
    const workbook = await open(sheet);
    const survey = await addColumns.survey(workbook, { today: TODAY });
    const plan = addColumns.plan(survey, {
      recipes: ["changeDue", "atTheLatest", "change", "sizeMm", "balloon"],
      columns: { ...survey.proposal.columns, ...COLUMNS },
      kinds: KINDS,
      numbers: {},
      lengths: [],
      formulas: "plain where the same",
    }) as AddColumnsPlan;
    expect(plan.outcome).toBe("planned");
    const receipt = await workbook.apply(plan.change, watch());
    expect(receipt).toMatchObject({ outcome: "done" });

    const area = { ...plan.place.area, top: plan.place.area.top + 1, rows: people.length };
    const values = await settled(workbook, plan.place.sheet, area);
    const shown = values.map((row) => row.map((value) => (value instanceof CellError ? value.code : value)));
    // By hand: due after 3 months, the limit after 6 (bumper 24, and no balloon in it); 14 Fr are 4.67 mm.
    expect(shown.map((row) => row.map((v) => (typeof v === "number" && v < 100 ? Number(v.toFixed(2)) : v)))).toEqual([
      [day("2026-07-01"), day("2026-10-01"), "later", 4.67, "as filled"],
      [day("2026-02-01"), day("2026-05-01"), "past limit", 4.67, "low"],
      ["no set change", day("2025-02-01"), "past limit", 5, "no balloon"],
      ["kind not known", "kind not known", "kind not known", "#VALUE!", "not measured"],
      ["no date", "no date", "no date", 4, "empty"],
      [day("2026-06-05"), day("2026-09-05"), "due soon", "", "low"],
      [day("2052-06-01"), day("2052-09-01"), "check date", 1.57, "as filled"],
      ["kind not known", "kind not known", "kind not known", 4, "more than put in"],
      [day("2026-08-01"), day("2026-11-01"), "later", 3.33, "as filled"],
    ]);
    const words = (column: number) =>
      Object.fromEntries(plan.columns[column]!.counts.map(({ word, rows }) => [word, rows]));
    const counted = (column: number) =>
      shown.reduce<Record<string, number>>((sum, row) => {
        const word = String(row[column]);
        return { ...sum, [word]: (sum[word] ?? 0) + 1 };
      }, {});
    expect(counted(2)).toEqual(words(2));
    expect(counted(4)).toEqual(words(4));
    expect(await workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
  });

  it("are known again, change nothing when nothing has changed, and follow another interval", async () => {
    const workbook = await open(sheet);
    const first = await addColumns.survey(workbook, { today: TODAY });
    const recipes = ["changeDue", "atTheLatest", "change", "sizeMm", "balloon"] as const;
    const choices = (survey: Survey, more: Partial<Choices> = {}): Choices => ({
      ...survey.proposal,
      recipes,
      columns: { ...survey.proposal.columns, ...COLUMNS },
      kinds: KINDS,
      ...more,
    });
    const added = addColumns.plan(first, choices(first)) as AddColumnsPlan;
    await workbook.apply(added.change, watch());
    const area = { ...added.place.area, top: added.place.area.top + 1, rows: people.length };
    const before = await settled(workbook, added.place.sheet, area);

    const again = await addColumns.survey(workbook, { today: TODAY });
    const same = addColumns.plan(again, choices(again)) as AddColumnsPlan;
    expect(same.columns.map(({ header, refresh }) => [header, refresh?.changing, refresh?.typed])).toEqual(
      added.columns.map(({ header }) => [header, [], []]),
    );

    const sooner = addColumns.plan(again, choices(again, { numbers: { Int_Balloon_G: 1 } })) as AddColumnsPlan;
    // By hand: 007, 012 and 013 are balloons with a date (rows 4, 9 and 10); due on 1 May and 5 April they are overdue.
    expect(sooner.columns.map(({ header, refresh }) => [header, refresh?.changing])).toEqual([
      ["Change due", [4, 9, 10]],
      ["At the latest", []],
      ["Change", [4, 9]],
      ["Size mm", []],
      ["Balloon", []],
    ]);
    const receipt = await workbook.apply(sooner.change, watch());
    expect(receipt).toMatchObject({ outcome: "done" });
    // The engine may still be at the former formulas when these come in; what it comes to rest at counts.
    const column = (index: number) => async () =>
      (await workbook.read({ sheet: added.place.sheet, area }, ["values"])).values!.map((row) => row[index]);
    await expect
      .poll(column(0))
      .toEqual([
        day("2026-05-01"),
        day("2026-02-01"),
        "no set change",
        "kind not known",
        "no date",
        day("2026-04-05"),
        day("2052-04-01"),
        "kind not known",
        day("2026-08-01"),
      ]);
    await expect
      .poll(column(2))
      .toEqual([
        ...["overdue", "past limit", "past limit", "kind not known", "no date", "overdue", "check date"],
        ...["kind not known", "later"],
      ]);
    expect(await workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
    await expect.poll(() => settled(workbook, added.place.sheet, area)).toEqual(before);
  });
});

/** A third of the size, in plain Excel: every size of the list is a number. */
const sizeIn = (cell: string): string =>
  `=IF(LEN(TRIM(${cell}))=0,"",IF(AND(ISNUMBER(${cell}),${cell}>=0,${cell}<=60),IF(${cell}=0,"",${cell}/3),#VALUE!))`;

describe("a long list", () => {
  const ROWS = 4_100;
  const long: SheetDescription = {
    name: "Adults",
    rows: [
      ["ID", "Size", "Last change"],
      ...Array.from({ length: ROWS }, (_, i) => [`D-${i}`, 10 + (i % 9), TODAY - 30]),
    ],
    tables: [{ name: "Long", area: `A1:C${ROWS + 1}` }],
  };
  const planned = async (workbook: GridWorkbookPort) => {
    const survey = await addColumns.survey(workbook, { today: TODAY });
    return addColumns.plan(survey, { ...survey.proposal, recipes: ["sizeMm"] }) as AddColumnsPlan;
  };
  const used = async (workbook: GridWorkbookPort) => (await workbook.overview()).sheets[0]!.used;

  it("is written in slices, with a breath between them, every row of it", async () => {
    const workbook = await open(long);
    const plan = await planned(workbook);
    let breaths = 0;
    const clock = setInterval(() => breaths++, 0);
    const receipt = await workbook.apply(plan.change, watch());
    clearInterval(clock);
    expect(receipt.outcome).toBe("done");
    // Header and 4,100 rows are three slices of 2,000.
    expect(breaths).toBeGreaterThanOrEqual(3);
    const area = { top: 1, left: 3, rows: ROWS, columns: 1 };
    const { formulas } = await workbook.read({ sheet: plan.place.sheet, area }, ["formulas"]);
    expect(formulas!.map(([text]) => text)).toEqual(Array.from({ length: ROWS }, (_, i) => sizeIn(`B${i + 2}`)));
    const values = await settled(workbook, plan.place.sheet, area);
    expect(values.map(([value]) => Number(value) * 3)).toEqual(
      Array.from({ length: ROWS }, (_, i) => expect.closeTo(10 + (i % 9), 9) as number),
    );
    expect(await workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
  });

  it("is left as it was when somebody presses stop between two slices", async () => {
    const workbook = await open(long);
    const plan = await planned(workbook);
    const before = await used(workbook);
    const controller = new AbortController();
    const report = (done: number, of: number) => done > 0 && done < of && controller.abort();
    const receipt = await workbook.apply(plan.change, { report, signal: controller.signal });
    expect(receipt.outcome).toBe("stopped");
    expect(await used(workbook)).toEqual(before);
  });
});
