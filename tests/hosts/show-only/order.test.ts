/** The caseload's list in the order of urgency. All people are invented. */
import { expect, it } from "vitest";
import { urgencies } from "../../../src/caseload/urgency";
import { functions } from "../../../src/index";
import { explainCell } from "../../../taskpane/actions/explain";
import type { Explanation } from "../../../taskpane/actions/explain/interface";
import { afterSorting, surveyList, urgencyOrder } from "../../../taskpane/actions/show-only";
import type { WorkbookDescription } from "../../../taskpane/workbook/fake/description";
import { fakeWorkbook } from "../../../taskpane/workbook/fake/workbook";

const list = (name: string): WorkbookDescription => ({
  sheets: [
    {
      name: "Tubes in use",
      rows: [
        ["ID", "To do", "Urgency"],
        ["D-1", { value: "nothing due", formula: '="nothing due"' }, 44],
        ["D-2", "overdue 3 days, not booked", 16],
        ["D-3", "balloon empty", 1],
      ],
      tables: [{ name, area: "A1:C4" }],
    },
  ],
  selection: { sheet: "Tubes in use", area: "B2" },
});
const listOf = async (name: string) => {
  const workbook = fakeWorkbook(list(name));
  return { workbook, list: (await surveyList(workbook, { today: 46_000 }, {})).list.list! };
};

it("is offered for the caseload's list and for nobody's own", async () => {
  expect(urgencyOrder((await listOf("Tubes_in_use")).list)).toEqual({ table: "Tubes_in_use", by: "Urgency" });
  expect(urgencyOrder((await listOf("Mine")).list)).toBeNull();
});

it("puts the most urgent first, and says so", async () => {
  const { workbook } = await listOf("Tubes_in_use");
  const sorted = await workbook.sort("Tubes_in_use", "Urgency");
  const { values } = await workbook.read({ table: "Tubes_in_use" }, ["values"]);
  expect(values!.slice(1).map(([id]) => id)).toEqual(["D-3", "D-2", "D-1"]);
  expect(afterSorting(sorted)).toMatchObject({
    outcome: "done",
    sentences: ["3 rows sorted, the most urgent first. Undo in the sheet puts them back."],
  });
  expect(afterSorting({ outcome: "refused", sentence: "Why not." })).toMatchObject({
    outcome: "refused",
    sentences: ["Why not."],
  });
});

it("is the order in which Explain this cell names the words", async () => {
  const { workbook } = await listOf("Tubes_in_use");
  const said = (await explainCell(workbook, functions)) as Explanation;
  expect(said.column?.words).toEqual(urgencies.map(({ word }) => word));
});
