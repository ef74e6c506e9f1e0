/** Finds the rows that were invented in a caseload as it stands now, and those among them that somebody has changed. */
import { inventedCaseload, inventedRows, type AnyRow } from "../../../src/caseload/invented/index";
import type { RowsTable } from "../../../src/caseload/names";
import type { Header } from "../../../src/caseload/headers";
import type { CaseloadRow } from "../../../src/caseload/rows";
import { wordKey } from "../../../src/columns/spelling";
import { isSame } from "../../workbook/change/expectations";
import type { TableOverview, Value, Workbook } from "../../workbook/port";
import { dataRows } from "../../workbook/area";
import { headerKey, type Tables } from "../caseload/recognise";

export interface TableRows {
  readonly overview: TableOverview;
  /** Every row below the header, blank ones included. */
  readonly values: readonly (readonly Value[])[];
  /** Cells that hold a formula are worked out, not typed. */
  readonly isComputed: readonly (readonly boolean[])[];
}

export type AllRows = Readonly<Record<RowsTable, TableRows>>;

async function readTable(overview: TableOverview, workbook: Pick<Workbook, "read">): Promise<TableRows> {
  const { values, formulas } = await workbook.read({ table: overview.name }, ["values", "formulas"]);
  const body = <T>(rows: readonly T[] | undefined): readonly T[] => (rows ?? []).slice(1, 1 + dataRows(overview));
  return {
    overview,
    values: body(values),
    isComputed: body(formulas).map((row) => row.map((formula) => formula !== null)),
  };
}

export async function readAll(tables: Tables, workbook: Pick<Workbook, "read">): Promise<AllRows> {
  return {
    tubes: await readTable(tables.tubes, workbook),
    checks: await readTable(tables.checks, workbook),
    changes: await readTable(tables.changes, workbook),
  };
}

export interface InventedIn {
  /** Rows counted from 0 below the header: as they were invented, or changed since. */
  readonly untouched: readonly number[];
  readonly changed: readonly number[];
  /** Rows with something typed in them that nobody invented. */
  readonly own: readonly number[];
}

export interface Found {
  /** The day on which the people were invented; null where none are left. */
  readonly inventedOn: number | null;
  readonly tables: Readonly<Record<RowsTable, InventedIn>>;
}

/** Headers as the invented rows spell them, by their key. */
function spelledHeaders(invented: readonly CaseloadRow[]): ReadonlyMap<string, string> {
  return new Map(invented.flatMap((row) => Object.keys(row).map((header) => [headerKey(header), header])));
}

const idOf = (row: AnyRow): string => wordKey(String(row.ID ?? ""));

export function findInvented(rows: AllRows): Found {
  const anyDay = 46_000;
  const sample = inventedCaseload(anyDay);
  const named = (key: RowsTable): AnyRow[] => {
    const headers = rows[key].overview.columns.map(
      (column) => spelledHeaders(sample[key]).get(headerKey(column)) ?? column,
    );
    return rows[key].values.map((row) => Object.fromEntries(headers.map((header, c) => [header, row[c] ?? null])));
  };
  const all = { tubes: named("tubes"), checks: named("checks"), changes: named("changes") };
  const invented = inventedRows(all);
  const { inventedOn } = invented;
  const original = inventedOn === null ? null : inventedCaseload(inventedOn);
  const inTable = (key: RowsTable): InventedIn => {
    const ours = new Set(invented[key]);
    const untouched = invented[key].filter(
      (index) => original !== null && isAsInvented(rows[key], index, all[key][index]!, original[key]),
    );
    return {
      untouched,
      changed: invented[key].filter((index) => !untouched.includes(index)),
      own: rows[key].values.flatMap((_, index) => (!ours.has(index) && isFilled(rows[key], index) ? [index] : [])),
    };
  };
  return {
    inventedOn,
    tables: { tubes: inTable("tubes"), checks: inTable("checks"), changes: inTable("changes") },
  };
}

const isBlank = (value: Value | undefined): boolean =>
  value === null || value === undefined || (typeof value === "string" && value.trim() === "");

const isFilled = ({ values, isComputed }: TableRows, index: number): boolean =>
  values[index]!.some((value, c) => !isComputed[index]![c] && !isBlank(value));

/**
 * Whether every typed cell of a row holds what was invented for one of the rows with its identifier. A column that was
 * left out of the table says nothing; one that the clinic added holds nothing in an invented row.
 */
const isAsInvented = (
  { isComputed }: TableRows,
  index: number,
  row: AnyRow,
  originals: readonly CaseloadRow[],
): boolean => {
  const typed = Object.keys(row).filter((_, c) => !isComputed[index]![c]);
  return originals.some(
    (one) =>
      idOf(one) === idOf(row) && typed.every((header) => isSame(row[header] as Value, one[header as Header] ?? null)),
  );
};
