/**
 * Is this workbook a ready-made caseload? By its tables' names and headers: columns may have been moved, groups of
 * columns left out, columns of the clinic's own added, sheets renamed.
 */
import type { ShownHeader } from "../../../src/caseload/headers";
import { rowsTables, tableNames, type RowsTable } from "../../../src/caseload/names";
import { wordKey } from "../../../src/columns/spelling";
import type { Overview, TableOverview } from "../../workbook/port";
import { inQuotes, together } from "../../texts/pieces";

/** Without one of these a table is not ours any more; every other column may be missing. */
export const requiredHeaders: { readonly [T in RowsTable]: readonly ShownHeader<T>[] } = {
  tubes: ["ID", "Status", "Born", "Access", "Stoma made", "Held by", "Shape", "Size Fr", "Device in"],
  checks: ["ID", "Checked on", "Out mL", "Put in mL"],
  changes: ["ID", "Access", "Held by", "In", "Out", "Reason"],
};

export type Tables = Readonly<Record<RowsTable, TableOverview>>;

/** Why the workbook is not read as a caseload, and whether there is none at all or one with something missing. */
export interface NoCaseload {
  readonly is: "none" | "incomplete";
  readonly sentence: string;
}

const tableNamed = (overview: Overview, name: string): TableOverview | undefined =>
  overview.tables.find((table) => table.name.toLowerCase() === name.toLowerCase());

/** Spelling of headers: letter case and white space do not count. */
export const headerKey = wordKey;

const missingIn = (table: TableOverview, headers: readonly string[]): readonly string[] => {
  const present = new Set(table.columns.map(headerKey));
  return headers.filter((header) => !present.has(headerKey(header)));
};

/** Looks at the overview only, which is at hand. */
export function recogniseCaseload(
  overview: Overview,
): { readonly is: "caseload"; readonly tables: Tables } | NoCaseload {
  const found = rowsTables.map((key) => [key, tableNamed(overview, tableNames[key])] as const);
  if (found.every(([, table]) => !table)) {
    return { is: "none", sentence: "There is no ready-made caseload in this workbook." };
  }
  const absent = found.flatMap(([key, table]) => (table ? [] : [inQuotes(tableNames[key])]));
  if (absent.length > 0) return incomplete(`the table ${together(absent)} is missing`);
  for (const [key, table] of found) {
    if (!table!.hasHeader) return incomplete(`the table ${inQuotes(table!.name)} shows no header row`);
    const missing = missingIn(table!, requiredHeaders[key]).map(inQuotes);
    if (missing.length > 0) return incomplete(`the table ${inQuotes(table!.name)} has no column ${together(missing)}`);
  }
  if (overview.dateSystem === 1904) return incomplete("its dates are counted from 1904");
  return { is: "caseload", tables: Object.fromEntries(found) as unknown as Tables };
}

const incomplete = (what: string): NoCaseload => ({
  is: "incomplete",
  sentence: `This caseload cannot be read: ${what}. Put that right, or set up a new caseload.`,
});
