/** Added columns bring the colours of the states into Excel, by Excel's own kind of rule, and take them away again. */
import { expect, it } from "vitest";
import { formula } from "../../../src/columns/formula";
import { states } from "../../../taskpane/styles/states";
import type { Change, NewColumn } from "../../../taskpane/workbook/port";
import { CLINIC } from "../contract/workbooks";
import { using, watch } from "./open";

const columns: readonly NewColumn[] = [
  {
    header: "Change",
    formula: formula`IF(1=1,"overdue","later")`,
    format: "General",
    rules: [
      { state: "act", reads: "overdue" },
      { state: "missing", reads: "no date" },
    ],
  },
  {
    header: "Change due",
    formula: formula`DATE(2026,1,31)`,
    format: "d mmm yyyy",
    rules: [{ state: "act", before: "As_of" }],
  },
];
const change: Change = { steps: [{ kind: "addColumns", to: { table: "Tubes" }, columns }], expects: [] };

it(
  "colours words and days, and takes only its own rules back",
  using(CLINIC, async ({ workbook, book, model }) => {
    const sheet = book.sheet("Tubes in use")!;
    const theirs = model.conditional.on(sheet, { top: 0, left: 6, rows: 40, columns: 1 }, () => undefined);
    theirs.methods!["Add"]!(["CellValue"]);
    const receipt = await workbook.apply(change, watch());
    expect(receipt).toMatchObject({ outcome: "done" });
    const ours = model.conditional.all.slice(1);
    expect(ours.map(({ area, rule }) => [area.top, area.left, area.rows, area.columns, rule])).toEqual([
      [3, 6, 5, 1, { formula1: '="overdue"', operator: "EqualTo" }],
      [3, 6, 5, 1, { formula1: '="no date"', operator: "EqualTo" }],
      [3, 7, 5, 1, { formula1: "=1", formula2: "=As_of-1", operator: "Between" }],
    ]);
    expect(ours.map(({ look }) => [look.get("ground"), look.get("ink")])).toEqual(
      [states.act, states.missing, states.act].map(({ ground, ink }) => [`#${ground}`, `#${ink}`]),
    );
    expect(await workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
    expect(model.conditional.all.length).toBe(1);
  }),
);
