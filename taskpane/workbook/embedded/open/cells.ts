/** The cells of one worksheet as the grid holds them: typed values, formulas in shared groups, styles by the file's index. */
import { CellValueType, type ICellData } from "@univerjs/core";
import type { CellValue, OpenedPackage, PackageCell } from "../../package";
import { cellInGrid, type GridFormula, type Readers } from "../formulas/readable";
import { isMovedByEngine, relativeForm } from "../formulas/references";
import { RepeatedFormulas } from "../formulas/repeated";
import { parseRange } from "../../package";
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

/** Where an array spills: its cells but the first hold results only, which the grid fills by itself. */
function spilledCells(cells: Iterable<PackageCell>): (row: number, column: number) => boolean {
  const areas = [...cells]
    .filter((cell) => cell.formula?.isDynamic && cell.formula.ref?.includes(":"))
    .map((cell) => ({ ...parseRange(cell.formula!.ref!)!, anchor: cell }));
  return (row, column) =>
    areas.some(
      (area) =>
        row >= area.top &&
        row <= area.bottom &&
        column >= area.left &&
        column <= area.right &&
        (row !== area.anchor.row || column !== area.anchor.column),
    );
}

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
 * @param extent how far the sheet is drawn, where that is not as far as it reaches
 * @param tallStyles styles of cells that may need a higher row
 */
export function sheetCells(
  opened: OpenedPackage,
  sheetName: string,
  readers: Readers,
  extent: Extent | undefined,
  tallStyles: ReadonlySet<number>,
): SheetCells {
  const found = [...opened.cells(sheetName)];
  const all = extent ? found.filter((cell) => isDrawn(extent, cell.row - 1, cell.column - 1)) : found;
  const isSpilled = spilledCells(all);
  const groups = new SharedGroups();
  const repeated = new RepeatedFormulas<First>(sheetName, readers);
  const cells: CellData = {};
  const styleOnly: PackageCell[] = [];
  const keptAsValue: [number, number][] = [];
  const tall: [number, number][] = [];
  let [lastRow, lastColumn, hasLiving] = [-1, -1, false];
  for (const cell of all) {
    const [row, column] = [cell.row - 1, cell.column - 1];
    if ((cell.value === null && !cell.formula) || isSpilled(cell.row, cell.column)) {
      if (cell.styleIndex !== 0) styleOnly.push(cell);
      continue;
    }
    const data: ICellData = cell.styleIndex === 0 ? {} : { s: styleId(cell.styleIndex) };
    const { formula } = cell;
    const known = formula && repeated.find(formula, row, column);
    const read =
      (known as GridFormula | First | undefined) ??
      (formula && cellInGrid(formula, { sheetName, row, column }, readers));
    if (known) groups.join(data, known.first);
    else if (formula && read && "text" in read) {
      const first = groups.place(data, read, row, column);
      repeated.note(formula, read, { first, isLiving: read.isLiving }, row, column);
    } else if (formula) keptAsValue.push([row, column]);
    if (read && (read.isLiving || cell.value === null)) hasLiving = true;
    if (!read?.isLiving) Object.assign(data, gridValue(cell.value, cell.type));
    (cells[row] ??= {})[column] = data;
    if (tallStyles.has(cell.styleIndex)) tall.push([row, column]);
    lastRow = Math.max(lastRow, row);
    lastColumn = Math.max(lastColumn, column);
  }
  for (const cell of styleOnly) {
    if (cell.row - 1 > lastRow + FORMATTED_ROWS_BELOW) continue;
    (cells[cell.row - 1] ??= {})[cell.column - 1] = { s: styleId(cell.styleIndex) };
  }
  return { cells, lastRow, lastColumn, keptAsValue, hasLiving, tall };
}
