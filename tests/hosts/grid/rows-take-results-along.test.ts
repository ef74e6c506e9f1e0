/**
 * Rows inserted, removed and undone by hand, formulas typed over, sheets called otherwise: the grid shows what it shows
 * when the same cells are read anew. Invented numbers; the formulas are by hand.
 */
import type { IWorkbookData } from "@univerjs/core";
import fc from "fast-check";
import { expect, it } from "vitest";
import { GridWorkbookPort } from "../../../taskpane/workbook/embedded/book/workbook";
import { shortOrLong } from "../../budget";
import { atRest } from "./at-rest";
import { described } from "./described";
import { startHeadless } from "./headless";

const SEED = 20261130;
const NAMES = ["One", "Two"] as const;

/** A number or word in A and B; C to F are worked out, in part from the other sheet. */
const sheetOf = (name: string, other: string) => ({
  name,
  rows: Array.from({ length: 8 }, (_, row) => [
    (row * 3) % 5,
    row % 4 === 0 ? "x" : row,
    { formula: `=A${row + 1}*10` },
    { formula: `=COUNTIFS(${other}!$A$1:$A$8,A${row + 1})` },
    { formula: `=IFERROR(INDEX(${other}!$C$1:$C$8,MATCH(A${row + 1},${other}!$A$1:$A$8,0)),"none")` },
    { formula: `=SUM($C$1:$C$8)+ROW()` },
  ]),
});

const step = fc.record({
  sheet: fc.nat(1),
  what: fc.constantFrom("insert", "remove", "type", "type over", "formula", "undo", "rename"),
  row: fc.nat(7),
  column: fc.nat(1),
  value: fc.constantFrom<string | number>(0, 3, 4, "x", 7),
});

it("shows what reading anew would show", async () => {
  const engine = startHeadless();
  const workbook = new GridWorkbookPort(engine, 46_000);
  let checked = 0;
  await fc.assert(
    fc.asyncProperty(fc.array(step, { minLength: 3, maxLength: 8 }), async (steps) => {
      const { snapshot, facts } = described({ sheets: [sheetOf("One", "Two"), sheetOf("Two", "One")] });
      workbook.load(snapshot as unknown as Partial<IWorkbookData>, facts);
      await atRest();
      const book = engine.api.getActiveWorkbook()!;
      let count = 0;
      for (const { sheet, what, row, column, value } of steps) {
        const there = book.getSheets()[sheet]!;
        if (what === "insert") there.insertRows(row, 1);
        else if (what === "remove") there.deleteRows(row, 1);
        else if (what === "type") there.getRange(row, column).setValue(value);
        else if (what === "type over") there.getRange(row, 2 + column).setValue(value);
        else if (what === "formula") there.getRange(row, 2 + column).setFormula(`=A${row + 1}&"!"`);
        else if (what === "rename") there.setName(`${NAMES[sheet]}${++count}`);
        else await book.undo();
        await atRest();
        const shown = await read(workbook);
        workbook.setToday(46_000);
        await atRest();
        expect(await read(workbook)).toEqual(shown);
        checked += 1;
      }
    }),
    { seed: SEED, numRuns: shortOrLong(12, 150) },
  );
  expect(checked).toBeGreaterThan(30);
  engine.univer.dispose();
});

async function read(workbook: GridWorkbookPort): Promise<unknown> {
  const { sheets } = await workbook.overview();
  const area = { top: 0, left: 0, rows: 14, columns: 8 };
  return Promise.all(sheets.map(async ({ id }) => (await workbook.read({ sheet: id, area }, ["values"])).values));
}
