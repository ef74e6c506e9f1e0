/** A column that is written anew: where it stands, and whether it still holds what was written. */
import { cellAddress, inA1, inTable } from "../../../src/columns/formula";
import type { Area, Overview, SheetId, Step, TableOverview, Workbook } from "../port";
import { noHeader, noTable, Refusal, unwritableSheet } from "./refusal";

type RefreshColumn = Extract<Step, { kind: "refreshColumn" }>;

export interface RefreshTarget {
  readonly kind: "refreshColumn";
  readonly step: RefreshColumn;
  readonly sheet: SheetId;
  /** The table's name, or null for a plain list. */
  readonly table: string | null;
  /** In a table: by what the column is found again. */
  readonly header: string | null;
  /** The sheet column of the list's leftmost column: the slots of formulas count from here. */
  readonly listLeft: number;
  /** The column's data cells. */
  readonly area: Area;
}

export function refreshTarget(
  step: RefreshColumn,
  overview: Overview,
  tables: ReadonlyMap<string, TableOverview>,
): RefreshTarget | Refusal {
  const table = "table" in step.to ? tables.get(step.to.table.toLowerCase()) : null;
  if (table === undefined) return noTable((step.to as { table: string }).table);
  if (table && !table.hasHeader) return noHeader(table.name);
  const { sheet, area } = table ?? (step.to as { list: { sheet: SheetId; area: Area } }).list;
  const unwritable = unwritableSheet(sheet, overview);
  if (unwritable) return unwritable;
  const rows = area.rows - 1 - (table?.hasTotals ? 1 : 0);
  if (rows < 1) return new Refusal("There is no row below the header. Enter the first row first.");
  if (step.column >= area.columns) return new Refusal("That column is no longer there. Look again.");
  return {
    kind: "refreshColumn",
    step,
    sheet,
    table: table?.name ?? null,
    header: table?.columns[step.column] ?? null,
    listLeft: area.left,
    area: { top: area.top + 1, left: area.left + step.column, rows, columns: 1 },
  };
}

/** The formula of one sheet row, with "=". */
export const refreshedFormula = ({ step, table, listLeft }: RefreshTarget, row: number): string =>
  `=${table === null ? inA1(step.formula, row, listLeft) : inTable(step.formula, table)}`;

/** Where the column stands now, and the cells that hold something else than was written. */
export async function refreshedStanding(
  target: RefreshTarget,
  formulas: readonly (readonly (string | null)[])[],
  workbook: Pick<Workbook, "read">,
  overview: Overview,
): Promise<{ readonly area: Area; readonly differing: readonly string[] } | Refusal> {
  const area = areaNow(target, overview);
  if (area instanceof Refusal) return area;
  const block = await workbook.read({ sheet: target.sheet, area }, ["formulas"]);
  const differing = formulas.flatMap((row, r) =>
    (block.formulas?.[r]?.[0] ?? null) === (row[0] ?? null) ? [] : [cellAddress(area.top + r, area.left)],
  );
  return { area, differing };
}

function areaNow({ table: name, header, sheet, area }: RefreshTarget, overview: Overview): Area | Refusal {
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
