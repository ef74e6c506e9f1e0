/** The sentence beside the selected cell: where there is one, and that moving through cells reads cells, not columns. */
import { expect, test } from "vitest";
import { sheetNames, tableNames } from "../../../src/caseload/names";
import { functions } from "../../../src/index";
import { day } from "../../../src/worksheet/dates";
import { sentenceAtSelection } from "../../../taskpane/actions/explain/at-selection";
import { fakeWorkbook } from "../../../taskpane/workbook/fake/workbook";
import { caseload } from "../../browser/pane-page/caseload";

const TODAY = day("2026-11-26");

async function at(
  area: string,
  more: { readonly error?: string; readonly formula?: string; readonly value?: number } = {},
) {
  const workbook = fakeWorkbook({
    sheets: [
      {
        name: "Mine",
        rows: [
          ["ID", "Size", "Answer"],
          ["D-1", "14G", more],
        ],
        tables: [{ name: "Mine", area: "A1:C2" }],
      },
    ],
    selection: { sheet: "Mine", area },
  });
  return sentenceAtSelection(workbook, await workbook.overview(), functions);
}

test("an error is explained where it stands, with the argument and its cell", async () => {
  expect(await at("C2", { formula: "=TUBE.FRTOMM([@Size])", error: "#VALUE!" })).toBe(
    'C2 is an error, #VALUE!: size G means gauge; write Fr. Look at cell B2, column "Size" in this row.',
  );
  expect(await at("C2", { formula: "=TUBE.FRTOM(B2)", error: "#NAME?" })).toMatch(/Did you mean TUBE.FRTOMM\?$/);
  expect(await at("C2", { formula: "=1/0", error: "#DIV/0!" })).toMatch(/divided by nothing/);
});

test("nothing is said of what was typed, of somebody's own formula, and of more than one cell", async () => {
  expect(await at("B2")).toBeNull();
  expect(await at("C2", { formula: "=1+1", value: 2 })).toBeNull();
  expect(await at("C1:C2", { formula: "=TUBE.FRTOMM([@Size])", error: "#VALUE!" })).toBeNull();
});

test("every word of To do among the invented people has its reason, read from single cells", async () => {
  const workbook = fakeWorkbook(caseload(TODAY));
  const overview = await workbook.overview();
  const sheet = overview.sheets.find(({ name }) => name === sheetNames.tubes)!.id;
  const read = workbook.read.bind(workbook);
  let asked = 0;
  workbook.read = (place, what) => {
    asked += "area" in place ? place.area.rows * place.area.columns : Infinity;
    return read(place, what);
  };
  const table = overview.tables.find(({ name }) => name === tableNames.tubes)!;
  const [first, rows] = [table.area.top + 1, table.area.rows - 1];
  expect(rows).toBe(50);
  for (let row = first; row < first + rows; row++) {
    const selection = { sheet, area: { top: row, left: 1, rows: 1, columns: 1 } };
    const sentence = await sentenceAtSelection(workbook, { ...overview, selection }, functions);
    expect(sentence, `B${row + 1}`).toMatch(/^B\d+ shows (?:"[^"]+"|nothing): .+ is .+\.$/);
  }
  /* The cell itself and at most five that it rests on. */
  expect(asked).toBeLessThanOrEqual(rows * 6);
});
