/**
 * Structured references written out as A1 for the engine.
 *
 * Why: a column name with ( ) [ ] # ' or a line break fails in the engine's own reader, and one such formula was measured
 * to make every later formula of the session #NAME?. The short forms [@Col] it does not know at all. The file's own text
 * is kept beside it (see open/ and save/).
 */
import { cellAddress, columnLetters } from "./addresses";
import { unescapedColumn } from "./columns";
import { isFunctionName, tokens, untokened, type Token } from "./tokens";

/** A table as it stands on its sheet; rows and columns counted from 0. */
export interface TableGeometry {
  readonly name: string;
  readonly sheetName: string;
  readonly top: number;
  readonly left: number;
  readonly bottom: number;
  readonly columns: readonly string[];
  readonly headerRows: number;
  readonly totalsRows: number;
}

/** The cell that holds the formula. */
export interface Standing {
  readonly sheetName: string;
  readonly row: number;
  readonly column: number;
}

/** A reference that says nothing here: an unknown column, or "this row" outside the table's rows. */
const NOTHING = "#REF!";

type Section = "all" | "data" | "headers" | "totals" | "this row";
const SECTIONS: Readonly<Record<string, Section>> = {
  "#all": "all",
  "#data": "data",
  "#headers": "headers",
  "#totals": "totals",
  "#this row": "this row",
};

interface Specifier {
  readonly sections: readonly Section[];
  /** First and last column name; none: the whole width. */
  readonly columns: readonly string[];
}

/** [Name], [#This Row], [@], [@Name], [@[A]:[B]], [[#Headers],[#Data],[A]:[B]]. */
function specifier(bracket: string): Specifier | undefined {
  let inside = bracket.slice(1, -1);
  const sections: Section[] = [];
  const columns: string[] = [];
  if (inside.trimStart().startsWith("@")) {
    sections.push("this row");
    inside = inside.trimStart().slice(1);
    if (!inside.trimStart().startsWith("[")) {
      if (inside !== "") columns.push(unescapedColumn(inside));
      return { sections, columns };
    }
  } else if (!inside.trimStart().startsWith("[")) {
    if (inside === "") return { sections, columns };
    const section = SECTIONS[inside.trim().toLowerCase()];
    if (section) sections.push(section);
    else columns.push(unescapedColumn(inside));
    return { sections, columns };
  }
  for (const token of tokens(inside)) {
    if (token.kind !== "bracket") {
      if (/^[\s,:]+$/.test(token.text)) continue;
      return undefined;
    }
    const name = token.text.slice(1, -1);
    const section = SECTIONS[name.trim().toLowerCase()];
    if (section) sections.push(section);
    else columns.push(unescapedColumn(name));
  }
  return columns.length > 2 ? undefined : { sections, columns };
}

const quotedSheet = (name: string): string =>
  /^[\p{L}_][\p{L}\p{N}_.]*$/u.test(name) && !/^[A-Za-z]{1,3}\d+$/.test(name) && !/^[RrCc]\d*$/.test(name)
    ? name
    : `'${name.replaceAll("'", "''")}'`;

/** Which rows of the table, from and to. Several sections lie next to one another (headers, data, totals). */
function rowsOf(table: TableGeometry, sections: readonly Section[], standing: Standing): [number, number] | undefined {
  const first = table.top + table.headerRows;
  const last = table.bottom - table.totalsRows;
  const spans = (sections.length === 0 ? (["data"] as const) : sections).map(
    (section): [number, number] | undefined => {
      switch (section) {
        case "all":
          return [table.top, table.bottom];
        case "data":
          return first <= last ? [first, last] : undefined;
        case "headers":
          return table.headerRows > 0 ? [table.top, first - 1] : undefined;
        case "totals":
          return table.totalsRows > 0 ? [last + 1, table.bottom] : undefined;
        case "this row":
          return standing.row >= first && standing.row <= last ? [standing.row, standing.row] : undefined;
      }
    },
  );
  if (spans.some((span) => span === undefined)) return undefined;
  const known = spans as [number, number][];
  return [Math.min(...known.map(([from]) => from)), Math.max(...known.map(([, to]) => to))];
}

