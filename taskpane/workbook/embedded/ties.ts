/** What stays where it is when rows are sorted here, and so would come to stand beside somebody else. */
import type { IRange } from "@univerjs/core";
import { SheetsNoteModel } from "@univerjs/sheets-note";
import { cellAddress } from "../../../src/columns/formula";
import type { Engine } from "./engine";
import type { BookFacts } from "./facts";

const inside = (range: IRange, row: number, column: number): boolean =>
  row >= range.startRow && row <= range.endRow && column >= range.startColumn && column <= range.endColumn;

/** A sentence why the rows may not be sorted; undefined where they may. */
export function tieOf(
  engine: Engine,
  unitId: string,
  facts: BookFacts,
  sheet: string,
  range: IRange,
): string | undefined {
  if (!facts.file) return undefined;
  const notes = engine.injector.get(SheetsNoteModel).getSheetNotes(unitId, sheet);
  for (const note of notes?.values() ?? []) {
    if (!inside(range, note.row, note.col)) continue;
    const address = cellAddress(note.row, note.col);
    return `Rows with notes (${address}) are not sorted here: in the file the note would stay behind, beside another row. Sort in Excel.`;
  }
  const kept = facts.keptAsValue.get(sheet)?.find(([row, column]) => inside(range, row, column));
  if (!kept) return undefined;
  return `${cellAddress(...kept)} holds a formula that this page cannot work out or move. Sort in Excel.`;
}
