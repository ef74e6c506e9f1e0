/** Rows sorted where a column shares one formula. */
import { ICommandService, type ICellData, type IWorkbookData } from "@univerjs/core";
import { SetFormulaCalculationResultMutation } from "@univerjs/engine-formula";
import { ReorderRangeCommand } from "@univerjs/sheets";
import { SortRangeCommand } from "@univerjs/sheets-sort";
import { afterAll, expect, it } from "vitest";
import type { Engine } from "../../../taskpane/workbook/embedded/engine";
import { watchSorting } from "../../../taskpane/workbook/embedded/steps/sorting";
import { GridWorkbookPort } from "../../../taskpane/workbook/embedded/book/workbook";
import { described } from "./described";
import { atRest } from "./at-rest";
import { startHeadless } from "./headless";

const engines: Engine[] = [];
afterAll(async () => {
  // the engine's own timers ask for a living engine
  await atRest();
  for (const engine of engines) engine.univer.dispose();
});

async function open(formulas: readonly (ICellData | null)[]) {
  const engine = startHeadless();
  engines.push(engine);
  const workbook = new GridWorkbookPort(engine, 46_000);
  const rows = [["Size", "Twice"], ...[3, 1, 2, 5].map((size) => [size, null])];
  const { snapshot, facts } = described({ sheets: [{ name: "S", rows, tables: [{ name: "T", area: "A1:B5" }] }] });
  const { cellData } = Object.values(snapshot.sheets)[0]!;
  formulas.forEach((cell, i) => cell && (cellData[i + 1]![1] = cell));
  workbook.load(snapshot as unknown as Partial<IWorkbookData>, facts);
  watchSorting(engine, workbook);
  await atRest();
  const sheet = facts.sheets[0]!.id;
  return {
    workbook,
    engine,
    async sort(order: Record<number, number>) {
      const range = { startRow: 1, endRow: 4, startColumn: 0, endColumn: 1 };
      const params = { unitId: workbook.unit, subUnitId: sheet, range, order };
      await engine.api.executeCommand(ReorderRangeCommand.id, params).catch(() => false);
      await atRest();
    },
    async rows() {
      const { values, formulas: texts } = await workbook.read({ table: "T" }, ["values", "formulas"]);
      return values!.slice(1).map((row, r) => [...row, texts![r + 1]![1]]);
    },
  };
}

const shared: readonly ICellData[] = [{ f: "=A2*2", si: "g" }, { si: "g" }, { si: "g" }, { si: "g" }];

it("a row that stays where it is keeps the formula that it shares with rows that moved", async () => {
  const { sort, rows, engine } = await open(shared);
  await sort({ 1: 2, 2: 3, 3: 1, 4: 4 });
  const sorted = [
    [1, 2, "=A2*2"],
    [2, 4, "=A3*2"],
    [3, 6, "=A4*2"],
    [5, 10, "=A5*2"],
  ];
  expect(await rows()).toEqual(sorted);
  engine.api.getActiveWorkbook()!.undo();
  await atRest();
  expect((await rows()).map(([size, , text]) => [size, text])).toEqual([
    [3, "=A2*2"],
    [1, "=A3*2"],
    [2, "=A4*2"],
    [5, "=A5*2"],
  ]);
});

it("a value typed over the formula goes along with its row, the others keep theirs", async () => {
  const typedOver = [shared[0]!, { v: 99, t: 2 }, shared[2]!, shared[3]!];
  const { sort, rows } = await open(typedOver);
  await sort({ 1: 2, 2: 3, 3: 1, 4: 4 });
  expect(await rows()).toEqual([
    [1, 99, null],
    [2, 4, "=A3*2"],
    [3, 6, "=A4*2"],
    [5, 10, "=A5*2"],
  ]);
});

/** In the order in which a nurse must see them; "later" stands before "overdue" in the alphabet and behind it in need. */
const TO_DO: readonly (readonly [string, string, number])[] = [
  ["D-1", "nothing due", 9],
  ["D-2", "overdue 3 days, not booked", 2],
  ["D-3", "balloon empty", 1],
  ["D-4", "", 10],
];

it.each([
  ["the caseload's list", "Tubes_in_use", "asc", ["D-3", "D-2", "D-1", "D-4"]],
  ["the caseload's list, the other way", "Tubes_in_use", "desc", ["D-4", "D-1", "D-2", "D-3"]],
  ["a list of somebody's own with the same headers: by its words", "Mine", "asc", ["D-3", "D-1", "D-2", "D-4"]],
])("sorted by To do, with its header's arrow: %s", async (_, name, type, ids) => {
  const engine = startHeadless();
  engines.push(engine);
  const workbook = new GridWorkbookPort(engine, 46_000);
  const rows = [["ID", "To do", "Urgency"], ...TO_DO.map((row) => [...row])];
  const { snapshot, facts } = described({ sheets: [{ name: "S", rows, tables: [{ name, area: "A1:C5" }] }] });
  workbook.load(snapshot as unknown as Partial<IWorkbookData>, facts);
  watchSorting(engine, workbook);
  await atRest();
  /* As the arrow's panel asks for it. */
  await engine.api
    .executeCommand(SortRangeCommand.id, {
      unitId: workbook.unit,
      subUnitId: facts.sheets[0]!.id,
      range: { startRow: 1, endRow: 4, startColumn: 0, endColumn: 2 },
      orderRules: [{ colIndex: 1, type }],
      hasTitle: false,
    })
    .catch(() => false);
  const { values } = await workbook.read({ table: name }, ["values"]);
  expect(values!.slice(1).map(([id]) => id)).toEqual(ids);
});

it("what was typed is never overwritten by a result that the engine was still working on", async () => {
  const { workbook, engine, sort } = await open([{ f: "=PRODUCT(A2,2)" }, { v: "typed", t: 1 }, null, null]);
  const sheet = engine.api.getActiveWorkbook()!.getSheetByName("S")!;
  const commands = engine.injector.get(ICommandService);
  let sorted: Promise<void> | undefined;
  // worked out, and not yet in the cells
  const listening = commands.beforeCommandExecuted(({ id }) => {
    if (id === SetFormulaCalculationResultMutation.id) sorted ??= sort({ 1: 2, 2: 1, 3: 3, 4: 4 });
  });
  sheet.getRange("A2").setValue({ v: 30, t: 2 });
  await expect.poll(() => sorted !== undefined).toBe(true);
  await sorted;
  listening.dispose();
  await atRest();
  const { values } = await workbook.read({ table: "T" }, ["values"]);
  expect(values!.slice(1, 3)).toEqual([
    [1, "typed"],
    [30, 60],
  ]);
});
