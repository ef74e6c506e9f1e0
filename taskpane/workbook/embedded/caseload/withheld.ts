/**
 * Formulas that the engine (0.25.1) leaves alone, because the page works them out itself. They stay in their cells, are
 * shown, copied, moved and saved as ever; only when the engine gathers what it has to calculate they are not there.
 *
 * The same gathering goes through every cell of the workbook at each edit (measured: 0.5 seconds with 7,000 rows of a
 * caseload); the rows of its tables are told here instead of looked for.
 */
import {
  ICommandService,
  IUniverInstanceService,
  UniverInstanceType,
  type Workbook as GridWorkbook,
} from "@univerjs/core";
import { FormulaDataModel, SetFormulaCalculationStartMutation } from "@univerjs/engine-formula";
import type { ICellData } from "@univerjs/core";
import type { Engine } from "../engine";
import { shifted } from "../formulas/references";
import type { TableStanding } from "./recognise";

interface FormulaOfCell {
  f: string;
  si?: string;
  x?: number;
  y?: number;
}
type Formulas = Record<string, Record<string, Record<number, Record<number, FormulaOfCell>>>>;
type CellsOf = Record<string, Record<string, ICellData | null | undefined> | undefined>;

interface Model {
  getFormulaData(): Formulas;
  updateFormulaData(unitId: string, sheetId: string, cellValue: CellsOf): object;
}

/** What is withheld in one workbook: rows of these tables hold no formula but those named. */
export type Tables = readonly Pick<TableStanding, "sheet" | "top" | "rows" | "others" | "masters">[];

export class Withheld {
  private unitId = "";
  private tables: Tables = [];
  private isGathering = false;

  constructor(private readonly engine: Engine) {
    const commands = engine.injector.get(ICommandService);
    const isStart = ({ id }: { readonly id: string }) => id === SetFormulaCalculationStartMutation.id;
    commands.beforeCommandExecuted((command) => {
      if (isStart(command)) this.isGathering = true;
    });
    const model = engine.injector.get(FormulaDataModel) as unknown as Model;
    const { getFormulaData: all, updateFormulaData: update } = model;
    model.getFormulaData = () => {
      const isGathering = this.isGathering && this.tables.length > 0;
      this.isGathering = false;
      return isGathering ? this.gathered() : all.call(model);
    };
    // asked before every edit: where no formula comes or goes there is nothing to find, and everything to look through
    model.updateFormulaData = (unitId, sheetId, cells) =>
      this.touchesFormula(unitId, sheetId, cells) ? update.call(model, unitId, sheetId, cells) : {};
  }

  set(unitId: string, tables: Tables): void {
    this.unitId = unitId;
    this.tables = tables;
  }

  private matrixOf(unitId: string, sheetId: string): CellsOf | undefined {
    const book = this.engine.injector
      .get(IUniverInstanceService)
      .getUnit<GridWorkbook>(unitId, UniverInstanceType.UNIVER_SHEET);
    return book?.getSheetBySheetId(sheetId)?.getCellMatrix().getMatrix() as CellsOf | undefined;
  }

  private touchesFormula(unitId: string, sheetId: string, cells: CellsOf): boolean {
    const there = this.matrixOf(unitId, sheetId);
    for (const row in cells) {
      for (const column in cells[row]) {
        const [after, before] = [cells[row][column], there?.[row]?.[column]];
        if (after?.f || after?.si || before?.f || before?.si) return true;
      }
    }
    return false;
  }

  /** As the engine gathers it, less what is withheld. */
  private gathered(): Formulas {
    const found: Formulas = {};
    for (const book of this.engine.injector
      .get(IUniverInstanceService)
      .getAllUnitsForType<GridWorkbook>(UniverInstanceType.UNIVER_SHEET)) {
      const unit: Formulas[string] = (found[book.getUnitId()] = {});
      for (const sheet of book.getSheets()) {
        const id = sheet.getSheetId();
        const own = book.getUnitId() === this.unitId ? this.tables.filter((table) => table.sheet === id) : [];
        unit[id] = formulasOf(sheet.getCellMatrix().getMatrix() as CellsOf, own);
      }
    }
    return found;
  }
}

function formulasOf(cells: CellsOf, tables: Tables): Formulas[string][string] {
  const found: Formulas[string][string] = {};
  const put = (row: number, column: number, formula: FormulaOfCell) => ((found[row] ??= {})[column] = formula);
  const masters = new Map<string, { readonly row: number; readonly column: number; readonly f: string }>();
  const members: { readonly row: number; readonly column: number; readonly si: string }[] = [];
  for (const key in cells) {
    const row = Number(key);
    if (tables.some(({ top, rows }) => row >= top && row < top + rows)) continue;
    for (const place in cells[row]) {
      const column = Number(place);
      const { f, si } = cells[row][column] ?? {};
      if (typeof f === "string" && f.startsWith("=")) {
        put(row, column, si ? { f, si } : { f });
        if (si) masters.set(si, { row, column, f });
      } else if (si) members.push({ row, column, si });
    }
  }
  for (const { row, column, si } of members) {
    const master = masters.get(si);
    if (master) put(row, column, { f: master.f, si, x: column - master.column, y: row - master.row });
    else {
      const other = tables.map(({ masters: within }) => within.get(si)).find((one) => one !== undefined);
      if (!other) continue;
      put(row, column, { f: `=${shifted(other.text.slice(1), row - other.row, column - other.column)}` });
    }
  }
  for (const { others } of tables) for (const { row, column, text } of others.values()) put(row, column, { f: text });
  return found;
}
