/**
 * A calculated column holds the same words on every row of its table, and a column that was filled down holds the formula
 * above, moved. Where they mean the same as above they are read once: taking a formula apart for each of thousands of
 * rows is what opening and saving would spend their time on.
 */
import { MovableFormula } from "../../../../src/formula/moving";
import type { CellFormula, SharedFormula } from "../../package";
import { cellInGrid, type GridFormula, type Readers } from "./readable";
import { isMovedByEngine, relativeForm } from "./references";
import type { TableGeometry } from "./structured";

interface Repeated<T> {
  readonly lesson: T;
  /** Whether a formula means here what was learnt from the one above. */
  readonly covers: (text: string, row: number, column: number) => boolean;
  /** The start of its shared group: what follows the same one means the same, moved. */
  readonly shared?: SharedFormula;
}

/** @typeParam T what is to be remembered of a formula */
export class RepeatedFormulas<T> {
  private readonly last = new Map<number, Repeated<T>>();
  private readonly hasExtents: boolean;

  constructor(
    private readonly sheetName: string,
    private readonly readers: Readers,
  ) {
    this.hasExtents = (readers.extents?.size ?? 0) > 0;
  }

  /** What a row above taught, where the same is meant here. */
  find(formula: CellFormula, row: number, column: number): T | undefined {
    const known = this.last.get(column);
    if (!known || !isOfOneCell(formula)) return undefined;
    return known.covers(formula.text, row, column) ? known.lesson : undefined;
  }

  /** The same for a formula whose text stands with another cell, before it is written out. */
  findShared(shared: SharedFormula | undefined, column: number): T | undefined {
    const known = shared && this.last.get(column);
    return known?.shared === shared ? known?.lesson : undefined;
  }

  /** @param shared what formulas of its shared group follow */
  note(
    formula: CellFormula,
    read: GridFormula,
    lesson: T,
    { row, column, shared }: { readonly row: number; readonly column: number; readonly shared?: SharedFormula },
  ): void {
    this.last.delete(column);
    if (!isOfOneCell(formula) || !isMovedByEngine(read.text)) return;
    const isMoved = !formula.text.includes("[");
    const covers = isMoved ? this.moved(formula, row) : this.sameWords(formula, read, row, column);
    if (covers) this.last.set(column, { lesson, covers, ...(isMoved && shared && { shared }) });
  }

  /** What is read of a formula goes by its names and words, which moving leaves alone; not so where a sheet is cut. */
  private moved({ text }: CellFormula, from: number): Repeated<T>["covers"] | undefined {
    if (this.hasExtents) return undefined;
    let movable: MovableFormula | undefined;
    return (other, row) => other === (movable ??= new MovableFormula(text)).moved(row - from, 0);
  }

  private sameWords(
    formula: CellFormula,
    read: GridFormula,
    row: number,
    column: number,
  ): Repeated<T>["covers"] | undefined {
    const table = this.readers.tables.find(
      (one) => one.sheetName === this.sheetName && isDataOf(one, row, column) && isDataOf(one, row + 1, column),
    );
    if (!table) return undefined;
    const below = cellInGrid(formula, { sheetName: this.sheetName, row: row + 1, column }, this.readers);
    if (!below || relativeForm(below.text, row + 1, column) !== relativeForm(read.text, row, column)) return undefined;
    return (text, otherRow) => text === formula.text && isDataOf(table, otherRow, column);
  }
}

const isOfOneCell = ({ kind, isDynamic }: CellFormula): boolean =>
  !isDynamic && (kind === "normal" || kind === "shared");

const isDataOf = (table: TableGeometry, row: number, column: number): boolean =>
  column >= table.left &&
  column < table.left + table.columns.length &&
  row >= table.top + table.headerRows &&
  row <= table.bottom - table.totalsRows;
