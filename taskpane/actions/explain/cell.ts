/** What one cell holds. */
import type { Value, Workbook } from "../../workbook/port";
import { isDateFormat } from "../list/samples";
import type { Standing } from "./references";

export interface CellRead {
  readonly value: Value;
  readonly formula: string | null;
  readonly isDate: boolean;
}

export async function cellAt(workbook: Workbook, { sheet, row, column }: Standing): Promise<CellRead> {
  const area = { top: row, left: column, rows: 1, columns: 1 };
  const { values, formulas, formats } = await workbook.read({ sheet, area }, ["values", "formulas", "formats"]);
  const isDate = isDateFormat(formats?.[0]?.[0] ?? "");
  return { value: values?.[0]?.[0] ?? null, formula: formulas?.[0]?.[0] ?? null, isDate };
}
