/** What one sheet of the grid holds now: raw values, never the texts the grid paints, spilled results included. */
import {
  CellValueType,
  type ICellData,
  type IRange,
  type Styles,
  type Workbook as GridWorkbook,
  type Worksheet,
} from "@univerjs/core";
import { FormulaDataModel } from "@univerjs/engine-formula";
import type { Cell } from "../../../../src/worksheet/cell";
import { CellError } from "../../../../src/worksheet/error";
import { asText } from "../../change/expectations";
import { around, bottom, contains } from "../../area";
import { ByRow } from "../../package/by-row";
import type { Area, Value } from "../../port";
import type { Engine } from "../engine";
import { relativeForm, shifted } from "../formulas/references";

export const GENERAL = "General";

const ERRORS = new Set([
  "#N/A",
  "#VALUE!",
  "#REF!",
  "#NAME?",
  "#DIV/0!",
  "#NUM!",
  "#NULL!",
  "#SPILL!",
  "#CALC!",
  "#CYCLE!",
  "#GETTING_DATA",
]);

export const areaOf = (range: IRange): Area => ({
  top: range.startRow,
  left: range.startColumn,
  rows: range.endRow - range.startRow + 1,
  columns: range.endColumn - range.startColumn + 1,
});

/** Rich text as the plain text in it. */
function plainText(cell: ICellData): string | undefined {
  const stream = cell.p?.body?.dataStream;
  return stream?.replace(/\r\n$/, "").replace(/\r/g, "\n");
}

export function valueOf(cell: ICellData | null | undefined): Value {
  if (!cell) return null;
  const value: Cell | undefined = plainText(cell) ?? cell.v ?? null;
  if (value === null) return null;
  if (cell.t === CellValueType.BOOLEAN) return value === true || value === 1 || value === "1" || value === "TRUE";
  if (typeof value === "boolean") return value;
  // a result that is a text or an error may stand in a cell that goes on calling itself a number
  if (cell.t === CellValueType.NUMBER && typeof value === "string" && value.trim() !== "") {
    const number = Number(value);
    if (Number.isFinite(number)) return number;
  }
  if (typeof value === "number" && !Number.isFinite(value)) return new CellError("#NUM!");
  if (typeof value === "string" && ERRORS.has(value)) return new CellError(value);
  return value;
}

type Rows<T> = Record<number, Record<number, T> | undefined>;

export class SheetReader {
  readonly worksheet: Worksheet;
  private readonly cells: Rows<ICellData>;
  private readonly styles: Styles;
  private readonly spilled: Rows<ICellData>;
  private readonly anchors: Rows<IRange>;
  private readonly groupForms = new Map<string, string | null>();
  private allSpills: Area[] | undefined;
  private spillsByRow: ByRow<Area> | undefined;
  private masters: Map<string, { row: number; column: number; text: string }> | undefined;

  /** A look at this moment: make a new one after a change. */
  constructor(engine: Engine, book: GridWorkbook, sheetId: string) {
    const worksheet = book.getSheetBySheetId(sheetId);
    if (!worksheet) throw new Error(`no sheet ${sheetId}`);
    this.worksheet = worksheet;
    this.cells = worksheet.getCellMatrix().getMatrix() as Rows<ICellData>;
    this.styles = book.getStyles();
    const model = engine.injector.get(FormulaDataModel);
    const unitId = book.getUnitId();
    this.spilled = (model.getArrayFormulaCellData()?.[unitId]?.[sheetId] ?? {}) as Rows<ICellData>;
    this.anchors = (model.getArrayFormulaRange()?.[unitId]?.[sheetId] ?? {}) as Rows<IRange>;
  }

  cell(row: number, column: number): ICellData | undefined {
    return this.cells[row]?.[column];
  }

  /** Rows that hold anything, in order. */
  rows(): number[] {
    return Object.keys(this.cells).map(Number);
  }

  columnsOf(row: number): number[] {
    const cells = this.cells[row] ?? {};
    // sorting leaves keys without a cell behind
    return Object.keys(cells)
      .map(Number)
      .filter((column) => cells[column]);
  }

  value(row: number, column: number): Value {
    const own = valueOf(this.cell(row, column));
    const spilled = own === null ? this.spilled[row]?.[column] : undefined;
    // what was spilled stays behind where its formula went
    return spilled && this.spillAt(row, column) ? valueOf(spilled) : own;
  }

