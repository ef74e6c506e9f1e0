/** Every worked-out column of the ready-made caseload can be explained: worked out again from its cells it gives the same. */
import { expect, it } from "vitest";
import { caseloadBook } from "../../../src/caseload/index";
import { rowsTables } from "../../../src/caseload/names";
import { functions } from "../../../src/index";
import { day } from "../../../src/worksheet/dates";
import { explainCell } from "../../../taskpane/actions/explain";
import type { Explanation } from "../../../taskpane/actions/explain/interface";
import { writeBook } from "../../../taskpane/workbook/file";
import { startGrid } from "../../workbooks/new-file/in-grid";
import { tableNames } from "../../../src/caseload/names";

const TODAY = day("2026-11-26");

it.each(rowsTables)("%s", async (table) => {
  const { grid } = startGrid(TODAY);
  const book = caseloadBook({ asOf: TODAY, groups: ["fit", "plan", "spare"], people: "invented" });
  await grid.open(await writeBook(book), "Invented caseload.xlsx");
  const described = book.sheets.find((sheet) => sheet.table?.name === tableNames[table])!.table!;
  const { workbook } = grid;
  const sheet = (await workbook.overview()).tables.find(({ name }) => name === tableNames[table])!.sheet;
  const said: Record<string, readonly string[]> = {};
  for (const [at, { header, formula }] of described.columns.entries()) {
    if (!formula) continue;
    const area = {
      top: described.top + 1 + (at % described.rows.length),
      left: described.left + at,
      rows: 1,
      columns: 1,
    };
    await workbook.reveal({ sheet, area });
    const { notes } = (await explainCell(workbook, functions)) as Explanation;
    const doubts = notes.filter((note) => /not worked out|worked out again/i.test(note));
    if (doubts.length > 0) said[header] = doubts;
  }
  expect(said).toEqual({});
});
