/** One worksheet: the cells as the file holds them against the cells as they stand, told as edits of the package. */
import type { Styles } from "@univerjs/core";
import {
  addressOf,
  rangeText,
  type CellEdit,
  type CellValue,
  type OpenedWorkbook,
  type Sliced,
  type StyleEdit,
} from "../../package";
import type { Area } from "../../port";
import { bottom, contains } from "../../area";
import { ByRow } from "../../package/by-row";
import type { Readers } from "../formulas/readable";
import { isDrawn, type Extent } from "../open/extent";
import { gridValue } from "../open/cells";
import type { OriginStyle } from "../open/styles";
import { valueOf, type SheetReader } from "../book/sheet-reader";
import { isFormatted } from "../open/style-names";
import { formulasInFile, type FileFormulas } from "./file-formulas";
import { lookOf } from "./looks";
import { fileValue, isFault, sameResult, sameValue } from "./values";
import type { TableGeometry } from "../formulas/structured";

/** What the engine had made of a sheet right after opening, by place: whatever is still so, nobody changed. */
export interface OpeningResults {
  /** Results that differed from the file's. */
  readonly results: ReadonlyMap<string, CellValue>;
  /** What spilled, by the place of its formula. */
  readonly spills: ReadonlyMap<string, string>;
}

export interface SheetSource {
  readonly opened: OpenedWorkbook;
  /** As the file calls it. */
  readonly sheetName: string;
  readonly readers: Readers;
  readonly styles: Readonly<Record<string, OriginStyle>>;
  readonly reader: SheetReader;
  readonly gridStyles: Styles;
  readonly atOpening: OpeningResults;
  /** Tables of this sheet, as they stand now: formulas of theirs keep their structured form. */
  readonly tables: readonly TableGeometry[];
  /** Cells that a table edit writes. */
  readonly isWrittenElsewhere: (row: number, column: number) => boolean;
  /** Cells whose formula only the file holds and whose result is no more (outdated.ts). */
  readonly outdated: ReadonlySet<string>;
  /** Whether a formula (with "=") could not be read by the program that opens the file. */
  readonly isMalformed: (formula: string) => boolean;
}

export interface SheetDifference {
  readonly cells: Map<string, CellEdit>;
  /** Results that were other ones than the file's right at opening, by the calendar's doing: to be written with the rest. */
  readonly renewed: Map<string, CellEdit>;
  /** Addresses whose formula only the file holds: their results stay as they came. */
  readonly kept: string[];
  /** The same where what they read is another now. */
  readonly outdated: string[];
  /** Addresses of formulas that are none: they are written as texts. */
  readonly malformed: string[];
  /** Addresses whose look cannot be saved as it is. */
  readonly lossyLooks: string[];
}

/** A spill's reach and results, for comparing. */
export function spillText(reader: SheetReader, { top, left, rows, columns }: Area): string {
  const values: CellValue[] = [];
  for (let row = top; row < top + rows; row++) {
    for (let column = left; column < left + columns; column++) values.push(fileValue(reader.value(row, column)));
  }
  return JSON.stringify([rows, columns, values]);
}

export const placeKey = (row: number, column: number): string => `${row} ${column}`;

function columnStyles(opened: OpenedWorkbook, sheetName: string): (column: number) => number {
  const spans = opened.layout(sheetName).columns.filter((span) => span.styleIndex !== undefined);
  return (column) => spans.find((span) => column >= span.first && column <= span.last)?.styleIndex ?? 0;
}

const ROWS_AT_A_TIME = 200;
/** The share of the work that reading the file's formulas takes. */
const FORMS = 0.3;

const byRow = (areas: readonly Area[]): ByRow<Area> =>
  new ByRow(
    areas,
    ({ top }) => top,
    (area) => bottom(area) - 1,
  );

const rowsOf = ({ top, rows }: Area): readonly number[] => Array.from({ length: rows }, (_, r) => top + r);

/** In slices: a sign of life now and then, the share that is done. */
export function* sheetDifference(source: SheetSource): Sliced<SheetDifference> {
  const reading = formulasInFile(source);
  let read = reading.next();
  for (; !read.done; read = reading.next()) yield FORMS * read.value;
  const comparison = new SheetComparison(source, read.value);
  const rows = comparison.rows();
  for (const [at, row] of rows.entries()) {
    comparison.compareRow(row);
    if (at % ROWS_AT_A_TIME === 0) yield FORMS + ((1 - FORMS) * (at + 1)) / rows.length;
  }
  return comparison.difference;
}

