/**
 * Where steps on rows will write. Steps of one change count together: a row's number may mean one that an earlier step
 * added, so each table is followed through the change before anything is written.
 */
import { bottom, overlaps, SHEET_ROWS } from "../area";
import { asText } from "./expectations";
import type { Area, Overview, RowValues, SheetId, Step, TableOverview, Workbook } from "../port";
import type { Cell } from "../../../src/worksheet/cell";
import { filterHides, noHeader, noRowLeft, noTable, Refusal, tableInTheWay, unwritableSheet } from "./refusal";

type StepOf<K extends Step["kind"]> = Extract<Step, { kind: K }>;

/** A value for a column, counted from 0 within its table. */
export interface ColumnValue {
  readonly column: number;
  readonly value: Cell;
}

interface InTable {
  readonly sheet: SheetId;
  /** As the workbook spells it. */
  readonly table: string;
}

export interface AppendTarget extends InTable {
  readonly kind: "appendRows";
  readonly step: StepOf<"appendRows">;
  /** The rows as they will stand, over the table's width. */
  readonly area: Area;
  /** The first of them is the table's only row, blank until now but for formulas. */
  readonly fillsBlankRow: boolean;
  /** Row by row. Columns that are not in it take the column's formula, or stay empty. */
  readonly values: readonly (readonly ColumnValue[])[];
  /** Counted within the table: columns whose formula each new row takes. */
  readonly formulas: ReadonlySet<number>;
  /** Below the table: must be empty. Null where the table does not grow beyond cells of its own. */
  readonly claimed: Area | null;
}

export interface ChangeRowTarget extends InTable {
  readonly kind: "changeRow";
  readonly step: StepOf<"changeRow">;
  /** The whole row of the table. */
  readonly area: Area;
  readonly values: readonly ColumnValue[];
}

export interface RemoveTarget extends InTable {
  readonly kind: "removeRows";
  readonly step: StepOf<"removeRows">;
  /** All data rows, before. */
  readonly area: Area;
  /** Counted from 0 below the header, ascending; they go, and those below move up. */
  readonly removed: readonly number[];
  /** No row would be left: after the others have gone, the first one stays, blank but for its formulas. */
  readonly emptiesFirst: boolean;
}

export type RowTarget = AppendTarget | ChangeRowTarget | RemoveTarget;

/** A column counts as worked out where at least half of the last rows hold a formula in it. */
const LOOKED_AT = 20;

type Reader = Pick<Workbook, "read">;

/** A row of a table as a change goes on: one that stood there (its sheet row at the beginning), or a new one. */
type Row = number | "new";

/** One table, followed through a change. */
class Followed {
  rows: Row[];
  isTouched = false;
  private isBlank: boolean | undefined;
  private worked: Promise<ReadonlySet<number>> | undefined;
  private readonly firstBottom: number;

  constructor(
    readonly overview: TableOverview,
    private readonly reader: Reader,
  ) {
    const { area } = overview;
    this.rows = Array.from({ length: area.rows - 1 }, (_, index) => area.top + 1 + index);
    this.firstBottom = bottom(area);
  }

  get dataTop(): number {
    return this.overview.area.top + 1;
  }

  rowArea(from: number, rows: number): Area {
    const { left, columns } = this.overview.area;
    return { top: this.dataTop + from, left, rows, columns };
  }

  claimed(area: Area): Area | null {
    const top = Math.max(area.top, this.firstBottom);
    const rows = bottom(area) - top;
    return rows > 0 ? { ...area, top, rows } : null;
  }

  /** Counted within the table. */
  formulas(): Promise<ReadonlySet<number>> {
    this.worked ??= this.readFormulas();
    return this.worked;
  }

  private async readFormulas(): Promise<ReadonlySet<number>> {
    const { sheet, area } = this.overview;
    const rows = Math.min(LOOKED_AT, area.rows - 1);
    if (rows < 1) return new Set();
    const last = { ...area, top: bottom(area) - rows, rows };
    const { formulas } = await this.reader.read({ sheet, area: last }, ["formulas"]);
    const count = (column: number) => formulas!.filter((row) => row[column] !== null).length;
    return new Set(Array.from({ length: area.columns }, (_, c) => c).filter((column) => count(column) * 2 >= rows));
  }

  async formulasInRow(index: number): Promise<ReadonlySet<number>> {
    const row = this.rows[index]!;
    if (row === "new") return this.formulas();
    const area = { ...this.overview.area, top: row, rows: 1 };
    const { formulas } = await this.reader.read({ sheet: this.overview.sheet, area }, ["formulas"]);
    return new Set(formulas![0]!.flatMap((text, column) => (text === null ? [] : [column])));
  }

  async isOneBlankRow(): Promise<boolean> {
    if (this.rows.length !== 1) return false;
    this.isBlank ??= await this.readBlank();
    return this.isBlank;
  }

  private async readBlank(): Promise<boolean> {
    const { sheet } = this.overview;
    const block = await this.reader.read({ sheet, area: this.rowArea(0, 1) }, ["values", "formulas"]);
    return block.values![0]!.every((value, c) => block.formulas![0]![c] !== null || asText(value) === "");
  }

  became(rows: Row[], isBlank: boolean): void {
    this.rows = rows;
    this.isBlank = isBlank;
  }

  columnOf(header: string): number {
    const { columns } = this.overview;
    const exact = columns.indexOf(header);
    return exact >= 0 ? exact : columns.findIndex((one) => one.toLowerCase() === header.toLowerCase());
  }

