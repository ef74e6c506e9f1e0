/**
 * A workbook's state in memory: enough of one to be honest about. The fake and the tests' stand-in for Excel both keep
 * theirs in it. It knows nothing of the port.
 */
import type { Cell } from "../../../src/worksheet/cell";
import { CellError } from "../../../src/worksheet/error";
import { areaAddress, around, bottom, contains, parseArea, right, SHEET_COLUMNS } from "../area";
import type { Area, Value } from "../port";
import type { CellDescription, SheetDescription, TableDescription, WorkbookDescription } from "./description";

export interface StoredCell {
  value: Value;
  formula: string | null;
  format: string;
  bold: boolean;
}

export const GENERAL = "General";

export interface Spill {
  /** Its first cell holds the formula. */
  area: Area;
}

export interface Table {
  name: string;
  area: Area;
  columns: string[];
  hasHeader: boolean;
  hasTotals: boolean;
  filteredRows: Set<number>;
}

/** Rows of a table that hold data. */
export function dataArea(table: { area: Area; hasHeader: boolean; hasTotals: boolean }): Area {
  const header = table.hasHeader ? 1 : 0;
  const totals = table.hasTotals ? 1 : 0;
  return { ...table.area, top: table.area.top + header, rows: table.area.rows - header - totals };
}

const area = (address: string): Area => {
  const parsed = parseArea(address);
  if (!parsed) throw new Error(`not an address: ${address}`);
  return parsed;
};

/** Works out a formula's result: a value, or a matrix that spills. `undefined` leaves it unknown. */
export type Calculate = (
  formula: string,
  row: number,
  column: number,
  sheet: Sheet,
) => Value | readonly (readonly Value[])[] | undefined;

export class Sheet {
  readonly cells = new Map<number, StoredCell>();
  readonly hiddenRows = new Set<number>();
  /** Rows that the sheet's own filter hides, the one of a list without a table. */
  readonly listFilter = new Set<number>();
  readonly merges: Area[];
  readonly tables: Table[] = [];
  spills: Spill[];
  name: string;
  kind: "worksheet" | "chart sheet";
  hidden: boolean;
  isProtected: boolean;

  constructor(
    readonly id: string,
    description: SheetDescription,
    private readonly calculate: Calculate,
  ) {
    this.name = description.name;
    this.kind = description.kind ?? "worksheet";
    this.hidden = description.hidden ?? false;
    this.isProtected = description.isProtected ?? false;
    description.rows?.forEach((row, r) => row.forEach((cell, c) => this.load(r, c, cell)));
    for (const [address, cell] of Object.entries(description.cells ?? {})) {
      const place = area(address);
      this.load(place.top, place.left, cell);
    }
    for (const row of description.hiddenRows ?? []) this.hiddenRows.add(row - 1);
    this.merges = (description.merges ?? []).map(area);
    this.spills = (description.spills ?? []).map((address) => ({ area: area(address) }));
    for (const table of description.tables ?? []) this.loadTable(table);
  }

  private load(row: number, column: number, described: Cell | CellDescription) {
    const cell: CellDescription =
      described !== null && typeof described === "object" ? described : { value: described };
    if (cell.value === undefined && !cell.error && !cell.formula && !cell.format && !cell.bold) return;
    if (described === null) return;
    this.cells.set(row * SHEET_COLUMNS + column, {
      value: cell.error ? new CellError(cell.error) : (cell.value ?? null),
      formula: cell.formula ?? null,
      format: cell.format ?? GENERAL,
      bold: cell.bold ?? false,
    });
  }

  private loadTable(described: TableDescription) {
    const hasHeader = described.hasHeader ?? true;
    const place = area(described.area);
    this.tables.push({
      name: described.name,
      area: place,
      columns: Array.from({ length: place.columns }, (_, i) =>
        hasHeader ? String(this.value(place.top, place.left + i) ?? "") : `Column${i + 1}`,
      ),
      hasHeader,
      hasTotals: described.hasTotals ?? false,
      filteredRows: new Set((described.filteredRows ?? []).map((row) => row - 1)),
    });
  }

  cell(row: number, column: number): StoredCell | undefined {
    return this.cells.get(row * SHEET_COLUMNS + column);
  }

  value(row: number, column: number): Value {
    return this.cell(row, column)?.value ?? null;
  }

  /** The cell, made when there is none yet. */
  made(row: number, column: number): StoredCell {
    const key = row * SHEET_COLUMNS + column;
    let cell = this.cells.get(key);
    if (!cell) this.cells.set(key, (cell = { value: null, formula: null, format: GENERAL, bold: false }));
    return cell;
  }

  /** What somebody types: a text that begins with "=" is a formula. Spills, and shows #SPILL! where it cannot. */
  type(row: number, column: number, typed: Value): void {
    this.removeSpillFrom(row, column);
    const cell = this.made(row, column);
    cell.formula = typeof typed === "string" && typed.startsWith("=") ? typed : null;
    cell.value = cell.formula === null ? (typed === "" ? null : typed) : this.result(cell.formula, row, column);
    const table = this.tables.find((candidate) => candidate.hasHeader && candidate.area.top === row);
    if (table && contains(table.area, row, column)) table.columns[column - table.area.left] = String(cell.value ?? "");
  }

