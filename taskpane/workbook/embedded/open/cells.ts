/** The cells of one worksheet as the grid holds them: typed values, formulas in shared groups, styles by the file's index. */
import { CellValueType, type ICellData } from "@univerjs/core";
import type { CellValue, OpenedWorkbook, PackageCell } from "../../package";
import { cellInGrid, type GridFormula, type Readers } from "../formulas/readable";
import { isMovedByEngine, relativeForm } from "../formulas/references";
import { RepeatedFormulas } from "../formulas/repeated";
import { KIND, parseRange, type CellStore, type Range, type Sliced } from "../../package";
import { ByRow } from "../../package/by-row";
import { isDrawn, type Extent } from "./extent";
import { styleId } from "./styles";

export type CellData = Record<number, Record<number, ICellData>>;

export interface SheetCells {
  readonly cells: CellData;
  /** The last row and column with content, counted from 0; -1 for none. */
  readonly lastRow: number;
  readonly lastColumn: number;
  /** Formulas shown as their stored value, by row and column from 0. */
  readonly keptAsValue: readonly (readonly [row: number, column: number])[];
  /** Cells that may need a higher row (heights.ts). */
  readonly tall: readonly (readonly [row: number, column: number])[];
  /** Formulas without a result to show yet. */
  readonly hasLiving: boolean;
}

/** Rows that only carry formats are painted this far below the last content; what lies further down stays in the file. */
export const FORMATTED_ROWS_BELOW = 200;

const ISO = /^(\d{4})-(\d{2})-(\d{2})(?:T(\d{2}):(\d{2})(?::(\d{2}(?:\.\d+)?))?)?Z?$/;

/** A date in the rare text form (t="d") as a day number. */
function dayNumber(text: string): number | string {
  const found = ISO.exec(text);
  if (!found) return text;
  const [, year, month, day, hour = "0", minute = "0", second = "0"] = found;
  const days = Date.UTC(Number(year), Number(month) - 1, Number(day)) / 86_400_000 + 25_569;
  return days + (Number(hour) * 3600 + Number(minute) * 60 + Number(second)) / 86_400;
}

/** A file's value as the grid holds it: booleans are 1 and 0, errors are texts. */
export function gridValue(value: CellValue, type?: PackageCell["type"]): Pick<ICellData, "v" | "t"> {
  const plain = type === "date" && typeof value === "string" ? dayNumber(value) : value;
  if (plain === null) return {};
  if (typeof plain === "number") return { v: plain, t: CellValueType.NUMBER };
  if (typeof plain === "boolean") return { v: plain ? 1 : 0, t: CellValueType.BOOLEAN };
  if (typeof plain === "string") return { v: plain, t: CellValueType.STRING };
  return { v: plain.error, t: CellValueType.STRING };
}

interface Spill {
  readonly row: number;
  readonly column: number;
  readonly range: Range;
}

/** Where arrays spill: their cells but the first hold results only, which the grid fills by itself. */
function spillsOf(store: CellStore): ByRow<Spill> {
  const found: Spill[] = [];
  const { formulas, rowCount, rowNumbers, firstCells, formulaOf, columns } = store.data;
  if (formulas.some(isSpill)) {
    for (let place = 0; place < rowCount; place++) {
      for (let cell = firstCells[place]!; cell < firstCells[place + 1]!; cell++) {
        const formula = formulaOf[cell] === 0 ? undefined : store.formula(cell);
        if (!formula || !isSpill(formula)) continue;
        found.push({ row: rowNumbers[place]!, column: columns[cell]!, range: parseRange(formula.ref!)! });
      }
    }
  }
  return new ByRow(
    found,
    ({ range }) => range.top,
    ({ range }) => range.bottom,
  );
}

const isSpill = ({ isDynamic, ref }: { readonly isDynamic: boolean; readonly ref?: string }): boolean =>
  isDynamic && ref !== undefined && ref.includes(":") && parseRange(ref) !== undefined;

const isSpilled = (spills: readonly Spill[], row: number, column: number): boolean =>
  spills.some(
    ({ range, row: top, column: left }) =>
      column >= range.left && column <= range.right && (row !== top || column !== left),
  );

/** Formulas that mean the same down a column share one group: the engine is slow by distinct text, not by cell (measured). */
class SharedGroups {
  private readonly seen = new Map<string, ICellData>();
  private count = 0;

