/** One sentence about the selected cell, where it is worth one: an error, or what a column of ours or a function of ours shows. */
import { parse } from "../../../src/formula/parse";
import type { SheetFunction } from "../../../src/worksheet/define";
import { CellError } from "../../../src/worksheet/error";
import type { Overview, Workbook } from "../../workbook/port";
import { cellAt } from "./cell";
import { listAt, ourColumn } from "./column";
import { Explaining } from "./explaining";
import type { Standing } from "./references";
import { callsIn } from "./work-out";

/** Null where there is nothing to say: no cell or many, no formula, or somebody's own that shows no error. */
export async function sentenceAtSelection(
  workbook: Workbook,
  overview: Overview,
  functions: readonly SheetFunction[],
): Promise<string | null> {
  const { selection } = overview;
  if (!selection || selection.area.rows !== 1 || selection.area.columns !== 1) return null;
  if (overview.sheets.find(({ id }) => id === selection.sheet)?.kind !== "worksheet") return null;
  const standing: Standing = { sheet: selection.sheet, row: selection.area.top, column: selection.area.left };
  const cell = await cellAt(workbook, standing);
  if (cell.formula === null) return null;
  const list = await listAt(workbook, overview, standing);
  const isOurs =
    callsIn(parse(cell.formula), functions).length > 0 || (list !== null && ourColumn(list, true) !== null);
  if (!(cell.value instanceof CellError) && !isOurs) return null;
  return new Explaining(workbook, overview, functions, standing, cell).sentence(cell.formula, list);
}
