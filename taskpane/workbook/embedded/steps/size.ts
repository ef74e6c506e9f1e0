/** A table of the grid made longer or shorter, with all that reads whole columns of it. */
import { SetDefinedNameMutation } from "@univerjs/engine-formula";
import { SetWorksheetRowCountMutation } from "@univerjs/sheets";
import { SetSheetTableMutation } from "@univerjs/sheets-table";
import { followed } from "../../../../src/formula/following";
import type { TableGeometry } from "../formulas/structured";
import { engineNames } from "../book/names";
import { geometryNow, type TableNow } from "../book/tables";
import type { SheetReader } from "../book/sheet-reader";
import type { Desk } from "./write";
import { Contents } from "./contents";

function makeRows(desk: Desk, sheet: string, rows: number): void {
  const now = desk.reader(sheet).worksheet.getRowCount();
  if (rows <= now) return;
  const set = (rowCount: number) => ({
    id: SetWorksheetRowCountMutation.id,
    params: { unitId: desk.unitId, subUnitId: sheet, rowCount },
  });
  desk.step.do(set(rows), set(now));
}

/** @param rows more rows at its end, or fewer where negative */
export function resizeTable(desk: Desk, table: TableNow, rows: number): void {
  if (rows === 0) return;
  const { facts, area } = table;
  const before = geometryNow(table);
  const after = { ...before, bottom: before.bottom + rows };
  makeRows(desk, facts.sheet, after.bottom + 1);
  const count = Math.abs(rows);
  const resized = (operationType: "insert" | "delete") => ({
    id: SetSheetTableMutation.id,
    params: {
      unitId: desk.unitId,
      subUnitId: facts.sheet,
      tableId: facts.gridId,
      config: { rowColOperation: { operationType, rowColType: "row", index: area.top + 1, count } },
    },
  });
  const [grow, shrink] = [resized("insert"), resized("delete")];
  if (rows > 0) desk.step.do(grow, shrink);
  else desk.step.do(shrink, grow);
  namesFollow(desk, before, after);
  for (const sheet of desk.sheets()) formulasFollow(desk, sheet.getSheetId(), sheet.getName(), before, after);
}

function namesFollow(desk: Desk, before: TableGeometry, after: TableGeometry): void {
  for (const name of engineNames(desk.engine, desk.unitId)) {
    const text = followed(name.formulaOrRefString, "", before, after);
    if (text === name.formulaOrRefString) continue;
    const set = (formulaOrRefString: string) => ({
      id: SetDefinedNameMutation.id,
      params: { ...name, unitId: desk.unitId, formulaOrRefString },
    });
    desk.step.do(set(text), set(name.formulaOrRefString));
  }
}

function formulasFollow(
  desk: Desk,
  sheet: string,
  sheetName: string,
  before: TableGeometry,
  after: TableGeometry,
): void {
  const reader = desk.reader(sheet);
  const now = new Contents(reader);
  const groups = new Map<string, { readonly name: string; readonly text: string }>();
  for (const { row, column, text, group } of ownFormulas(reader)) {
    const written = followed(text, sheetName, before, after, group !== null);
    if (written === text) continue;
    if (group === null) now.set(row, column, { f: written });
    else groups.set(group, { name: desk.unique(), text: written });
  }
  if (groups.size > 0) groupsFollow(reader, groups, now);
  now.put(desk, sheet);
}

/** The engine hands a group's text on when a cell joins it: a changed text needs a new group. */
function groupsFollow(
  reader: SheetReader,
  groups: ReadonlyMap<string, { readonly name: string; readonly text: string }>,
  now: Contents,
): void {
  for (const row of reader.rows()) {
    for (const column of reader.columnsOf(row)) {
      const group = groups.get(reader.cell(row, column)!.si ?? "");
      if (group) now.set(row, column, { si: group.name, f: reader.isMaster(row, column) ? group.text : null });
    }
  }
}

interface OwnFormula {
  readonly row: number;
  readonly column: number;
  readonly text: string;
  readonly group: string | null;
}

/** Formulas that stand as text in their cell: those of their own, and the one that a group hangs on. */
export function* ownFormulas(reader: SheetReader): Generator<OwnFormula> {
  for (const row of reader.rows()) {
    for (const column of reader.columnsOf(row)) {
      const { f, si } = reader.cell(row, column)!;
      if (typeof f !== "string" || !f.startsWith("=")) continue;
      if (si && !reader.isMaster(row, column)) continue;
      yield { row, column, text: f, group: si ?? null };
    }
  }
}
