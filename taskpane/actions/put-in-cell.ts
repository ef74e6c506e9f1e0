/** Insert a function: puts one formula into the selected cell, if that is one empty cell, and says what became of it. */
import { cellAddress } from "../../src/columns/formula";
import { guide as guideTexts } from "../texts/guide";
import type { Overview, Receipt, Workbook } from "../workbook/port";

export interface Target {
  readonly sheet: string;
  readonly sheetName: string;
  readonly row: number;
  readonly column: number;
  readonly address: string;
}

/** The selected cell, or a sentence why nothing can be put there. */
export function targetOf(overview: Overview): Target | string {
  const { selection } = overview;
  if (!selection) return guideTexts.nothingSelected;
  const sheet = overview.sheets.find(({ id }) => id === selection.sheet);
  if (!sheet) return guideTexts.nothingSelected;
  if (sheet.kind === "chart sheet") return guideTexts.chartSheet;
  if (sheet.isProtected) return guideTexts.protected(sheet.name);
  const { area } = selection;
  if (area.rows !== 1 || area.columns !== 1) return guideTexts.oneCell;
  const address = cellAddress(area.top, area.left);
  return { sheet: sheet.id, sheetName: sheet.name, row: area.top, column: area.left, address };
}

export interface Put {
  readonly sentence: string;
  /** Null where nothing stands that could be taken back. */
  readonly receipt: Receipt | null;
}

/** @param format a number format for the cell where the result is a date */
export async function putInCell(
  workbook: Workbook,
  formula: string,
  format: string | undefined,
  signal: AbortSignal,
): Promise<Put> {
  const target = targetOf(await workbook.overview());
  if (typeof target === "string") return { sentence: target, receipt: null };
  const area = { top: target.row, left: target.column, rows: 1, columns: 1 };
  const { values, formulas } = await workbook.read({ sheet: target.sheet, area }, ["values", "formulas"]);
  const value = values?.[0]?.[0] ?? null;
  if ((value !== null && value !== "") || (formulas?.[0]?.[0] ?? null) !== null) {
    return { sentence: guideTexts.notEmpty(target.address), receipt: null };
  }
  const receipt = await workbook.apply(
    {
      steps: [
        {
          kind: "writeFormula",
          sheet: target.sheet,
          row: target.row,
          column: target.column,
          formula,
          ...(format && { format }),
        },
      ],
      expects: [{ kind: "empty", sheet: target.sheet, area }],
    },
    { report: () => undefined, signal },
  );
  if (receipt.outcome !== "done")
    return { sentence: receipt.sentence, receipt: receipt.done.length > 0 ? receipt : null };
  return { sentence: guideTexts.done(target.address, target.sheetName), receipt };
}
