/** In which column of which list a cell stands, and whether the column is one of ours. */
import { recipes } from "../../../src/columns/recipes/index";
import { contains } from "../../workbook/area";
import type { Overview, Workbook } from "../../workbook/port";
import { locate } from "../add-columns/find";
import type { ColumnExplained } from "./interface";
import type { Standing } from "./references";

export interface InList {
  readonly header: string;
  /** The table's name; null for a plain list. */
  readonly table: string | null;
}

/** Null where the cell is in no list, or is a header itself. */
export async function listAt(workbook: Workbook, overview: Overview, standing: Standing): Promise<InList | null> {
  const { sheet, row, column } = standing;
  const table = overview.tables.find((one) => one.sheet === sheet && contains(one.area, row, column));
  if (table)
    return table.hasHeader && row > table.area.top
      ? { header: table.columns[column - table.area.left] ?? "", table: table.name }
      : null;
  const at = { sheet, area: { top: row, left: column, rows: 1, columns: 1 } };
  const { list } = await locate(workbook, { ...overview, selection: at }, {});
  if (list?.in !== "sheet" || list.sheet.id !== sheet) return null;
  const { area, headers } = list.found;
  return contains(area, row, column) && row > area.top
    ? { header: headers[column - area.left] ?? "", table: null }
    : null;
}

/** A column that this add-in makes, by its header. */
export function ourColumn({ header }: InList): ColumnExplained | null {
  const wanted = header.trim().toLowerCase();
  const recipe = recipes.find((one) => one.header.toLowerCase() === wanted);
  return (
    (recipe && { header: recipe.header, help: recipe.help, caution: recipe.caution ?? null, words: recipe.words }) ??
    null
  );
}
