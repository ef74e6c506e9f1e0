/** A sheet added to the fake. */
import { everyCell } from "../change/new-sheet";
import type { NewSheet } from "../port";
import { sheetLooks, type SheetPaint } from "../../styles/added-sheets";
import { GENERAL, type Book, type Sheet } from "./book";

export function addSheet(book: Book, added: NewSheet): Sheet {
  const sheet = book.addSheet(added.name);
  sheet.hidden = added.isHidden ?? false;
  for (const { row, column, value = null, formula, format = GENERAL, look } of everyCell(added)) {
    const paint: SheetPaint = look ? sheetLooks[look] : {};
    if (value === null && formula === undefined && look === undefined && format === GENERAL) continue;
    if (formula !== undefined) sheet.type(row, column, formula);
    const cell = sheet.made(row, column);
    if (formula === undefined || cell.value === null) cell.value = value === "" ? null : value;
    Object.assign(cell, { format, bold: paint.isBold ?? false });
  }
  return sheet;
}
