/** What cells hold, as the grid takes and gives it back; all of it one step of undo. */
import { Tools, type ICellData } from "@univerjs/core";
import type { Cell } from "../../../../src/worksheet/cell";
import type { SheetId } from "../../port";
import { shifted } from "../formulas/references";
import type { SheetReader } from "../book/sheet-reader";
import { setCells, valueAsItIs, type Cells, type Desk } from "./write";

/** What a cell must lose before it takes another's content: the grid only adds to cells. */
export const NOTHING: ICellData = { v: null, t: null, f: null, si: null, p: null, custom: null };

/** A value as it is, in place of what a cell holds. */
export const typed = (value: Cell): ICellData => ({ ...NOTHING, ...valueAsItIs(value) });

/** All of a cell but its look, its group too: what undo gives back. */
export function held(reader: SheetReader, row: number, column: number): ICellData {
  const cell: ICellData = { ...NOTHING, ...Tools.deepClone(reader.cell(row, column) ?? {}) };
  delete cell.s;
  return cell;
}

/** Cells of one sheet that are to hold something else. */
export class Contents {
  private readonly cells: Record<number, Record<number, ICellData>> = {};

  constructor(private readonly reader: SheetReader) {}

  get(row: number, column: number): ICellData | undefined {
    return this.cells[row]?.[column];
  }

  set(row: number, column: number, cell: ICellData): void {
    (this.cells[row] ??= {})[column] = cell;
  }

  /** In ascending order. */
  *all(): Generator<readonly [row: number, column: number, cell: ICellData]> {
    for (const [row, cells] of Object.entries(this.cells))
      for (const [column, cell] of Object.entries(cells)) yield [Number(row), Number(column), cell];
  }

  put(desk: Desk, sheet: SheetId): void {
    this.anchorAnew(desk);
    const former: Cells = {};
    for (const [row, column] of this.all()) (former[row] ??= {})[column] = held(this.reader, row, column);
    if (Object.keys(former).length === 0) return;
    desk.step.do(setCells(desk.unitId, sheet, this.cells), setCells(desk.unitId, sheet, former));
  }

  /** A group whose first cell is written over hangs on another: without one its cells would lose their formula. */
  private anchorAnew(desk: Desk): void {
    const { reader } = this;
    const renamed = new Map<string, string>();
    for (const [row, column, cell] of this.all()) {
      const group = reader.cell(row, column)?.si;
      if (group && cell.si !== group && reader.isMaster(row, column)) renamed.set(group, desk.unique());
    }
    if (renamed.size === 0) return;
    const join = (row: number, column: number, cell: ICellData) => {
      const name = renamed.get(cell.si ?? "");
      if (name !== undefined) this.set(row, column, { ...cell, f: null, si: name });
    };
    for (const [row, column, cell] of [...this.all()]) join(row, column, cell);
    for (const row of reader.rows())
      for (const column of reader.columnsOf(row))
        if (!this.get(row, column)) join(row, column, { si: reader.cell(row, column)!.si! });
    const groups = new Map([...renamed].map(([old, name]) => [name, old]));
    for (const [row, column, cell] of [...this.all()]) {
      const old = groups.get(cell.si ?? "");
      if (old === undefined) continue;
      const master = reader.masterOf(old)!;
      const text = shifted(master.text.slice(1), row - master.row, column - master.column);
      this.set(row, column, { ...cell, f: `=${text}` });
      groups.delete(cell.si!);
    }
  }
}
