/**
 * Where a step will write, worked out before anything is written, from what every host can tell (overview and read).
 * Each host still has to look for what only it knows, for example a spill in the way.
 */
import { cellAddress } from "../../../src/columns/formula";
import { areaAddress, overlaps, right, SHEET_COLUMNS, SHEET_ROWS } from "../area";
import { malformed } from "./malformed";
import { namedCellTarget, type NamedCellTarget } from "./named-cell";
import type {
  Area,
  Block,
  Change,
  NewColumn,
  Overview,
  PlainList,
  SheetId,
  Step,
  TableOverview,
  Workbook,
} from "../port";
import {
  NO_COLUMN_LEFT,
  noFormula,
  noHeader,
  noTable,
  notEmpty,
  otherRows,
  Refusal,
  tableInTheWay,
  unwritableSheet,
} from "./refusal";
import {
  changeColumnTarget,
  reenterTarget,
  refreshTarget,
  type ChangeColumnTarget,
  type ReenterTarget,
  type RefreshTarget,
} from "./refreshed";
import { sheetTarget, type SheetTarget } from "./new-sheet";
import { RowPlanner, type RowTarget } from "./row-targets";
import { showRowsTarget, type ShowRowsTarget } from "./shown-rows";

export type { NamedCellTarget } from "./named-cell";
export { noRoom, Refusal, spillInTheWay } from "./refusal";
export type { SheetTarget } from "./new-sheet";
export type { ChangeColumnTarget, ReenterTarget, RefreshTarget } from "./refreshed";
export type { AppendTarget, ChangeRowTarget, ColumnValue, RemoveTarget, RowTarget } from "./row-targets";
export { lets, type ShowRowsTarget } from "./shown-rows";

export interface ColumnsTarget {
  readonly kind: "addColumns";
  readonly step: Extract<Step, { kind: "addColumns" }>;
  readonly sheet: SheetId;
  /** The table's name, or null for a plain list. */
  readonly table: string | null;
  readonly columns: readonly NewColumn[];
  /** The sheet column of the list's leftmost column: the slots of formulas count from here. */
  readonly listLeft: number;
  readonly headerRow: number;
  /** New columns only: the data rows below the header, without the totals row. */
  readonly data: Area;
  /** New columns only: header, data and totals row. All of it must be empty. */
  readonly area: Area;
}

export interface FormulaTarget {
  readonly kind: "writeFormula";
  readonly step: Extract<Step, { kind: "writeFormula" }>;
  readonly sheet: SheetId;
  readonly area: Area;
}

export interface NameTarget {
  readonly kind: "defineName";
  readonly step: Extract<Step, { kind: "defineName" }>;
}

export type Target =
  | ColumnsTarget
  | RefreshTarget
  | ChangeColumnTarget
  | ReenterTarget
  | FormulaTarget
  | NameTarget
  | RowTarget
  | NamedCellTarget
  | SheetTarget
  | ShowRowsTarget;

const NAME = /^[\p{L}_\\][\p{L}\p{N}_.\\]{0,254}$/u;

/**
 * Every step's target, or the first reason why not. A target tells where things stand once the steps before it are done.
 */
export async function targetsOf(
  change: Change,
  overview: Overview,
  reader: Pick<Workbook, "read">,
): Promise<readonly Target[] | Refusal> {
  const tables = new Map(overview.tables.map((table) => [table.name.toLowerCase(), table]));
  const rows = new RowPlanner(overview, reader, tables);
  const sheets = overview.sheets.map(({ name }) => name);
  const targets: Target[] = [];
  for (const step of change.steps) {
    const target = await targetOf(step, overview, tables, rows, sheets, reader);
    if (target instanceof Refusal) return target;
    if (target.kind === "addSheet") sheets.push(target.step.sheet.name);
    targets.push(target);
  }
  return targets;
}

