/**
 * Formulas that the reader knows (src/formula/reader) are worked out by it, not by the grid's engine: 7,000 rows of tubes
 * and checks took the engine five minutes at opening and take a second here, and an edit reaches what depends on it and no
 * more. Nothing is recognised by its text: what stands in the cells counts. A formula that the reader does not know is the
 * engine's; where one reads the other's result, it is told of it.
 */
import { ICommandService, type ICellData } from "@univerjs/core";
import { SetArrayFormulaDataMutation, SetTriggerFormulaCalculationStartMutation } from "@univerjs/engine-formula";
import { SetRangeValuesMutation, type ISetRangeValuesMutationParams } from "@univerjs/sheets";
import { ourFunctions } from "../../../../src/formula/reader/our-functions";
import { Reader, type BookName, type Place } from "../../../../src/formula/reader/reader";
import type { Value } from "../../../../src/formula/reader/values";
import { functions } from "../../../../src/index";
import { CellError } from "../../../../src/worksheet/error";
import { bottom, right } from "../../area";
import type { Area, SheetId } from "../../port";
import { changeOf } from "../by-hand/commands";
import { reenterFormulas } from "../mends/slow-dependencies";
import type { Engine } from "../engine";
import type { BookNow } from "../book/book-now";
import { engineNames, refersTo, WHOLE_WORKBOOK } from "../book/names";
import { gridValue } from "../open/cells";
import { placeKey } from "../save/sheet-edits";
import { fileValue, sameValue } from "../save/values";
import { valueOf, type SheetReader } from "../book/sheet-reader";
import { leaveToEngine, type EngineFormula, type EngineFormulas } from "./left-to-engine";
import { gapsIn, stretchesOf } from "./stretches";

/** After the last of several changes that come together; the engine itself starts 100 ms after them. */
const GATHER = 20;

/** The engine and the reader go by each other's results so many times; then a formula stands on itself by way of both. */
const MOST_ROUNDS = 50;

type Cells = Record<string, Record<string, ICellData | null | undefined> | undefined>;
type Matrix = Record<string, Record<string, ICellData | undefined> | undefined>;

const ours = ourFunctions(functions);

export class WorkedOut {
  private reader: Reader | undefined;
  /** The engine's formulas, by sheet and place. */
  private engines = new Map<SheetId, Map<string, EngineFormula & { readonly row: number; readonly column: number }>>();
  private spills = new Map<SheetId, readonly Area[]>();
  /** Formulas, names or the places of cells may be other ones now. */
  private isMoved = false;
  private areSpillsTouched = false;
  private readonly touched = new Map<SheetId, Map<string, readonly [row: number, column: number]>>();
  private rounds = 0;
  private isWriting = false;
  private timer: ReturnType<typeof setTimeout> | undefined;

  /** Once the engine's services stand: they come with its first workbook. */
  constructor(
    private readonly engine: Engine,
    private readonly live: BookNow,
  ) {
    leaveToEngine(engine, () => this.forEngine());
    engine.injector.get(ICommandService).onCommandExecuted(({ id, params }, options) => {
      if (!this.isWriting && id.includes("mutation"))
        this.hear(id, params, options?.["applyFormulaCalculationResult"] === true);
    });
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
    this.rounds = 0;
    this.build();
    for (const [sheet, cells] of this.differences(this.reader!.known())) {
      const there = this.matrix(sheet);
      for (const [row, columns] of Object.entries(cells))
        for (const [column, value] of Object.entries(columns)) Object.assign(there[row]![column]!, value);
    }
  }

  /** The day that counts as today has moved on. */
  anew(): void {
    if (!this.reader) return;
    this.isMoved = true;
    this.soon();
  }

  /** What was changed is worked out and stands in its cells. */
  settle(): void {
    if (this.timer === undefined) return;
    clearTimeout(this.timer);
    this.timer = undefined;
    if (!this.live.isThere || !this.reader) return;
    const given = this.isMoved ? this.again() : this.reader.change(this.changes());
    this.forget();
    this.write(given);
  }

  private forget(): void {
    this.isMoved = false;
    this.areSpillsTouched = false;
    this.touched.clear();
  }

  private soon(): void {
    clearTimeout(this.timer);
    this.timer = setTimeout(() => this.settle(), GATHER);
  }

  // ---- listening ----------------------------------------------------------------------------------------------------

  /** @param isResult the engine's own */
  private hear(id: string, params: unknown, isResult: boolean): void {
    if (!this.reader) return;
    const change = changeOf(id);
    const { unitId, subUnitId, cellValue } = (params ?? {}) as Partial<ISetRangeValuesMutationParams>;
    if (id === SetArrayFormulaDataMutation.id) this.areSpillsTouched = true;
    else if (unitId !== undefined && unitId !== this.live.unit) return;
    else if (change === "places" || change === "meanings" || (change === "values" && !cellValue)) this.isMoved = true;
    else if (change !== "values") return;
    else this.note(subUnitId!, cellValue as Cells, isResult);
    if (!isResult && id !== SetArrayFormulaDataMutation.id) this.rounds = 0;
    if (this.isMoved || this.areSpillsTouched || this.touched.size > 0) this.soon();
  }

