/** Explain this cell: what its formula is made of, and why it says what it says. */
import { cellAddress } from "../../../src/columns/formula";
import { textOf } from "../../../src/columns/sheet-block";
import type { SheetFunction } from "../../../src/worksheet/define";
import type { Workbook } from "../../workbook/port";
import { cellAt } from "./cell";
import { Explaining } from "./explaining";
import type { Explained } from "./interface";
import type { Standing } from "./references";
import { nothing } from "./sentences";
import { filledFrom } from "./spilled";

export async function explainCell(workbook: Workbook, functions: readonly SheetFunction[]): Promise<Explained> {
  const overview = await workbook.overview();
  const { selection } = overview;
  const sheet = overview.sheets.find(({ id }) => id === selection?.sheet);
  if (!selection || !sheet) return { sentence: nothing.selected };
  if (sheet.kind === "chart sheet") return { sentence: nothing.chart };
  const standing: Standing = { sheet: sheet.id, row: selection.area.top, column: selection.area.left };
  const cell = await cellAt(workbook, standing);
  const explaining = new Explaining(workbook, overview, functions, standing, cell);
  if (cell.formula !== null) return explaining.formula(cell.formula, standing);
  const from = await filledFrom(workbook, overview, functions, standing, cell.value);
  if (from) return explaining.formula(from.formula, from.standing);
  if (textOf(cell.value).trim() === "") return { sentence: nothing.empty(cellAddress(standing.row, standing.column)) };
  return explaining.typed();
}
