/** What a new caseload would hold, in numbers and plain words, worked out from its description. */
import type { BookDescription, SheetDescription, TableDescription } from "../../../src/caseload/book";
import { sheetNames, tableNames } from "../../../src/caseload/names";
import { wordKey } from "../../../src/columns/spelling";
import { settingGroups } from "../../../src/settings/index";
import { count, figure, together } from "../../texts/pieces";

/** What each sheet is for; by name, so that a sheet without a purpose is found by a test. */
const purposes: Readonly<Record<string, string>> = {
  [sheetNames.readFirst]: "What the workbook is for, what it does not know, and how to begin.",
  [sheetNames.tubes]: "One row for each device: whose it is, what is to be done, and by when.",
  [sheetNames.checks]: "One row for each check of a balloon: what came out, what was put in.",
  [sheetNames.changes]: "One row for each device that has come out, and why.",
  [sheetNames.settings]: "The numbers that the formulas read, each with its source and who agreed to it.",
};

export interface SheetPreview {
  readonly name: string;
  readonly purpose: string;
  /** "50 rows in 61 columns, 27 of them worked out"; null for a sheet without a list. */
  readonly holds: string | null;
}

export interface SetUpPreview {
  readonly says: readonly string[];
  readonly sheets: readonly SheetPreview[];
  /** "Balloon: 13 settings" */
  readonly settings: readonly string[];
}

const isBlank = (value: unknown): boolean => value === null || value === "";

/** Rows in which something is typed: a new table keeps one blank row. */
const typed = ({ columns, rows }: TableDescription): TableDescription["rows"] =>
  rows.filter((row) => row.some((value, c) => columns[c]?.formula === undefined && !isBlank(value)));
const typedRows = (table: TableDescription): number => typed(table).length;

/** Somebody with two tubes has two rows; a row without an identifier is somebody too. */
function peopleIn(tubes: TableDescription | undefined): number {
  if (!tubes) return 0;
  const id = tubes.columns.findIndex(({ header }) => header === "ID");
  const ids = typed(tubes).map((row) => wordKey(String(row[id] ?? "")));
  const known = ids.filter((key) => key !== "");
  return new Set(known).size + ids.length - known.length;
}

function holds({ name, table }: SheetDescription): string | null {
  if (!table || name === sheetNames.settings) return null;
  const rows = typedRows(table);
  const computed = table.columns.filter(({ formula }) => formula !== undefined).length;
  return `${rows === 0 ? "No row yet" : count(rows, "row")}, ${count(table.columns.length, "column")}, ${computed} of them worked out.`;
}

export function previewOf(book: BookDescription): SetUpPreview {
  const tables = book.sheets.flatMap(({ name, table }) => (table && name !== sheetNames.settings ? [table] : []));
  const people = peopleIn(tables.find(({ name }) => name === tableNames.tubes));
  const past = tables.filter(({ name }) => name !== tableNames.tubes).reduce((sum, table) => sum + typedRows(table), 0);
  const settings = settingGroups.map(({ heading, settings: all }) => `${heading}: ${count(all.length, "setting")}`);
  const all = settingGroups.reduce((sum, group) => sum + group.settings.length, 0);
  return {
    says: [
      people > 0
        ? `${count(people, "person", "people")}, ${figure(past)} past checks and changes, all invented. Nobody stands behind them; every sheet says so, and one press removes them.`
        : "Empty lists: nobody is in them yet.",
      `Makes a new workbook with ${count(book.sheets.length, "sheet")}: ${together(book.sheets.map(({ name }) => name))}.`,
      `${count(all, "clinic setting")} to agree; until your clinic has agreed them the sheets say so.`,
      "Nothing in the workbook that is open now is changed.",
    ],
    sheets: book.sheets.map((sheet) => ({
      name: sheet.name,
      purpose: purposes[sheet.name] ?? "",
      holds: holds(sheet),
    })),
    settings,
  };
}
