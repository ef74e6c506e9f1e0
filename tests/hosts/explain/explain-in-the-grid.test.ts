/** Explain this cell on the embedded grid's real engine, after columns were converted there. Invented sizes. */
import type { IWorkbookData } from "@univerjs/core";
import { afterEach, expect, it } from "vitest";
import { convertSizes, roomFor, spillCells } from "../../../taskpane/actions/convert-sizes";
import type { Choices, SizesPlan } from "../../../taskpane/actions/convert-sizes/interface";
import { explainCell } from "../../../taskpane/actions/explain";
import type { Explanation } from "../../../taskpane/actions/explain/interface";
import { parseArea } from "../../../taskpane/workbook/area";
import { GridWorkbookPort } from "../../../taskpane/workbook/embedded/book/workbook";
import type { SheetDescription } from "../../../taskpane/workbook/fake/description";
import { functions } from "../../../src/index";
import { described } from "../grid/described";
import { atRest } from "../grid/at-rest";
import { startHeadless } from "../grid/headless";

const TODAY = 46_000;
const SHEET: SheetDescription = {
  name: "Adults",
  rows: [
    ["ID", "Size [Fr]"],
    ["D-1", "24 Fr"],
    ["D-2", "14G"],
    ["D-3", null],
    ["D-4", 15],
  ],
  tables: [{ name: "Caseload", area: "A1:B5" }],
};

const engines: ReturnType<typeof startHeadless>[] = [];
afterEach(() => engines.splice(0).forEach((engine) => engine.univer.dispose()));

async function converted(put: Choices["put"]) {
  const engine = startHeadless();
  engines.push(engine);
  const workbook = new GridWorkbookPort(engine, TODAY);
  const { snapshot, facts } = described({ sheets: [SHEET] });
  workbook.load(snapshot as unknown as Partial<IWorkbookData>, facts);
  const sheet = (await workbook.overview()).sheets[0]!.id;
  const select = (address: string) => workbook.reveal({ sheet, area: parseArea(address)! });
  await select("B2:B5");
  const survey = await convertSizes.survey(workbook, { today: TODAY });
  const choices: Choices = { ...survey.proposal, put };
  const cells = spillCells(survey, choices);
  const plan = convertSizes.plan(survey, choices, cells && (await roomFor(workbook, cells))) as SizesPlan;
  expect(plan.outcome).toBe("planned");
  const receipt = await workbook.apply(plan.change, {
    report: () => undefined,
    signal: new AbortController().signal,
  });
  expect(receipt).toMatchObject({ outcome: "done" });
  await atRest();
  return async (address: string) => {
    await select(address);
    return (await explainCell(workbook, functions)) as Explanation;
  };
}

it("a column that was added there: the row's own cell and sentence", async () => {
  const explained = await converted("beside");
  const error = await explained("C3");
  expect(error.headline).toBe(
    'C3 is an error, #VALUE!: size G means gauge; write Fr. Look at cell B3, column "Size [Fr]" in this row.',
  );
  expect(error.notes).toEqual([]);
  expect(error.calls[0]!.given[0]).toMatchObject({
    value: '"14G"',
    from: 'cell B3, column "Size [Fr]" in this row',
    isAtFault: true,
  });
  expect(error.column).toMatchObject({ header: "Size mm" });
  expect((await explained("C5")).headline).toBe("C5 shows 5 mm: Size [Fr] is 15.");
  expect((await explained("C4")).headline).toBe("C4 shows nothing: Size [Fr] is blank.");
});

it("a cell that one formula fills: the formula's cell, and the row's own size", async () => {
  const explained = await converted("spill");
  const error = await explained("D3");
  expect(error.headline).toBe(
    'D3 is an error, #VALUE!: size G means gauge; write Fr. Look at cell B3, column "Size [Fr]".',
  );
  expect(error.notes).toEqual(["D3 is filled by the formula in D2."]);
  expect(error.calls[0]!.given[0]).toMatchObject({ value: '"14G"', isAtFault: true });
  expect((await explained("D5")).headline).toBe("D5 shows 5 mm.");
});