/** What the file holds of a sheet against what stands there now, cell by cell. Rows and columns count from 0. */
class SheetComparison {
  readonly difference: SheetDifference = {
    cells: new Map(),
    renewed: new Map(),
    kept: [],
    outdated: [],
    malformed: [],
    lossyLooks: [],
  };
  private readonly store: ReturnType<OpenedWorkbook["store"]>;
  private readonly extent: Extent | undefined;
  private readonly styleOfColumn: (column: number) => number;
  private readonly malformedForms = new Map<string, boolean>();
  /** What spills in the grid, */
  private readonly spilling: readonly Area[];
  private readonly spills: ByRow<Area>;
  /** and in the file, by row and by the place of the formula. */
  private readonly arrays: ByRow<Area>;
  private readonly arrayAt: ReadonlyMap<string, Area>;
  private readonly untouched: ByRow<Area>;

  constructor(
    private readonly source: SheetSource,
    private readonly file: FileFormulas,
  ) {
    const { opened, sheetName, reader } = source;
    this.store = opened.store(sheetName);
    this.extent = source.readers.extents?.get(sheetName);
    this.styleOfColumn = columnStyles(opened, sheetName);
    this.spilling = reader.spills();
    this.spills = byRow(this.spilling);
    this.arrays = byRow(file.arrays);
    this.arrayAt = new Map(file.arrays.map((area) => [placeKey(area.top, area.left), area]));
    this.untouched = byRow(this.spilling.flatMap((area) => this.untouchedAreas(area)));
  }

  /** A spill that gives what it gave at opening is nobody's change, where it lies now and where the file has it. */
  private untouchedAreas(area: Area): readonly Area[] {
    const { reader, atOpening } = this.source;
    const cell = this.store.find(area.top + 1, area.left + 1);
    const isSame = this.hasFormula(cell) && this.file.forms.get(cell) === reader.form(area.top, area.left);
    const key = placeKey(area.top, area.left);
    if (!isSame || atOpening.spills.get(key) !== spillText(reader, area)) return [];
    const inFile = this.arrayAt.get(key);
    return inFile ? [area, inFile] : [area];
  }

  /** Rows of the grid and of the file, in order. */
  rows(): Float64Array {
    const { rowCount, rowNumbers } = this.store.data;
    const { reader } = this.source;
    const rows = new Set([...reader.rows(), ...this.spilling.flatMap((area) => rowsOf(area))]);
    for (let place = 0; place < rowCount; place++) rows.add(rowNumbers[place]! - 1);
    const lastRow = reader.worksheet.getRowCount();
    return Float64Array.from(rows)
      .filter((row) => row < lastRow)
      .sort();
  }

  compareRow(row: number): void {
    const { firstCells, columns } = this.store.data;
    const place = this.store.rowAt(row + 1);
    let cell = place < 0 ? 0 : firstCells[place]!;
    const end = place < 0 ? 0 : firstCells[place + 1]!;
    const now = this.columnsNow(row);
    // both lists of columns are in order
    for (let next = 0; cell < end || next < now.length;) {
      const inFile = cell < end ? columns[cell]! - 1 : Infinity;
      const inGrid = next < now.length ? now[next]! : Infinity;
      const column = Math.min(inFile, inGrid);
      this.compare(row, column, inFile === column ? cell : -1);
      if (inFile === column) cell++;
      if (inGrid === column) next++;
    }
  }

  private columnsNow(row: number): readonly number[] {
    const own = this.source.reader.columnsOf(row);
    const spilled = this.spills.at(row);
    if (spilled.length === 0) return own;
    const all = new Set(own);
    for (const area of spilled) for (let c = 0; c < area.columns; c++) all.add(area.left + c);
    return [...all].sort((one, other) => one - other);
  }

  /** @param cell of the file; -1 for none */
  private compare(row: number, column: number, cell: number): void {
    if (this.source.isWrittenElsewhere(row, column) || this.isUndrawn(row, column)) return;
    const content = this.contentEdit(row, column, cell);
    const style = this.styleEdit(row, column, cell);
    if (!content && style === undefined) return;
    const address = addressOf(row + 1, column + 1);
    const edit: CellEdit = { ...content, ...(style !== undefined && { style }) };
    const isSince = content !== undefined && !this.isAsAtOpening(row, column, cell);
    if (isSince || style !== undefined) this.difference.cells.set(address, edit);
    else this.difference.renewed.set(address, edit);
  }

  /** What is not drawn is no empty cell. */
  private isUndrawn(row: number, column: number): boolean {
    return !isDrawn(this.extent, row, column) && !this.source.reader.cell(row, column);
  }

