/** Formulas of the grid in the file's own form. */
import { toFile } from "../formulas/dialect";
import { relativeForm } from "../formulas/references";
import type { TableGeometry } from "../formulas/structured";
import { isFunctionName, tokens, untokened } from "../formulas/tokens";
import { parseArea } from "../../area";

/** In a structured reference `[ ] # '` inside a column name are escaped by an apostrophe (ECMA-376 part 1, 18.17.6). */
const escaped = (name: string): string => name.replace(/['#[\]]/g, "'$&");

/**
 * References to cells of the same row of the table become structured ones, which hold on every row.
 * @param formula grid spelling, without "="
 */
export function structuredForm(formula: string, table: TableGeometry, row: number): string {
  const all = tokens(formula);
  return untokened(
    all.map((token, at) => {
      if (token.kind !== "word" || isFunctionName(all, at)) return token;
      const isPartOfMore = [all[at - 1]?.text, all[at + 1]?.text].some((text) => text === ":" || text === "!");
      const cell = isPartOfMore ? null : parseArea(token.text);
      if (!cell || /\$\d/.test(token.text) || cell.top !== row) return token;
      const column = table.columns[cell.left - table.left];
      if (column === undefined) return token;
      return { kind: "other", text: `${table.name}[[#This Row],[${escaped(column)}]]` };
    }),
  );
}

/**
 * Formulas that a file holds in structured form, by column and by what they mean there. A row that was sorted or filled
 * down means the same in the same column, and so keeps the file's own words.
 */
export class KnownTexts {
  private readonly texts = new Map<string, string>();

  constructor(private readonly tables: readonly TableGeometry[]) {}

  /** @param form what it means there (relativeForm of the grid's text) */
  note(fileText: string, form: string, row: number, column: number): void {
    if (fileText.includes("[")) this.texts.set(this.key(form, row, column), fileText);
  }

  /** @param gridText without "=" */
  fileText(gridText: string, row: number, column: number): string {
    return this.texts.get(this.key(relativeForm(gridText, row, column), row, column)) ?? toFile(gridText);
  }

  /** "This row" means a row of the table: texts are alike only inside the same one. */
  private key(form: string, row: number, column: number): string {
    const table = this.tables.findIndex(
      (one) =>
        column >= one.left &&
        column < one.left + one.columns.length &&
        row >= one.top + one.headerRows &&
        row <= one.bottom - one.totalsRows,
    );
    return `${table} ${column} ${form}`;
  }
}
