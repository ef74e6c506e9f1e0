/** A column that is there already and is written anew, or in some cells: where it stands, and whether it still holds that. */
import { cellAddress, inA1, inTable } from "../../../src/columns/formula";
import type { Area, Overview, SheetId, Step, TableOverview, Value, Workbook } from "../port";
import { asText, isSame } from "./expectations";
import { malformed } from "./malformed";
import { noFormula, noHeader, noTable, otherRows, Refusal, unwritableSheet } from "./refusal";

type RefreshColumn = Extract<Step, { kind: "refreshColumn" }>;
type ChangeColumn = Extract<Step, { kind: "changeColumn" }>;

interface PresentColumn {
  readonly sheet: SheetId;
  /** The table's name, or null for a plain list. */
  readonly table: string | null;
  /** In a table: by what the column is found again. */
  readonly header: string | null;
  /** The sheet column of the list's leftmost column: the slots of formulas count from here. */
  readonly listLeft: number;
  /** The column's data cells. */
  readonly area: Area;
  /** The data cells of all columns of the list. */
  readonly data: Area;
}

export interface RefreshTarget extends PresentColumn {
  readonly kind: "refreshColumn";
  readonly step: RefreshColumn;
}

export interface ChangeColumnTarget extends PresentColumn {
  readonly kind: "changeColumn";
  readonly step: ChangeColumn;
}

export interface ReenterTarget extends PresentColumn {
  readonly kind: "reenterFormulas";
  readonly step: Reenter;
}

type Reenter = Extract<Step, { kind: "reenterFormulas" }>;

/** Refuses what would be written into a cell that holds no formula. */
export async function reenterTarget(
  step: Reenter,
  overview: Overview,
  reader: Pick<Workbook, "read">,
): Promise<ReenterTarget | Refusal> {
  const { sheet, column, row, formulas } = step;
  const unwritable = unwritableSheet(sheet, overview);
  if (unwritable) return unwritable;
  const area = { top: row, left: column, rows: formulas.length, columns: 1 };
  const sheets = overview.sheets.map(({ name }) => name);
  const fault = formulas.flatMap((one) => (one === null ? [] : (malformed(one, sheets) ?? [])))[0];
  if (fault !== undefined) return noFormula(fault);
  const { formulas: now = [] } = await reader.read({ sheet, area }, ["formulas"]);
  const gone = formulas.findIndex((one, r) => one !== null && (now[r]?.[0] ?? null) === null);
  return gone < 0
    ? { kind: "reenterFormulas", step, sheet, table: null, header: null, listLeft: column, area, data: area }
    : new Refusal(`Cell ${cellAddress(row + gone, column)} holds no formula any more. Look again.`);
}

type Tables = ReadonlyMap<string, TableOverview>;

export function refreshTarget(step: RefreshColumn, overview: Overview, tables: Tables): RefreshTarget | Refusal {
  const found = presentColumn(step, overview, tables);
  return found instanceof Refusal ? found : { kind: "refreshColumn", step, ...found };
}

/** Refuses what would be written over a formula, and values that are not as many as the rows. */
export async function changeColumnTarget(
  step: ChangeColumn,
  overview: Overview,
  tables: Tables,
  reader: Pick<Workbook, "read">,
): Promise<ChangeColumnTarget | Refusal> {
  const found = presentColumn(step, overview, tables);
  if (found instanceof Refusal) return found;
  const { sheet, area } = found;
  if (step.values.length !== area.rows) return otherRows;
  if (step.overFormulas) return { kind: "changeColumn", step, ...found };
  const { formulas = [] } = await reader.read({ sheet, area }, ["formulas"]);
  const row = step.values.findIndex((value, r) => value !== undefined && (formulas[r]?.[0] ?? null) !== null);
  return row < 0
    ? { kind: "changeColumn", step, ...found }
    : new Refusal(`Cell ${cellAddress(area.top + row, area.left)} holds a formula. Nothing is written over it.`);
}

function presentColumn(
  step: RefreshColumn | ChangeColumn,
  overview: Overview,
  tables: Tables,
): PresentColumn | Refusal {
  const table = "table" in step.to ? tables.get(step.to.table.toLowerCase()) : null;
  if (table === undefined) return noTable((step.to as { table: string }).table);
  if (table && !table.hasHeader) return noHeader(table.name);
  const { sheet, area } = table ?? (step.to as { list: { sheet: SheetId; area: Area } }).list;
  const unwritable = unwritableSheet(sheet, overview);
  if (unwritable) return unwritable;
  const rows = area.rows - 1 - (table?.hasTotals ? 1 : 0);
  if (rows < 1) return new Refusal("There is no row below the header. Enter the first row first.");
  if (step.column >= area.columns) return new Refusal("That column is no longer there. Look again.");
  const data = { ...area, top: area.top + 1, rows };
  return {
    sheet,
    table: table?.name ?? null,
    header: table?.columns[step.column] ?? null,
    listLeft: area.left,
    area: { ...data, left: area.left + step.column, columns: 1 },
    data,
  };
}

