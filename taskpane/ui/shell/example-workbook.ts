import { writeXlsx, type Cell, type CellValue } from "hucre/xlsx";
import { exampleHeaders, exampleRows, exampleTitle } from "./example-list";

const DATE_COLUMN = exampleHeaders.indexOf("Last change");
const DATE_FORMAT = "d mmm yyyy";
const WIDTHS = [12, 20, 16, 14, 15, 12, 22];
/** Rows above the headers: the title and a blank one, as many lists have them. */
const ABOVE = 2;
const BOLD = { font: { bold: true } };

/** The invented list as a file, its dates counted back from today so that some are due. */
export async function exampleWorkbook(today: number): Promise<Uint8Array> {
  const rows: CellValue[][] = exampleRows.map((row) => [
    row.identifier,
    row.kind,
    row.size,
    row.lastChange === null ? null : today - row.lastChange,
    row.putIn,
    row.out,
    row.notes ?? null,
  ]);
  const cells = new Map<string, Partial<Cell>>([["0,0", { value: exampleTitle, style: BOLD }]]);
  exampleHeaders.forEach((value, column) => cells.set(`${ABOVE},${column}`, { value, style: BOLD }));
  rows.forEach((row, i) =>
    cells.set(`${ABOVE + 1 + i},${DATE_COLUMN}`, { value: row[DATE_COLUMN] ?? null, style: { numFmt: DATE_FORMAT } }),
  );
  return writeXlsx({
    sheets: [
      {
        name: "Invented example",
        rows: [[exampleTitle], [], exampleHeaders, ...rows],
        cells,
        columns: WIDTHS.map((width) => ({ width })),
        freezePane: { rows: ABOVE + 1, columns: 1 },
      },
    ],
  });
}
