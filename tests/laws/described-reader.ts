/** A described workbook against the reader of formulas. */
import type { BookDescription } from "../../src/caseload/book";
import { readerOf } from "../../src/caseload/results";
import type { SheetValue } from "../../src/columns/sheet-block";
import type { Reader } from "../../src/formula/reader/reader";
import { CellError } from "../../src/worksheet/error";

export { readerOf };

export interface Difference {
  readonly where: string;
  readonly answer: SheetValue;
  readonly found: SheetValue;
}

/** "" and TRUE as they stand in a cell; an error is known by its code. */
export const plain = (value: SheetValue): unknown => (value instanceof CellError ? value.code : value);

export function differences(reader: Reader, book: BookDescription): readonly Difference[] {
  return book.sheets.flatMap(({ name: sheet, cells, table }) => [
    ...cells.flatMap(({ row, column, value = null, formula }) => {
      const found = reader.at({ sheet, row, column });
      return formula === undefined || plain(found) === plain(value)
        ? []
        : [{ where: `${sheet} ${row} ${column}`, answer: value, found }];
    }),
    ...(table?.columns ?? []).flatMap(({ header, formula }, c) =>
      formula
        ? table!.rows.flatMap((values, r) => {
            const found = reader.at({ sheet, row: table!.top + 1 + r, column: table!.left + c });
            const answer = values[c] ?? null;
            return plain(found) === plain(answer) ? [] : [{ where: `${sheet}, ${header}, row ${r}`, answer, found }];
          })
        : [],
    ),
  ]);
}
