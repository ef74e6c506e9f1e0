/** A described book in the embedded grid's own engine: what it makes of every formula, at first and after edits. */
import { inA1 } from "../../../src/columns/formula";
import type { BookDescription, SheetDescription, TableDescription } from "../../../src/caseload/book";
import type { SheetValue } from "../../../src/columns/sheet-block";
import { cellAddress } from "../../../src/columns/formula";
import { CellError } from "../../../src/worksheet/error";
import { setGridToday } from "../../../functions/grid";
import { calculated } from "../../../taskpane/workbook/embedded/book/calculation";
import { mendDependencies } from "../../../taskpane/workbook/embedded/mends/slow-dependencies";
import { mendReader } from "../../../taskpane/workbook/embedded/mends/spoilt-formulas";
import { TODAY_IN_GRID, WHOLE_WORKBOOK } from "../../../taskpane/workbook/embedded/book/names";
import { startHeadless } from "../grid/headless";

const NUMBER = 2;
const TEXT = 1;
const BOOLEAN = 3;

interface Typed {
  v?: string | number;
  t?: number;
  f?: string;
  si?: string;
}

/** An error stands in a cell by a formula that gives it. */
export function typed(value: SheetValue): Typed {
  if (value === null) return {};
  if (value instanceof CellError) return { f: value.code === "#N/A" ? "=NA()" : "=1/0" };
  if (typeof value === "string") return { v: value, t: TEXT };
  return typeof value === "boolean" ? { v: value ? 1 : 0, t: BOOLEAN } : { v: value, t: NUMBER };
}

function tableCells(cells: Record<number, Record<number, Typed>>, table: TableDescription, withResults: boolean): void {
  table.columns.forEach(({ header }, c) => ((cells[table.top] ??= {})[table.left + c] = { v: header, t: TEXT }));
  table.rows.forEach((row, r) => {
    const at = (cells[table.top + 1 + r] ??= {});
    table.columns.forEach(({ formula }, c) => {
      const result = withResults ? typed(row[c] ?? null) : {};
      if (!formula) at[table.left + c] = typed(row[c] ?? null);
      else
        at[table.left + c] = {
          ...(result.f === undefined ? result : {}),
          si: `${table.name}${c}`,
          ...(r === 0 && { f: `=${inA1(formula, table.top + 1, table.left)}` }),
        };
    });
  });
}

const idOf = (sheet: SheetDescription) => sheet.name.replaceAll(" ", "");

function snapshot(book: BookDescription, withResults: boolean) {
  const sheets = book.sheets.map((sheet) => {
    const cells: Record<number, Record<number, Typed>> = {};
    for (const { row, column, value, formula } of sheet.cells)
      (cells[row] ??= {})[column] =
        formula === undefined ? typed(value ?? null) : { ...(withResults && typed(value ?? null)), f: `=${formula}` };
    if (sheet.table) tableCells(cells, sheet.table, withResults);
    const rows = Math.max(...Object.keys(cells).map(Number));
    /* A cell beyond the last column is none: what reads it is #NAME?. */
    const columns = Math.max(...Object.values(cells).flatMap((row) => Object.keys(row).map(Number)));
    const size = { rowCount: rows + 50, columnCount: columns + 5 };
    return { id: idOf(sheet), name: sheet.name, ...size, cellData: cells };
  });
  return {
    id: "book",
    name: "book",
    sheetOrder: sheets.map(({ id }) => id),
    sheets: Object.fromEntries(sheets.map((sheet) => [sheet.id, sheet])),
    resources: [{ name: "SHEET_DEFINED_NAME_PLUGIN", data: JSON.stringify(namesOf(book)) }],
  };
}

