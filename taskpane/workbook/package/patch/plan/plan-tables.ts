/** What the tables need when columns or rows are added, or a heading or a totals cell is edited by hand. */
import { addressOf, overlap, parseRange, type Range, rangeText } from "../../addresses";
import type { NewTableColumn, StyleEdit, TableEdit, TotalsCell } from "../../edits";
import type { ColumnRename } from "../../../../../src/formula/renaming";
import { LAST_COLUMN } from "../../../xlsx/limits";
import type { OpenedPackage } from "../../opened";
import type { CellValue, PackageTable } from "../../contents";
import { refuse } from "../../../xlsx/refusal";
import { isPlanned, type Plans, putCell, type SheetPlan } from "./plan";

/** What a totals cell says of its column: nothing, a label, or a formula of its own. */
export type TotalsMeaning = { readonly label?: string; readonly formula?: string };

export interface TablePlan {
  readonly table: PackageTable;
  readonly range: Range;
  readonly added: readonly NewTableColumn[];
  /** By column id. */
  readonly names: Map<number, string>;
  readonly totals: Map<number, TotalsMeaning>;
  readonly filter?: TableEdit["filter"];
}

export function planTables(opened: OpenedPackage, edits: readonly TableEdit[], plans: Plans): TablePlan[] {
  for (const edit of edits) {
    if (!opened.tables.some((table) => table.name === edit.table))
      refuse(`There is no table "${edit.table}" in this workbook.`);
  }
  const result: TablePlan[] = [];
  for (const table of opened.tables) {
    const edit = edits.find((one) => one.table === table.name);
    const present = plans.sheets.get(table.sheetName);
    if (!edit && !present) continue;
    const plan = plans.of(table.sheetName);
    const range = grownRange(opened, table, edit);
    const tablePlan: TablePlan = {
      table,
      range,
      added: edit?.addColumns ?? [],
      names: new Map(),
      totals: new Map(),
      ...(edit?.filter ? { filter: edit.filter } : {}),
    };
    readHeadings(tablePlan, plan);
    readTotals(tablePlan, plan);
    // two that were alike before are the file's own doing
    if (tablePlan.names.size > 0 || tablePlan.added.length > 0) refuseSameNames(tablePlan);
    tablePlan.added.forEach((column, index) => planColumn(tablePlan, column, index, plan));
    if (edit || tablePlan.names.size > 0 || tablePlan.totals.size > 0) result.push(tablePlan);
  }
  return result;
}

export function renamesOf(tables: readonly TablePlan[]): ColumnRename[] {
  return tables.flatMap(({ table, names }) =>
    table.columns
      .filter((column) => names.has(column.id))
      .map((column) => ({ table: table.name, from: column.name, to: names.get(column.id) as string })),
  );
}

function rangeOf(table: PackageTable): Range {
  return parseRange(table.ref) as Range;
}

function grownRange(opened: OpenedPackage, table: PackageTable, edit: TableEdit | undefined): Range {
  const range = rangeOf(table);
  const right = range.right + (edit?.addColumns?.length ?? 0);
  const bottom = edit?.lastRow ?? range.bottom;
  const grown = { ...range, right, bottom };
  if (right > LAST_COLUMN)
    refuse(
      `There is no room for more columns: the table "${table.name}" would end beyond column XFD, the last of a sheet.`,
    );
  if (bottom !== range.bottom && table.totalsRowCount > 0) {
    refuse(
      `The table "${table.name}" ends in a totals row, so its rows cannot become more or fewer here. Do that in Excel.`,
    );
  }
  if (bottom < range.top + table.headerRowCount)
    refuse(`The table "${table.name}" would have no row left. A table keeps one row.`);
  if (right === range.right && bottom <= range.bottom) return grown;
  const other = opened.tables.find(
    (one) => one !== table && one.sheetName === table.sheetName && overlap(rangeOf(one), grown),
  );
  if (other) refuse(`The table "${table.name}" has no room: the table "${other.name}" is in the way.`);
  const gained = { ...grown, left: range.right + 1 };
  const merge = opened.layout(table.sheetName).merges.find((ref) => {
    const merged = parseRange(ref);
    return merged !== undefined && overlap(merged, grown) && (overlap(merged, gained) || merged.bottom > range.bottom);
  });
  if (merge) refuse(`The table "${table.name}" has no room: the merged cells ${merge} are in the way.`);
  return grown;
}