  private result(formula: string, row: number, column: number): Value {
    const result = this.calculate(formula, row, column, this);
    if (result === undefined) return null;
    if (!Array.isArray(result)) return result as Value;
    const matrix = result as readonly (readonly Value[])[];
    const filled = { top: row, left: column, rows: matrix.length, columns: matrix[0]?.length ?? 1 };
    const isOwn = (r: number, c: number) => r === row && c === column;
    for (let r = row; r < bottom(filled); r++)
      for (let c = column; c < right(filled); c++)
        if (!isOwn(r, c) && this.isOccupied(r, c)) return new CellError("#SPILL!");
    matrix.forEach((values, r) => values.forEach((value, c) => (this.made(row + r, column + c).value = value)));
    if (filled.rows * filled.columns > 1) this.spills.push({ area: filled });
    return matrix[0]?.[0] ?? null;
  }

  /** The array formula that fills a cell, its own first cell included. */
  spillAt(row: number, column: number): Spill | undefined {
    return this.spills.find((spill) => contains(spill.area, row, column));
  }

  isOccupied(row: number, column: number): boolean {
    const cell = this.cell(row, column);
    return (cell !== undefined && (cell.value !== null || cell.formula !== null)) || !!this.spillAt(row, column);
  }

  /** Takes values and formulas away; formats stay. */
  clear(place: Area): void {
    for (let row = place.top; row < bottom(place); row++)
      for (let column = place.left; column < right(place); column++) {
        this.removeSpillFrom(row, column);
        const cell = this.cell(row, column);
        if (cell) Object.assign(cell, { value: null, formula: null });
      }
  }

  private removeSpillFrom(row: number, column: number): void {
    const spill = this.spills.find((one) => one.area.top === row && one.area.left === column);
    if (!spill) return;
    this.spills = this.spills.filter((one) => one !== spill);
    for (let r = row; r < bottom(spill.area); r++)
      for (let c = column; c < right(spill.area); c++) {
        const cell = this.cell(r, c);
        if (cell) cell.value = null;
      }
  }

  isHiddenRow(row: number): boolean {
    if (this.hiddenRows.has(row) || this.listFilter.has(row)) return true;
    return this.tables.some((table) => table.filteredRows.has(row));
  }

  used(): Area | null {
    let used: Area | null = null;
    for (const [key, cell] of this.cells) {
      if (cell.value === null && cell.formula === null) continue;
      const here = { top: Math.floor(key / SHEET_COLUMNS), left: key % SHEET_COLUMNS, rows: 1, columns: 1 };
      used = used ? around(used, here) : here;
    }
    return used;
  }
}

export interface Name {
  name: string;
  refersTo: string;
  value: Cell;
}

export class Book {
  readonly title: string;
  readonly dateSystem: 1900 | 1904 | null;
  sheets: Sheet[];
  names: Name[];
  selection: { sheet: Sheet; area: Area } | null = null;
  private readonly results: Calculate;
  private sheetsMade: number;

  constructor(description: WorkbookDescription, calculate: Calculate = () => undefined) {
    this.title = description.title ?? "Invented workbook.xlsx";
    this.dateSystem = description.dateSystem === undefined ? 1900 : description.dateSystem;
    this.results = (formula, row, column, sheet) =>
      calculate(formula, row, column, sheet) ?? description.results?.[formula];
    this.sheets = description.sheets.map((sheet, i) => new Sheet(`{${i + 1}}`, sheet, this.results));
    this.sheetsMade = this.sheets.length;
    this.names = (description.names ?? []).map((name) => ({ value: null, ...name }));
    if (description.selection) this.select(description.selection.sheet, area(description.selection.area));
  }

  sheet(idOrName: string): Sheet | undefined {
    return this.sheets.find((sheet) => sheet.id === idOrName || sheet.name === idOrName);
  }

  /** Behind the last one. */
  addSheet(name: string): Sheet {
    const sheet = new Sheet(`{${++this.sheetsMade}}`, { name }, this.results);
    this.sheets.push(sheet);
    return sheet;
  }

  removeSheet(sheet: Sheet): void {
    this.sheets = this.sheets.filter((one) => one !== sheet);
    if (this.selection?.sheet === sheet) this.selection = null;
  }

  /** Table names are unique in a workbook, whatever the capitals. */
  table(name: string): { sheet: Sheet; table: Table } | undefined {
    for (const sheet of this.sheets)
      for (const table of sheet.tables) if (table.name.toLowerCase() === name.toLowerCase()) return { sheet, table };
    return undefined;
  }

  name(name: string): Name | undefined {
    return this.names.find((one) => one.name.toLowerCase() === name.toLowerCase());
  }

  select(idOrName: string, place: Area): void {
    const sheet = this.sheet(idOrName);
    if (!sheet) throw new Error(`no sheet for ${idOrName}!${areaAddress(place)}`);
    this.selection = { sheet, area: place };
  }
}
