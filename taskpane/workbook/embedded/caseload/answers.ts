/**
 * A ready-made caseload in the grid is worked out by the rules that its formulas stand for, not by the grid's engine:
 * 7,000 rows of tubes and checks took the engine five minutes at opening and take a second here, and an edit reaches only
 * the rows of the same people (src/caseload/work-out.ts). The formulas stay where they are; tests hold both to the same.
 */
import { ICommandService, type ICellData } from "@univerjs/core";
import { SetArrayFormulaDataMutation, SetTriggerFormulaCalculationStartMutation } from "@univerjs/engine-formula";
import { SetRangeValuesMutation, type ISetRangeValuesMutationParams } from "@univerjs/sheets";
import { rowsTables, type RowsTable } from "../../../../src/caseload/names";
import { columnsOf } from "../../../../src/caseload/tables";
import { WorkedOut, type ChangedRow, type Given, type Place } from "../../../../src/caseload/work-out";
import type { SheetValue } from "../../../../src/columns/sheet-block";
import { CellError } from "../../../../src/worksheet/error";
import { changeOf } from "../commands";
import type { Engine } from "../engine";
import type { LiveBook } from "../liveBook";
import { gridValue } from "../open/cells";
import { placeKey } from "../save/sheetEdits";
import { valueOf } from "../sheetReader";
import { reenterFormulas } from "../dependencies";
import { isSpilledInto, Recogniser, type CellPlace, type Standing, type TableStanding } from "./recognise";
import { Withheld } from "./withheld";

/** After the last of several changes that come together; the engine itself starts 100 ms after them. */
const GATHER = 20;

type Cells = Record<string, Record<string, ICellData | undefined> | undefined>;

export class CaseloadAnswers {
  private readonly withheld: Withheld;
  private readonly recogniser: Recogniser;
  private standing: Standing | undefined;
  /** The workbook was worked out here before somebody changed a formula or a name. */
  private isReleased = false;
  private worked: WorkedOut | undefined;
  private given = "";
  /** Formulas, names or the ends of tables may stand elsewhere now. */
  private isMoved = false;
  /** Rows may stand elsewhere now, without their cells having been told. */
  private isShifted = false;
  private areSettingsTouched = false;
  private readonly touched = new Map<RowsTable, Set<number>>();
  private isWriting = false;
  private timer: ReturnType<typeof setTimeout> | undefined;

  /** Once the engine's services stand: they come with its first workbook. */
  constructor(
    private readonly engine: Engine,
    private readonly live: LiveBook,
    /** Told when the engine has to take over, with how many rows it has then. */
    private readonly onReleased: (rows: number) => void,
  ) {
    this.withheld = new Withheld(engine);
    this.recogniser = new Recogniser(engine, live);
    engine.injector.get(ICommandService).onCommandExecuted(({ id, params }, options) => {
      const isOurs = this.standing !== undefined || this.isReleased;
      if (!this.isWriting && isOurs && id.includes("mutation"))
        this.hear(id, params, options?.["applyFormulaCalculationResult"] === true);
    });
  }

  /** Whether the workbook that stands in the grid is worked out here. */
  get isAnswering(): boolean {
    return this.standing !== undefined;
  }

  /** Something was changed that is not worked out yet. */
  get isWaiting(): boolean {
    return this.timer !== undefined;
  }

  /** A workbook has just come into the grid; nothing has been painted or calculated yet. */
  begin(): void {
    clearTimeout(this.timer);
    this.timer = undefined;
    this.forget();
    this.isReleased = false;
    this.standing = this.recogniser.find();
    this.withhold();
    if (!this.standing) return;
    this.workAllOut();
    for (const { sheet, cells } of this.differences(everywhere(this.standing))) {
      const there = this.matrix(sheet);
      for (const row in cells) for (const column in cells[row]) Object.assign(there[row]![column]!, cells[row][column]);
    }
  }

  /** The day behind As_of has moved on. */
  anew(): void {
    if (!this.standing) return;
    this.given = "";
    this.areSettingsTouched = true;
    this.soon();
  }

