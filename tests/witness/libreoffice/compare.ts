/** Each cell that has a formula: what the second engine makes of it beside what we stored. */
import { read, type CellObject } from "@e965/xlsx";
import type { BookDescription, TableDescription } from "../../../src/caseload/book";
import { cellAddress } from "../../../src/columns/formula";
import type { SheetValue } from "../../../src/columns/sheet-block";
import { CellError } from "../../../src/worksheet/error";
import { writeBook } from "../../../taskpane/workbook/file/index";
import type { Asked } from "./books";
import type { Office } from "./office";
import { columnsWithOurs, plainBook, withoutResults } from "./plain-book";

export interface Difference {
  readonly where: string;
  readonly stored: string | number;
  readonly found: string | number;
  /** The row's typed cells. */
  readonly row: string;
}

export interface Compared {
  readonly what: string;
  readonly cells: number;
  /** Cells whose formula calls one of our functions: only what stands round the call is the second engine's. */
  readonly withOurs: number;
  readonly differences: readonly Difference[];
}

/** What a cell says that only a function of ours can read, where that function is not known. */
const NOT_READ = "not read";

export async function compare({ what, asOf, book, isAsItStands }: Asked, office: Office): Promise<Compared> {
  const asked = isAsItStands ? withoutResults(book, asOf) : plainBook(book, asOf);
  const answered = read(office.workedOut(await writeBook(asked)));
  const found = (sheet: string, row: number, column: number): string | number =>
    shown(answered.Sheets[sheet]?.[cellAddress(row, column)] as CellObject | undefined);
  const expected = formulaCells(book);
  const differences = expected.flatMap(({ sheet, row, column, value, called, typed, isOurs }) => {
    const there = found(sheet, row, column);
    const where = `${sheet} ${cellAddress(row, column)} (${called})`;
    if (isAsItStands && isOurs && there === NOT_READ) return [];
    return alike(value, there) ? [] : [{ where, stored: value, found: there, row: typed() }];
  });
  return { what, cells: expected.length, withOurs: expected.filter(({ isOurs }) => isOurs).length, differences };
}

interface Expected {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  readonly called: string;
  readonly value: string | number;
  readonly isOurs: boolean;
  readonly typed: () => string;
}

/** A row's typed cells that hold something. */
const typedCells = ({ columns }: TableDescription, row: readonly SheetValue[]): string =>
  columns
    .flatMap(({ header, formula }, c) =>
      formula || row[c] === null || row[c] === undefined ? [] : [`${header}: ${JSON.stringify(asShown(row[c]))}`],
    )
    .join(", ");

const formulaCells = (book: BookDescription): readonly Expected[] =>
  book.sheets.flatMap(({ name: sheet, cells, table }) => {
    const single = cells.flatMap(({ row, column, value = null, formula }) =>
      formula === undefined
        ? []
        : [{ sheet, row, column, called: "beside the list", value: asShown(value), isOurs: false, typed: () => "" }],
    );
    if (!table) return single;
    const ours = new Set(columnsWithOurs(table));
    const inTable = table.columns.flatMap(({ header, formula }, c) =>
      formula
        ? table.rows.map((row, r) => ({
            sheet,
            row: table.top + 1 + r,
            column: table.left + c,
            called: header,
            value: asShown(row[c] ?? null),
            isOurs: ours.has(header),
            typed: () => typedCells(table, row),
          }))
        : [],
    );
    return [...single, ...inTable];
  });

/** As a formula's cell shows it: 1 for TRUE, an error by its code. */
function asShown(value: SheetValue): string | number {
  if (value instanceof CellError) return value.code;
  return typeof value === "boolean" ? Number(value) : (value ?? "");
}

const ERRORS: Readonly<Record<number, string>> = {
  0: "#NULL!",
  7: "#DIV/0!",
  15: "#VALUE!",
  23: "#REF!",
  29: "#NAME?",
  36: "#NUM!",
  42: "#N/A",
};

function shown(cell: CellObject | undefined): string | number {
  if (!cell || cell.v === undefined) return "";
  if (cell.t === "e") return ERRORS[cell.v as number] ?? `error ${String(cell.v)}`;
  return typeof cell.v === "boolean" ? Number(cell.v) : (cell.v as string | number);
}

/** The other engine rounds where it subtracts (LibreOffice, approxSub): the last digits may differ. */
const NEAR = 1e-9;

const alike = (stored: string | number, found: string | number): boolean =>
  typeof stored === "number" && typeof found === "number"
    ? Math.abs(stored - found) <= NEAR * Math.max(1, Math.abs(stored))
    : stored === found;
