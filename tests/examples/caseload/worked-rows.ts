/** Rows of the caseload with what its formulas give. */
import { caseloadBookOf, type OptionalGroup } from "../../../src/caseload/index";
import type { BookDescription } from "../../../src/caseload/book";
import type { RowCells } from "../../../src/caseload/column";
import { rowsTables, sheetNames, type RowsTable } from "../../../src/caseload/names";
import { readerOf } from "../../../src/caseload/results";
import type { CaseloadRow, CaseloadRows } from "../../../src/caseload/rows";
import { columnsOf } from "../../../src/caseload/tables";
import type { SheetValue } from "../../../src/columns/sheet-block";
import type { Place, Reader } from "../../../src/formula/reader/reader";
import type { ClinicSettingName } from "../../../src/settings/index";
import { areaOfName } from "./named-cells";

export interface Given {
  readonly asOf: number;
  readonly groups: readonly OptionalGroup[];
  /** What stands in a setting's cell; left out: its default. */
  readonly settings?: Partial<Record<ClinicSettingName, SheetValue>>;
}

/** By header; a worked-out column that is given here was typed over. */
export type Rows = { readonly [T in RowsTable]: readonly RowCells[] };

type Cell = Place & { readonly value: SheetValue };

/** A caseload of so many rows, to be typed in again and again: reading all formulas takes longer than working a row out. */
class Sheets {
  private readonly book: BookDescription;
  private readonly reader: Reader;
  private typed = new Map<string, Cell>();
  private readonly usual = new Map<string, SheetValue>();

  constructor(
    counts: { readonly [T in RowsTable]: number },
    private readonly given: Given,
  ) {
    const blank = (table: RowsTable) => Array.from({ length: counts[table] }, (): CaseloadRow => ({}));
    const rows = { tubes: blank("tubes"), checks: blank("checks"), changes: blank("changes") };
    this.book = caseloadBookOf(rows, { ...given, people: "none" });
    this.reader = readerOf(this.book, given.asOf);
  }

  worked(rows: Rows, settings: Given["settings"] = {}): { readonly [T in RowsTable]: readonly RowCells[] } {
    const cells = new Map([...this.cells(rows), ...this.settings(settings)].map((cell) => [keyOf(cell), cell]));
    const gone = [...this.typed].flatMap(([key, cell]) =>
      cells.has(key) ? [] : [{ ...cell, value: this.usual.get(key)! }],
    );
    for (const [key, cell] of cells) if (!this.usual.has(key)) this.usual.set(key, this.reader.at(cell));
    this.reader.change([...gone, ...cells.values()]);
    this.typed = cells;
    const out = (table: RowsTable) => rows[table].map((_, place) => this.rowAt(table, place));
    return { tubes: out("tubes"), checks: out("checks"), changes: out("changes") };
  }

  private placeOf(table: RowsTable, place: number, header: string): Place | undefined {
    const { name: sheet, table: there } = this.book.sheets.find(({ name }) => name === sheetNames[table])!;
    const column = there!.columns.findIndex((one) => one.header === header);
    return column < 0 ? undefined : { sheet, row: there!.top + 1 + place, column: there!.left + column };
  }

  private *cells(rows: Rows): Generator<Cell> {
    for (const table of rowsTables)
      for (const [place, row] of rows[table].entries())
        for (const [header, value = null] of Object.entries(row)) {
          const found = this.placeOf(table, place, header);
          if (found) yield { ...found, value };
        }
  }

  private *settings(settings: NonNullable<Given["settings"]>): Generator<Cell> {
    for (const [name, value = null] of Object.entries(settings)) {
      const { top: row, left: column } = areaOfName(this.book, name);
      yield { sheet: sheetNames.settings, row, column, value };
    }
  }

  private rowAt(table: RowsTable, place: number): RowCells {
    return Object.fromEntries(
      columnsOf(table, this.given.groups).map(({ header }) => [
        header,
        this.reader.at(this.placeOf(table, place, header)!),
      ]),
    );
  }
}

const keyOf = ({ sheet, row, column }: Place): string => `${sheet} ${row} ${column}`;

const kept = new Map<string, Sheets>();

export function workOut(rows: CaseloadRows | Rows, { settings, ...given }: Given) {
  const counts = { tubes: rows.tubes.length, checks: rows.checks.length, changes: rows.changes.length };
  const isOvertyped = rowsTables.some((table) => {
    const computed = columnsOf(table, given.groups).filter(({ kind }) => kind === "computed");
    return rows[table].some((row) => computed.some(({ header }) => header in row));
  });
  if (isOvertyped) return new Sheets(counts, given).worked(rows, settings);
  const key = JSON.stringify([counts, given]);
  let sheets = kept.get(key);
  if (!sheets) kept.set(key, (sheets = new Sheets(counts, given)));
  return sheets.worked(rows, settings);
}