/** Whole columns of tables, and header cells, as the grid's adapter writes them: fixed addresses, kept right by the grid. */
function inGrid(refersTo: string, book: BookDescription): string {
  const ofHeader = /^(\w+)\[\[#Headers\],\[(.+)\]\]$/.exec(refersTo);
  const found = ofHeader ?? /^(\w+)\[(.+)\]$/.exec(refersTo);
  if (!found) return refersTo;
  const sheet = book.sheets.find(({ table }) => table?.name === found[1])!;
  const { top, left, columns, rows } = sheet.table!;
  const place = columns.findIndex(({ header }) => header === found[2]);
  if (place < 0) throw new Error(`${refersTo} is nowhere`);
  const column = left + place;
  const fixed = (row: number) => cellAddress(row, column).replace(/^([A-Z]+)(\d+)$/, "$$$1$$$2");
  if (ofHeader) return `'${sheet.name}'!${fixed(top)}`;
  return `'${sheet.name}'!${fixed(top + 1)}:${fixed(top + rows.length)}`;
}

/** In the snapshot, because each name given afterwards makes the engine read every formula again. */
const namesOf = (book: BookDescription) =>
  Object.fromEntries(
    book.names.map(({ name, refersTo }, i) => {
      const formulaOrRefString = name === "As_of" ? TODAY_IN_GRID : inGrid(refersTo, book);
      return [`name${i}`, { id: `name${i}`, name, formulaOrRefString, localSheetId: WHOLE_WORKBOOK }];
    }),
  );

export async function startBook(book: BookDescription, asOf: number, { withResults = false } = {}) {
  mendReader();
  mendDependencies();
  setGridToday(asOf);
  const engine = startHeadless();
  const grid = engine.api.createWorkbook(snapshot(book, withResults));
  const sheetOf = (table: string) => book.sheets.find((sheet) => sheet.table?.name === table)!;
  /** The cells themselves: asked for by the thousand after every edit. */
  const bodies = new Map(
    tablesOf(book).map((table) => {
      const sheet = grid.getSheetByName(sheetOf(table.name).name)!.getSheet();
      const columns = new Map(table.columns.map(({ header }, c) => [header, table.left + c]));
      return [table.name, { sheet, columns, top: table.top + 1 }];
    }),
  );
  const cellOf = (table: string, row: number, header: string) => {
    const sheet = sheetOf(table);
    const { top, left, columns } = sheet.table!;
    const column = left + columns.findIndex((one) => one.header === header);
    return grid.getSheetByName(sheet.name)!.getRange(top + 1 + row, column);
  };
  if (!withResults) await calculated(engine, () => engine.api.getFormula().executeCalculation());
  return {
    /** What a cell holds now. */
    at(table: string, row: number, header: string): unknown {
      const { sheet, columns, top } = bodies.get(table)!;
      return sheet.getCellRaw(top + row, columns.get(header)!)?.v ?? "";
    },
    /** Several cells at once: the engine works once. */
    edit: (...cells: readonly { table: string; row: number; header: string; value: SheetValue }[]) =>
      calculated(engine, () => {
        for (const { table, row, header, value } of cells) {
          const cell = cellOf(table, row, header);
          const { f, ...plain } = typed(value);
          if (f !== undefined) cell.setFormula(f);
          else if (value === null) cell.clearContent();
          else cell.setValue(plain);
        }
      }),
    editNamed: async (name: string, value: SheetValue): Promise<void> => {
      const { refersTo } = book.names.find((one) => one.name === name)!;
      const [, sheet, address] = /^'(.+)'!\$([A-Z]+\$\d+)$/.exec(refersTo)!;
      const cell = grid.getSheetByName(sheet!)!.getRange(address!.replace("$", ""));
      await calculated(engine, () => {
        if (value === null) cell.clearContent();
        else cell.setValue(typed(value));
      });
    },
    stop: () => engine.univer.dispose(),
  };
}

/** A described result as the engine's cell holds it: 1 for TRUE. */
export const shown = (value: SheetValue): unknown => {
  if (value instanceof CellError) return value.code;
  return typeof value === "boolean" ? Number(value) : (value ?? "");
};

export type Grid = Awaited<ReturnType<typeof startBook>>;

export const tablesOf = (book: BookDescription): readonly TableDescription[] =>
  book.sheets.flatMap(({ table }) => table ?? []);

/** Where the engine gives something else than the description promises. */
export function differences(grid: Grid, book: BookDescription): readonly unknown[] {
  return tablesOf(book).flatMap((table) =>
    table.columns.flatMap(({ header, formula }, c) =>
      formula
        ? table.rows.flatMap((row, r) => {
            const [found, promised] = [grid.at(table.name, r, header), shown(row[c] ?? null)];
            return found === promised ? [] : [{ table: table.name, header, r, found, promised }];
          })
        : [],
    ),
  );
}
