/**
 * Columns written anew without a change of mind go on showing what they show: kinds, columns, numbers and lengths are
 * read back from the formulas that stand there. All people and figures are invented.
 */
import { describe, expect, it } from "vitest";
import { addColumns } from "../../../taskpane/actions/add-columns";
import type { AddColumnsPlan, Choices, Survey } from "../../../taskpane/actions/add-columns/interface";
import type { SheetDescription } from "../../../taskpane/workbook/fake/description";
import { fakeWorkbook, type FakeWorkbook } from "../../../taskpane/workbook/fake/workbook";
import type { Progress } from "../../../taskpane/workbook/port";
import { day } from "../../../src/worksheet/dates";

const TODAY = day("2026-06-01");
const date = (serial: number) => ({ value: serial, format: "dd/mm/yyyy" });
/** Words that nobody guesses, words that are guessed otherwise than they are said here, and one never said. */
const WORDS = ["BGT", "Long one", "balloon", "disc", "1/2", "two\nlines", "GJ balloon", "J-tube", "PEG", "__proto__"];
const heads = [
  ...["ID", "Held by (own words)", "Kind", "Size", "Put in on", "Stoma made", "Last check", "Heals slowly", "Form"],
  ...["Len", "L", "S"],
];
const people: NonNullable<SheetDescription["rows"]> = Array.from({ length: 60 }, (_, i) => [
  ...[`D-${i}`, WORDS[i % WORDS.length]!, "balloon", 14],
  ...[date(TODAY - 20 * (i % 23)), date(TODAY - 31 * i - 3), date(TODAY - i), i % 3 === 0 ? "no" : null],
  ...[i % 4 === 0 ? "long" : "low-profile", 2.3, i % 4 === 0 ? null : 2, i % 4 === 0 ? null : 2.1],
]);
const sheets: readonly (readonly [string, SheetDescription])[] = [
  ["a plain list", { name: "Adults", rows: [heads, ...people] }],
  [
    "a table",
    { name: "Adults", rows: [heads, ...people], tables: [{ name: "Caseload", area: `A1:L${people.length + 1}` }] },
  ],
];
const columns: Choices["columns"] = {
  ...{ kind: 1, last: 4, stomaMade: 5, lastCheck: 6, slowHealing: 7, shape: 8, length: 9, lying: 10, sitting: 11 },
  size: 3,
};
const words = {
  from: "words",
  words: {
    ...{ bgt: "balloon jejunostomy", "long one": "bumper child", balloon: "gastrojejunal", disc: "bumper adult" },
    ...{ "1/2": "placing team", "two lines": "balloon gastrostomy", "gj balloon": "gastrojejunal" },
    "j-tube": "balloon jejunostomy",
    ["__proto__"]: "bumper adult",
  },
} as const satisfies Choices["kinds"];
const recipes: Choices["recipes"] = [
  ...(["changeDue", "atTheLatest", "change", "tract", "checkDue", "sizeMm", "fit", "lengthToOrder"] as const),
];
const lengths = [1.5, 2, 2.3, 2.7];

const watch: Progress = { report: () => undefined, signal: new AbortController().signal };
const look = (workbook: FakeWorkbook): Promise<Survey> => addColumns.survey(workbook, { today: TODAY });
const planned = (survey: Survey, choices: Choices): AddColumnsPlan => {
  const plan = addColumns.plan(survey, choices);
  if (plan.outcome !== "planned") throw new Error(plan.sentence);
  expect(plan).toMatchObject({ outcome: "planned" });
  return plan as AddColumnsPlan;
};

/** What each column shows, worked out by the plan, by its header. */
const shownBy = ({ change, columns: shown }: AddColumnsPlan): ReadonlyMap<string, readonly unknown[]> =>
  new Map(
    change.steps
      .flatMap((step) => (step.kind === "refreshColumn" ? [step.results] : []))
      .concat(
        change.steps.flatMap((step) =>
          step.kind === "addColumns" ? step.columns.map((one) => ("results" in one ? one.results : undefined)) : [],
        ),
      )
      .map((results, i) => [shown[i]!.header, results ?? []] as const),
  );

async function made(sheet: SheetDescription, choices: Partial<Choices>) {
  const workbook = fakeWorkbook({ sheets: [sheet], selection: { sheet: sheet.name, area: "B2" } });
  const survey = await look(workbook);
  const plan = planned(survey, { ...survey.proposal, recipes, columns, kinds: words, lengths, ...choices });
  expect((await workbook.apply(plan.change, watch)).outcome).toBe("done");
  return { workbook, shown: shownBy(plan) };
}

const choices: readonly (readonly [string, Partial<Choices>])[] = [
  ["as settings stand", {}],
  ["with numbers of their own", { numbers: { Int_Balloon_J: 4, Lim_Balloon_J: 5, Soon_Days: 30, Tract_High: 16 } }],
  ["with one number of two kinds that have two", { numbers: { Int_Balloon_G: 4, Int_Balloon_J: 5, Check_Days: 14 } }],
  ["with slacks of their own", { numbers: { Slack_Least: 0.3, Slack_Most: 0.4 }, lengths: [2, 2.4, 2.5] }],
  ["said of everyone", { kinds: { from: "everyone", kind: "bumper child" } }],
  ["said of everyone, with a balloon", { kinds: { from: "everyone", kind: "balloon jejunostomy" } }],
  [
    "without a column for the kind, Check due alone",
    { recipes: ["checkDue", "tract"], columns: { ...columns, kind: null } },
  ],
  ["with fewer columns", { recipes: ["atTheLatest"] }],
];

const ways = sheets.flatMap(([where, sheet]) =>
  (["plain", "ours"] as const).map((way) => [where, way, sheet] as const),
);

describe.each(ways)("on %s, formulas %s", (_, formulas, sheet) => {
  it.each(choices)("%s: written anew, every row goes on showing what it shows", async (__, own) => {
    const { workbook, shown } = await made(sheet, { ...own, formulas });
    const again = await look(workbook);
    const plan = planned(again, { ...again.proposal, recipes: own.recipes ?? recipes, formulas });
    expect(plan.change.steps.every(({ kind }) => kind === "refreshColumn" || kind === "defineName")).toBe(true);
    expect(shownBy(plan)).toEqual(shown);
    expect([...shown.values()].every((results) => results.length === 60)).toBe(true);
  });

  it("gives back what was said, as far as the formulas tell one kind from another", async () => {
    const numbers = { Check_Days: 10, Slack_Least: 0.3 };
    const { proposal } = await look((await made(sheet, { numbers, formulas })).workbook);
    const given = proposal.kinds.from === "words" ? proposal.kinds.words : {};
    expect(Object.keys(given).sort()).toEqual(Object.keys(words.words).sort());
    expect(given).toMatchObject({ "1/2": "placing team", "gj balloon": "gastrojejunal" });
    expect(proposal.numbers).toEqual(numbers);
    expect(proposal.lengths).toEqual(lengths);
    expect(proposal.columns).toMatchObject(columns);
  });

  it("keeps a word that was never said as not known", async () => {
    const { proposal } = await look((await made(sheet, { formulas })).workbook);
    expect(proposal.kinds.from === "words" && Object.keys(proposal.kinds.words)).not.toContain("peg");
  });

  it("ticks and changes nothing where no column of ours stands", async () => {
    const workbook = fakeWorkbook({ sheets: [sheet], selection: { sheet: sheet.name, area: "B2" } });
    expect((await look(workbook)).proposal).toMatchObject({ recipes: [], numbers: {}, lengths: [] });
  });
});
