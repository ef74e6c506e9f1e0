/** A described workbook in the reader of formulas. */
import type { BookDescription, TableDescription } from "../../src/caseload/book";
import { inTable } from "../../src/columns/formula";
import type { SheetValue } from "../../src/columns/sheet-block";
import { Block, type Any } from "../../src/formula/reader/cells";
import { Reader } from "../../src/formula/reader/reader";
import type { Value } from "../../src/formula/reader/values";
import type { TableGeometry } from "../../src/formula/structured";
import { functions } from "../../src/index";
import { call } from "../../src/worksheet/call";
import { CellError, SheetError } from "../../src/worksheet/error";

const geometry = (sheetName: string, { name, top, left, columns, rows }: TableDescription): TableGeometry => ({
  name,
  sheetName,
  top,
  left,
  bottom: top + rows.length,
  columns: columns.map(({ header }) => header),
  headerRows: 1,
  totalsRows: 0,
});

const asGiven = (found: Any): unknown => {
  if (!(found instanceof Block)) return found;
  if (found.isOneCell) return found.at(0, 0);
  return Array.from({ length: found.rows }, (_, r) => Array.from({ length: found.columns }, (_, c) => found.at(r, c)));
};

/** One of our functions; what spills does not go into one cell. */
export function ours(name: string): ((args: readonly Any[]) => Value) | undefined {
  const definition = functions.find((one) => `TUBE.${one.name}` === name);
  if (!definition) return undefined;
  return (args) => {
    const answer = call(definition, args.map(asGiven));
    if (answer instanceof SheetError) return new CellError(answer.code);
    return Array.isArray(answer) ? new CellError("#SPILL!") : answer;
  };
}

/** With everything worked out. */
export function readerOf(book: BookDescription, today: number): Reader {
  const tables = book.sheets.flatMap(({ name, table }) => (table ? [geometry(name, table)] : []));
  const reader = new Reader({ sheets: book.sheets.map(({ name }) => name), tables, names: book.names, today, ours });
  for (const { name: sheet, cells, table } of book.sheets) {
    for (const { row, column, value = null, formula } of cells) {
      if (formula === undefined) reader.put({ sheet, row, column }, value);
      else reader.fill({ sheet, row, column }, row, formula);
    }
    if (!table) continue;
    table.columns.forEach(({ header, formula }, c) => {
      const column = table.left + c;
      reader.put({ sheet, row: table.top, column }, header);
      if (formula)
        reader.fill({ sheet, row: table.top + 1, column }, table.top + table.rows.length, inTable(formula, table.name));
      else table.rows.forEach((row, r) => reader.put({ sheet, row: table.top + 1 + r, column }, row[c] ?? null));
    });
  }
  reader.work();
  return reader;
}

export interface Difference {
  readonly where: string;
  readonly answer: SheetValue;
  readonly found: SheetValue;
}

/** "" and TRUE as they stand in a cell; an error is known by its code. */
const plain = (value: SheetValue): unknown => (value instanceof CellError ? value.code : value);

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
