/**
 * Results that the file came with and that nobody here can work out anew (another add-in's function, an old array
 * formula, a data table): as soon as a cell that they read holds something else, they are no results any more. They
 * become #N/A, in the grid and in the file, until a program that knows the formula works it out.
 *
 * Which cells hold something else is not looked for: every change of a cell is heard. Only where cells have moved, or
 * formulas spill, all of them are compared with the file.
 */
import { CommandType, ICommandService, type ICellData } from "@univerjs/core";
import { SetArrayFormulaDataMutation, type ISetArrayFormulaDataMutationParams } from "@univerjs/engine-formula";
import { SetRangeValuesMutation, type ISetRangeValuesMutationParams } from "@univerjs/sheets";
import { CellError } from "../../../../src/worksheet/error";
import { bottom, right } from "../../area";
import { parseRange, type CellValue, type PackageCell } from "../../package";
import type { Area, SheetId, Value } from "../../port";
import type { Engine } from "../engine";
import { inputsOf, namesBySpelling, type Input } from "../formulas/inputs";
import type { Readers } from "../formulas/readable";
import type { BookNow } from "../book/book-now";
import { changeOf } from "../by-hand/commands";
import { gridValue } from "../open/cells";
import { isDrawn } from "../open/extent";
import { valueOf } from "../book/sheet-reader";
import { openingColumnsNow } from "../book/tables";
import { placeKey } from "./sheet-edits";
import { fileValue, sameResult } from "./values";

const NOT_KNOWN = "#N/A";

interface Kept {
  readonly sheet: SheetId;
  readonly sheetName: string;
  readonly cell: PackageCell;
  /** All cells that hold results of this one formula. */
  readonly area: Area;
}

interface Reading {
  readonly kept: Kept;
  /** Null where its text does not tell. */
  readonly inputs: readonly Input[] | null;
}

type CellRows = Record<number, Record<number, ICellData>>;

/** Cells of a sheet that hold something else than the file does. */
interface Changed {
  /** Rows in order, by column. */
  readonly cells: Map<number, number[]>;
  /** Not by results alone. */
  readonly isTyped: boolean;
}

type Stored = Pick<PackageCell, "value" | "type">;

const storedOf = (cell: Stored | undefined): CellValue =>
  cell ? fileValue(valueOf(gridValue(cell.value, cell.type))) : null;

type Cell = readonly [row: number, column: number];

/** Cells that were changed, by sheet and place. */
type Touched = Map<SheetId, Map<string, Cell>>;

function areaOf({ row, column, formula }: PackageCell): Area {
  const range = parseRange(formula?.ref ?? "");
  const isMany = formula?.kind === "dataTable" || formula?.kind === "array";
  if (!range || !isMany) return { top: row - 1, left: column - 1, rows: 1, columns: 1 };
  const { top, left, bottom, right } = range;
  return { top: top - 1, left: left - 1, rows: bottom - top + 1, columns: right - left + 1 };
}

export class OutdatedResults {
  /** By sheet: places of cells that this page has made #N/A. */
  private readonly marked = new Map<SheetId, Set<string>>();
  private kept: readonly Kept[] | undefined;
  private touched: Touched | "anywhere" = new Map();

  constructor(
    private readonly engine: Engine,
    private readonly live: BookNow,
  ) {
    engine.injector.get(ICommandService).onCommandExecuted(({ id, type, params }) => {
      if (type === CommandType.MUTATION) this.hear(id, params);
    });
  }

  /** Another workbook stands in the grid. */
  begin(): void {
    this.marked.clear();
    this.kept = undefined;
    this.touched = new Map();
  }

  private hear(id: string, params: unknown): void {
    const { touched } = this;
    if (touched === "anywhere") return;
    if (id === SetArrayFormulaDataMutation.id) {
      const { arrayFormulaRange = {} } = (params ?? {}) as Partial<ISetArrayFormulaDataMutationParams>;
      const sheets = Object.values(arrayFormulaRange).flatMap((book) => Object.values(book ?? {}));
      if (sheets.some((rows) => Object.keys(rows ?? {}).length > 0)) this.touched = "anywhere";
      return;
    }
    const { subUnitId, cellValue } = (params ?? {}) as Partial<ISetRangeValuesMutationParams>;
    const change = changeOf(id);
    if (!["values", "places", "meanings"].includes(change)) return;
    if (change !== "values" || !cellValue) {
      this.touched = "anywhere";
      return;
    }
    let cells = touched.get(subUnitId!);
    if (!cells) touched.set(subUnitId!, (cells = new Map()));
    for (const row in cellValue)
      for (const column in cellValue[row as never] as object)
        cells.set(placeKey(Number(row), Number(column)), [Number(row), Number(column)]);
  }

