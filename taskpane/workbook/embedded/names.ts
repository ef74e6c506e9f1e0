/** Defined names as the engine holds them now. */
import { IDefinedNamesService, SetDefinedNameMutation, type IDefinedNamesServiceParam } from "@univerjs/engine-formula";
import { ICommandService } from "@univerjs/core";
import type { Engine } from "./engine";

export const WHOLE_WORKBOOK = "AllDefaultWorkbook";

export const engineNames = (engine: Engine, unitId: string): IDefinedNamesServiceParam[] =>
  Object.values(engine.injector.get(IDefinedNamesService).getDefinedNameMap(unitId) ?? {});

/** With "=". */
export const refersTo = (name: IDefinedNamesServiceParam): string =>
  name.formulaOrRefString.startsWith("=") ? name.formulaOrRefString : `=${name.formulaOrRefString}`;

/** The grid's plain day behind As_of moves on. Not an undo step, and no change of the workbook. */
export function moveToday(engine: Engine, unitId: string, todayNames: ReadonlySet<string>, today: number): void {
  const commands = engine.injector.get(ICommandService);
  for (const name of engineNames(engine, unitId)) {
    if (!todayNames.has(name.name.toLowerCase())) continue;
    commands.syncExecuteCommand(SetDefinedNameMutation.id, { ...name, unitId, formulaOrRefString: `=${today}` });
  }
}