  /** What was changed is worked out and stands in its cells. */
  settle(): void {
    if (this.timer === undefined) return;
    clearTimeout(this.timer);
    this.timer = undefined;
    if (!this.live.isThere || !(this.standing || this.isReleased)) return;
    const places = this.work();
    this.forget();
    if (places.length > 0) this.write(places);
  }

  private forget(): void {
    this.isMoved = false;
    this.isShifted = false;
    this.areSettingsTouched = false;
    this.touched.clear();
  }

  private soon(): void {
    clearTimeout(this.timer);
    this.timer = setTimeout(() => this.settle(), GATHER);
  }

  /** @param isResult the engine's own, of a formula that is not ours */
  private hear(id: string, params: unknown, isResult: boolean): void {
    const change = changeOf(id);
    const { unitId, subUnitId, cellValue } = (params ?? {}) as Partial<ISetRangeValuesMutationParams>;
    if (id === SetArrayFormulaDataMutation.id) this.isMoved ||= this.isSpilledElsewhere();
    else if (unitId !== undefined && unitId !== this.live.unit) return;
    else if (change === "places" || change === "meanings" || (change === "values" && !cellValue)) {
      this.isMoved = true;
      // what names and tables stand for moves no cell
      this.isShifted ||= change !== "meanings";
    } else if (change !== "values") return;
    else if (this.standing) this.note(subUnitId!, cellValue as Cells, isResult);
    else if (hasFormula(cellValue as Cells)) this.isMoved = true;
    if (this.isMoved || this.areSettingsTouched || this.touched.size > 0) this.soon();
  }

  private note(sheet: string, cells: Cells, isResult: boolean): void {
    const { tables, settings, counted } = this.standing!;
    for (const table of rowsTables) {
      const { sheet: own, top, rows, columns, others } = tables[table];
      if (own !== sheet) continue;
      const ours = new Set(columns.values());
      for (const key in cells) {
        const place = Number(key) - top;
        for (const at in cells[key]) {
          const cell = cells[key]![at];
          // a formula that came or went, or a heading
          const isHeading = place === -1 && ours.has(Number(at));
          const isGone = others.has(placeKey(Number(key), Number(at))) || this.isComputed(table, place, Number(at));
          if (!isResult && (cell?.f || cell?.si || isHeading || isGone)) this.isMoved = true;
          if (place < 0 || place >= rows || !ours.has(Number(at))) continue;
          const there = this.touched.get(table);
          if (there) there.add(place);
          else this.touched.set(table, new Set([place]));
        }
      }
    }
    if ([...settings.values()][0]?.sheet === sheet) {
      this.areSettingsTouched = true;
      const isCounted = counted.some(({ row, column }) => cells[row] !== undefined && column in cells[row]);
      this.isMoved ||= !isResult && (hasFormula(cells) || isCounted);
    }
  }

  /** How far a formula spills is known with its result: it may have left our tables, or come into one. */
  private isSpilledElsewhere(): boolean {
    if (!this.standing) return true;
    const { tables } = this.standing;
    return rowsTables.some((table) => isSpilledInto(this.live.reader(tables[table].sheet), tables[table].area));
  }

  /** One of our formulas stands there, or was typed over. */
  private isComputed(table: RowsTable, place: number, column: number): boolean {
    const { rows, columns } = this.standing!.tables[table];
    if (place < 0 || place >= rows) return false;
    return columnsOf(table, this.standing!.groups).some(
      ({ header, kind }) => kind === "computed" && columns.get(header) === column,
    );
  }