  /** Only what the calendar or the engine did at opening, before anybody changed anything. */
  private isAsAtOpening(row: number, column: number, cell: number): boolean {
    const { reader, atOpening } = this.source;
    if (this.untouched.at(row).some((area) => contains(area, row, column))) return true;
    if (!this.hasFormula(cell) || this.file.forms.get(cell) !== reader.form(row, column)) return false;
    const opening = atOpening.results.get(placeKey(row, column));
    return opening !== undefined && sameResult(fileValue(reader.value(row, column)), opening);
  }

  private hasFormula(cell: number): boolean {
    return cell >= 0 && this.store.data.formulaOf[cell] !== 0;
  }

  private contentEdit(row: number, column: number, cell: number): CellEdit | undefined {
    const form = this.source.reader.form(row, column);
    const value = fileValue(this.source.reader.value(row, column));
    const stored = cell < 0 ? null : fileValue(valueOf(gridValue(this.store.value(cell), this.store.type(cell))));
    return form === null
      ? this.valueEdit(row, column, cell, value, stored)
      : this.formulaEdit(row, column, cell, form, value, stored);
  }

  /** No formula stands there, or one that only the file can read. */
  private valueEdit(
    row: number,
    column: number,
    cell: number,
    value: CellValue,
    stored: CellValue,
  ): CellEdit | undefined {
    const { difference, source } = this;
    const wasKept = this.hasFormula(cell) && this.file.forms.get(cell) === null;
    if (source.outdated.has(placeKey(row, column)) && isFault(value)) {
      difference.outdated.push(addressOf(row + 1, column + 1));
      return { value, formula: { keep: true, anew: true } };
    }
    if (wasKept && sameValue(value, stored)) difference.kept.push(addressOf(row + 1, column + 1));
    if (this.hasFormula(cell) && !wasKept) return { value };
    if (sameValue(value, stored)) return undefined;
    // a former spill's result that the array's own edit empties
    const isIn = (areas: ByRow<Area>): boolean => areas.at(row).some((area) => contains(area, row, column));
    return value === null && !isIn(this.spills) && isIn(this.arrays) ? undefined : { value };
  }

  private formulaEdit(
    row: number,
    column: number,
    cell: number,
    form: string,
    value: CellValue,
    stored: CellValue,
  ): CellEdit | undefined {
    const spill = this.spills.at(row).find((area) => area.top === row && area.left === column);
    const isSame = this.hasFormula(cell) && this.file.forms.get(cell) === form;
    if (!isSame) {
      const formula = this.source.reader.formula(row, column)!;
      if (this.isMalformed(form, formula)) {
        this.difference.malformed.push(addressOf(row + 1, column + 1));
        return { value: formula };
      }
      const text = this.file.known.fileText(formula.slice(1), row, column);
      return { value, formula: { text, ...spillOf(spill) } };
    }
    const array = this.arrayAt.get(placeKey(row, column));
    const isMoved = spill !== undefined && JSON.stringify(spill) !== JSON.stringify(array);
    if (!isMoved && sameResult(value, stored)) return undefined;
    return { value, formula: { keep: true, ...spillOf(spill) } };
  }

  /** Read once for all cells that hold the same. */
  private isMalformed(form: string, formula: string): boolean {
    const known = this.malformedForms.get(form) ?? this.source.isMalformed(formula);
    this.malformedForms.set(form, known);
    return known;
  }

  private styleEdit(row: number, column: number, cell: number): StyleEdit | undefined {
    const { reader, gridStyles, styles } = this.source;
    const now = reader.cell(row, column);
    if (!now || (now.s === undefined && cell < 0)) return undefined;
    const own = cell < 0 ? this.styleOfColumn(column + 1) : this.store.data.styles[cell]!;
    if (!now.s) return own === 0 ? undefined : 0;
    const id = typeof now.s === "string" ? now.s : undefined;
    const isResult = now.f !== undefined || now.si !== undefined;
    const keepFormat = isResult && !(id !== undefined && isFormatted(id));
    const look = lookOf({ id, style: gridStyles.get(now.s) }, own, styles, keepFormat);
    if (look.isLossy) this.difference.lossyLooks.push(addressOf(row + 1, column + 1));
    return look.edit;
  }
}

function spillOf(area: Area | undefined): { readonly spill?: string } {
  if (!area) return {};
  const { top, left, rows: height, columns: width } = area;
  return { spill: rangeText({ top: top + 1, left: left + 1, bottom: top + height, right: left + width }) };
}
