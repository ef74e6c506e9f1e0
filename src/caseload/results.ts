/**
 * A described workbook in the reader of formulas: what its formulas give. A new file shows it before anything else has
 * calculated it.
 */
import { ourFunctions } from "../formula/reader/our-functions";
import { Reader, type ReaderBook } from "../formula/reader/reader";
import type { TableGeometry } from "../formula/structured";
import { functions } from "../index";
import { CellError } from "../worksheet/error";
import { standing, type BookDescription, type TableDescription } from "./book";

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

export const readerBook = (book: BookDescription, today: number): ReaderBook => ({
  sheets: book.sheets.map(({ name }) => name),
  tables: book.sheets.flatMap(({ name, table }) => (table ? [geometry(name, table)] : [])),
  names: book.names,
  today,
  ours: ourFunctions(functions),
});

/**
 * All formulas, and values.
 * @param of the values of these sheets only
 */
export function putInto(reader: Reader, { sheets }: BookDescription, of?: ReadonlySet<string>): void {
  for (const { name: sheet, cells, table } of sheets) {
    const put: Reader["put"] = (place, value) => {
      if (!of || of.has(sheet)) reader.put(place, value);
    };
    for (const { row, column, value = null, formula } of cells) {
      if (formula === undefined) put({ sheet, row, column }, value);
      else reader.fill({ sheet, row, column }, row, formula);
    }
    if (!table) continue;
    const [first, last] = [table.top + 1, table.top + table.rows.length];
    table.columns.forEach(({ header, formula }, c) => {
      const column = table.left + c;
      put({ sheet, row: table.top, column }, header);
      if (formula) reader.fill({ sheet, row: first, column }, last, standing(table, c));
      else table.rows.forEach((row, r) => put({ sheet, row: first + r, column }, row[c] ?? null));
    });
  }
}

/**
 * With everything worked out.
 * @param today the day that counts as today
 */
export function readerOf(book: BookDescription, today: number): Reader {
  const reader = new Reader(readerBook(book, today));
  putInto(reader, book);
  reader.work();
  return reader;
}

/** The same with the result of each formula in its cell. */
export function withResults(book: BookDescription, today: number): BookDescription {
  const reader = readerOf(book, today);
  if (reader.unknown.length > 0) throw new Error(`A formula is not known: ${JSON.stringify(reader.unknown)}`);
  return {
    ...book,
    sheets: book.sheets.map((sheet) => ({
      ...sheet,
      cells: sheet.cells.map((cell) => {
        if (cell.formula === undefined) return cell;
        const value = reader.at({ ...cell, sheet: sheet.name });
        if (value instanceof CellError) throw new Error(`${cell.formula} is ${value.code}`);
        return { ...cell, value };
      }),
      ...(sheet.table && { table: tableWithResults(sheet.table, sheet.name, reader) }),
    })),
  };
}

function tableWithResults(table: TableDescription, sheet: string, reader: Reader): TableDescription {
  const { top, left, columns, rows } = table;
  return {
    ...table,
    rows: rows.map((row, r) =>
      columns.map(({ formula }, c) =>
        formula ? reader.at({ sheet, row: top + 1 + r, column: left + c }) : (row[c] ?? null),
      ),
    ),
  };
}