  /** Cells of a sheet that may hold something else than the file does. */
  private *candidates(sheet: SheetId, sheetName: string): Generator<Cell> {
    if (this.touched !== "anywhere") {
      yield* this.touched.get(sheet)?.values() ?? [];
      // worked out before anybody could hear of it
      for (const key of this.live.atOpening.get(sheet)?.results.keys() ?? [])
        yield key.split(" ").map(Number) as unknown as Cell;
      return;
    }
    const reader = this.live.reader(sheet);
    for (const row of reader.rows()) for (const column of reader.columnsOf(row)) yield [row, column];
    // what is not drawn holds what it held
    const { opened, readers } = this.live.bookFacts.file!;
    const extent = readers.extents?.get(sheetName);
    const { rowCount, rowNumbers, firstCells, columns } = opened.store(sheetName).data;
    for (let place = 0; place < rowCount; place++) {
      for (let cell = firstCells[place]!; cell < firstCells[place + 1]!; cell++) {
        const [row, column] = [rowNumbers[place]! - 1, columns[cell]! - 1];
        if (isDrawn(extent, row, column) && reader.cell(row, column) === undefined) yield [row, column];
      }
    }
  }

  of(sheet: SheetId): ReadonlySet<string> {
    return this.marked.get(sheet) ?? new Set();
  }

  /**
   * Marks what is out of date by what the cells hold now, and gives back its result to what is not any more.
   * @returns whether any cell holds something else now, so that what hangs on it is to be worked out
   */
  mark(): boolean {
    if (this.live.bookFacts.keptAsValue.size === 0) return false;
    const { file } = this.live.bookFacts;
    if (!file) return false;
    this.kept ??= this.findKept();
    const readers: Readers = { ...file.readers, tables: this.live.tables().map(openingColumnsNow) };
    const names = namesBySpelling(file.opened.definedNames);
    const readings = this.kept.map((kept): Reading => {
      const { sheetName, cell } = kept;
      const { kind, text } = cell.formula!;
      const standing = { sheetName, row: cell.row - 1, column: cell.column - 1 };
      return { kept, inputs: kind === "dataTable" ? null : inputsOf(text, standing, readers, names) };
    });
    const outdated = this.outdatedOf(readings);
    const written = new Map<SheetId, CellRows>();
    for (const kept of this.kept) this.put(kept, outdated.has(kept), written);
    for (const [subUnitId, cellValue] of written) {
      const params = { unitId: this.live.unit, subUnitId, cellValue };
      this.engine.injector
        .get(ICommandService)
        .syncExecuteCommand(SetRangeValuesMutation.id, params, { fromFormula: true });
    }
    return written.size > 0;
  }

  /** Those that read what was changed, and those that read one of these. */
  private outdatedOf(readings: readonly Reading[]): ReadonlySet<Kept> {
    const changed = new Map<string, Changed>();
    const changedOn = (sheetName: string): Changed => {
      const key = sheetName.toLowerCase();
      const known = changed.get(key) ?? this.changedCells(sheetName);
      changed.set(key, known);
      return known;
    };
    const isAnyTyped = this.live.book.getSheets().some((sheet) => changedOn(sheet.getName()).isTyped);
    const outdated = new Set<Kept>();
    // they read each other mostly downwards or upwards: a round goes both ways
    const bothWays = [...readings, ...[...readings].reverse()];
    for (let before = -1; before !== outdated.size;) {
      before = outdated.size;
      for (const { kept, inputs } of bothWays) {
        if (outdated.has(kept)) continue;
        const isOne = inputs ? inputs.some((input) => isChanged(changedOn(input.sheetName), input)) : isAnyTyped;
        if (!isOne) continue;
        outdated.add(kept);
        add(changedOn(kept.sheetName), kept.area);
      }
    }
    return outdated;
  }

  private findKept(): readonly Kept[] {
    const { keptAsValue, sheets, file } = this.live.bookFacts;
    return sheets.flatMap(({ id, name }): Kept[] => {
      const places = new Set(keptAsValue.get(id)?.map(([row, column]) => placeKey(row, column)));
      if (places.size === 0) return [];
      const store = file!.opened.store(name);
      const { rowCount, rowNumbers, firstCells, formulaOf, columns } = store.data;
      const kept: Kept[] = [];
      // all formulas, in order: those of a group follow from its first one
      const groups = store.groupTexts();
      for (let place = 0; place < rowCount; place++) {
        for (let at = firstCells[place]!; at < firstCells[place + 1]!; at++) {
          if (formulaOf[at] === 0) continue;
          const cell = store.cell(at, rowNumbers[place]!, groups);
          if (places.has(placeKey(cell.row - 1, columns[at]! - 1)))
            kept.push({ sheet: id, sheetName: name, cell, area: areaOf(cell) });
        }
      }
      return kept;
    });
  }