  valuesOf(values: RowValues): ColumnValue[] | Refusal {
    const found: ColumnValue[] = [];
    for (const [header, value] of Object.entries(values)) {
      const column = this.columnOf(header);
      if (column < 0)
        return new Refusal(
          `"${this.overview.name}" has no column "${header}" any more. Put it back, or rename it back.`,
        );
      found.push({ column, value });
    }
    return found;
  }

  /** Whole columns that a formula works out are not typed over. */
  workedOut(column: number): Refusal {
    return new Refusal(`"${this.overview.columns[column]}" is worked out by a formula. It is not typed over.`);
  }
}

/** The tables of a workbook, followed through the steps of one change. */
export class RowPlanner {
  private readonly followed = new Map<string, Followed>();

  constructor(
    private readonly overview: Overview,
    private readonly reader: Reader,
    /** As they stand after the steps so far, by name in lower case. */
    private readonly tables: Map<string, TableOverview>,
  ) {}

  async targetOf(step: StepOf<RowTarget["kind"]>): Promise<RowTarget | Refusal> {
    const table = this.tables.get(step.table.toLowerCase());
    if (!table) return noTable(step.table);
    if (!table.hasHeader) return noHeader(table.name);
    const unwritable = unwritableSheet(table.sheet, this.overview);
    if (unwritable) return unwritable;
    if (table.hasTotals && step.kind !== "changeRow")
      return new Refusal(`"${table.name}" ends in a totals row. Turn its totals row off first.`);
    let followed = this.followed.get(table.name);
    if (!followed) this.followed.set(table.name, (followed = new Followed(withoutTotals(table), this.reader)));
    switch (step.kind) {
      case "appendRows":
        return this.append(step, followed);
      case "changeRow":
        return changeRow(step, followed);
      case "removeRows":
        return this.remove(step, followed);
    }
  }

  private async append(step: StepOf<"appendRows">, table: Followed): Promise<AppendTarget | Refusal> {
    if (step.rows.length === 0) return new Refusal("No row was given, so nothing was added.");
    const formulas = await table.formulas();
    const values: ColumnValue[][] = [];
    for (const row of step.rows) {
      const found = table.valuesOf(row);
      if (found instanceof Refusal) return found;
      const typed = found.filter(({ value }) => value !== null);
      const worked = typed.find(({ column }) => formulas.has(column));
      if (worked) return table.workedOut(worked.column);
      values.push(typed);
    }
    const fillsBlankRow = await table.isOneBlankRow();
    const first = fillsBlankRow ? 0 : table.rows.length;
    const area = table.rowArea(first, values.length);
    if (bottom(area) > SHEET_ROWS) return noRowLeft;
    const { sheet, name } = table.overview;
    const other = [...this.tables.values()].find(
      (one) => one.sheet === sheet && one.name !== name && overlaps(one.area, area),
    );
    if (other) return tableInTheWay(other);
    table.became([...table.rows.slice(0, first), ...values.map((): Row => "new")], false);
    table.isTouched = true;
    this.resized(table);
    const claimed = table.claimed(area);
    return { kind: "appendRows", step, sheet, table: name, area, fillsBlankRow, values, formulas, claimed };
  }

  private remove(step: StepOf<"removeRows">, table: Followed): RemoveTarget | Refusal {
    const { sheet, name } = table.overview;
    if (step.rows.length === 0) return new Refusal("No row was named, so nothing was removed.");
    const outside = step.rows.find((row) => !isRowOf(table, row));
    if (outside !== undefined) return noRow(table, outside);
    if (table.isTouched) return new Refusal(`In "${name}" rows are removed first, then added or changed.`);
    if (this.tables.get(name.toLowerCase())!.isFiltered) return new Refusal(filterHides(name));
    const named = new Set(step.rows);
    const emptiesFirst = named.size === table.rows.length;
    const removed = [...named].sort((one, other) => one - other).slice(emptiesFirst ? 1 : 0);
    const area = table.rowArea(0, table.rows.length);
    const going = new Set(removed);
    table.became(
      table.rows.filter((_, index) => !going.has(index)),
      emptiesFirst,
    );
    this.resized(table);
    return { kind: "removeRows", step, sheet, table: name, area, removed, emptiesFirst };
  }

  private resized(table: Followed): void {
    const key = table.overview.name.toLowerCase();
    const now = this.tables.get(key)!;
    this.tables.set(key, { ...now, area: { ...now.area, rows: table.rows.length + 1 } });
  }
}

async function changeRow(step: StepOf<"changeRow">, table: Followed): Promise<ChangeRowTarget | Refusal> {
  if (!isRowOf(table, step.row)) return noRow(table, step.row);
  const values = table.valuesOf(step.values);
  if (values instanceof Refusal) return values;
  const formulas = await table.formulasInRow(step.row);
  const worked = values.find(({ column }) => formulas.has(column));
  if (worked) return table.workedOut(worked.column);
  const { sheet, name } = table.overview;
  table.isTouched = true;
  table.became(table.rows, false);
  return { kind: "changeRow", step, sheet, table: name, area: table.rowArea(step.row, 1), values };
}

const isRowOf = (table: Followed, row: number): boolean => Number.isInteger(row) && row >= 0 && row < table.rows.length;

const noRow = (table: Followed, row: number): Refusal =>
  new Refusal(`"${table.overview.name}" has no row ${row + 1} any more. Look it up again.`);

const withoutTotals = (table: TableOverview): TableOverview =>
  table.hasTotals ? { ...table, area: { ...table.area, rows: table.area.rows - 1 }, hasTotals: false } : table;
