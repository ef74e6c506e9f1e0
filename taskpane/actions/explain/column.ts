/** In which column of which list a cell stands, and whether the column is one of ours. */
import { recipes } from "../../../src/columns/recipes/index";
import type { Recipe } from "../../../src/columns/recipes/recipe";
import type { TableColumn } from "../../../src/caseload/book";
import type { OptionalGroup } from "../../../src/caseload/column";
import { rowsTables, tableNames } from "../../../src/caseload/names";
import { TO_DO } from "../../../src/caseload/sort-key";
import { urgencies } from "../../../src/caseload/urgency";
import { boundColumns, columnsOf } from "../../../src/caseload/tables";
import { contains } from "../../workbook/area";
import type { Overview, Workbook } from "../../workbook/port";
import { locate } from "../list/find";
import type { ColumnExplained } from "./interface";
import type { Standing } from "./references";

export interface InList {
  readonly header: string;
  /** The table's name; null for a plain list. */
  readonly table: string | null;
  /** Of the whole list, from its first column on. */
  readonly headers: readonly string[];
  readonly left: number;
}

/** Null where the cell is in no list, or is a header itself. */
export async function listAt(workbook: Workbook, overview: Overview, standing: Standing): Promise<InList | null> {
  const { sheet, row, column } = standing;
  const table = overview.tables.find((one) => one.sheet === sheet && contains(one.area, row, column));
  if (table)
    return table.hasHeader && row > table.area.top
      ? {
          header: table.columns[column - table.area.left] ?? "",
          table: table.name,
          headers: table.columns,
          left: table.area.left,
        }
      : null;
  const at = { sheet, area: { top: row, left: column, rows: 1, columns: 1 } };
  const { list } = await locate(workbook, { ...overview, selection: at }, {});
  if (list?.in !== "sheet" || list.sheet.id !== sheet) return null;
  const { area, headers } = list.found;
  return contains(area, row, column) && row > area.top
    ? { header: headers[column - area.left] ?? "", table: null, headers, left: area.left }
    : null;
}

const recipeFor = (header: string): Recipe | undefined =>
  recipes.find((one) => one.header.toLowerCase() === header.trim().toLowerCase());

/** A column of the ready-made caseload, or one that Add columns makes; null for somebody's own. */
export function ourColumn({ header, table }: InList, isWorkedOut: boolean): ColumnExplained | null {
  const recipe = recipeFor(header);
  const column = table === null ? undefined : caseloadColumn(table, header);
  if (column) return ofCaseload(column, recipe);
  return recipe && isWorkedOut
    ? {
        header: recipe.header,
        help: recipe.help,
        caution: recipe.caution ?? null,
        words: recipe.words,
        kind: "computed",
      }
    : null;
}

/** Every column that the caseload can have, whether this workbook left some out or not. */
const groups = ["fit", "plan", "spare"] as const satisfies readonly OptionalGroup[];

function caseloadColumn(table: string, header: string): TableColumn | undefined {
  const [key] = rowsTables.filter((one) => tableNames[one] === table);
  return key && boundColumns(columnsOf(key, groups)).find((column) => column.header === header);
}

const WORKED_OUT = "Worked out from the rest of the row; nothing is typed here.";

function ofCaseload({ header, kind, validation, rules }: TableColumn, recipe: Recipe | undefined): ColumnExplained {
  if (kind !== "computed")
    return {
      header,
      help: validation?.hint ?? "",
      caution: null,
      words: validation?.kind === "list" ? validation.words : [],
      kind,
    };
  /* Rules stand by colour; the words of To do have an order of their own. */
  const coloured =
    header === TO_DO ? urgencies.map(({ word }) => word) : (rules ?? []).flatMap((rule) => rule.words ?? []);
  return {
    header,
    help: recipe?.help ?? WORKED_OUT,
    caution: recipe?.caution ?? null,
    words: [...new Set([...(recipe?.words ?? []), ...coloured])],
    kind,
  };
}