async function targetOf(
  step: Step,
  overview: Overview,
  tables: Map<string, TableOverview>,
  rows: RowPlanner,
  sheets: readonly string[],
  reader: Pick<Workbook, "read">,
): Promise<Target | Refusal> {
  switch (step.kind) {
    case "addColumns":
      return "table" in step.to
        ? inTable(step, step.to.table, overview, tables)
        : besideList(step, step.to.list, overview, tables);
    case "refreshColumn":
      return refreshTarget(step, overview, tables);
    case "changeColumn":
      return changeColumnTarget(step, overview, tables, reader);
    case "reenterFormulas":
      return reenterTarget(step, overview, reader);
    case "writeFormula": {
      const area = { top: step.row, left: step.column, rows: 1, columns: 1 };
      const unwritable = unwritableSheet(step.sheet, overview);
      if (unwritable) return unwritable;
      if (step.row >= SHEET_ROWS || step.column >= SHEET_COLUMNS)
        return new Refusal("The sheet ends before that cell. Choose another cell.");
      const fault = malformed(step.formula, sheets);
      if (fault !== undefined) return noFormula(fault);
      return { kind: "writeFormula", step, sheet: step.sheet, area };
    }
    case "defineName":
      return NAME.test(step.name)
        ? { kind: "defineName", step }
        : new Refusal(`"${step.name}" cannot be a name. Use letters, digits and "_", a letter first.`);
    case "appendRows":
    case "changeRow":
    case "removeRows":
      return rows.targetOf(step);
    case "writeNamed":
      return namedCellTarget(step, overview, reader);
    case "addSheet":
      return sheetTarget(step, sheets);
    case "showRows": {
      const target = showRowsTarget(step, overview, tables);
      const table = target instanceof Refusal || target.table === null ? null : target.table.toLowerCase();
      if (table !== null) tables.set(table, { ...tables.get(table)!, isFiltered: step.criteria.length > 0 });
      return target;
    }
  }
}

type AddColumns = Extract<Step, { kind: "addColumns" }>;

function inTable(step: AddColumns, name: string, overview: Overview, tables: Map<string, TableOverview>) {
  const table = tables.get(name.toLowerCase());
  if (!table) return noTable(name);
  if (!table.hasHeader) return noHeader(table.name);
  const rows = { top: table.area.top + 1, rows: table.area.rows - 1 - (table.hasTotals ? 1 : 0) };
  const target = columnsTarget(step, overview, tables, table.name, table.sheet, table.area, rows, table.columns);
  if (target instanceof Refusal) return target;
  /* A later step of the same change finds the table as this one leaves it. */
  tables.set(name.toLowerCase(), {
    ...table,
    area: { ...table.area, columns: table.area.columns + step.columns.length },
    columns: [...table.columns, ...step.columns.map((column) => column.header)],
  });
  return target;
}

function besideList(step: AddColumns, list: PlainList, overview: Overview, tables: Map<string, TableOverview>) {
  const rows = { top: list.area.top + 1, rows: list.area.rows - 1 };
  return columnsTarget(step, overview, tables, null, list.sheet, list.area, rows, []);
}

function columnsTarget(
  step: AddColumns,
  overview: Overview,
  tables: Map<string, TableOverview>,
  table: string | null,
  sheet: SheetId,
  list: Area,
  rows: { top: number; rows: number },
  present: readonly string[],
): ColumnsTarget | Refusal {
  const unwritable = unwritableSheet(sheet, overview);
  if (unwritable) return unwritable;
  if (rows.rows < 1) return new Refusal("There is no row below the header. Enter the first row, then add the columns.");
  const uneven = step.columns.find((column) => "values" in column && column.values.length !== rows.rows);
  if (uneven) return otherRows;
  const columns = { left: right(list), columns: step.columns.length };
  if (columns.left + columns.columns > SHEET_COLUMNS) return new Refusal(NO_COLUMN_LEFT);
  const names = new Set(present.map((header) => header.toLowerCase()));
  for (const { header } of step.columns) {
    if (header === "") return new Refusal("A new column has no name. Give it one.");
    if (names.has(header.toLowerCase()))
      return new Refusal(`There is already a column "${header}". Rename it, or leave this one out.`);
    names.add(header.toLowerCase());
  }
  const area = { top: list.top, rows: list.rows, ...columns };
  const other = [...tables.values()].find((one) => one.sheet === sheet && overlaps(one.area, area));
  if (other) return tableInTheWay(other);
  return {
    kind: "addColumns",
    step,
    sheet,
    table,
    columns: step.columns,
    listLeft: list.left,
    headerRow: list.top,
    data: { ...rows, ...columns },
    area,
  };
}

/** Looks at the cells a target needs (values, formulas and merges must have been read). */
export function inTheWay(block: Block): Refusal | null {
  const { area } = block;
  for (let row = 0; row < area.rows; row++)
    for (let column = 0; column < area.columns; column++)
      if ((block.values?.[row]?.[column] ?? null) !== null || (block.formulas?.[row]?.[column] ?? null) !== null)
        return notEmpty(cellAddress(area.top + row, area.left + column));
  const merged = block.merges?.find((merge) => overlaps(merge, area));
  return merged ? new Refusal(`Cells are merged in the way (${areaAddress(merged)}). Unmerge them first.`) : null;
}

/** Cells that must be empty before a target is carried out. */
export function claimedBy(target: Target): { readonly sheet: SheetId; readonly area: Area } | null {
  switch (target.kind) {
    case "addColumns":
    case "writeFormula":
      return { sheet: target.sheet, area: target.area };
    case "appendRows":
      return target.claimed && { sheet: target.sheet, area: target.claimed };
    default:
      return null;
  }
}
