/** Add columns in a workbook whose settings sheet holds the numbers. */
import { describe, expect, it } from "vitest";
import { addColumns } from "../../../taskpane/actions/add-columns";
import type { AddColumnsPlan, Choices } from "../../../taskpane/actions/add-columns/interface";
import type { NameDescription } from "../../../taskpane/workbook/fake/description";
import { fakeWorkbook } from "../../../taskpane/workbook/fake/workbook";
import type { Cell } from "../../../src/worksheet/cell";
import { day } from "../../../src/worksheet/dates";

const TODAY = day("2026-06-01");
const LIST = {
  name: "List",
  rows: [
    ["ID", "Stoma made", "Length cm", "Lying cm", "Sitting cm", "Water out", "Put in"],
    ["D-1", day("2026-04-01"), 2.3, 2, 2.1, 4.4, 5],
    ["D-2", null, 2, 2, 2.1, 5, 5],
  ] as Cell[][],
};

/** Settings as a ready-made caseload holds them: one cell each, with a name. */
function surveyWith(settings: Readonly<Record<string, Cell>>, more: readonly NameDescription[] = []) {
  const entries = Object.entries(settings);
  const workbook = fakeWorkbook({
    sheets: [LIST, { name: "Clinic settings", rows: entries.map(([name, value]) => [name, value]) }],
    names: [...entries.map(([name], i) => ({ name, refersTo: `='Clinic settings'!$B$${i + 1}` })), ...more],
    selection: { sheet: "List", area: "A2" },
  });
  return addColumns.survey(workbook, { today: TODAY });
}
async function planWith(
  settings: Readonly<Record<string, Cell>>,
  recipes: Choices["recipes"],
  more: Partial<Choices> = {},
  names: readonly NameDescription[] = [],
) {
  const survey = await surveyWith(settings, names);
  return addColumns.plan(survey, { ...survey.proposal, recipes, ...more });
}
const formulaOf = (plan: Awaited<ReturnType<typeof planWith>>): string => (plan as AddColumnsPlan).columns[0]!.formula;
const usedOf = (plan: Awaited<ReturnType<typeof planWith>>) =>
  (plan as AddColumnsPlan).numbers.map(({ setting, value, from, remark }) => [setting.name, value, from, remark]);

describe("numbers that stand on a settings sheet", () => {
  it("are pointed to, and said to stand there", async () => {
    const plan = await planWith({ Tract_Low: 8, Tract_High: 16 }, ["tract"]);
    expect(formulaOf(plan)).toContain("<7*Tract_Low");
    expect(usedOf(plan)).toEqual([
      ["Tract_Low", 8, "sheet", null],
      ["Tract_High", 16, "sheet", null],
    ]);
    // 61 days are 8 whole weeks: not below 8.
    expect((plan as AddColumnsPlan).columns[0]!.counts).toEqual([
      { word: "no date", rows: 1 },
      { word: "uncertain", rows: 1 },
    ]);
  });
  it("are not used in silence where they are blank, no number or outside of what is allowed", async () => {
    for (const wrong of [null, "six", 1, 40]) {
      const plan = await planWith({ Tract_Low: wrong, Tract_High: 16 }, ["tract"]);
      expect(formulaOf(plan)).toContain("<7*6,");
      const [low, high] = usedOf(plan);
      expect(low!.slice(0, 3)).toEqual(["Tract_Low", 6, "here"]);
      expect(low![3]).toContain("The settings sheet is not used for this number.");
      expect(high!.slice(0, 3)).toEqual(["Tract_High", 16, "sheet"]);
    }
  });
  it("are not changed from the pane", async () => {
    const plan = await planWith({ Tract_Low: 8 }, ["tract"], { numbers: { Tract_Low: 4 } });
    expect(usedOf(plan)[0]).toEqual(["Tract_Low", 8, "sheet", null]);
  });
  it("are refused where a limit lies above the one it must lie under", async () => {
    const plan = await planWith({ Tract_Low: 12, Tract_High: 8 }, ["tract"]);
    expect(plan.outcome === "problem" && plan.sentence).toContain("is above");
  });
  it("are no cell: a constant or an area of that name is passed over", async () => {
    const constant = [{ name: "Tract_Low", refersTo: "=8", value: 8 }];
    expect(usedOf(await planWith({}, ["tract"], {}, constant))[0]).toEqual(["Tract_Low", 6, "here", null]);
    const area = [{ name: "Tract_Low", refersTo: "=List!$A$1:$B$2", value: 8 }];
    expect(usedOf(await planWith({}, ["tract"], {}, area))[0]).toEqual(["Tract_Low", 6, "here", null]);
  });
  it("reach the balloon's own function, and say what it does not take", async () => {
    const plan = await planWith({ Fill_Small: 5, Loss_Small: 0.7, Loss_Large: 1, Loss_Half: 0.4 }, ["balloon"]);
    expect(formulaOf(plan)).toContain("<=Fill_Small,Loss_Small,Loss_Large)");
    expect((plan as AddColumnsPlan).columns[0]!.counts).toEqual([{ word: "as filled", rows: 2 }]);
    const half = usedOf(plan).find(([name]) => name === "Loss_Half");
    expect(half).toEqual(["Loss_Half", 0.5, "function", "The settings sheet says something else (0.4)."]);
  });
});

describe("lengths in stock", () => {
  it("are asked for, never assumed", async () => {
    const plan = await planWith({}, ["lengthToOrder"]);
    expect(plan.outcome === "problem" && plan.sentence).toContain("needs the lengths that you stock");
  });
  it("stand in the formula, as somebody said them", async () => {
    const plan = await planWith({}, ["lengthToOrder"], { lengths: [1.7, 2, 2.3] });
    // Below 0 the last one that is not larger is the shortest that is long enough.
    expect(formulaOf(plan)).toContain("{-2.3;-2;-1.7}");
    const ours = await planWith({}, ["lengthToOrder"], { lengths: [1.7, 2, 2.3], formulas: "ours" });
    expect(formulaOf(ours)).toContain('{1.7;2;2.3},"larger",0.2,0.5)');
    expect((plan as AddColumnsPlan).lengths).toEqual([1.7, 2, 2.3]);
  });
  it("are taken over from the settings sheet where it names them", async () => {
    expect((await surveyWith({ Lengths: "2.0, 1.7, 2.3" })).proposal.lengths).toEqual([1.7, 2, 2.3]);
    expect((await surveyWith({ Lengths: "ask the store" })).proposal.lengths).toEqual([]);
  });
});
