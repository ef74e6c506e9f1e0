/** Today on somebody's own list: counts what the columns there say, and takes no silence for good news. Invented people. */
import { expect, test } from "vitest";
import { inA1 } from "../../../src/columns/formula";
import { day } from "../../../src/worksheet/dates";
import { CellError } from "../../../src/worksheet/error";
import { addColumns } from "../../../taskpane/actions/add-columns";
import { readOwnDay } from "../../../taskpane/actions/today/own-list";
import type { CellDescription, SheetDescription } from "../../../taskpane/workbook/fake/description";
import { fakeWorkbook } from "../../../taskpane/workbook/fake/workbook";
import type { Choices } from "../../../taskpane/actions/add-columns/interface";

const TODAY = day("2026-06-01");
const date = (iso: string) => ({ value: day(iso), format: "dd/mm/yyyy" });
const heads = ["ID", "Kind", "Last change", "Water put in", "Water out"];
const people: NonNullable<SheetDescription["rows"]> = [
  ["D-1", "balloon", date("2026-05-20"), 5, 4.9],
  ["D-2", "balloon", date("2025-11-01"), 5, 4.9],
  ["D-3", "balloon", null, 5, 4.9],
  ["D-4", "balloon", date("2026-05-20"), 5, 0],
  ["D-5", "balloon", date("2026-03-10"), 5, 4.9],
];

/** The list as it stands once the columns have been added and worked out. */
async function withColumns(recipes: Choices["recipes"], spoil?: (cell: CellDescription) => CellDescription) {
  const sheet = { name: "Adults", rows: [heads, ...people] };
  const bare = fakeWorkbook({ sheets: [sheet], selection: { sheet: "Adults", area: "B2" } });
  const survey = await addColumns.survey(bare, { today: TODAY });
  const plan = addColumns.plan(survey, { ...survey.proposal, recipes });
  if (plan.outcome !== "planned") throw new Error(plan.sentence);
  const added = plan.change.steps.flatMap((step) => (step.kind === "addColumns" ? step.columns : []));
  const worked = people.map((row, r) => [
    ...row,
    ...added.map((column): CellDescription => {
      if (!("formula" in column)) throw new Error("a column of formulas");
      const result = column.results![r]!;
      const cell = {
        formula: `=${inA1(column.formula, r + 1, 0)}`,
        format: column.format,
        ...(result instanceof CellError ? { error: result.code } : { value: result }),
      };
      return spoil && r === 0 ? spoil(cell) : cell;
    }),
  ]);
  return fakeWorkbook({
    sheets: [{ name: "Adults", rows: [[...heads, ...added.map(({ header }) => header)], ...worked] }],
    names: [{ name: "As_of", refersTo: "=TODAY()", value: TODAY }],
    selection: { sheet: "Adults", area: "B2" },
  });
}

const told = async (workbook: ReturnType<typeof fakeWorkbook>) => {
  const found = await readOwnDay(workbook, TODAY);
  return found && { read: found.read, counts: found.counts, rows: found.rows.map(({ id, says }) => [id, says]) };
};

/* Due 3 months after the last change, soon within 14 days: the defaults of the settings. */
test("words of Change and Balloon, the most urgent row first", async () => {
  expect(await told(await withColumns(["changeDue", "change", "balloon"]))).toEqual({
    read: ["Change", "Balloon"],
    counts: { act: 2, soon: 1, missing: 1, quiet: 1 },
    rows: [
      ["D-2", "overdue"],
      ["D-4", "Balloon: empty"],
      ["D-5", "due soon"],
      ["D-3", "no date"],
      ["D-1", "later, Balloon: as filled"],
    ],
  });
});

test("days alone, where there is no word", async () => {
  const found = await told(await withColumns(["changeDue"]));
  expect(found).toMatchObject({ read: ["Change due"], counts: { act: 1, soon: 0, missing: 1, quiet: 3 } });
  expect(found!.rows[0]).toEqual(["D-2", "Change due 1 Feb 2026"]);
});

test.each([
  ["an error", { error: "#NAME?" }],
  ["nothing", { value: null }],
])("%s in place of a word is missing, never quiet", async (_, content) => {
  const workbook = await withColumns(["changeDue", "change"], ({ formula, format }) => ({
    ...(formula !== undefined && { formula }),
    ...(format !== undefined && { format }),
    ...content,
  }));
  expect(await told(workbook)).toMatchObject({ counts: { missing: 2, quiet: 1 } });
});

test("nothing is counted where no column of ours tells of a state", async () => {
  const sheet = { name: "Adults", rows: [heads, ...people] };
  const bare = fakeWorkbook({ sheets: [sheet], selection: { sheet: "Adults", area: "B2" } });
  expect(await readOwnDay(bare, TODAY)).toBeNull();
});
