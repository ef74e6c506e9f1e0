/**
 * Rows that a person inserts, removes, or types right below a table in a workbook of our own. Done in our way, not in the
 * grid's, which would move the whole sheet: contents move within the table, formulas and names follow, one undo.
 */
import { CanceledError, CommandType, ICommandService, type IRange } from "@univerjs/core";
import { SetRangeValuesCommand, SheetsSelectionsService } from "@univerjs/sheets";
import { bottom, right } from "../../area";
import { cellAddress } from "../../../../src/columns/formula";
import type { Area } from "../../port";
import { notEmpty } from "../../change/refusal";
import { OneStep } from "../steps/changes";
import { doesOf } from "./commands";
import type { Engine } from "../engine";
import type { SheetReader } from "../book/sheet-reader";
import type { TableNow } from "../book/tables";
import type { GridWorkbookPort } from "../book/workbook";
import { formulaColumns, grow } from "../steps/adding";
import { movingObstacle } from "../steps/obstacles";
import { blankRow, cutOut, makeGaps } from "../steps/removing";

export interface ByHand {
  readonly workbook: GridWorkbookPort;
  readonly isOwn: () => boolean;
  readonly say: (sentence: string) => void;
}

interface Params {
  readonly subUnitId?: string;
  readonly range?: IRange;
  /** How many rows, in the menu's own field. */
  readonly value?: number;
}

export function watchRowsByHand(engine: Engine, { workbook, isOwn, say }: ByHand): void {
  const commands = engine.injector.get(ICommandService);

  commands.beforeCommandExecuted((command) => {
    const kind = doesOf(command.id);
    if ((kind !== "rowsAbove" && kind !== "rowsBelow" && kind !== "rowsOut") || workbook.isAtWork || !isOwn()) return;
    const params = (command.params ?? {}) as Params;
    const range = params.range ?? engine.injector.get(SheetsSelectionsService).getCurrentLastSelection()?.range;
    const sheet = params.subUnitId ?? workbook.book.getActiveSheet()?.getSheetId();
    const table = range && workbook.tables().find((one) => one.facts.sheet === sheet && holds(one, range));
    // beside a table the guard has its say
    if (!table) return;
    const sentence = kind === "rowsOut" ? remove(table, range) : insert(table, range, kind, params.value);
    if (sentence !== undefined) say(sentence);
    throw new CanceledError();
  });

  commands.onCommandExecuted((command) => {
    if (command.type !== CommandType.COMMAND || command.id !== SetRangeValuesCommand.id) return;
    if (workbook.isAtWork || !isOwn()) return;
    const { subUnitId, range } = (command.params ?? {}) as Params;
    const sheet = subUnitId ?? workbook.book.getActiveSheet()?.getSheetId();
    const table =
      range && workbook.tables().find((one) => one.facts.sheet === sheet && isRightBelow(one, range) && isOpen(one));
    if (table) take(table, range);
  });

  const changed = (change: (step: OneStep) => void): void => {
    const step = new OneStep(engine, workbook.unit);
    change(step);
    step.commit();
  };

  function insert(
    table: TableNow,
    range: IRange,
    kind: "rowsAbove" | "rowsBelow",
    count: number | undefined,
  ): string | undefined {
    const rows = count && count > 0 ? count : range.endRow - range.startRow + 1;
    const first = (kind === "rowsBelow" ? range.endRow + 1 : range.startRow) - table.area.top - 1;
    const below = { ...table.area, top: bottom(table.area), rows };
    const filled = firstFilled(workbook.reader(table.facts.sheet), below);
    if (filled) return notEmpty(filled).sentence;
    const isAtEnd = first === table.area.rows - 1;
    const obstacle = isAtEnd ? undefined : obstacleFrom(table, first);
    if (obstacle !== undefined) return obstacle;
    changed((step) => {
      const desk = workbook.desk(step);
      if (isAtEnd) return grow(desk, table, rows, formulaColumns(desk.reader(table.facts.sheet), table));
      const gaps = Array.from({ length: rows }, (_, r) => first + r);
      makeGaps(desk, table, gaps);
      const now = desk.table(table.facts.name);
      for (const gap of gaps) blankRow(desk, now, now.area.top + 1 + gap);
    });
    return undefined;
  }

  function remove(table: TableNow, range: IRange): string | undefined {
    const first = range.startRow - table.area.top - 1;
    const rows = Array.from({ length: range.endRow - range.startRow + 1 }, (_, r) => first + r);
    const obstacle = obstacleFrom(table, first);
    if (obstacle !== undefined) return obstacle;
    const isAll = rows.length === table.area.rows - 1;
    changed((step) => {
      const desk = workbook.desk(step);
      cutOut(desk, table, isAll ? rows.slice(1) : rows);
      if (isAll) blankRow(desk, desk.table(table.facts.name), table.area.top + 1);
    });
    return undefined;
  }

  function obstacleFrom(table: TableNow, first: number): string | undefined {
    return movingObstacle(workbook.desk(new OneStep(engine, workbook.unit)), workbook, table, first);
  }

  /** What was typed right below becomes a row of the table, as in other spreadsheets. */
  function take(table: TableNow, range: IRange): void {
    const reader = workbook.reader(table.facts.sheet);
    const row = { ...table.area, top: bottom(table.area), rows: 1 };
    if (firstFilled(reader, row) === null) return;
    const formulas = new Set(formulaColumns(reader, table));
    for (let column = range.startColumn; column <= range.endColumn; column++) formulas.delete(column - table.area.left);
    changed((step) => grow(workbook.desk(step), table, 1, formulas));
  }
}

const isOpen = ({ facts }: TableNow): boolean => facts.gridId !== null && facts.geometry.totalsRows === 0;

const holds = (table: TableNow, range: IRange): boolean =>
  isOpen(table) && range.startRow > table.area.top && range.endRow < bottom(table.area);

const isRightBelow = ({ area }: TableNow, range: IRange): boolean =>
  range.startRow === bottom(area) &&
  range.endRow === range.startRow &&
  range.startColumn >= area.left &&
  range.endColumn < right(area);

function firstFilled(reader: SheetReader, { top, left, rows, columns }: Area): string | null {
  for (let row = top; row < top + rows; row++)
    for (let column = left; column < left + columns; column++)
      if (reader.value(row, column) !== null || reader.formula(row, column) !== null) return cellAddress(row, column);
  return null;
}
