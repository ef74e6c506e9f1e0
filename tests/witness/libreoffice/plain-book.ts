/** A described workbook for another engine: without results, and where it is asked so, without our functions. */
import type { BookDescription, SheetDescription, TableColumn, TableDescription } from "../../../src/caseload/book";
import { AS_OF } from "../../../src/columns/as-of";
import { formula, inTable, type FormulaTemplate } from "../../../src/columns/formula";
import type { SheetValue } from "../../../src/columns/sheet-block";
import { functions } from "../../../src/index";
import { settingGroups } from "../../../src/settings/index";
import { call } from "../../../src/worksheet/call";
import { CellError, SheetError } from "../../../src/worksheet/error";
import type { Node } from "../../../src/formula/tree";
import { callsOurs, writtenOut } from "./written-out";

const BARE = { width: 12, format: "General", isHidden: true } as const;

/** Today as a number, so that it asks for the day it was worked out for. */
const namesOn = (book: BookDescription, asOf: number) =>
  book.names.map((one) => (one.name === AS_OF ? { ...one, refersTo: String(asOf) } : one));

/** The book as it stands, with nothing in the cells of its formulas. */
export const withoutResults = (book: BookDescription, asOf: number): BookDescription => ({
  ...book,
  names: namesOn(book, asOf),
  sheets: book.sheets.map((sheet) => ({
    ...sheet,
    cells: sheet.cells.map((cell) => (cell.formula === undefined ? cell : { ...cell, value: null })),
    ...(sheet.table && {
      table: {
        ...sheet.table,
        rows: sheet.table.rows.map((row) => row.map((value, c) => (sheet.table!.columns[c]!.formula ? null : value))),
      },
    }),
  })),
});

/** The book without our functions: a cell beside each call holds its result. */
export function plainBook(book: BookDescription, asOf: number): BookDescription {
  return {
    sheets: book.sheets.map(plainSheet),
    names: namesOn(book, asOf),
  };
}

function plainSheet({ table, cells, ...rest }: SheetDescription): SheetDescription {
  return {
    name: rest.name,
    cells: cells.map(({ row, column, value = null, formula: text }) => ({
      row,
      column,
      ...(text === undefined ? { value } : { formula: writtenOut(text, nothingBeside) }),
    })),
    ...(table && { table: plainTable(table) }),
  };
}

const refuse = (): never => {
  throw new Error("Only a table has room for cells beside it");
};
const nothingBeside = { resultOf: refuse };

/** The table with a column for each cell that stands beside a formula, on its right. */
function plainTable(table: TableDescription): TableDescription {
  const beside: TableColumn[] = [];
  const results: SheetValue[][] = table.rows.map(() => []);
  const at = (header: string): number => table.columns.findIndex((one) => one.header === header);

  const add = (column: FormulaTemplate | null, values: (row: readonly SheetValue[]) => SheetValue): string => {
    const header = `Beside ${beside.length + 1}`;
    beside.push({ ...BARE, header, kind: column ? "computed" : "typed", ...(column && { formula: column }) });
    table.rows.forEach((row, r) => results[r]!.push(values(row)));
    return inTable([{ header, index: 0 }], table.name);
  };
  const known = new Map<string, string>();
  const once = (text: string, make: () => string): string => {
    if (!known.has(text)) known.set(text, make());
    return known.get(text)!;
  };
  const help = {
    resultOf: (node: Node & { readonly is: "call" }) =>
      once(node.text, () => {
        const cell = add(null, (row) => resultOfCall(node, (header) => row[at(header)] ?? null));
        return `IF(ISBLANK(${cell}),"",${cell})`;
      }),
  };

  const columns = table.columns.map(({ header, kind, formula: template }): TableColumn => ({
    ...BARE,
    header,
    kind,
    ...(template && { formula: formula`${writtenOut(inTable(template, table.name), help)}` }),
  }));
  return {
    ...table,
    columns: [...columns, ...beside],
    rows: table.rows.map((row, r) => [
      ...row.map((value, c) => (table.columns[c]!.formula ? null : value)),
      ...results[r]!,
    ]),
  };
}

const THIS_ROW = /\[\[#This Row\],\[(.+)\]\]$/;
const defaults = new Map<string, SheetValue>(
  settingGroups.flatMap(({ settings }) => settings.map((one) => [one.name, one.default] as const)),
);

/** What our function gives for a row; its arguments are cells of the row, settings as set up, figures and words. */
function resultOfCall(
  { name, args }: Node & { readonly is: "call" },
  cell: (header: string) => SheetValue,
): SheetValue {
  const definition = functions.find((one) => `TUBE.${one.name}` === name.toUpperCase())!;
  const argument = (arg: Node): unknown => {
    if (arg.is === "number" || arg.is === "text" || arg.is === "boolean") return arg.value;
    if (arg.is === "array") return arg.rows;
    if (arg.is === "nothing") return null;
    const found = THIS_ROW.exec(arg.text);
    if (found) return cell(found[1]!.replace(/'(.)/gs, "$1"));
    if (arg.is === "name" && defaults.has(arg.text)) return defaults.get(arg.text);
    // IF(LEN(cell)=0,"",cell): a blank kept as a text
    if (arg.is === "call" && arg.name === "IF" && arg.args[1]!.text === '""') return argument(arg.args[2]!) ?? "";
    throw new Error(`${name} is called with ${arg.text}, which is not worked out here`);
  };
  const answer = call(definition, args.map(argument));
  if (answer instanceof SheetError) return new CellError(answer.code);
  return answer as SheetValue;
}

/** Columns whose formula calls one of our functions: what stands round the call is compared, not the call. */
export const columnsWithOurs = ({ columns }: TableDescription): readonly string[] =>
  columns.flatMap(({ header, formula: template }) => (template && callsOurs(inTable(template, "T")) ? [header] : []));