  /** Gives the cell in which the group's formula stands; the cell itself where it shares one with nobody. */
  place(cell: ICellData, formula: GridFormula, row: number, column: number): ICellData {
    const key = `${column} ${relativeForm(formula.text, row, column)}`;
    const first = this.seen.get(key);
    if (first) return this.join(cell, first);
    cell.f = `=${formula.text}`;
    if (isMovedByEngine(formula.text)) this.seen.set(key, cell);
    return cell;
  }

  join(cell: ICellData, first: ICellData): ICellData {
    first.si ??= `g${this.count++}`;
    cell.si = first.si;
    return first;
  }
}

/** What the first row of a repeated formula tells those below. */
interface First {
  readonly first: ICellData;
  readonly isLiving: boolean;
}

/**
 * In slices: a sign of life now and then, the share that is done.
 * @param extent how far the sheet is drawn, where that is not as far as it reaches
 * @param tallStyles styles of cells that may need a higher row
 */
export function* sheetCells(
  opened: OpenedWorkbook,
  sheetName: string,
  readers: Readers,
  extent: Extent | undefined,
  tallStyles: ReadonlySet<number>,
): Sliced<SheetCells> {
  const store = opened.store(sheetName);
  const { rowCount, rowNumbers, firstCells, columns, styles, kinds, formulaOf } = store.data;
  const spills = spillsOf(store);
  const formulaTexts = store.groupTexts();
  const groups = new SharedGroups();
  const repeated = new RepeatedFormulas<First>(sheetName, readers);
  const styleNames: (string | undefined)[] = [];
  const cells: CellData = {};
  const styleOnly: (readonly [row: number, column: number, style: number])[] = [];
  const keptAsValue: [number, number][] = [];
  const tall: [number, number][] = [];
  let [lastRow, lastColumn, hasLiving] = [-1, -1, false];
  for (let place = 0; place < rowCount; place++) {
    const row = rowNumbers[place]! - 1;
    const spilled = spills.at(row + 1);
    let inRow: Record<number, ICellData> | undefined;
    for (let cell = firstCells[place]!; cell < firstCells[place + 1]!; cell++) {
      const column = columns[cell]! - 1;
      const stored = formulaOf[cell] === 0 ? undefined : store.formula(cell)!;
      const taught = stored && repeated.findShared(formulaTexts.followed(stored), column);
      const formula = taught ? undefined : stored && store.cellFormula(stored, row + 1, column + 1, formulaTexts);
      if (extent && !isDrawn(extent, row, column)) continue;
      const style = styles[cell]!;
      const isBlank = kinds[cell] === KIND.blank;
      if ((isBlank && !stored) || (spilled.length > 0 && isSpilled(spilled, row + 1, column + 1))) {
        if (style !== 0) styleOnly.push([row, column, style]);
        continue;
      }
      const data: ICellData = style === 0 ? {} : { s: (styleNames[style] ??= styleId(style)) };
      const known = taught ?? (formula && repeated.find(formula, row, column));
      const read =
        (known as GridFormula | First | undefined) ??
        (formula && cellInGrid(formula, { sheetName, row, column }, readers));
      if (known) groups.join(data, known.first);
      else if (formula && read && "text" in read) {
        const first = groups.place(data, read, row, column);
        const shared = formulaTexts.named(stored!.group);
        repeated.note(formula, read, { first, isLiving: read.isLiving }, { row, column, shared });
      } else if (formula) keptAsValue.push([row, column]);
      if (read && (read.isLiving || isBlank)) hasLiving = true;
      if (!read?.isLiving) putValue(data, store, cell);
      inRow ??= cells[row] = {};
      inRow[column] = data;
      if (tallStyles.has(style)) tall.push([row, column]);
      if (row > lastRow) lastRow = row;
      if (column > lastColumn) lastColumn = column;
    }
    if (place % ROWS_AT_A_TIME === 0) yield place / rowCount;
  }
  for (const [row, column, style] of styleOnly) {
    if (row > lastRow + FORMATTED_ROWS_BELOW) continue;
    (cells[row] ??= {})[column] = { s: styleId(style) };
  }
  return { cells, lastRow, lastColumn, keptAsValue, hasLiving, tall };
}

const ROWS_AT_A_TIME = 500;

/** As gridValue, for the kinds that nearly all cells are of. */
function putValue(data: ICellData, store: CellStore, cell: number): void {
  const kind = store.data.kinds[cell];
  if (kind === KIND.number) {
    data.v = store.data.numbers[cell]!;
    data.t = CellValueType.NUMBER;
  } else if (kind === KIND.shared) {
    data.v = store.strings[store.data.numbers[cell]!]!;
    data.t = CellValueType.STRING;
  } else Object.assign(data, gridValue(store.value(cell), store.type(cell)));
}
