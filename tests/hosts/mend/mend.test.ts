/** Mend, from looking at a list to taking back, behind the port. All people are invented. */
import { describe, expect, it } from "vitest";
import { choicesFor, mend, readingOf } from "../../../taskpane/actions/mend";
import type { MendAs, MendChoices, MendPlan, MendSurvey } from "../../../taskpane/actions/mend/interface";
import { addColumns } from "../../../taskpane/actions/add-columns";
import type { SheetDescription, WorkbookDescription } from "../../../taskpane/workbook/fake/description";
import { fakeWorkbook } from "../../../taskpane/workbook/fake/workbook";
import type { Progress } from "../../../taskpane/workbook/port";
import { day } from "../../../src/worksheet/dates";
import {
  cellsOf,
  english,
  ENGLISH_HEADERS,
  german,
  GERMAN_HEADERS,
  type MessyRow,
} from "../../examples/mending/messy-lists";

const TODAY = day("2026-11-30");
const watch: Progress = { report: () => undefined, signal: new AbortController().signal };

const open = (rows: readonly MessyRow[], headers: readonly string[], more: Partial<SheetDescription> = {}) => {
  const cells = cellsOf(rows).map((row) =>
    row.map((cell, c) => (c === 3 && typeof cell === "number" ? { value: cell, format: "dd/mm/yyyy" } : cell)),
  );
  const sheet: SheetDescription = { name: "List", rows: [["Invented"], [], [...headers], ...cells], ...more };
  return fakeWorkbook({ sheets: [sheet], selection: { sheet: "List", area: "B5" } } as WorkbookDescription);
};
type Workbook = ReturnType<typeof open>;
const look = (workbook: Workbook): Promise<MendSurvey> => mend.survey(workbook, { today: TODAY });
const choose = (survey: MendSurvey, column: number, as: MendAs, more: Partial<MendChoices> = {}): MendChoices => ({
  ...choicesFor(survey.list, { column, as }),
  ...more,
});
function planned(survey: MendSurvey, choices: MendChoices): MendPlan {
  const plan = mend.plan(survey, choices);
  if (plan.outcome === "problem") throw new Error(plan.sentence);
  return plan;
}
const refused = (survey: MendSurvey, choices: MendChoices): string => {
  const plan = mend.plan(survey, choices);
  return plan.outcome === "problem" ? plan.sentence : "planned";
};
async function column(workbook: Workbook, left: number) {
  const [sheet] = (await workbook.overview()).sheets;
  const { values, formats } = await workbook.read(
    { sheet: sheet!.id, area: { top: 2, left, rows: sheet!.used!.rows - 2, columns: 1 } },
    ["values", "formats"],
  );
  return { values: values!.map((row) => row[0]), formats: formats!.map((row) => row[0]) };
}
const DATES = { order: "day first", century: "2000s", putRight: false } as const;

describe("what a dietitian's own list is found to hold", () => {
  it.each([
    ["English", english, ENGLISH_HEADERS],
    ["German", german, GERMAN_HEADERS],
  ] as const)("%s headings: the columns that can be mended, most cells first", async (_, rows, headers) => {
    const survey = await look(open(rows, headers));
    expect(survey.mendable.map(({ column: at, as }) => [headers[at], as])).toEqual(
      expect.arrayContaining([
        [headers[3], "dates"],
        [headers[2], "sizes"],
        [headers[1], "kinds"],
      ]),
    );
    expect([...survey.mendable].sort((a, b) => b.open - a.open)).toEqual(survey.mendable);
  });
});

