/**
 * Results that the file came with and that nobody here can work out anew (another add-in's function, an old array
 * formula, a data table): as soon as a cell that they read holds something else, they are no results any more. They
 * become #N/A, in the grid and in the file, until a program that knows the formula works it out.
 */
import { ICommandService, type ICellData } from "@univerjs/core";
import { SetRangeValuesMutation } from "@univerjs/sheets";
import { CellError } from "../../../../src/worksheet/error";
import { bottom, right } from "../../area";
import { parseRange, type CellValue, type PackageCell } from "../../package";
import type { Area, SheetId } from "../../port";
import type { Engine } from "../engine";
import { inputsOf, type Input } from "../formulas/inputs";
import type { Readers } from "../formulas/readable";
import type { LiveBook } from "../liveBook";
import { gridValue } from "../open/cells";
import { isDrawn } from "../open/extent";
import { valueOf } from "../sheetReader";
import { openingColumnsNow } from "../tables";
import { placeKey } from "./sheetEdits";
import { fileValue, sameResult } from "./values";

const NOT_KNOWN = "#N/A";

interface Kept {
  readonly sheet: SheetId;
  readonly sheetName: string;
  readonly cell: PackageCell;
  /** All cells that hold results of this one formula. */
  readonly area: Area;
}

/** Cells of a sheet that hold something else than the file does. */
interface Changed {
  /** Rows in order, by column. */
  readonly cells: ReadonlyMap<number, readonly number[]>;
  /** Not by results alone. */
  readonly isTyped: boolean;
}

const storedOf = (cell: PackageCell | undefined): CellValue =>
  cell ? fileValue(valueOf(gridValue(cell.value, cell.type))) : null;

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
  private readonly files = new Map<string, ReadonlyMap<string, PackageCell>>();
  private kept: readonly Kept[] | undefined;

  constructor(
    private readonly engine: Engine,
    private readonly live: LiveBook,
  ) {}

  /** Another workbook stands in the grid. */
  begin(): void {
    this.marked.clear();
    this.files.clear();
    this.kept = undefined;
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
    const changed = new Map<string, Changed>();
    const changedOn = (sheetName: string): Changed => {
      const known = changed.get(sheetName) ?? this.changedCells(sheetName);
      changed.set(sheetName, known);
      return known;
    };
    const isAnyTyped = () => this.live.book.getSheets().some((sheet) => changedOn(sheet.getName()).isTyped);
    const isOutdated = ({ sheetName, cell }: Kept): boolean => {
      const formula = cell.formula!;
      const standing = { sheetName, row: cell.row - 1, column: cell.column - 1 };
      const inputs =
        formula.kind === "dataTable" ? null : inputsOf(formula.text, standing, readers, file.opened.definedNames);
      return inputs ? inputs.some((input) => isChanged(changedOn(input.sheetName), input)) : isAnyTyped();
    };
    const written = this.kept.map((kept) => this.put(kept, isOutdated(kept)));
    return written.includes(true);
  }

  private findKept(): readonly Kept[] {
    const { keptAsValue, sheets } = this.live.bookFacts;
    return sheets.flatMap(({ id, name }) =>
      (keptAsValue.get(id) ?? []).map(([row, column]): Kept => {
        const cell = this.inFile(name).get(placeKey(row, column))!;
        return { sheet: id, sheetName: name, cell, area: areaOf(cell) };
      }),
    );
  }

  private inFile(sheetName: string): ReadonlyMap<string, PackageCell> {
    const known = this.files.get(sheetName);
    if (known) return known;
    const cells = new Map<string, PackageCell>();
    for (const cell of this.live.bookFacts.file!.opened.cells(sheetName))
      cells.set(placeKey(cell.row - 1, cell.column - 1), cell);
    this.files.set(sheetName, cells);
    return cells;
  }

  /** What a cell holds now against what the file holds. */
  private changedCells(sheetName: string): Changed {
    const sheet = this.live.bookFacts.sheets.find((one) => one.name.toLowerCase() === sheetName.toLowerCase());
    if (sheet?.kind !== "worksheet") return { cells: new Map(), isTyped: false };
    const reader = this.live.reader(sheet.id);
    const file = this.inFile(sheet.name);
    const marked = this.of(sheet.id);
    const changed = new Map<number, number[]>();
    let isTyped = false;
    const look = (row: number, column: number): void => {
      const key = placeKey(row, column);
      if (sameResult(fileValue(reader.value(row, column)), storedOf(file.get(key)))) return;
      isTyped ||= !marked.has(key) && reader.formula(row, column) === null && !reader.spillAt(row, column);
      const rows = changed.get(column);
      if (rows) rows.push(row);
      else changed.set(column, [row]);
    };
    for (const row of reader.rows()) for (const column of reader.columnsOf(row)) look(row, column);
    // what is not drawn holds what it held
    const extent = this.live.bookFacts.file?.readers.extents?.get(sheet.name);
    for (const { row, column } of file.values())
      if (isDrawn(extent, row - 1, column - 1) && reader.cell(row - 1, column - 1) === undefined)
        look(row - 1, column - 1);
    for (const rows of changed.values()) rows.sort((one, other) => one - other);
    return { cells: changed, isTyped };
  }

  /** @returns whether a cell of its results holds something else now */
  private put({ sheet, sheetName, area }: Kept, isOutdated: boolean): boolean {
    const reader = this.live.reader(sheet);
    const file = this.inFile(sheetName);
    const marked = this.marked.get(sheet) ?? new Set<string>();
    this.marked.set(sheet, marked);
    const cellValue: Record<number, Record<number, ICellData>> = {};
    for (let row = area.top; row < area.top + area.rows; row++) {
      for (let column = area.left; column < area.left + area.columns; column++) {
        const key = placeKey(row, column);
        const now = reader.value(row, column);
        const stored = file.get(key);
        const isMark = marked.has(key) && now instanceof CellError && now.code === NOT_KNOWN;
        // somebody typed over it: it is that person's now
        if (reader.formula(row, column) !== null || (!isMark && !sameResult(fileValue(now), storedOf(stored)))) {
          marked.delete(key);
          continue;
        }
        if (isOutdated === isMark) continue;
        if (isOutdated) marked.add(key);
        else marked.delete(key);
        const content = isOutdated ? gridValue({ error: NOT_KNOWN }) : gridValue(stored?.value ?? null, stored?.type);
        (cellValue[row] ??= {})[column] = { v: null, t: null, ...content };
      }
    }
    if (Object.keys(cellValue).length === 0) return false;
    const params = { unitId: this.live.unit, subUnitId: sheet, cellValue };
    this.engine.injector
      .get(ICommandService)
      .syncExecuteCommand(SetRangeValuesMutation.id, params, { fromFormula: true });
    return true;
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