/** A heading edited in its cell renames the column: Excel calls a workbook damaged in which the two differ. */
function readHeadings(plan: TablePlan, sheet: SheetPlan): void {
  const { table } = plan;
  if (table.headerRowCount === 0) return;
  const range = rangeOf(table);
  const cells = sheet.rows.get(range.top);
  table.columns.forEach((column, index) => {
    const cell = cells?.get(range.left + index);
    if (!cell || cell.value === undefined) return;
    const name = headingText(cell.value);
    if (name === "" || cell.formula)
      refuse(
        `A heading of the table "${table.name}" (${addressOf(cell.row, cell.column)}) must be a text and cannot be empty.`,
      );
    putCell(sheet, { ...cell, value: name });
    if (name !== column.name) plan.names.set(column.id, name);
  });
}

function headingText(value: CellValue): string {
  if (value === null) return "";
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  return typeof value === "object" ? value.error : String(value);
}

function readTotals(plan: TablePlan, sheet: SheetPlan): void {
  const { table } = plan;
  if (table.totalsRowCount === 0) return;
  const range = rangeOf(table);
  table.columns.forEach((column, index) => {
    const cell = sheet.rows.get(range.bottom)?.get(range.left + index);
    if (!cell || cell.value === undefined || (cell.formula && "keep" in cell.formula)) return;
    const meaning = cell.formula
      ? { formula: cell.formula.text }
      : typeof cell.value === "string"
        ? { label: cell.value }
        : {};
    plan.totals.set(column.id, meaning);
  });
}

function refuseSameNames(plan: TablePlan): void {
  const seen = new Set<string>();
  const names = plan.table.columns.map((column) => plan.names.get(column.id) ?? column.name);
  for (const name of [...names, ...plan.added.map((column) => column.header)]) {
    const key = name.toLowerCase();
    if (key === "") refuse(`A column of the table "${plan.table.name}" needs a heading.`);
    if (seen.has(key))
      refuse(`The table "${plan.table.name}" would have two columns called "${name}". Choose another heading.`);
    seen.add(key);
  }
}

/** The cells of a new column: heading, body, totals. They look like the last column's, save for the number format. */
function planColumn(plan: TablePlan, column: NewTableColumn, index: number, sheet: SheetPlan): void {
  const { table } = plan;
  const range = rangeOf(table);
  const place = range.right + 1 + index;
  const likeColumn = range.right;
  const put = (
    row: number,
    value: CellValue | undefined,
    formula: string | undefined,
    style: StyleEdit | undefined,
  ): void => {
    const own = sheet.rows.get(row)?.get(place);
    putCell(sheet, {
      row,
      column: place,
      likeColumn,
      value,
      formula: formula === undefined ? undefined : { text: formula },
      style: own?.style ?? style,
      // A cell that the edits mention themselves is known to be free.
      onlyWhereEmpty: own === undefined,
    });
  };
  if (table.headerRowCount > 0) put(range.top, column.header, undefined, column.headerStyle);
  const lastBodyRow = plan.range.bottom - table.totalsRowCount;
  for (let row = range.top + table.headerRowCount; row <= lastBodyRow; row++) {
    if (column.valueAt) put(row, column.valueAt(row), column.calculatedColumnFormula, withoutFormat(column.style));
    else if (!isPlanned(sheet, row, place)) put(row, null, undefined, withoutFormat(column.style));
  }
  if (table.totalsRowCount > 0) putTotals(column.totals, plan.range.bottom, put);
  if (column.width !== undefined) sheet.widths.push({ first: place, last: place, width: column.width });
  sheet.claims.push({
    range: { top: range.top, bottom: plan.range.bottom, left: place, right: place },
    sentence: `The table "${table.name}" has no room for a column: beside it something else stands.`,
  });
}

function putTotals(
  totals: TotalsCell | undefined,
  row: number,
  put: (row: number, value: CellValue, formula: string | undefined, style: StyleEdit | undefined) => void,
): void {
  const style = withoutFormat(totals?.style);
  if (!totals) put(row, null, undefined, style);
  else if ("label" in totals) put(row, totals.label, undefined, style);
  else put(row, totals.value, totals.formula, style);
}

const styled = new WeakMap<object, StyleEdit>();
const PLAIN: StyleEdit = { numberFormat: "General" };

/** The neighbour's number format says nothing about another column. One object for one style, so that it is made once. */
function withoutFormat(style: StyleEdit | undefined): StyleEdit {
  if (style === undefined) return PLAIN;
  if (typeof style === "number" || style.numberFormat !== undefined || style.from !== undefined) return style;
  let plain = styled.get(style);
  if (!plain) styled.set(style, (plain = { numberFormat: "General", ...style }));
  return plain;
}

export function tableRef(plan: TablePlan): string {
  return rangeText(plan.range);
}
