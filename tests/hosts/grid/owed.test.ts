/** What the engine still owes is told right where a change comes while it calculates. */
import { ICommandService } from "@univerjs/core";
import {
  FormulaExecuteStageType,
  FormulaExecutedStateType,
  SetFormulaCalculationNotificationMutation,
  type ISetFormulaCalculationNotificationMutation,
} from "@univerjs/engine-formula";
import { expect, it } from "vitest";
import { calculated } from "../../../taskpane/workbook/embedded/book/calculation";
import { OwedResults } from "../../../taskpane/workbook/embedded/book/owed";
import type { Engine } from "../../../taskpane/workbook/embedded/engine";
import { atRest } from "./at-rest";
import { startHeadless } from "./headless";

/** The engine looks up from its work after every 500. */
const FORMULAS = 2_500;

/** A workbook whose formulas read one cell; once it is changed, it is changed again while the engine works. */
async function changedTwice(change: (engine: Engine, first: () => void) => Promise<unknown>) {
  const engine = startHeadless();
  const cells = Object.fromEntries(
    Array.from({ length: FORMULAS }, (_, row) => [row, { 0: { f: `=SUM($C$1,$C$1:$C$20,${row})` } }]),
  );
  const sheet = engine.api
    .createWorkbook({ id: "book", sheets: { s: { id: "s", rowCount: FORMULAS, columnCount: 5, cellData: cells } } })
    .getActiveSheet();
  const factor = (value: number) => void sheet.getRange(0, 2).setValue(value);
  factor(1);
  await atRest();

  const ends: unknown[] = [];
  let isAsked = false;
  engine.injector.get(ICommandService).onCommandExecuted(({ id, params }) => {
    if (id !== SetFormulaCalculationNotificationMutation.id) return;
    const { stageInfo, functionsExecutedState } = params as ISetFormulaCalculationNotificationMutation;
    if (functionsExecutedState !== undefined) ends.push(functionsExecutedState);
    if (isAsked || stageInfo?.stage !== FormulaExecuteStageType.CURRENTLY_CALCULATING) return;
    isAsked = true;
    factor(3);
  });
  const outcome = await change(engine, () => factor(2));
  const last = sheet.getRange(FORMULAS - 1, 0).getValue();
  await atRest();
  engine.univer.dispose();
  // else nothing was stopped, and nothing is shown by this
  expect(ends).toContain(FormulaExecutedStateType.STOP_EXECUTION);
  return { outcome, last };
}
const WORKED_OUT = FORMULAS - 1 + 2 * 3;

it("is all paid only when the engine, stopped by a change and set out again, is through", async () => {
  const paid = (engine: Engine, first: () => void) => {
    const owed = new OwedResults(engine);
    first();
    return owed.paid();
  };
  expect(await changedTwice(paid)).toEqual({ outcome: true, last: WORKED_OUT });
});

it("a change is worked out only then too", async () => {
  expect(await changedTwice(calculated)).toEqual({ outcome: "worked out", last: WORKED_OUT });
});