function columnIndex(table: TableGeometry, name: string): number {
  const exact = table.columns.indexOf(name);
  if (exact >= 0) return exact;
  const wanted = name.toLowerCase();
  return table.columns.findIndex((column) => column.toLowerCase() === wanted);
}

function inA1(table: TableGeometry, wanted: Specifier, standing: Standing): string {
  const rows = rowsOf(table, wanted.sections, standing);
  const from = wanted.columns.length > 0 ? columnIndex(table, wanted.columns[0]!) : 0;
  const to = wanted.columns.length > 0 ? columnIndex(table, wanted.columns.at(-1)!) : table.columns.length - 1;
  if (!rows || from < 0 || to < 0) return NOTHING;
  const left = table.left + Math.min(from, to);
  const right = table.left + Math.max(from, to);
  const sheet = table.sheetName === standing.sheetName ? "" : `${quotedSheet(table.sheetName)}!`;
  if (wanted.sections.includes("this row") && wanted.sections.length === 1) {
    // the column fixed, the row not: the same meaning on every row, so that a column shares one formula
    const cell = (column: number) => `$${cellAddress(standing.row, column)}`;
    return sheet + (left === right ? cell(left) : `${cell(left)}:${cell(right)}`);
  }
  const fixed = (row: number, column: number) => `$${columnLetters(column)}$${row + 1}`;
  const [top, bottom] = rows;
  const isOneCell = left === right && top === bottom;
  // a column of one row stays a range, so that it is known for one when rows are added (following.ts)
  const isColumn = wanted.sections.length === 0 || wanted.sections.includes("data");
  return sheet + (isOneCell && !isColumn ? fixed(top, left) : `${fixed(top, left)}:${fixed(bottom, right)}`);
}

const holds = (table: TableGeometry, standing: Standing): boolean =>
  table.sheetName === standing.sheetName &&
  standing.row >= table.top &&
  standing.row <= table.bottom &&
  standing.column >= table.left &&
  standing.column < table.left + table.columns.length;

const ownTable = (tables: readonly TableGeometry[], standing: Standing): TableGeometry | undefined =>
  tables.find((table) => holds(table, standing));

/** [1]Sheet1!A1 or [Book.xlsx]Sheet1!A1: another workbook, not a column. */
const isOtherWorkbook = (all: readonly Token[], at: number): boolean =>
  all[at + 1]?.kind === "word" && all[at + 2]?.text === "!";

/**
 * @returns the formula with every structured reference written out; undefined when it holds one that cannot be read
 */
export function structuredToA1(
  formula: string,
  tables: readonly TableGeometry[],
  standing: Standing,
): string | undefined {
  const all = tokens(formula);
  const byName = (name: string) => tables.find((table) => table.name.toLowerCase() === name.toLowerCase());
  const written: Token[] = [];
  for (let at = 0; at < all.length; at++) {
    const token = all[at]!;
    const table = token.kind === "word" && !isFunctionName(all, at) ? byName(token.text) : undefined;
    if (table && all[at + 1]?.kind === "bracket") {
      const wanted = specifier(all[at + 1]!.text);
      if (!wanted) return undefined;
      written.push({ kind: "other", text: inA1(table, wanted, standing) });
      at++;
    } else if (table && all[at + 1]?.text !== "!") {
      written.push({ kind: "other", text: inA1(table, { sections: [], columns: [] }, standing) });
    } else if (token.kind === "bracket" && !isOtherWorkbook(all, at)) {
      const own = ownTable(tables, standing);
      const wanted = specifier(token.text);
      if (!own || !wanted || all[at - 1]?.kind === "word") return undefined;
      written.push({ kind: "other", text: inA1(own, wanted, standing) });
    } else written.push(token);
  }
  return untokened(written);
}

/** Whether a formula holds a structured reference at all; cheap, for the many that hold none. */
export const mayBeStructured = (formula: string, tables: readonly TableGeometry[]): boolean =>
  formula.includes("[") || tables.some((table) => formula.toLowerCase().includes(table.name.toLowerCase()));
