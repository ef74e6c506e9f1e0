/** One worksheet: the cells as the file holds them against the cells as they stand, told as edits of the package. */
import type { Styles } from "@univerjs/core";
import {
  addressOf,
  parseRange,
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
import { cellInGrid, type Readers } from "../formulas/readable";
import { isDrawn } from "../open/extent";
import { relativeForm } from "../formulas/references";
import { RepeatedFormulas } from "../formulas/repeated";
import { gridValue } from "../open/cells";
import type { OriginStyle } from "../open/styles";
import { valueOf, type SheetReader } from "../book/sheet-reader";
import { isFormatted } from "../open/style-names";
import { KnownTexts } from "./formulas";
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
  const { opened, sheetName, reader } = source;
  const difference: SheetDifference = {
    cells: new Map(),
    renewed: new Map(),
    kept: [],
    outdated: [],
    malformed: [],
    lossyLooks: [],
  };
  const store = opened.store(sheetName);
  const { rowCount, rowNumbers, firstCells, formulaOf, columns: columnOf, styles: styleOf } = store.data;
  const known = new KnownTexts(source.tables);
  const malformedForms = new Map<string, boolean>();
  const styleOfColumn = columnStyles(opened, sheetName);

  // first what the file holds in structured form, so that a formula moved upwards finds it too
  const forms = new Map<number, string | null>();
  const arraysInFile: Area[] = [];
  const repeated = new RepeatedFormulas<string>(sheetName, source.readers);
  const formulaTexts = store.groupTexts();
  for (let place = 0; place < rowCount; place++) {
    const row = rowNumbers[place]! - 1;
    for (let cell = firstCells[place]!; cell < firstCells[place + 1]!; cell++) {
      if (formulaOf[cell] === 0) continue;
      const column = columnOf[cell]! - 1;
      const stored = store.formula(cell)!;
      const shared = repeated.findShared(formulaTexts.followed(stored), column);
      if (shared !== undefined) {
        forms.set(cell, shared);
        continue;
      }
      const formula = store.cellFormula(stored, row + 1, column + 1, formulaTexts);
      const range = formula.isDynamic ? parseRange(formula.ref ?? "") : undefined;
      if (range && (range.bottom > range.top || range.right > range.left)) {
        const { top, left, bottom, right } = range;
        arraysInFile.push({ top: top - 1, left: left - 1, rows: bottom - top + 1, columns: right - left + 1 });
      }
      const taught = repeated.find(formula, row, column);
      const read = taught === undefined ? cellInGrid(formula, { sheetName, row, column }, source.readers) : null;
      const form = taught ?? (read && relativeForm(read.text, row, column));
      forms.set(cell, form);
      if (read && form !== null) {
        known.note(formula.text, form, row, column);
        repeated.note(formula, read, form, { row, column, shared: formulaTexts.named(stored.group) });
      }
    }
    if (place % ROWS_AT_A_TIME === 0) yield (FORMS * place) / rowCount;
  }

  const cellAt = (row: number, column: number): number => store.find(row + 1, column + 1);
  const arrays = byRow(arraysInFile);
  const spilling = reader.spills();
  const spills = byRow(spilling);
  // a spill that gives what it gave at opening is nobody's change, where it lies now and where the file has it
  const arrayAt = new Map(arraysInFile.map((area) => [placeKey(area.top, area.left), area]));
  const untouchedAreas = spilling.flatMap((area) => {
    const cell = cellAt(area.top, area.left);
    const isSame = cell >= 0 && formulaOf[cell] !== 0 && forms.get(cell) === reader.form(area.top, area.left);
    const key = placeKey(area.top, area.left);
    if (!isSame || source.atOpening.spills.get(key) !== spillText(reader, area)) return [];
    const inFile = arrayAt.get(key);
    return inFile ? [area, inFile] : [area];
  });
  const untouched = byRow(untouchedAreas);

  // what is not drawn is no empty cell
  const extent = source.readers.extents?.get(sheetName);
  const isUndrawn = (row: number, column: number) => !isDrawn(extent, row, column) && !reader.cell(row, column);

  const lastRow = reader.worksheet.getRowCount();
  const rows = new Set([...reader.rows(), ...spilling.flatMap((area) => rowsOf(area))]);
  for (let place = 0; place < rowCount; place++) rows.add(rowNumbers[place]! - 1);
  const ordered = Float64Array.from(rows)
    .filter((row) => row < lastRow)
    .sort();
  let count = 0;
  for (const row of ordered) {
    const place = store.rowAt(row + 1);
    let cell = place < 0 ? 0 : firstCells[place]!;
    const end = place < 0 ? 0 : firstCells[place + 1]!;
    const spilled = spills.at(row);
    const now = columnsNow(row, spilled);
    // both lists of columns are in order
    for (let next = 0; cell < end || next < now.length;) {
      const inFile = cell < end ? columnOf[cell]! - 1 : Infinity;
      const inGrid = next < now.length ? now[next]! : Infinity;
      const column = Math.min(inFile, inGrid);
      compare(row, column, inFile === column ? cell : -1);
      if (inFile === column) cell++;
      if (inGrid === column) next++;
    }
    if (count++ % ROWS_AT_A_TIME === 0) yield FORMS + ((1 - FORMS) * count) / ordered.length;
  }
  return difference;

  function columnsNow(row: number, spilled: readonly Area[]): readonly number[] {
    const own = reader.columnsOf(row);
    if (spilled.length === 0) return own;
    const all = new Set(own);
    for (const area of spilled) for (let c = 0; c < area.columns; c++) all.add(area.left + c);
    return [...all].sort((one, other) => one - other);
  }

  /** @param cell of the file; -1 for none */
  function compare(row: number, column: number, cell: number): void {
    if (source.isWrittenElsewhere(row, column) || isUndrawn(row, column)) return;
    const content = contentEdit(row, column, cell);
    const style = styleEdit(row, column, cell);
    if (!content && style === undefined) return;
    const address = addressOf(row + 1, column + 1);
    const edit: CellEdit = { ...content, ...(style !== undefined && { style }) };
    const isSince = content !== undefined && !isAsAtOpening(row, column, cell);
    if (isSince || style !== undefined) difference.cells.set(address, edit);
    else difference.renewed.set(address, edit);
  }

  /** Only what the calendar or the engine did at opening, before anybody changed anything. */
  function isAsAtOpening(row: number, column: number, cell: number): boolean {
    if (untouched.at(row).some((area) => contains(area, row, column))) return true;
    if (!hasFormula(cell) || forms.get(cell) !== reader.form(row, column)) return false;
    const opening = source.atOpening.results.get(placeKey(row, column));
    return opening !== undefined && sameResult(fileValue(reader.value(row, column)), opening);
  }

  function hasFormula(cell: number): boolean {
    return cell >= 0 && formulaOf[cell] !== 0;
  }

  function contentEdit(row: number, column: number, cell: number): CellEdit | undefined {
    const form = reader.form(row, column);
    const value = fileValue(reader.value(row, column));
    const stored = cell < 0 ? null : fileValue(valueOf(gridValue(store.value(cell), store.type(cell))));
    const spill = spills.at(row).find((area) => area.top === row && area.left === column);
    if (form === null) {
      const isResult = spills.at(row).some((area) => contains(area, row, column));
      const wasKept = hasFormula(cell) && forms.get(cell) === null;
      if (source.outdated.has(placeKey(row, column)) && isFault(value)) {
        difference.outdated.push(addressOf(row + 1, column + 1));
        return { value, formula: { keep: true, anew: true } };
      }
      if (wasKept && sameValue(value, stored)) difference.kept.push(addressOf(row + 1, column + 1));
      if (wasKept || !hasFormula(cell)) {
        if (sameValue(value, stored)) return undefined;
        // a former spill's result that the array's own edit empties
        if (!isResult && value === null && arrays.at(row).some((area) => contains(area, row, column))) return undefined;
      }
      return { value };
    }
    const isSame = hasFormula(cell) && forms.get(cell) === form;
    if (!isSame) {
      const formula = reader.formula(row, column)!;
      if (isMalformed(form, formula)) {
        difference.malformed.push(addressOf(row + 1, column + 1));
        return { value: formula };
      }
      const text = formula.slice(1);
      return { value, formula: { text: known.fileText(text, row, column), ...spillOf(spill) } };
    }
    const array = arrayAt.get(placeKey(row, column));
    const isMoved = spill !== undefined && JSON.stringify(spill) !== JSON.stringify(array);
    if (!isMoved && sameResult(value, stored)) return undefined;
    return { value, formula: { keep: true, ...spillOf(spill) } };
  }

  /** Read once for all cells that hold the same. */
  function isMalformed(form: string, formula: string): boolean {
    const known = malformedForms.get(form) ?? source.isMalformed(formula);
    malformedForms.set(form, known);
    return known;
  }

  function spillOf(area: Area | undefined): { readonly spill?: string } {
    if (!area) return {};
    const { top, left, rows: height, columns: width } = area;
    return { spill: rangeText({ top: top + 1, left: left + 1, bottom: top + height, right: left + width }) };
  }

  function styleEdit(row: number, column: number, cell: number): StyleEdit | undefined {
    const now = reader.cell(row, column);
    if (!now || (now.s === undefined && cell < 0)) return undefined;
    const own = cell < 0 ? styleOfColumn(column + 1) : styleOf[cell]!;
    if (!now.s) return own === 0 ? undefined : 0;
    const id = typeof now.s === "string" ? now.s : undefined;
    const isResult = now.f !== undefined || now.si !== undefined;
    const keepFormat = isResult && !(id !== undefined && isFormatted(id));
    const look = lookOf({ id, style: source.gridStyles.get(now.s) }, own, source.styles, keepFormat);
    if (look.isLossy) difference.lossyLooks.push(addressOf(row + 1, column + 1));
    return look.edit;
  }
}
