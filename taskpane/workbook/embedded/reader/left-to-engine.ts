/**
 * Which formulas the engine (0.25.1) works out: those that the reader does not know. The others stay in their cells, are
 * shown, copied, moved and saved as ever; only when the engine gathers what it has to calculate they are not there.
 *
 * The same gathering goes through every cell of the workbook at each edit (measured: 0.5 seconds with 7,000 rows of a
 * caseload); here they are told instead of looked for.
 */
import {
  ICommandService,
  IUniverInstanceService,
  UniverInstanceType,
  type ICellData,
  type Workbook as GridWorkbook,
} from "@univerjs/core";
import { FormulaDataModel, SetFormulaCalculationStartMutation } from "@univerjs/engine-formula";
import type { Engine } from "../engine";

/** As the engine gathers it: a member of a group with its distance from the cell that the group hangs on. */
export interface EngineFormula {
  readonly f: string;
  readonly si?: string;
  readonly x?: number;
  readonly y?: number;
}

/** By sheet, row and column. */
export type EngineFormulas = Record<string, Record<number, Record<number, EngineFormula>>>;

type CellsOf = Record<string, Record<string, ICellData | null | undefined> | undefined>;

interface Model {
  getFormulaData(): Record<string, EngineFormulas>;
  updateFormulaData(unitId: string, sheetId: string, cellValue: CellsOf): object;
}

/** @param formulasNow what is the engine's at this moment; undefined where that is everything */
export function leaveToEngine(
  engine: Engine,
  formulasNow: () => { readonly unitId: string; readonly formulas: EngineFormulas } | undefined,
): void {
  let isGathering = false;
  engine.injector.get(ICommandService).beforeCommandExecuted(({ id }) => {
    if (id === SetFormulaCalculationStartMutation.id) isGathering = true;
  });
  const model = engine.injector.get(FormulaDataModel) as unknown as Model;
  const { getFormulaData: all, updateFormulaData: update } = model;
  model.getFormulaData = () => {
    const own = isGathering ? formulasNow() : undefined;
    isGathering = false;
    return own ? { [own.unitId]: own.formulas } : all.call(model);
  };
  // asked before every edit: where no group loses the cell that it hangs on there is nothing to find, and every cell of
  // the workbook to look through (measured: 40 of 70 seconds for three columns of 100,000 rows)
  model.updateFormulaData = (unitId, sheetId, cells) =>
    leavesSomething(engine, unitId, sheetId, cells) ? update.call(model, unitId, sheetId, cells) : {};
}

/**
 * Whether the engine has to see to cells before these come in: a group of shared formulas hangs on one of them, a formula
 * gives way to something else, or one comes in over a value without a result of its own.
 */
function leavesSomething({ injector }: Engine, unitId: string, sheetId: string, cells: CellsOf): boolean {
  const book = injector.get(IUniverInstanceService).getUnit<GridWorkbook>(unitId, UniverInstanceType.UNIVER_SHEET);
  const there = book?.getSheetBySheetId(sheetId)?.getCellMatrix().getMatrix() as CellsOf | undefined;
  for (const row in cells) {
    for (const column in cells[row]) {
      const [after, before] = [cells[row][column], there?.[row]?.[column]];
      const isFormula = Boolean(after?.f || after?.si);
      if (before?.f && before.si) return true;
      if (!isFormula && (before?.f || before?.si)) return true;
      if (isFormula && after!.v === undefined && (before?.v ?? null) !== null) return true;
    }
  }
  return false;
}