describe("a column of dates as people typed them", () => {
  it('has what is certain mended at once, what is open after the answers, and "see letter" never', async () => {
    const survey = await look(open(english, ENGLISH_HEADERS));
    const certain = readingOf(survey, choose(survey, 3, "dates"))!;
    english.forEach(({ last }, row) => {
      const isChanged = last.means !== null && typeof last.cell === "string" && last.asks === undefined;
      expect(certain.results[row], `row ${row}: ${String(last.cell)}`).toBe(isChanged ? last.means : null);
    });
    expect(certain.waiting).toBe(english.filter(({ last }) => last.asks !== undefined).length);
    const all = readingOf(survey, choose(survey, 3, "dates", { dates: DATES }))!;
    english.forEach(({ last }, row) => {
      const isChanged = last.means !== null && typeof last.cell === "string";
      expect(all.results[row], `row ${row}: ${String(last.cell)}`).toBe(isChanged ? last.means : null);
    });
    expect(all.unread).toEqual([
      {
        reason: "no date in it",
        cells: english.flatMap(({ last }, i) =>
          last.cell === "see letter" ? [{ address: `D${i + 4}`, row: i + 4, text: "see letter" }] : [],
        ),
      },
    ]);
    const sums = all.changed + all.waiting + all.good + all.blank + all.unread.flatMap(({ cells }) => cells).length;
    expect(sums).toBe(english.length);
  });

  it("tells which order the other cells prove, and shows both readings of an example", async () => {
    const survey = await look(open(english, ENGLISH_HEADERS));
    const { order, century } = readingOf(survey, choose(survey, 3, "dates"))!.dates!;
    const only = english.filter(
      ({ last }) => typeof last.cell === "string" && /^(1[3-9]|2\d)\//.test(last.cell),
    ).length;
    expect(order!.proof).toEqual({ dayFirst: only, monthFirst: 0, points: 0 });
    const [d, m, y] = order!.example.split("/").map(Number) as [number, number, number];
    const two = (n: number) => String(n).padStart(2, "0");
    expect(order!.dayFirst).toBe(day(`${y < 100 ? 2000 + y : y}-${two(m)}-${two(d)}`));
    expect(order!.monthFirst).toBe(day(`${y < 100 ? 2000 + y : y}-${two(d)}-${two(m)}`));
    expect(century!.years).toEqual([2023, 2026]);
  });

  it("goes mended into a new column, which Add columns then reads; taken back, the sheet is as before", async () => {
    const workbook = open(english, ENGLISH_HEADERS);
    const before = await column(workbook, 3);

    const plan = planned(await look(workbook), choose(await look(workbook), 3, "dates", { dates: DATES }));
    expect(plan.says[1]).toContain('"Last change, mended" (column F)');
    const receipt = await workbook.apply(plan.change, watch);
    expect(receipt.outcome).toBe("done");

    const mended = await column(workbook, 5);
    expect(mended.values).toEqual(["Last change, mended", ...english.map(({ last }) => last.means ?? last.cell)]);
    expect(mended.formats[1]).toBe("d mmm yyyy");
    expect(await column(workbook, 3)).toEqual(before);
    const survey = await addColumns.survey(workbook, { today: TODAY });
    expect(survey.list!.guesses.last!.column).toBe(5);
    expect((await look(workbook)).mendable.map(({ column: at }) => at)).not.toContain(3);

    expect(await workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
    expect((await column(workbook, 5)).values.every((value) => value === null)).toBe(true);
  });

  it("is mended in place, with what was typed kept beside; taken back, the sheet is as before", async () => {
    const workbook = open(english, ENGLISH_HEADERS);
    const before = await column(workbook, 3);
    const survey = await look(workbook);

    const plan = planned(survey, choose(survey, 3, "dates", { dates: DATES, put: "in place" }));
    const receipt = await workbook.apply(plan.change, watch);
    expect(receipt.outcome).toBe("done");

    expect((await column(workbook, 3)).values.slice(1)).toEqual(english.map(({ last }) => last.means ?? last.cell));
    expect((await column(workbook, 5)).values).toEqual([
      "Last change, as typed",
      ...english.map(({ last }) => (last.means !== null && typeof last.cell === "string" ? last.cell : null)),
    ]);
    const again = await addColumns.survey(workbook, { today: TODAY });
    expect(again.list!.guesses.last!.column).toBe(3);
    const said = mend.afterwards(plan, receipt);
    expect(said.sentences[1]).toBe('"Last change" is mended; what stood there is in "Last change, as typed".');

    expect(await workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
    expect(await column(workbook, 3)).toEqual(before);
  });

  it("is read in German too", async () => {
    const survey = await look(open(german, GERMAN_HEADERS));
    const { results, unread } = readingOf(survey, choose(survey, 3, "dates", { dates: DATES }))!;
    expect(results).toEqual(german.map(({ last }) => last.means));
    expect(unread.map(({ reason }) => reason)).toEqual(["no date in it"]);
  });

  it("mended a second time, keeps what was typed under a second name", async () => {
    const workbook = open(english, ENGLISH_HEADERS);
    for (const dates of [{ ...DATES, century: null }, DATES]) {
      const survey = await look(workbook);
      const plan = planned(survey, choose(survey, 3, "dates", { dates, put: "in place" }));
      expect((await workbook.apply(plan.change, watch)).outcome).toBe("done");
    }
    expect((await column(workbook, 6)).values[0]).toBe("Last change, as typed 2");
    expect((await column(workbook, 3)).values.slice(1)).toEqual(english.map(({ last }) => last.means ?? last.cell));
  });

  it("is refused where days count from 1904, where there is no room, and where nothing is to be done", async () => {
    const rows = english.slice(0, 4);
    const old = fakeWorkbook({
      sheets: [{ name: "List", rows: [ENGLISH_HEADERS, ...cellsOf(rows)] }],
      dateSystem: 1904,
      selection: { sheet: "List", area: "B3" },
    });
    const in1904 = await look(old);
    expect(refused(in1904, choose(in1904, 3, "dates"))).toMatch(/1904/);

    const full = await look(
      open(rows, ENGLISH_HEADERS, { tables: [{ name: "T", area: "A3:E7" }], cells: { F5: "mine" } }),
    );
    expect(refused(full, choose(full, 3, "dates"))).toMatch(/F5/);

    const notes = await look(open(rows, ENGLISH_HEADERS));
    expect(refused(notes, choose(notes, 4, "dates"))).toMatch(/nothing to mend/);
    expect(refused(notes, choose(notes, 0, "dates"))).toMatch(/put the cells listed above right/);
  });

  it("is left alone where somebody has typed since the plan was shown", async () => {
    const workbook = open(english, ENGLISH_HEADERS);
    const survey = await look(workbook);
    const plan = planned(survey, choose(survey, 3, "dates", { put: "in place" }));

    workbook.type("List", "D5", "22/11/2026");

    expect(await workbook.apply(plan.change, watch)).toMatchObject({ outcome: "refused" });
  });
});

describe("a column of sizes", () => {
  const said = { "14g": "14 Fr", "12/14": "12" };

  it("asks about each wording once, and puts the numbers where the words were", async () => {
    const workbook = open(english, ENGLISH_HEADERS);
    const survey = await look(workbook);
    const before = readingOf(survey, choose(survey, 2, "sizes"))!;
    expect(before.sizes!.filter(({ reads }) => reads === null).map(({ text }) => text)).toEqual(["14G", "12/14"]);
    expect(before.waiting).toBe(english.filter(({ size }) => size.asks === "size").length);

    const plan = planned(survey, choose(survey, 2, "sizes", { sizes: said, put: "in place" }));
    expect((await workbook.apply(plan.change, watch)).outcome).toBe("done");

    const now = await column(workbook, 2);
    expect(now.values.slice(1)).toEqual(english.map(({ size }) => size.means));
    expect(readingOf(survey, choose(survey, 2, "sizes", { sizes: said }))!.waiting).toBe(0);
  });
});

describe("a column of kinds", () => {
  it("asks about each word once; words without a kind stay as they are", async () => {
    const workbook = open(english, ENGLISH_HEADERS);
    const survey = await look(workbook);
    const choices = choose(survey, 1, "kinds");
    expect(choices.kinds).toEqual({
      balloon: "balloon gastrostomy",
      "bumper adult": "bumper adult",
      gj: "gastrojejunal",
    });

    const plan = planned(survey, { ...choices, kinds: { ...choices.kinds, bgt: "balloon gastrostomy" } });
    expect((await workbook.apply(plan.change, watch)).outcome).toBe("done");

    const means: Readonly<Record<string, string | null>> = {
      Balloon: "balloon gastrostomy",
      "balloon ": "balloon gastrostomy",
      BGT: "balloon gastrostomy",
      "Bumper adult": "bumper adult",
      GJ: "gastrojejunal",
      PEG: "PEG",
      "": null,
    };
    expect((await column(workbook, 5)).values.slice(1)).toEqual(english.map(({ kind }) => means[kind]));
    const added = await addColumns.survey(workbook, { today: TODAY });
    expect(added.list!.guesses.kind!.column).toBe(5);
    expect(added.proposal.kinds).toMatchObject({
      words: {
        "balloon gastrostomy": "balloon gastrostomy",
        "bumper adult": "bumper adult",
        gastrojejunal: "gastrojejunal",
      },
    });
  });
});
