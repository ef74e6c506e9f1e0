/** Each kind of step carried out in the grid, and what takes it back. Names are seen to by the workbook itself. */
import type { Area, SheetId } from "../../port";
import type { ColumnValue, NameTarget, Target } from "../../change/target";
import { addSheet } from "./add-sheet";
import { appendRows } from "./adding";
import { Contents, held, typed } from "./contents";
import { changeColumn, reenterFormulas, refreshColumn } from "./refreshing";
import { blankRow, cutOut, removeRows } from "./removing";
import { showRows } from "./showing";
import { addStateRules } from "./state-rules";
import { addColumns, narrowTable, restore, writeFormula, type Desk, type Later } from "./write";

/** @param now where the step's cells stand now */
export type TakeBack = (desk: Desk, now: Area) => void;

/** A formula (with "=") as the engine reads it in a cell; the sheet's name, because it may not be there yet. */
export type ForEngine = (formula: string, sheetName: string, row: number, column: number) => string;

export function carryOut(
  desk: Desk,
  target: Exclude<Target, NameTarget>,
  forEngine: ForEngine,
  later: Later,
): TakeBack {
  switch (target.kind) {
    case "addColumns": {
      const gridId = target.table === null ? null : desk.table(target.table).facts.gridId;
      const before = addColumns(desk, target, gridId, later);
      const headers = target.columns.map((column) => column.header);
      const uncolour = addStateRules(desk, target);
      return (again, now) => {
        uncolour(again);
        restore(again, target.sheet, now, before);
        if (gridId !== null) narrowTable(again, target.sheet, gridId, now.left, headers);
      };
    }
    case "refreshColumn":
      return refreshColumn(desk, target);
    case "changeColumn":
      return changeColumn(desk, target);
    case "reenterFormulas":
      return reenterFormulas(desk, target);
    case "writeFormula": {
      const { formula, row, column } = target.step;
      const before = writeFormula(desk, target, forEngine(formula, sheetNamed(desk, target.sheet), row, column));
      return (again, now) => restore(again, target.sheet, { ...now, rows: 1, columns: 1 }, before);
    }
    case "addSheet": {
      const { name } = target.step.sheet;
      return addSheet(desk, target, target.sheet!, (text, row, column) => forEngine(text, name, row, column));
    }
    case "appendRows": {
      appendRows(desk, target, desk.table(target.table));
      return (again, now) => {
        const table = again.table(target.table);
        const first = now.top - table.area.top - 1;
        const rows = Array.from({ length: now.rows }, (_, r) => first + r);
        cutOut(again, table, target.fillsBlankRow ? rows.slice(1) : rows);
        if (target.fillsBlankRow) blankRow(again, again.table(target.table), now.top);
      };
    }
    case "changeRow":
      return writeValues(desk, target.sheet, target.area, target.values);
    case "writeNamed":
      return writeValues(desk, target.sheet, target.area, [{ column: 0, value: target.step.value }]);
    case "removeRows": {
      const putBack = removeRows(desk, target, desk.table(target.table));
      return (again) => putBack(again, () => again.table(target.table));
    }
    case "showRows":
      return showRows(desk, target, target.table === null ? null : desk.table(target.table));
  }
}

const sheetNamed = (desk: Desk, id: SheetId): string =>
  desk
    .sheets()
    .find((sheet) => sheet.getSheetId() === id)!
    .getName();

/** Into cells of one row. */
function writeValues(desk: Desk, sheet: SheetId, area: Area, values: readonly ColumnValue[]): TakeBack {
  const reader = desk.reader(sheet);
  const former = values.map(({ column }) => held(reader, area.top, area.left + column));
  const now = new Contents(reader);
  for (const { column, value } of values) now.set(area.top, area.left + column, typed(value));
  now.put(desk, sheet);
  return (again, place) => {
    const back = new Contents(again.reader(sheet));
    values.forEach(({ column }, i) => back.set(place.top, place.left + column, former[i]!));
    back.put(again, sheet);
  };
}
