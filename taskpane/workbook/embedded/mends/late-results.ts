/**
 * The engine works in its own time. Where rows have moved since it set out, its result arrives at a place that holds
 * something else by now, and the grid (0.25.1) writes it over whatever was typed there. A result belongs to a formula:
 * where none stands any more it is dropped, and the formula gets its own at its new place.
 */
import { ICommandService, type ICellData } from "@univerjs/core";
import { SetRangeValuesMutation } from "@univerjs/sheets";
import type { Engine } from "../engine";

interface Results {
  readonly unitId: string;
  readonly subUnitId: string;
  readonly cellValue: Record<string, Record<string, ICellData | null | undefined>>;
}

export function dropLateResults({ api, injector }: Engine): void {
  injector.get(ICommandService).beforeCommandExecuted(({ id, params }, options) => {
    if (id !== SetRangeValuesMutation.id || options?.["applyFormulaCalculationResult"] !== true) return;
    const { unitId, subUnitId, cellValue } = params as Results;
    const sheet = api.getWorkbook(unitId)?.getWorkbook().getSheetBySheetId(subUnitId);
    if (!sheet) return;
    for (const row in cellValue) {
      const cells = cellValue[row]!;
      for (const column in cells) {
        const there = sheet.getCellRaw(Number(row), Number(column));
        if (!there?.f && !there?.si) delete cells[column];
      }
    }
  });
}