  /** @returns the rows whose results may be other ones now */
  private work(): readonly Place[] {
    const before = this.standing;
    if (this.isMoved) {
      this.standing = this.recogniser.find();
      if (!this.standing) {
        if (!this.isReleased) this.release();
        return [];
      }
      if (this.isReleased) this.engine.api.getFormula().stopCalculation();
      this.isReleased = false;
      this.withhold();
      this.tellOfOthers(before);
    }
    const now = this.standing!;
    if (this.isMoved && (this.isShifted || !before || !isInPlace(before, now))) return this.workAllOut();
    if ((this.isMoved || this.areSettingsTouched) && JSON.stringify(this.givenNow()) !== this.given)
      return this.workAllOut();
    const changed: ChangedRow[] = [];
    for (const table of rowsTables) {
      const places = new Set(this.touched.get(table));
      const { rows, overtyped } = now.tables[table];
      const former = before!.tables[table];
      for (let place = former.rows; place < rows; place++) places.add(place);
      if (overtyped !== former.overtyped)
        for (const place of [...overtyped.keys(), ...former.overtyped.keys()]) places.add(place);
      for (const place of [...places].sort((one, other) => one - other))
        changed.push({ table, place, row: this.rowAt(now.tables[table], place) });
    }
    return changed.length === 0 ? [] : this.worked!.change(changed);
  }

  private workAllOut(): readonly Place[] {
    const { tables } = this.standing!;
    const rowsOf = (table: TableStanding) => Array.from({ length: table.rows }, (_, place) => this.rowAt(table, place));
    const given = this.givenNow();
    this.given = JSON.stringify(given);
    const rows = { tubes: rowsOf(tables.tubes), checks: rowsOf(tables.checks), changes: rowsOf(tables.changes) };
    this.worked = new WorkedOut(rows, given);
    return everywhere(this.standing!);
  }

  private matrix(sheet: string): Record<string, Record<string, ICellData>> {
    return this.live.book.getSheetBySheetId(sheet)!.getCellMatrix().getMatrix() as Record<
      string,
      Record<string, ICellData>
    >;
  }

  private at({ sheet, row, column }: CellPlace): SheetValue {
    return valueOf(this.matrix(sheet)[row]?.[column]);
  }

  private rowAt({ table, sheet, top, columns, overtyped }: TableStanding, place: number): ChangedRow["row"] {
    const cells = this.matrix(sheet)[top + place] ?? {};
    const typedOver = overtyped.get(place);
    const row: Record<string, SheetValue> = {};
    for (const { header, kind } of columnsOf(table, this.standing!.groups))
      if (kind !== "computed" || typedOver?.has(header)) row[header] = valueOf(cells[columns.get(header)!]);
    return row;
  }

  private givenNow(): Given {
    const { groups, settings, reasons } = this.standing!;
    return {
      asOf: this.live.todayNow,
      groups,
      settings: Object.fromEntries([...settings].map(([name, place]) => [name, this.at(place)])),
      reasons: reasons.word.map((word, i) => ({
        word: this.at(word),
        failed: this.at(reasons.failed[i]!),
        unplanned: this.at(reasons.unplanned[i]!),
      })),
    };
  }

  /** Results that are not in their cells yet, by sheet. */
  private differences(places: readonly Place[]): {
    readonly sheet: string;
    readonly cells: Record<string, Record<string, ICellData>>;
    readonly rows: readonly [number, number];
  }[] {
    return rowsTables.flatMap((table) => {
      const { sheet, top, columns, overtyped } = this.standing!.tables[table];
      const computed = columnsOf(table, this.standing!.groups).filter(({ kind }) => kind === "computed");
      const there = this.matrix(sheet);
      const cells: Record<string, Record<string, ICellData>> = {};
      let [first, last] = [Infinity, -1];
      for (const one of places) {
        if (one.table !== table) continue;
        const row = top + one.place;
        const worked = this.worked!.tables[table][one.place]!;
        for (const { header } of computed) {
          if (overtyped.get(one.place)?.has(header)) continue;
          const column = columns.get(header)!;
          const value = worked[header]!;
          const now = gridValue(value instanceof CellError ? { error: value.code } : value);
          const before = there[row]![column]!;
          if (before.v === now.v && (before.t === now.t || now.v === undefined)) continue;
          (cells[row] ??= {})[column] = now;
          [first, last] = [Math.min(first, row), Math.max(last, row)];
        }
      }
      return last < 0 ? [] : [{ sheet, cells, rows: [first, last] as const }];
    });
  }

