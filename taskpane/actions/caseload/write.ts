/** What the small forms write: rows by header, what must still be true, and what is said afterwards. */
import type { Cell } from "../../../src/worksheet/cell";
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

const DATE_HEADERS =
  /^(?:Born|Stoma made|Device in|Checked on|In|Out|Booked for|Measured on|Last check|Check due|Date set by placing team)$/;

const cellText = (header: string, value: Cell): string =>
  value === null
    ? "(emptied)"
    : typeof value === "number" && DATE_HEADERS.test(header)
      ? shortDate(value)
      : String(value);

/** Cells under the headers as they stand in this table; a column that the clinic left out is told. */
export function underHeaders(rows: CaseloadRows, cells: Readonly<Record<string, Cell>>): Written {
  const values: Record<string, Cell> = {};
  const lines: Line[] = [];
  const homeless: string[] = [];
  for (const [header, value] of Object.entries(cells)) {
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

/** Cells that are not blank: in a new row the others take the column's formula. */
export const filled = (cells: Readonly<Record<string, Cell>>): Readonly<Record<string, Cell>> =>
  Object.fromEntries(Object.entries(cells).filter(([, value]) => value !== null));

export const homelessSentence = (rows: CaseloadRows, headers: readonly string[]): readonly string[] =>
  headers.length === 0 ? [] : [`Not written: ${rows.sheetName} has no column ${together(headers.map(inQuotes))}.`];

/** That a row still holds what was read back and counted with; a cell that held an error is not compared. */
export function stillSo(rows: CaseloadRows, row: CaseloadRow, headers: readonly string[]): Expectation {
  const values: Record<string, Cell> = {};
  for (const header of headers) {
    const column = columnOf(rows, header);
    const value = valueIn(row, header);
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