  private note(sheet: SheetId, cells: Cells, isResult: boolean): void {
    const name = this.nameOf(sheet);
    if (name === undefined) return;
    const there = this.matrix(sheet);
    const engines = this.engines.get(sheet);
    for (const key in cells) {
      for (const at in cells[key]) {
        const [row, column, place] = [Number(key), Number(at), placeKey(Number(key), Number(at))];
        const now = there[key]?.[at];
        const isFormula = Boolean(now?.f || now?.si);
        const isGiven = Boolean(cells[key]![at]?.f || cells[key]![at]?.si);
        if (isFormula && !isResult && (isGiven || !this.isKnownFormula(sheet, name, row, column))) this.isMoved = true;
        else if (!isFormula) engines?.delete(place);
        const isOurs = this.reader!.knows({ sheet: name, row, column });
        if ((isFormula && isOurs) || !(isOurs || this.reader!.reads({ sheet: name, column }))) continue;
        let touched = this.touched.get(sheet);
        if (!touched) this.touched.set(sheet, (touched = new Map()));
        touched.set(place, [row, column]);
      }
    }
  }

  private isKnownFormula(sheet: SheetId, name: string, row: number, column: number): boolean {
    return (
      this.reader!.knows({ sheet: name, row, column }) || Boolean(this.engines.get(sheet)?.has(placeKey(row, column)))
    );
  }

  // ---- reading the workbook ---------------------------------------------------------------------------------------

  private build(): void {
    const sheets = this.live.book.getSheets().map((sheet) => ({ id: sheet.getSheetId(), name: sheet.getName() }));
    const { todayNow: today } = this.live;
    const reader = new Reader({ sheets: sheets.map(({ name }) => name), tables: [], names: this.names(), today, ours });
    const isGivenUp = this.rounds > MOST_ROUNDS;
    if (!isGivenUp)
      for (const { id, name: sheet } of sheets)
        for (const { column, rows, text } of stretchesOf(this.live.reader(id)))
          reader.fill({ sheet, column, row: rows[0]! }, rows.at(-1)!, text, gapsIn(rows));
    for (const { id, name: sheet } of sheets) this.putValues(reader, sheet, this.live.reader(id));
    this.spills = new Map(sheets.map(({ id }) => [id, this.live.reader(id).spills()]));
    reader.work();
    this.reader = reader;
    this.engines = new Map(sheets.map(({ id, name }) => [id, this.enginesOn(name, this.live.reader(id))]));
    reenterFormulas(this.engine);
  }

  /** @returns every cell that is worked out here */
  private again(): Iterable<Place> {
    const before = this.engines;
    this.build();
    const fresh = [...this.engines].flatMap(([sheet, formulas]) => {
      const known = before.get(sheet);
      const rows = [...formulas].filter(([place, { f }]) => known?.get(place)?.f !== f).map(([, { row }]) => row);
      return rows.length === 0 ? [] : [{ sheet, startRow: rows.reduce(lesser), endRow: rows.reduce(greater) }];
    });
    if (fresh.length > 0) this.tellEngine(fresh);
    return this.reader!.known();
  }

  private names(): readonly BookName[] {
    const names = new Map(this.live.book.getSheets().map((sheet) => [sheet.getSheetId(), sheet.getName()]));
    return engineNames(this.engine, this.live.unit).map((one) => {
      const scope = one.localSheetId ?? WHOLE_WORKBOOK;
      const isToday = this.live.namesForToday.has(one.name.toLowerCase());
      const text = isToday ? "TODAY()" : refersTo(one).slice(1);
      return { name: one.name, refersTo: text, ...(scope !== WHOLE_WORKBOOK && { sheet: names.get(scope) ?? scope }) };
    });
  }

  private putValues(reader: Reader, sheet: string, cells: SheetReader): void {
    const isRead = new Map<number, boolean>();
    const reads = (column: number): boolean => {
      let known = isRead.get(column);
      if (known === undefined) isRead.set(column, (known = reader.reads({ sheet, column })));
      return known;
    };
    for (const row of cells.rows())
      for (const column of cells.columnsOf(row))
        if (reads(column)) reader.put({ sheet, row, column }, valueOf(cells.cell(row, column)));
    for (const area of cells.spills())
      for (const [row, column] of cellsOf(area))
        if (reads(column)) reader.put({ sheet, row, column }, cells.value(row, column));
  }

  private enginesOn(sheet: string, cells: SheetReader) {
    const found = new Map<string, EngineFormula & { readonly row: number; readonly column: number }>();
    for (const row of cells.rows()) {
      for (const column of cells.columnsOf(row)) {
        const cell = cells.cell(row, column)!;
        if (!(cell.f || cell.si) || this.reader!.knows({ sheet, row, column })) continue;
        const formula = this.engineFormula(sheet, cells, row, column, cell);
        if (formula) found.set(placeKey(row, column), { ...formula, row, column });
      }
    }
    return found;
  }

