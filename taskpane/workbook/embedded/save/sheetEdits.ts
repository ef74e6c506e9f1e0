/** One worksheet: the cells as the file holds them against the cells as they stand, told as edits of the package. */
import type { Styles } from "@univerjs/core";
import {
  addressOf,
  parseRange,
  rangeText,
  type CellEdit,
  type CellValue,
  type OpenedPackage,
  type PackageCell,
  type StyleEdit,
} from "../../package";
import type { Area } from "../../port";
import { contains } from "../../area";
import { cellInGrid, type Readers } from "../formulas/readable";
import { isDrawn } from "../open/extent";
import { relativeForm } from "../formulas/references";
import { RepeatedFormulas } from "../formulas/repeated";
import { gridValue } from "../open/cells";
import type { OriginStyle } from "../open/styles";
import { valueOf, type SheetReader } from "../sheetReader";
import { isFormatted } from "../styleNames";
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
  readonly opened: OpenedPackage;
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

function columnStyles(opened: OpenedPackage, sheetName: string): (column: number) => number {
  const spans = opened.layout(sheetName).columns.filter((span) => span.styleIndex !== undefined);
  return (column) => spans.find((span) => column >= span.first && column <= span.last)?.styleIndex ?? 0;
}

export function sheetDifference(source: SheetSource): SheetDifference {
  const { opened, sheetName, reader } = source;
  const difference: SheetDifference = {
    cells: new Map(),
    renewed: new Map(),
    kept: [],
    outdated: [],
    malformed: [],
    lossyLooks: [],
  };
  const origin = new Map<number, Map<number, PackageCell>>();
  const arrays: Area[] = [];
  for (const cell of opened.cells(sheetName)) {
    const row = cell.row - 1;
    if (!origin.has(row)) origin.set(row, new Map());
    origin.get(row)!.set(cell.column - 1, cell);
    const range = cell.formula?.isDynamic ? parseRange(cell.formula.ref ?? "") : undefined;
    if (range && (range.bottom > range.top || range.right > range.left)) {
      const { top, left, bottom, right } = range;
      arrays.push({ top: top - 1, left: left - 1, rows: bottom - top + 1, columns: right - left + 1 });
    }
  }
  const known = new KnownTexts(source.tables);
  const malformedForms = new Map<string, boolean>();
  const styleOfColumn = columnStyles(opened, sheetName);
  const spills = reader.spills();
  const rows = new Set([...origin.keys(), ...reader.rows()]);
  for (const area of spills) for (let r = 0; r < area.rows; r++) rows.add(area.top + r);
  const lastRow = reader.worksheet.getRowCount();
  const ordered = [...rows].filter((row) => row < lastRow).sort((one, other) => one - other);

  // first what the file holds in structured form, so that a formula moved upwards finds it too
  const forms = new Map<PackageCell, string | null>();
  const repeated = new RepeatedFormulas<string>(sheetName, source.readers);
  for (const cells of origin.values()) {
    for (const cell of cells.values()) {
      if (!cell.formula) continue;
      const [row, column] = [cell.row - 1, cell.column - 1];
      const taught = repeated.find(cell.formula, row, column);
      const read = taught === undefined ? cellInGrid(cell.formula, { sheetName, row, column }, source.readers) : null;
      const form = taught ?? (read && relativeForm(read.text, row, column));
      forms.set(cell, form);
      if (read && form !== null) {
        known.note(cell.formula.text, form, row, column);
        repeated.note(cell.formula, read, form, row, column);
      }
    }
  }

  // a spill that gives what it gave at opening is nobody's change, where it lies now and where the file has it
  const untouched: Area[] = [];
  for (const area of spills) {
    const cell = origin.get(area.top)?.get(area.left);
    const isSame = cell?.formula !== undefined && forms.get(cell) === reader.form(area.top, area.left);
    if (!isSame || source.atOpening.spills.get(placeKey(area.top, area.left)) !== spillText(reader, area)) continue;
    untouched.push(area, ...arrays.filter((array) => array.top === area.top && array.left === area.left));
  }

  // what is not drawn is no empty cell
  const extent = source.readers.extents?.get(sheetName);
  const isUndrawn = (row: number, column: number) => !isDrawn(extent, row, column) && !reader.cell(row, column);

  for (const row of ordered) {
    const before = origin.get(row);
    const columns = new Set([...(before?.keys() ?? []), ...reader.columnsOf(row)]);
    for (const area of spills) {
      if (row >= area.top && row < area.top + area.rows) {
        for (let c = 0; c < area.columns; c++) columns.add(area.left + c);
      }
    }
    for (const column of columns) {
      if (source.isWrittenElsewhere(row, column) || isUndrawn(row, column)) continue;
      const cell = before?.get(column);
      const address = addressOf(row + 1, column + 1);
      const content = contentEdit(row, column, cell);
      const style = styleEdit(row, column, cell);
      if (!content && style === undefined) continue;
      const edit: CellEdit = { ...content, ...(style !== undefined && { style }) };
      const isSince = content !== undefined && !isAsAtOpening(row, column);
      if (isSince || style !== undefined) difference.cells.set(address, edit);
      else difference.renewed.set(address, edit);
    }
  }
  return difference;

  /** Only what the calendar or the engine did at opening, before anybody changed anything. */
  function isAsAtOpening(row: number, column: number): boolean {
    if (untouched.some((area) => contains(area, row, column))) return true;
    const cell = origin.get(row)?.get(column);
    if (!cell?.formula || forms.get(cell) !== reader.form(row, column)) return false;
    const opening = source.atOpening.results.get(placeKey(row, column));
    return opening !== undefined && sameResult(fileValue(reader.value(row, column)), opening);
  }

  function contentEdit(row: number, column: number, cell: PackageCell | undefined): CellEdit | undefined {
    const form = reader.form(row, column);
    const value = fileValue(reader.value(row, column));
    const stored = cell ? fileValue(valueOf(gridValue(cell.value, cell.type))) : null;
    const spill = spills.find((area) => area.top === row && area.left === column);
    if (form === null) {
      const isResult = spills.some((area) => contains(area, row, column));
      const wasKept = cell?.formula !== undefined && forms.get(cell) === null;
      if (source.outdated.has(placeKey(row, column)) && isFault(value)) {
        difference.outdated.push(addressOf(row + 1, column + 1));
        return { value, formula: { keep: true, anew: true } };
      }
      if (wasKept && sameValue(value, stored)) difference.kept.push(addressOf(row + 1, column + 1));
      if (wasKept || !cell?.formula) {
        if (sameValue(value, stored)) return undefined;
        // a former spill's result that the array's own edit empties
        if (!isResult && value === null && arrays.some((area) => contains(area, row, column))) return undefined;
      }
      return { value };
    }
    const isSame = cell?.formula !== undefined && forms.get(cell) === form;
    if (!isSame) {
      const formula = reader.formula(row, column)!;
      if (isMalformed(form, formula)) {
        difference.malformed.push(addressOf(row + 1, column + 1));
        return { value: formula };
      }
      const text = formula.slice(1);
      return { value, formula: { text: known.fileText(text, row, column), ...spillOf(spill) } };
    }
    const array = arrays.find((area) => area.top === row && area.left === column);
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

  function styleEdit(row: number, column: number, cell: PackageCell | undefined): StyleEdit | undefined {
    const now = reader.cell(row, column);
    if (!now || (now.s === undefined && cell === undefined)) return undefined;
    const own = cell?.styleIndex ?? styleOfColumn(column + 1);
    if (!now.s) return own === 0 ? undefined : 0;
    const id = typeof now.s === "string" ? now.s : undefined;
    const isResult = now.f !== undefined || now.si !== undefined;
    const keepFormat = isResult && !(id !== undefined && isFormatted(id));
    const look = lookOf({ id, style: source.gridStyles.get(now.s) }, own, source.styles, keepFormat);
    if (look.isLossy) difference.lossyLooks.push(addressOf(row + 1, column + 1));
    return look.edit;
  }
}
