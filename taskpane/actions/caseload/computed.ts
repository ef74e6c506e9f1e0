/** Which columns are worked out by formulas: these are never written, all others are. */
import type { ByHeader } from "../../../src/caseload/headers";
import type { Workbook } from "../../workbook/port";
import { headerKey } from "./recognise";
import { placeOf, type CaseloadRow, type CaseloadRows } from "./read";

export type Computed = ReadonlySet<string>;

async function inRow(rows: CaseloadRows, index: number, workbook: Pick<Workbook, "read">): Promise<Computed> {
  const { formulas } = await workbook.read(placeOf(rows, { index }), ["formulas"]);
  return new Set(rows.columns.filter((_, c) => (formulas?.[0]?.[c] ?? null) !== null).map(headerKey));
}

export const computedIn = (rows: CaseloadRows, row: CaseloadRow, workbook: Pick<Workbook, "read">): Promise<Computed> =>
  inRow(rows, row.index, workbook);

/** As a new row will have them: those of the last row. */
export const computedInNew = async (rows: CaseloadRows, workbook: Pick<Workbook, "read">): Promise<Computed> =>
  rows.dataRows === 0 ? new Set() : inRow(rows, rows.dataRows - 1, workbook);

/** Cells under columns that hold no formula. */
export const notComputed = <C extends ByHeader<unknown>>(cells: C, computed: Computed): Partial<C> =>
  Object.fromEntries(Object.entries(cells).filter(([header]) => !computed.has(headerKey(header)))) as Partial<C>;