/** The formula of one sheet row, with "=". */
export const refreshedFormula = ({ step, table, listLeft }: RefreshTarget, row: number): string =>
  `=${table === null ? inA1(step.formula, row, listLeft) : inTable(step.formula, table)}`;

/** Where the column stands now, and the cells that hold something else than was written. */
export async function refreshedStanding(
  target: RefreshTarget | ReenterTarget,
  formulas: readonly (readonly (string | null)[])[],
  workbook: Pick<Workbook, "read">,
  overview: Overview,
): Promise<{ readonly area: Area; readonly differing: readonly string[] } | Refusal> {
  const area = areaNow(target, overview);
  if (area instanceof Refusal) return area;
  const block = await workbook.read({ sheet: target.sheet, area }, ["formulas"]);
  const isMeant = (r: number) => target.kind === "refreshColumn" || target.step.formulas[r] !== null;
  const differing = formulas.flatMap((row, r) =>
    !isMeant(r) || (block.formulas?.[r]?.[0] ?? null) === (row[0] ?? null)
      ? []
      : [cellAddress(area.top + r, area.left)],
  );
  return { area, differing };
}

/** The list's rows are told apart by its first column, but for the changed one. */
const columnThatTells = ({ area, data }: PresentColumn): number =>
  area.left === data.left && data.columns > 1 ? data.left + 1 : data.left;

/** What tells the rows of a list apart, as it stands now; remembered when cells of a column are changed. */
export function tellingCells(target: ChangeColumnTarget): { readonly sheet: SheetId; readonly area: Area } {
  return { sheet: target.sheet, area: { ...target.data, left: columnThatTells(target), columns: 1 } };
}

/**
 * Where changed cells stand now, and which of them hold something else than was written.
 * @param told what told the rows apart when the change was done
 */
export async function changedStanding(
  target: ChangeColumnTarget,
  told: readonly (readonly Value[])[],
  workbook: Pick<Workbook, "read">,
  overview: Overview,
): Promise<{ readonly area: Area; readonly differing: readonly string[] } | Refusal> {
  const area = areaNow(target, overview);
  if (area instanceof Refusal) return area;
  const { sheet, step } = target;
  const tells = { ...area, left: area.left + columnThatTells(target) - target.area.left };
  const { values: now = [] } = await workbook.read({ sheet, area: tells }, ["values"]);
  const isChanged = (r: number): boolean => step.values[r] !== undefined;
  if (area.rows > 0 && told.some((row, r) => isChanged(r) && asText(now[r]?.[0] ?? null) !== asText(row[0] ?? null)))
    return new Refusal(
      "The rows were sorted or changed since, so the former cells cannot be told apart. Nothing was changed back.",
    );
  const { values = [], formulas = [] } = await workbook.read({ sheet, area }, ["values", "formulas"]);
  const differing = step.values.flatMap((value, r) =>
    value === undefined || ((formulas[r]?.[0] ?? null) === null && isSame(values[r]?.[0] ?? null, value))
      ? []
      : [cellAddress(area.top + r, area.left)],
  );
  return { area, differing };
}

function areaNow({ table: name, header, sheet, area }: PresentColumn, overview: Overview): Area | Refusal {
  if (name === null)
    return overview.sheets.some(({ id }) => id === sheet)
      ? area
      : new Refusal("The sheet with that column is no longer there. Nothing was changed back.");
  const table = overview.tables.find((one) => one.name.toLowerCase() === name.toLowerCase());
  const column = table?.columns.indexOf(header ?? "") ?? -1;
  if (!table || column < 0)
    return new Refusal(`The column "${header}" is no longer in "${name}". Nothing was changed back.`);
  const rows = table.area.rows - 1 - (table.hasTotals ? 1 : 0);
  return rows === area.rows
    ? { top: table.area.top + 1, left: table.area.left + column, rows, columns: 1 }
    : new Refusal(
        `"${name}" has got other rows since, so the former cells cannot be told apart. Nothing was changed back.`,
      );
}
