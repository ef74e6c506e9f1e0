/** What stays where it is when rows are sorted here, and so would come to stand beside somebody else. */
import type { IRange } from "@univerjs/core";
import { SheetsNoteModel } from "@univerjs/sheets-note";
import { cellAddress } from "../../../../src/columns/formula";
import { right } from "../../area";
import type { Engine } from "../engine";
import type { LiveBook } from "../book/live-book";

const inside = (range: IRange, row: number, column: number): boolean =>
  row >= range.startRow && row <= range.endRow && column >= range.startColumn && column <= range.endColumn;

/** A table is sorted as a whole, whatever stands beside it. */
const isTable = (workbook: LiveBook, sheet: string, range: IRange): boolean =>
  workbook
    .tables()
    .some(
      ({ facts, area }) =>
        facts.sheet === sheet && area.left === range.startColumn && right(area) === range.endColumn + 1,
    );

/** Something typed in the columns that go on beside these; formulas there follow their row by themselves. */
function leavesBehind(workbook: LiveBook, sheet: string, range: IRange): boolean {
  const reader = workbook.reader(sheet);
  for (const [first, step] of [
    [range.startColumn - 1, -1],
    [range.endColumn + 1, 1],
  ] as const) {
    let isBlank = false;
    for (let column = first; column >= 0 && !isBlank; column += step) {
      isBlank = true;
      for (let row = range.startRow; row <= range.endRow; row++) {
        if (reader.formula(row, column) !== null) isBlank = false;
        else if (reader.value(row, column) !== null) return true;
      }
    }
  }
  return false;
}

/** A sentence why the rows may not be sorted; undefined where they may. */
export function tieOf(engine: Engine, workbook: LiveBook, sheet: string, range: IRange): string | undefined {
  if (!isTable(workbook, sheet, range) && leavesBehind(workbook, sheet, range)) {
    const [from, to] = [cellAddress(range.startRow, range.startColumn), cellAddress(range.endRow, range.endColumn)];
    return `Only ${from}:${to} would be sorted: the cells beside it would stay, each next to another row's. Select all columns of the list, without its headers, then sort.`;
  }
  const fixed = fixedCell(engine, workbook, sheet, range);
  if (fixed?.what === "note")
    return `Rows with notes (${fixed.address}) are not sorted here: in the file the note would stay behind, beside another row. Sort in Excel.`;
  if (fixed) return `${fixed.address} holds a formula that this page cannot work out or move. Sort in Excel.`;
  return undefined;
}

interface Fixed {
  readonly what: "note" | "formula";
  readonly address: string;
}

/** What only the file holds, and so cannot go along with its row. */
export function fixedCell(engine: Engine, workbook: LiveBook, sheet: string, range: IRange): Fixed | undefined {
  const facts = workbook.bookFacts;
  if (!facts.file) return undefined;
  const notes = engine.injector.get(SheetsNoteModel).getSheetNotes(workbook.unit, sheet);
  for (const note of notes?.values() ?? [])
    if (inside(range, note.row, note.col)) return { what: "note", address: cellAddress(note.row, note.col) };
  const kept = facts.keptAsValue.get(sheet)?.find(([row, column]) => inside(range, row, column));
  return kept && { what: "formula", address: cellAddress(...kept) };
}
