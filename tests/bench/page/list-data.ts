/** The list of files/make.ts as the bare grid's own description of a workbook. */
import { listRow, type ListCell } from "../files/make";

/** The grid's number for a cell that holds a number. */
const NUMBER = 2;

function cellData(cell: ListCell): object {
  if (typeof cell === "string") return { v: cell };
  if (typeof cell === "number") return { v: cell, t: NUMBER };
  if ("day" in cell) return { v: cell.day, t: NUMBER, s: "date" };
  return { f: `=${cell.f}`, v: cell.v, t: NUMBER };
}

export function listAsGridData(rows: number): string {
  const cells = Object.fromEntries(
    Array.from({ length: rows + 1 }, (_, row) => [
      row,
      Object.fromEntries(listRow(row).map((cell, column) => [column, cellData(cell)])),
    ]),
  );
  const sheet = { id: "s", name: "S", rowCount: rows + 100, columnCount: 30, cellData: cells };
  const styles = { date: { n: { pattern: "dd/mm/yyyy" } } };
  return JSON.stringify({ id: `list-${rows}`, name: "list", sheetOrder: ["s"], sheets: { s: sheet }, styles });
}
