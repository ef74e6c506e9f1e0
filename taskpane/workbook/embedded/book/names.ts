/** Defined names as the engine holds them now. */
import { IDefinedNamesService, type IDefinedNamesServiceParam } from "@univerjs/engine-formula";
import { GRID_TODAY, setGridToday } from "../../../../functions/grid";
import type { Engine } from "../engine";

/** How the engine files a name of the whole workbook. */
export const WHOLE_WORKBOOK = "AllDefaultWorkbook";

export const engineNames = (engine: Engine, unitId: string): IDefinedNamesServiceParam[] =>
  Object.values(engine.injector.get(IDefinedNamesService).getDefinedNameMap(unitId) ?? {});

/** With "=". */
export const refersTo = (name: IDefinedNamesServiceParam): string =>
  name.formulaOrRefString.startsWith("=") ? name.formulaOrRefString : `=${name.formulaOrRefString}`;

/** As a formula of the grid: what As_of stands for there. */
export const TODAY_IN_GRID = `=${GRID_TODAY}()`;

/** The day behind As_of moves on. Not an undo step, and no change of the workbook. */
export function moveToday(engine: Engine, today: number, isUsed: boolean): void {
  setGridToday(today);
  if (isUsed) engine.api.getFormula().executeCalculation();
}
