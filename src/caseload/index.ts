/** The ready-made caseload as data: five sheets, three tables, the settings, and the names that hold them together. */
import { AS_OF } from "../columns/as-of";
import type { BookDescription, NameDescription } from "./book";
import type { Carried } from "./carried";
import type { OptionalGroup } from "./column";
import { inventedCaseload } from "./invented/index";
import { rowsTables, sheetNames, tableNames } from "./names";
import { readFirstSheet } from "./read-first";
import type { CaseloadRows } from "./rows";
import { settingsSheet } from "./settings-sheet";
import { columnNames, headerNames, tableSheet } from "./tables";
import { withResults } from "./results";
import { URGENCY } from "./urgency";

export type { OptionalGroup } from "./column";
export type { CaseloadRow, CaseloadRows } from "./rows";

export interface CaseloadOptions {
  /** The day that counts as today while results are worked out; the workbook itself counts from its own today. */
  readonly asOf: number;
  readonly groups: readonly OptionalGroup[];
  readonly people: "invented" | "none";
}

const nobody: CaseloadRows = { tubes: [], checks: [], changes: [] };
/** A table needs a row to type in: blank, but for its formulas. */
const oneBlank = <T>(rows: readonly T[]): readonly (T | Record<string, never>)[] => (rows.length > 0 ? rows : [{}]);

export function caseloadBook(options: CaseloadOptions): BookDescription {
  if (options.people === "none") return caseloadBookOf(nobody, options);
  const rows = inventedCaseload(options.asOf);
  return caseloadBookOf(mostUrgentFirst(rows, caseloadBookOf(rows, options)), options);
}

/** The list as a person would sort it: what asks for something stands at the top, the quiet majority below. */
function mostUrgentFirst(rows: CaseloadRows, { sheets }: BookDescription): CaseloadRows {
  const { columns, rows: worked } = sheets.find(({ name }) => name === sheetNames.tubes)!.table!;
  const at = columns.findIndex(({ header }) => header === URGENCY);
  const order = rows.tubes.map((row, i) => ({ row, urgency: Number(worked[i]![at]) }));
  return { ...rows, tubes: order.sort((one, other) => one.urgency - other.urgency).map(({ row }) => row) };
}

/** The same for any rows. */
export const caseloadBookOf = (rows: CaseloadRows, { asOf, groups, people }: CaseloadOptions): BookDescription =>
  withResults(described(rows, { asOf, groups }, people === "invented" ? asOf : null), asOf);

/** By the present description, with everything that a clinic has entered in an older caseload. */
export const carriedBook = (carried: Carried, options: Pick<CaseloadOptions, "asOf" | "groups">): BookDescription =>
  withResults(described(carried.rows, options, carried.inventedOn, carried), options.asOf);

function described(
  rows: CaseloadRows,
  { asOf, groups }: Pick<CaseloadOptions, "asOf" | "groups">,
  inventedOn: number | null,
  carried?: Carried,
): BookDescription {
  const isInvented = inventedOn !== null;
  const readFirst = readFirstSheet(asOf, inventedOn);
  const settings = settingsSheet(isInvented, carried);
  const tables = rowsTables.map((table) =>
    tableSheet(table, oneBlank(rows[table]), groups, isInvented, carried?.own[table]),
  );
  const wholeColumns: NameDescription[] = columnNames.map(({ name, table, header }) => ({
    name,
    refersTo: `${tableNames[table]}[${header}]`,
  }));
  const headers: NameDescription[] = headerNames.map(({ name, table, header }) => ({
    name,
    refersTo: `${tableNames[table]}[[#Headers],[${header}]]`,
  }));
  return {
    title: "Gastrostomy tubes: caseload",
    opensOn: sheetNames.tubes,
    sheets: [readFirst.sheet, ...tables, settings.sheet],
    names: [{ name: AS_OF, refersTo: "TODAY()" }, ...readFirst.names, ...settings.names, ...wholeColumns, ...headers],
  };
}
