/** What the small forms write: rows by header, what must still be true, and what is said afterwards. */
import type { Cell } from "../../../src/worksheet/cell";
import type { ByHeader, Header, ShownHeader } from "../../../src/caseload/headers";
import type { RowsTable } from "../../../src/caseload/names";
import { CellError } from "../../../src/worksheet/error";
import type { Expectation, Place, Receipt, RowValues } from "../../workbook/port";
import type { Afterwards, Planned } from "../action";
import { inQuotes, together } from "../../texts/pieces";
import { shortDate } from "../../../src/words/date-in-words";
import { columnOf, valueIn, type CaseloadRow, type CaseloadRows } from "./read";

/** One line of the preview of a row. */
export interface Line {
  readonly header: string;
  readonly text: string;
}

export interface RowPreview {
  /** "New row in Balloon checks", "Row 12 of Tubes in use". */
  readonly title: string;
  readonly lines: readonly Line[];
}

/** A change planned by a form. */
export interface Recording extends Planned {
  /** What is doubtful: recorded only after a second press. */
  readonly asks: readonly string[];
  readonly rows: readonly RowPreview[];
}

export interface Written {
  readonly values: RowValues;
  readonly lines: readonly Line[];
  /** Headers that something was to be written under, but the column is not there. */
  readonly homeless: readonly string[];
}

/** Columns that hold days (tests/laws/headers). */
export const dateHeaders: readonly ShownHeader[] = [
  ...(["Born", "Weighed on", "Stoma made", "Device in", "Measured on", "Site seen on", "Status since"] as const),
  ...(["Booked for", "Date set by placing team", "Spare expires", "Change due", "At the latest"] as const),
  ...(["Last check", "Check due", "Checked on", "In", "Out"] as const),
];

function cellText(header: string, value: Cell): string {
  if (value === null) return "(emptied)";
  const isDay = typeof value === "number" && dateHeaders.some((one) => one === header);
  return isDay ? shortDate(value) : String(value);
}

/** Cells under the headers as they stand in this table; a column that the clinic left out is told. */
export function underHeaders<T extends RowsTable>(rows: CaseloadRows<T>, cells: ByHeader<Cell, NoInfer<T>>): Written {
  const values: Record<string, Cell> = {};
  const lines: Line[] = [];
  const homeless: string[] = [];
  for (const [header, value] of Object.entries(cells) as [Header<T>, Cell][]) {
    const column = columnOf(rows, header);
    if (column === undefined) {
      if (value !== null) homeless.push(header);
      continue;
    }
    values[column] = value;
    lines.push({ header: column, text: cellText(header, value) });
  }
  return { values, lines, homeless };
}

/** Cells to be emptied. */
export const emptied = <H extends Header>(headers: readonly H[]): { readonly [K in H]?: null } =>
  Object.fromEntries(headers.map((header) => [header, null])) as { [K in H]?: null };

/** Cells that are not blank: in a new row the others take the column's formula. */
export const filled = <C extends ByHeader<Cell>>(cells: C): Partial<C> =>
  Object.fromEntries(Object.entries(cells).filter(([, value]) => value !== null)) as Partial<C>;

export const homelessSentence = (rows: CaseloadRows, headers: readonly string[]): readonly string[] =>
  headers.length === 0 ? [] : [`Not written: ${rows.sheetName} has no column ${together(headers.map(inQuotes))}.`];

/** That a row still holds what was read back and counted with; a cell that held an error is not compared. */
export function stillSo<T extends RowsTable>(
  rows: CaseloadRows<T>,
  row: CaseloadRow<NoInfer<T>>,
  headers: readonly Header<NoInfer<T>>[],
): Expectation {
  const values: Record<string, Cell> = {};
  for (const header of headers) {
    const column = columnOf(rows, header);
    const value = valueIn<T>(row, header);
    if (column !== undefined && !(value instanceof CellError)) values[column] = value;
  }
  return { kind: "row", table: rows.table, row: row.index, values };
}

export function afterRecording(receipt: Receipt, done: readonly string[], where: Place): Afterwards {
  const canTakeBack = receipt.done.some(({ changed }) => changed);
  if (receipt.outcome === "done") return { outcome: "done", sentences: done, where, canTakeBack };
  const still = canTakeBack
    ? "Some of it still stands: look at both sheets, or take it back."
    : "Nothing was recorded.";
  return {
    outcome: receipt.outcome,
    sentences: [receipt.sentence, still],
    where: canTakeBack ? where : null,
    canTakeBack,
  };
}