  private write(places: readonly Place[]): void {
    const commands = this.engine.injector.get(ICommandService);
    const { unit: unitId } = this.live;
    const found = this.differences(places);
    if (found.length === 0) return;
    this.isWriting = true;
    try {
      for (const { sheet, cells } of found)
        commands.syncExecuteCommand(
          SetRangeValuesMutation.id,
          { unitId, subUnitId: sheet, cellValue: cells },
          { onlyLocal: true, fromFormula: true, applyFormulaCalculationResult: true },
        );
    } finally {
      this.isWriting = false;
    }
    this.tellEngine(found.map(({ sheet, rows: [startRow, endRow] }) => ({ sheet, startRow, endRow })));
  }

  /** What the engine works out of these rows is out of date. */
  private tellEngine(
    rows: readonly { readonly sheet: string; readonly startRow: number; readonly endRow: number }[],
  ): void {
    const { unit: unitId, book } = this.live;
    const dirtyRanges = rows.map(({ sheet, startRow, endRow }) => ({
      unitId,
      sheetId: sheet,
      range: { startRow, endRow, startColumn: 0, endColumn: book.getSheetBySheetId(sheet)!.getColumnCount() - 1 },
    }));
    const nothing = {
      dirtyNameMap: {},
      dirtyDefinedNameMap: {},
      dirtyUnitFeatureMap: {},
      dirtyUnitOtherFormulaMap: {},
    };
    const params = {
      forceCalculation: false,
      dirtyRanges,
      ...nothing,
      dirtySuperTableMap: {},
      clearDependencyTreeCache: {},
    };
    void this.engine.injector
      .get(ICommandService)
      .executeCommand(SetTriggerFormulaCalculationStartMutation.id, params, { onlyLocal: true });
  }

  /** Formulas that the engine did not find where they stand now, if it has looked for them meanwhile. */
  private tellOfOthers(before: Standing | undefined): void {
    const found = rowsTables.flatMap((table) => {
      const { sheet, others } = this.standing!.tables[table];
      const known = before?.tables[table].others;
      const rows = [...others]
        .filter(([place, { text }]) => known?.get(place)?.text !== text)
        .map(([, { row }]) => row);
      return rows.length === 0 ? [] : [{ sheet, startRow: rows.reduce(lesser), endRow: rows.reduce(greater) }];
    });
    if (found.length > 0) this.tellEngine(found);
  }

  private withhold(): void {
    const tables = this.standing ? rowsTables.map((table) => this.standing!.tables[table]) : [];
    this.withheld.set(this.live.unit, tables);
    reenterFormulas(this.engine);
  }

  /** From here on the engine works everything out, until the workbook is as it was again. */
  private release(): void {
    this.isReleased = true;
    this.worked = undefined;
    this.withhold();
    const used = this.live.tables().map(({ facts, area }) => ({
      sheet: facts.sheet,
      startRow: area.top,
      endRow: area.top + area.rows - 1,
    }));
    this.onReleased(used.reduce((sum, { startRow, endRow }) => sum + endRow - startRow, 0));
    this.tellEngine(used);
  }
}

/** Every row and column stands where it stood; rows may have come in at the ends of the tables. */
const isInPlace = (before: Standing, now: Standing): boolean =>
  before.groups.join() === now.groups.join() &&
  rowsTables.every((table) => {
    const [one, other] = [before.tables[table], now.tables[table]];
    const isSameTable = one.sheet === other.sheet && one.top === other.top && one.rows <= other.rows;
    return isSameTable && [...one.columns].every(([header, column]) => other.columns.get(header) === column);
  });

const lesser = (one: number, other: number): number => Math.min(one, other);
const greater = (one: number, other: number): number => Math.max(one, other);

const hasFormula = (cells: Cells): boolean =>
  Object.values(cells).some((row) => Object.values(row ?? {}).some((cell) => cell?.f || cell?.si));

const everywhere = ({ tables }: Standing): readonly Place[] =>
  rowsTables.flatMap((table) => Array.from({ length: tables[table].rows }, (_, place) => ({ table, place })));
