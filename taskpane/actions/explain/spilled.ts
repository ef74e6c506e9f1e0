/** The formula that fills a cell from elsewhere: its own cell stands above it or to its left. */
import type { SheetFunction } from "../../../src/worksheet/define";
import type { Matrix } from "../../../src/worksheet/cell";
import type { Overview, Value, Workbook } from "../../workbook/port";
import { callsIn, Working } from "./work-out";
import { parse } from "../../../src/formula/parse";
import type { Standing } from "./references";
import { isSameValue } from "./values";

/** A formula of ours fills at most so many columns and rows away from its own cell. */
const COLUMNS_LEFT = 12;
const ROWS_ABOVE = 5_000;

export interface FilledFrom {
  readonly standing: Standing;
  readonly formula: string;
}

/** Null where no formula of ours was found that gives just this cell this value. */
export async function filledFrom(
  workbook: Workbook,
  overview: Overview,
  functions: readonly SheetFunction[],
  { sheet, row, column }: Standing,
  shown: Value,
): Promise<FilledFrom | null> {
  const left = Math.max(0, column - COLUMNS_LEFT);
  const top = Math.max(0, row - ROWS_ABOVE);
  const area = { top, left, rows: row - top + 1, columns: column - left + 1 };
  const { formulas = [] } = await workbook.read({ sheet, area }, ["formulas"]);
  for (let c = area.columns - 1; c >= 0; c--) {
    // Between a formula and the last cell that it fills no other formula can stand.
    let r = area.rows - 1;
    while (r >= 0 && (formulas[r]?.[c] ?? null) === null) r--;
    const text = formulas[r]?.[c] ?? null;
    if (text === null) continue;
    const node = parse(text);
    if (callsIn(node, functions).length === 0) continue;
    const standing = { sheet, row: top + r, column: left + c };
    const { found } = await new Working(workbook, overview, functions, standing).out(node);
    if (!found.known || !Array.isArray(found.value)) continue;
    const filled = (found.value as Matrix<Value>)[row - standing.row]?.[column - standing.column];
    if (filled !== undefined && isSameValue(filled, shown)) return { standing, formula: text };
  }
  return null;
}