  /** What the file holds in a cell; undefined where it mentions none. */
  private inFile(sheetName: string): (row: number, column: number) => Stored | undefined {
    const store = this.live.bookFacts.file!.opened.store(sheetName);
    return (row, column) => {
      const cell = store.find(row + 1, column + 1);
      return cell < 0 ? undefined : { value: store.value(cell), type: store.type(cell) };
    };
  }

  /** What a cell holds now against what the file holds; what this page has made #N/A is to be found out anew. */
  private changedCells(sheetName: string): Changed {
    const sheet = this.live.bookFacts.sheets.find((one) => one.name.toLowerCase() === sheetName.toLowerCase());
    if (sheet?.kind !== "worksheet") return { cells: new Map(), isTyped: false };
    const reader = this.live.reader(sheet.id);
    const file = this.inFile(sheet.name);
    const marked = this.of(sheet.id);
    const changed = new Map<number, Set<number>>();
    let isTyped = false;
    for (const [row, column] of this.candidates(sheet.id, sheet.name)) {
      const now = reader.value(row, column);
      const isOurMark = marked.has(placeKey(row, column)) && isMark(now);
      if (isOurMark || sameResult(fileValue(now), storedOf(file(row, column)))) continue;
      isTyped ||= reader.formula(row, column) === null && !reader.spillAt(row, column);
      const rows = changed.get(column);
      if (rows) rows.add(row);
      else changed.set(column, new Set([row]));
    }
    const inOrder = ([column, rows]: readonly [number, ReadonlySet<number>]) =>
      [column, [...rows].sort((one, other) => one - other)] as const;
    return { cells: new Map([...changed].map(inOrder)), isTyped };
  }

  /** @param written gets the cells of its results that are to hold something else */
  private put({ sheet, sheetName, area }: Kept, isOutdated: boolean, written: Map<SheetId, CellRows>): void {
    const reader = this.live.reader(sheet);
    const file = this.inFile(sheetName);
    const marked = this.marked.get(sheet) ?? new Set<string>();
    this.marked.set(sheet, marked);
    const cells: CellRows = written.get(sheet) ?? {};
    for (let row = area.top; row < area.top + area.rows; row++) {
      for (let column = area.left; column < area.left + area.columns; column++) {
        const key = placeKey(row, column);
        const now = reader.value(row, column);
        const stored = file(row, column);
        const isMarked = marked.has(key) && isMark(now);
        // somebody typed over it: it is that person's now
        if (reader.formula(row, column) !== null || (!isMarked && !sameResult(fileValue(now), storedOf(stored)))) {
          marked.delete(key);
          continue;
        }
        if (isOutdated === isMarked) continue;
        if (isOutdated) marked.add(key);
        else marked.delete(key);
        const content = isOutdated ? gridValue({ error: NOT_KNOWN }) : gridValue(stored?.value ?? null, stored?.type);
        (cells[row] ??= {})[column] = { v: null, t: null, ...content };
      }
    }
    if (Object.keys(cells).length > 0) written.set(sheet, cells);
  }
}

const isMark = (value: Value): boolean => value instanceof CellError && value.code === NOT_KNOWN;

function add({ cells }: Changed, area: Area): void {
  for (let column = area.left; column < right(area); column++) {
    const rows = cells.get(column) ?? [];
    cells.set(column, rows);
    for (let row = area.top; row < bottom(area); row++) {
      const place = firstFrom(rows, row);
      if (rows[place] !== row) rows.splice(place, 0, row);
    }
  }
}

function isChanged({ cells }: Changed, { area }: Input): boolean {
  for (const [column, rows] of cells) {
    if (column < area.left || column >= right(area)) continue;
    const first = firstFrom(rows, area.top);
    if (first < rows.length && rows[first]! < bottom(area)) return true;
  }
  return false;
}

/** The place of the first number that is at least so much. */
function firstFrom(rows: readonly number[], least: number): number {
  let [from, to] = [0, rows.length];
  while (from < to) {
    const middle = (from + to) >> 1;
    if (rows[middle]! < least) from = middle + 1;
    else to = middle;
  }
  return from;
}
