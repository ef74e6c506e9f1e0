/** Convert sizes on the embedded grid's real engine: what stands in the cells is what was counted before. */
import type { IWorkbookData } from "@univerjs/core";
import { afterEach, expect, it } from "vitest";
import { convertSizes, roomFor, spillCells } from "../../../taskpane/actions/convert-sizes";
import type { Choices, SizesPlan } from "../../../taskpane/actions/convert-sizes/interface";
import { parseArea } from "../../../taskpane/workbook/area";
import { GridWorkbookPort } from "../../../taskpane/workbook/embedded/book/workbook";
import type { SheetDescription } from "../../../taskpane/workbook/fake/description";
import type { Area, Value } from "../../../taskpane/workbook/port";
import { CellError } from "../../../src/worksheet/error";
import { messySizes } from "../../examples/convert/messy-sizes";
import { described } from "../grid/described";
import { atRest } from "../grid/at-rest";
import { startHeadless } from "../grid/headless";

const TODAY = 46_000;
/** Invented: the first 250 of the column typed by twenty people. */
const some = messySizes.slice(0, 250);
const rows: NonNullable<SheetDescription["rows"]> = [
  ["ID", "Size", "Notes"],
  ...some.map(({ cell }, i) => [`D-${i + 1}`, cell, null]),
];
const LAST = some.length + 1;
const PLAIN: SheetDescription = { name: "Adults", rows };
const TABLE: SheetDescription = { name: "Adults", rows, tables: [{ name: "Caseload", area: `A1:C${LAST}` }] };

const engines: ReturnType<typeof startHeadless>[] = [];
afterEach(() => engines.splice(0).forEach((engine) => engine.univer.dispose()));

async function open(sheet: SheetDescription): Promise<GridWorkbookPort> {
  const engine = startHeadless();
  engines.push(engine);
  const workbook = new GridWorkbookPort(engine, TODAY);
  const { snapshot, facts } = described({ sheets: [sheet] });
  workbook.load(snapshot as unknown as Partial<IWorkbookData>, facts);
  const { sheets } = await workbook.overview();
  await workbook.reveal({ sheet: sheets[0]!.id, area: parseArea(`B2:B${LAST}`)! });
  return workbook;
}

/** By the maker of the column: a third of the French size, "" for a blank, an error for what is not read. */
const expected = some.map(({ is, french }) => (is === "blank" ? "" : is === "not read" ? "#VALUE!" : french! / 3));

const plain = (value: Value) => (value instanceof CellError ? value.code : (value ?? ""));
const rounded = (value: unknown) => (typeof value === "number" ? Number(value.toFixed(9)) : value);

async function settledColumn(workbook: GridWorkbookPort, sheet: string, area: Area): Promise<unknown[]> {
  await atRest();
  const { values } = await workbook.read({ sheet, area }, ["values"]);
  return values!.map((row) => rounded(plain(row[0] ?? null)));
}

const signal = new AbortController().signal;
const watch = { report: () => undefined, signal };

it.each([
  ["a table", TABLE],
  ["a plain list", PLAIN],
])("a new column of %s shows what was counted", async (_, sheet) => {
  const workbook = await open(sheet);
  const survey = await convertSizes.survey(workbook, { today: TODAY });
  expect(survey.proposal).toMatchObject({ way: "toMm", from: { of: "column", column: 1 }, put: "beside" });
  const plan = convertSizes.plan(survey, survey.proposal) as SizesPlan;
  expect(plan.outcome).toBe("planned");
  const receipt = await workbook.apply(plan.change, watch);
  expect(receipt).toMatchObject({ outcome: "done" });
  const area = { top: 1, left: 3, rows: some.length, columns: 1 };
  // The results come in with the column; after the engine has gone over the formulas they must still be the same.
  const values = await settledColumn(workbook, plan.place.sheet, area);
  expect(values).toEqual(expected.map(rounded));
  expect(values.filter((value) => value === "#VALUE!")).toHaveLength(plan.reading.notRead);
  expect(await workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
});

it("one formula fills the cells below it with the same answers, and goes away again", async () => {
  const workbook = await open(PLAIN);
  const survey = await convertSizes.survey(workbook, { today: TODAY });
  const choices: Choices = { ...survey.proposal, put: "spill" };
  const room = await roomFor(workbook, spillCells(survey, choices)!);
  const plan = convertSizes.plan(survey, choices, room) as SizesPlan;
  expect(plan).toMatchObject({ outcome: "planned", formula: `=TUBE.FRTOMM(B2:B${LAST})` });
  const receipt = await workbook.apply(plan.change, watch);
  expect(receipt).toMatchObject({ outcome: "done" });
  expect(receipt.done[0]!.place!.area).toEqual(plan.place.area);
  expect(await settledColumn(workbook, plan.place.sheet, plan.place.area)).toEqual(expected.map(rounded));
  expect(await workbook.takeBack(receipt)).toEqual({ outcome: "taken back" });
  const { values } = await workbook.read({ sheet: plan.place.sheet, area: plan.place.area }, ["values"]);
  expect(values!.every(([value]) => value === null)).toBe(true);
});
