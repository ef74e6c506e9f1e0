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
import { Reader, type BookName, type Place, type ReaderBook } from "../../../../src/formula/reader/reader";
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
import { gapsIn, stretchesOf, type Stretch } from "./stretches";

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
  private readonly engines = new Map<
    SheetId,
    Map<string, EngineFormula & { readonly row: number; readonly column: number }>
  >();
  private readonly spills = new Map<SheetId, readonly Area[]>();
  private readonly stretches = new Map<SheetId, readonly Stretch[]>();
  /** Formulas, names or the places of cells may be other ones now. */
  private isMoved = false;
  /** On these sheets, as far as it is about cells. */
  private readonly moved = new Set<SheetId>();
  /** Sheets on which something was typed over formulas: what `stretches` says of them is not so any more. */
  private readonly overtyped = new Set<SheetId>();
  /** Sheets, or today, may be other ones: all is read anew. */
  private isAnew = false;
  /** The sheets that were read, in order and by name. */
  private sheetsRead = "";
  private areSpillsTouched = false;
  private readonly touched = new Map<SheetId, Map<string, readonly [row: number, column: number]>>();
  private rounds = 0;
  private isWriting = false;
  private timer: ReturnType<typeof setTimeout> | undefined;
  private isHeld = false;

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
    return this.isHeld || this.timer !== undefined;
  }

  /** A change comes in slice by slice: it is worked out once, when all of it is there. */
  hold(): void {
    this.settle();
    this.isHeld = true;
  }

  release(): void {
    this.isHeld = false;
    if (this.isMoved || this.areSpillsTouched || this.touched.size > 0) this.soon();
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
    this.isAnew = true;
    this.soon();
  }

  /** What was changed is worked out and stands in its cells. */
  settle(): void {
    if (this.timer === undefined || this.isHeld) return;
    clearTimeout(this.timer);
    this.timer = undefined;
    if (!this.live.isThere || !this.reader) return;
    const given = this.isMoved ? this.again() : this.reader.change(this.changes());
    this.forget();
    this.write(given);
  }

  private forget(): void {
    this.isMoved = false;
    this.isAnew = false;
    this.moved.clear();
    this.areSpillsTouched = false;
    this.touched.clear();
  }

  private soon(): void {
    clearTimeout(this.timer);
    if (this.isHeld) return;
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
    else if (change === "places" || (change === "values" && !cellValue)) this.hearMove(subUnitId);
    else if (change === "meanings") this.isMoved = true;
    else if (change !== "values") return;
    else this.note(subUnitId!, cellValue as Cells, isResult);
    if (!isResult && id !== SetArrayFormulaDataMutation.id) this.rounds = 0;
    if (this.isMoved || this.areSpillsTouched || this.touched.size > 0) this.soon();
  }

  /** @param sheet undefined where it is about sheets, or about two of them */
  private hearMove(sheet: SheetId | undefined): void {
    this.isMoved = true;
    if (sheet === undefined || !this.stretches.has(sheet)) this.isAnew = true;
    else this.moved.add(sheet);
  }

  private note(sheet: SheetId, cells: Cells, isResult: boolean): void {
    const name = this.nameOf(sheet);
    // a sheet that has just come in is read with all others
    if (name === undefined || (this.isAnew && !this.stretches.has(sheet))) return;
    const there = this.matrix(sheet);
    const engines = this.engines.get(sheet);
    for (const key in cells) {
      for (const at in cells[key]) {
        const [row, column, place] = [Number(key), Number(at), placeKey(Number(key), Number(at))];
        const now = there[key]?.[at];
        const isFormula = Boolean(now?.f || now?.si);
        const isGiven = Boolean(cells[key]![at]?.f || cells[key]![at]?.si);
        if (isFormula && !isResult && (isGiven || !this.isKnownFormula(sheet, name, row, column))) this.hearMove(sheet);
        const isOurs = this.reader!.knows({ sheet: name, row, column });
        if (!isFormula && (engines?.delete(place) || isOurs)) this.overtyped.add(sheet);
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

  private sheets(): readonly SheetNow[] {
    return this.live.book.getSheets().map((sheet) => ({ id: sheet.getSheetId(), name: sheet.getName() }));
  }

  private readerBook(sheets: readonly SheetNow[]): ReaderBook {
    return { sheets: sheets.map(({ name }) => name), tables: [], names: this.names(), today: this.live.todayNow, ours };
  }

  /** Everything, for the first time or because what it was read by is another. */
  private build(): void {
    const sheets = this.sheets();
    const reader = new Reader(this.readerBook(sheets));
    this.stretches.clear();
    this.engines.clear();
    this.spills.clear();
    const isGivenUp = this.rounds > MOST_ROUNDS;
    if (!isGivenUp) this.fill(reader, sheets, sheets);
    this.sheetsRead = isGivenUp ? "" : saidOf(sheets);
    for (const sheet of sheets) this.putValues(reader, sheet, (column) => reader.reads({ sheet: sheet.name, column }));
    reader.work();
    this.reader = reader;
    this.noteEngines(sheets);
  }

  /**
   * What has moved, and what hangs on it.
   * @returns the cells that may show something else than they give
   */
  private renew(): readonly Place[] {
    const [reader, sheets] = [this.reader!, this.sheets()];
    const isMoved = ({ id }: SheetNow): boolean =>
      [this.moved, this.touched, this.overtyped].some((sheets) => sheets.has(id)) || this.hasSpills(id);
    const moved = sheets.filter(isMoved);
    const unknown = unknownTo(reader);
    reader.renew(
      this.readerBook(sheets),
      moved.map(({ name }) => name),
    );
    this.fill(reader, sheets, moved);
    for (const sheet of sheets) {
      const place = (column: number) => ({ sheet: sheet.name, column });
      if (moved.includes(sheet)) this.putValues(reader, sheet, (column) => reader.reads(place(column)));
      else this.putValues(reader, sheet, (column) => reader.isNewlyRead(place(column)));
    }
    const given = reader.workOn();
    this.noteEngines(unknownTo(reader) === unknown ? moved : sheets);
    const names = new Set(moved.map(({ name }) => name));
    return [...given, ...[...reader.known()].filter(({ sheet }) => names.has(sheet))];
  }

  private hasSpills(sheet: SheetId): boolean {
    return this.areSpillsTouched && [...(this.spills.get(sheet) ?? []), ...this.live.reader(sheet).spills()].length > 0;
  }

  /** @param read whose formulas are read from their cells; those of others are known */
  private fill(reader: Reader, sheets: readonly SheetNow[], read: readonly SheetNow[]): void {
    for (const { id } of read) {
      this.stretches.set(id, stretchesOf(this.live.reader(id)));
      this.overtyped.delete(id);
    }
    for (const { id, name: sheet } of sheets)
      for (const { column, rows, text } of this.stretches.get(id)!)
        reader.fill({ sheet, column, row: rows[0]! }, rows.at(-1)!, text, gapsIn(rows));
  }

  private noteEngines(sheets: readonly SheetNow[]): void {
    for (const { id, name } of sheets) {
      const cells = this.live.reader(id);
      this.spills.set(id, cells.spills());
      this.engines.set(id, this.enginesOn(name, cells));
    }
    reenterFormulas(this.engine);
  }

  /** @returns cells that are worked out here and may show something else */
  private again(): Iterable<Place> {
    const before = new Map(this.engines);
    const isAnew = this.isAnew || this.rounds > MOST_ROUNDS || this.sheetsRead !== saidOf(this.sheets());
    if (isAnew) this.build();
    const places = isAnew ? this.reader!.known() : this.renew();
    const fresh = [...this.engines].flatMap(([sheet, formulas]) => {
      const known = before.get(sheet);
      if (known === formulas) return [];
      const rows = [...formulas].filter(([place, { f }]) => known?.get(place)?.f !== f).map(([, { row }]) => row);
      return rows.length === 0 ? [] : [{ sheet, startRow: rows.reduce(lesser), endRow: rows.reduce(greater) }];
    });
    if (fresh.length > 0) this.tellEngine(fresh);
    return places;
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

  private putValues(reader: Reader, { id, name: sheet }: SheetNow, isWanted: (column: number) => boolean): void {
    const cells = this.live.reader(id);
    const known = new Map<number, boolean>();
    const wants = (column: number): boolean => {
      let is = known.get(column);
      if (is === undefined) known.set(column, (is = isWanted(column)));
      return is;
    };
    for (const row of cells.rows())
      for (const column of cells.columnsOf(row))
        if (wants(column)) reader.put({ sheet, row, column }, valueOf(cells.cell(row, column)));
    for (const area of cells.spills())
      for (const [row, column] of cellsOf(area))
        if (wants(column)) reader.put({ sheet, row, column }, cells.value(row, column));
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

interface SheetNow {
  readonly id: SheetId;
  readonly name: string;
}

const saidOf = (sheets: readonly SheetNow[]): string => JSON.stringify(sheets.map(({ id, name }) => [id, name]));

/** Where formulas begin that the reader does not know. */
const unknownTo = (reader: Reader): string =>
  reader.unknown.map(({ sheet, row, column }) => `${sheet}!${row},${column}`).join();

const lesser = (one: number, other: number): number => Math.min(one, other);
const greater = (one: number, other: number): number => Math.max(one, other);

function* cellsOf(area: Area): Generator<readonly [row: number, column: number]> {
  for (let row = area.top; row < bottom(area); row++)
    for (let column = area.left; column < right(area); column++) yield [row, column];
}
