/**
 * A calculated column holds the same words on every row of its table. Where they mean the same on the next row too they
 * are read once: taking a long formula apart for each of thousands of rows is what opening and saving would spend their
 * time on.
 */
import type { CellFormula } from "../../package";
import { cellInGrid, type GridFormula, type Readers } from "./readable";
import { isMovedByEngine, relativeForm } from "./references";
import type { TableGeometry } from "./structured";

interface Repeated<T> {
  readonly text: string;
  readonly table: TableGeometry;
  readonly lesson: T;
}

/** @typeParam T what is to be remembered of a formula */
export class RepeatedFormulas<T> {
  private readonly last = new Map<number, Repeated<T>>();

  constructor(
    private readonly sheetName: string,
    private readonly readers: Readers,
  ) {}

  /** What a row above taught, where the same words stand here. */
  find(formula: CellFormula, row: number, column: number): T | undefined {
    const known = this.last.get(column);
    if (!known || formula.isDynamic || formula.text !== known.text) return undefined;
    return isDataOf(known.table, row, column) ? known.lesson : undefined;
  }

  note(formula: CellFormula, read: GridFormula, lesson: T, row: number, column: number): void {
    this.last.delete(column);
    if (formula.isDynamic || !formula.text.includes("[") || !isMovedByEngine(read.text)) return;
    const table = this.readers.tables.find(
      (one) => one.sheetName === this.sheetName && isDataOf(one, row, column) && isDataOf(one, row + 1, column),
    );
    if (!table) return;
    const below = cellInGrid(formula, { sheetName: this.sheetName, row: row + 1, column }, this.readers);
    if (!below || relativeForm(below.text, row + 1, column) !== relativeForm(read.text, row, column)) return;
    this.last.set(column, { text: formula.text, table, lesson });
  }
}

const isDataOf = (table: TableGeometry, row: number, column: number): boolean =>
  column >= table.left &&
  column < table.left + table.columns.length &&
  row >= table.top + table.headerRows &&
  row <= table.bottom - table.totalsRows;
