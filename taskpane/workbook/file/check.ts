/** What a description must not do, because Excel would repair the file and lose something. */
import type { BookDescription } from "../../../src/caseload/book";

const SHEET_NAME = /^(?!')[^\\/?*[\]:]{1,31}(?<!')$/;
const TABLE_NAME = /^[\p{L}_][\p{L}\p{N}_.]{0,254}$/u;

const refuseTwice = (what: string, names: readonly string[]): void => {
  const lower = names.map((name) => name.toLowerCase());
  const twice = names.find((_, index) => lower.indexOf(lower[index]!) !== index);
  if (twice !== undefined) throw new Error(`${what} "${twice}" stands twice`);
};

export function checkBook({ sheets, names }: BookDescription): void {
  const tables = sheets.flatMap(({ table }) => table ?? []);
  refuseTwice(
    "The sheet",
    sheets.map(({ name }) => name),
  );
  refuseTwice("The name", [...tables.map(({ name }) => name), ...names.map(({ name }) => name)]);
  for (const { name } of sheets) if (!SHEET_NAME.test(name)) throw new Error(`"${name}" cannot name a sheet`);
  for (const { name, columns, rows, top } of tables) {
    if (!TABLE_NAME.test(name)) throw new Error(`"${name}" cannot name a table`);
    if (rows.length === 0) throw new Error(`The table ${name} needs a row`);
    if (rows.some((row) => row.length > columns.length)) throw new Error(`A row of ${name} has too many values`);
    if (top === 0 && columns.some(({ group }) => group !== undefined))
      throw new Error(`No room for groups above ${name}`);
    refuseTwice(
      `In ${name} the header`,
      columns.map(({ header }) => header),
    );
  }
}