  private engineFormula(
    sheet: string,
    cells: SheetReader,
    row: number,
    column: number,
    { f, si }: ICellData,
  ): EngineFormula | undefined {
    if (typeof f === "string" && f.startsWith("=")) return si ? { f, si } : { f };
    const master = si ? cells.masterOf(si) : undefined;
    if (!si || !master) return undefined;
    // a group hangs together only where the engine sees the cell that it hangs on
    if (this.reader!.knows({ sheet, row: master.row, column: master.column }))
      return { f: cells.formula(row, column)! };
    return { f: master.text, si, x: column - master.column, y: row - master.row };
  }

  private changes() {
    const cells = [...this.touched].flatMap(([id, places]) => {
      const [sheet, there] = [this.nameOf(id)!, this.live.reader(id)];
      return [...places.values()].map(([row, column]) => ({ sheet, row, column, value: there.value(row, column) }));
    });
    return this.areSpillsTouched ? [...cells, ...this.spilled()] : cells;
  }

  /** What formulas of the engine have filled, and what they have left. */
  private *spilled(): Generator<Place & { readonly value: Value }> {
    for (const book of this.live.book.getSheets()) {
      const id = book.getSheetId();
      const [sheet, there] = [book.getName(), this.live.reader(id)];
      const now = there.spills();
      for (const area of [...(this.spills.get(id) ?? []), ...now])
        for (const [row, column] of cellsOf(area))
          if (this.reader!.reads({ sheet, column }) && !this.reader!.knows({ sheet, row, column }))
            yield { sheet, row, column, value: there.value(row, column) };
      this.spills.set(id, now);
    }
  }

  private nameOf(sheet: SheetId): string | undefined {
    return this.live.book.getSheetBySheetId(sheet)?.getName();
  }

  private matrix(sheet: SheetId): Matrix {
    return this.live.book.getSheetBySheetId(sheet)!.getCellMatrix().getMatrix() as Matrix;
  }

  // ---- results ----------------------------------------------------------------------------------------------------

  /** Results that are not in their cells yet, by sheet. */
  private differences(places: Iterable<Place>): ReadonlyMap<SheetId, Record<number, Record<number, ICellData>>> {
    const found = new Map<SheetId, Record<number, Record<number, ICellData>>>();
    const sheets = new Map(
      this.live.book.getSheets().map((sheet) => {
        const id = sheet.getSheetId();
        return [sheet.getName(), { id, there: this.matrix(id) }] as const;
      }),
    );
    for (const place of places) {
      const { id, there } = sheets.get(place.sheet)!;
      const { row, column } = place;
      const value = this.reader!.at(place);
      const before = there[row]?.[column];
      if (!before || sameValue(fileValue(valueOf(before)), fileValue(value))) continue;
      let cells = found.get(id);
      if (!cells) found.set(id, (cells = {}));
      (cells[row] ??= {})[column] = gridValue(value instanceof CellError ? { error: value.code } : value);
    }
    return found;
  }

  private write(places: Iterable<Place>): void {
    const commands = this.engine.injector.get(ICommandService);
    const { unit: unitId } = this.live;
    const found = this.differences(places);
    if (found.size === 0) return;
    this.rounds += 1;
    this.isWriting = true;
    try {
      for (const [sheet, cells] of found)
        commands.syncExecuteCommand(
          SetRangeValuesMutation.id,
          { unitId, subUnitId: sheet, cellValue: cells },
          { onlyLocal: true, fromFormula: true, applyFormulaCalculationResult: true },
        );
    } finally {
      this.isWriting = false;
    }
    this.tellEngine(
      [...found].map(([sheet, cells]) => {
        const rows = Object.keys(cells).map(Number);
        return { sheet, startRow: rows.reduce(lesser), endRow: rows.reduce(greater) };
      }),
    );
    if (this.rounds > MOST_ROUNDS) this.anew();
  }

  // ---- the engine -------------------------------------------------------------------------------------------------

  private forEngine(): { readonly unitId: string; readonly formulas: EngineFormulas } | undefined {
    if (!this.reader || !this.live.isThere) return undefined;
    this.settle();
    const formulas: EngineFormulas = {};
    for (const [sheet, own] of this.engines) {
      const rows: EngineFormulas[string] = (formulas[sheet] = {});
      for (const { row, column, ...formula } of own.values()) (rows[row] ??= {})[column] = formula;
    }
    return { unitId: this.live.unit, formulas };
  }

  /** What the engine works out of these rows is out of date. */
  private tellEngine(
    rows: readonly { readonly sheet: SheetId; readonly startRow: number; readonly endRow: number }[],
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
}

const lesser = (one: number, other: number): number => Math.min(one, other);
const greater = (one: number, other: number): number => Math.max(one, other);

function* cellsOf(area: Area): Generator<readonly [row: number, column: number]> {
  for (let row = area.top; row < bottom(area); row++)
    for (let column = area.left; column < right(area); column++) yield [row, column];
}
