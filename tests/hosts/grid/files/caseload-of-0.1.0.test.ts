/**
 * A caseload that version 0.1.0 set up: it has other formulas, and columns and settings are missing. It opens, keeps its
 * words, is worked out by its own formulas without the grid's engine, and the pane still reads it.
 */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, expect, it } from "vitest";
import { tableNames } from "../../../../src/caseload/names";
import { day } from "../../../../src/worksheet/dates";
import { whoIsMeant } from "../../../../taskpane/actions/caseload/identity";
import { readCaseload } from "../../../../taskpane/actions/caseload/read";
import { planCheck, startOfCheck, surveyCheck } from "../../../../taskpane/actions/record-check";
import { atRest } from "../at-rest";
import { leftToEngine, plain, startGrid, type InGrid } from "../../../workbooks/new-file/in-grid";

const TODAY = day("2026-11-26");
const file = readFileSync(join(__dirname, "../../fixtures/caseload-0.1.0.xlsx"));
let there: InGrid;
beforeAll(async () => {
  there = startGrid(TODAY);
  expect(await there.grid.open(new Uint8Array(file), "Caseload.xlsx")).toMatchObject({
    outcome: "opened",
    remarks: [],
  });
}, 60_000);
afterAll(async () => {
  await atRest();
  there.engine.univer.dispose();
});

async function column(header: string) {
  const { workbook } = there.grid;
  const table = (await workbook.overview()).tables.find(({ name }) => name === tableNames.tubes)!;
  const { values } = await workbook.read({ table: table.name }, ["values"]);
  const [headers, ...rows] = values!;
  const at = headers!.indexOf(header);
  expect(at, header).toBeGreaterThanOrEqual(0);
  return rows.map((row) => plain(row[at]));
}

it("keeps its words, and leaves no formula to the engine", async () => {
  expect(leftToEngine(there)).toBe(0);
  // As 0.1.0 said them, in the order of its rows.
  expect(await column("ID")).toEqual(["D-022", "D-026", "D-035", "D-043"]);
  expect(await column("To do")).toEqual(["low twice", "balloon empty", "tight", "no number to call"]);
});

it("is worked out anew by its own formulas where a cell changes", async () => {
  const { workbook } = there.grid;
  const table = (await workbook.overview()).tables.find(({ name }) => name === tableNames.tubes)!;
  await workbook.apply(
    {
      expects: [],
      steps: [
        {
          kind: "changeRow",
          table: table.name,
          row: 3,
          values: { Status: "in hospital" },
        },
      ],
    },
    { report: () => undefined, signal: new AbortController().signal },
  );
  await expect.poll(async () => (await column("To do"))[3], { timeout: 30_000 }).toBe("in hospital");
}, 60_000);

it("is read by the pane, which says what it means today", async () => {
  const { workbook } = there.grid;
  const caseload = await readCaseload(workbook);
  if (caseload.is !== "caseload") throw new Error("not read");
  const meant = whoIsMeant(caseload.tubes, "D-022");
  const survey = await surveyCheck(workbook, caseload, meant, meant.devices[0]!);
  const plan = planCheck(survey, { ...startOfCheck(TODAY), out: "5", putIn: "0" }, TODAY);
  expect(plan.outcome === "planned" && plan.meaning.state).toBe("left empty");
});