  /** As the grid paints it, which is what its filters compare. */
  shownText(row: number, column: number): string | number {
    const cell = (this.worksheet.getCell(row, column) ?? {}) as ICellData;
    if (cell.t === CellValueType.BOOLEAN) return asText(valueOf(cell));
    return plainText(cell) ?? (typeof cell.v === "number" ? cell.v : String(cell.v ?? ""));
  }

  /** With "=". */
  formula(row: number, column: number): string | null {
    const cell = this.cell(row, column);
    if (!cell) return null;
    if (typeof cell.f === "string" && cell.f.startsWith("=")) return cell.f;
    if (!cell.si) return null;
    const master = this.masterOf(cell.si);
    return master ? shifted(master.text, row - master.row, column - master.column) : null;
  }

  /** What a formula means where it stands, the same for all cells that share it (formulas/references.ts); no "=". */
  form(row: number, column: number): string | null {
    const cell = this.cell(row, column);
    if (!cell) return null;
    if (typeof cell.f === "string" && cell.f.startsWith("=")) return relativeForm(cell.f.slice(1), row, column);
    if (!cell.si) return null;
    const known = this.groupForms.get(cell.si);
    if (known !== undefined) return known;
    const master = this.masterOf(cell.si);
    const form = master ? relativeForm(master.text.slice(1), master.row, master.column) : null;
    this.groupForms.set(cell.si, form);
    return form;
  }

  /** The style of the cell, or for an empty one its row's or column's. */
  style(row: number, column: number) {
    const own = this.cell(row, column)?.s ?? this.worksheet.getRowStyle(row) ?? this.worksheet.getColumnStyle(column);
    return this.styles.get(own) ?? undefined;
  }

  format(row: number, column: number): string {
    return this.style(row, column)?.n?.pattern || GENERAL;
  }

  isHidden(row: number): boolean {
    return !this.worksheet.getRowVisible(row);
  }

  /** The area that a spilling formula fills, if the cell lies in one. */
  spillAt(row: number, column: number): Area | undefined {
    this.spillsByRow ??= new ByRow(
      this.spills(),
      ({ top }) => top,
      (area) => bottom(area) - 1,
    );
    return this.spillsByRow.at(row).find((area) => contains(area, row, column));
  }

  spills(): Area[] {
    return (this.allSpills ??= this.readSpills());
  }

  private readSpills(): Area[] {
    return Object.values(this.anchors).flatMap((columns) =>
      Object.values(columns ?? {})
        .filter((range) => range && (range.endRow > range.startRow || range.endColumn > range.startColumn))
        .map(areaOf),
    );
  }

  merges(): Area[] {
    return this.worksheet.getMergeData().map(areaOf);
  }

  used(): Area | null {
    let used: Area | null = null;
    let [top, left, bottom, right] = [Infinity, Infinity, -1, -1];
    const isFilled = (cell: ICellData | undefined): boolean =>
      !!cell && ((cell.v !== undefined && cell.v !== null) || !!cell.f || !!cell.si || !!cell.p);
    for (const row of this.rows()) {
      const cells = this.cells[row] ?? {};
      // in order: only the outermost that holds something counts
      const columns = Object.keys(cells);
      let last = columns.length - 1;
      while (last >= 0 && !isFilled(cells[Number(columns[last])])) last--;
      if (last < 0) continue;
      let first = 0;
      while (!isFilled(cells[Number(columns[first])])) first++;
      top = Math.min(top, row);
      bottom = Math.max(bottom, row);
      left = Math.min(left, Number(columns[first]));
      right = Math.max(right, Number(columns[last]));
    }
    if (bottom >= 0) used = { top, left, rows: bottom - top + 1, columns: right - left + 1 };
    for (const area of this.spills()) used = used ? around(used, area) : area;
    return used;
  }

  /** The cell that a group of shared formulas hangs on. */
  isMaster(row: number, column: number): boolean {
    const { si } = this.cell(row, column) ?? {};
    const master = si ? this.masterOf(si) : undefined;
    return master?.row === row && master.column === column;
  }

  masterOf(group: string): { readonly row: number; readonly column: number; readonly text: string } | undefined {
    if (!this.masters) {
      this.masters = new Map();
      // without a list of each row's columns: this goes through every cell, after every change
      for (const row in this.cells) {
        const cells = this.cells[row]!;
        for (const column in cells) {
          // sorting leaves keys without a cell behind
          const { f, si } = cells[column] ?? {};
          if (si && typeof f === "string" && f !== "" && !this.masters.has(si)) {
            this.masters.set(si, { row: Number(row), column: Number(column), text: f });
          }
        }
      }
    }
    return this.masters.get(group);
  }
}
