/** What stands to the right of a list, where new columns would go. */
import { cellAddress } from "../../../src/columns/formula";
import { areaAddress, bottom, overlaps, right, SHEET_COLUMNS } from "../../workbook/area";
import type { Area, Overview, SheetId, Workbook } from "../../workbook/port";

export interface Beside {
  /** How many columns are free, at most as many as were asked for. */
  readonly room: number;
  /** What ends the room, nearest first; empty where the sheet's edge does, or nothing. */
  readonly inTheWay: readonly string[];
}

export async function lookBeside(
  workbook: Workbook,
  overview: Overview,
  sheet: SheetId,
  list: Area,
  wanted: number,
): Promise<Beside> {
  const columns = Math.min(wanted, SHEET_COLUMNS - right(list));
  if (columns <= 0) return { room: 0, inTheWay: [] };
  const area = { top: list.top, left: right(list), rows: list.rows, columns };
  const found = await lookInto(workbook, overview, sheet, area);
  return { room: Math.min(columns, found[0]?.column ?? columns), inTheWay: found.map(({ address }) => address) };
}

/** Something that stands where cells should be empty. */
export interface InTheWay {
  /** Counted from 0 within the cells looked at. */
  readonly column: number;
  /** "H5", "H5:H9", "table Caseload". */
  readonly address: string;
}

/** All that stands in some cells of a sheet, leftmost first: tables, merged cells, values and formulas. */
export async function lookInto(
  workbook: Workbook,
  overview: Overview,
  sheet: SheetId,
  area: Area,
): Promise<readonly InTheWay[]> {
  const block = await workbook.read({ sheet, area }, ["values", "formulas", "merges"]);
  const others = overview.tables.filter((table) => table.sheet === sheet && overlaps(table.area, area));
  const merged = (block.merges ?? []).filter((merge) => overlaps(merge, area));
  const found: InTheWay[] = [
    ...others.map((table) => ({ column: table.area.left - area.left, address: `table ${table.name}` })),
    ...merged.map((merge) => ({ column: Math.max(0, merge.left - area.left), address: areaAddress(merge) })),
  ];
  for (let row = 0; row < area.rows; row++)
    for (let column = 0; column < area.columns; column++)
      if ((block.values?.[row]?.[column] ?? null) !== null || (block.formulas?.[row]?.[column] ?? null) !== null)
        found.push({ column, address: cellAddress(area.top + row, area.left + column) });
  return found.sort((a, b) => a.column - b.column);
}

/** Rows of a list that its sheet does not show now. */
export async function hiddenRows(workbook: Workbook, sheet: SheetId, list: Area): Promise<number> {
  const area = { ...list, top: list.top + 1, rows: bottom(list) - list.top - 1, columns: 1 };
  if (area.rows < 1) return 0;
  const { hidden } = await workbook.read({ sheet, area }, ["hidden"]);
  return (hidden ?? []).filter((isHidden) => isHidden).length;
}
