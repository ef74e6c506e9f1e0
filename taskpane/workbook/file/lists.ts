/**
 * Lists of words to choose from. A short one stands in the rule itself. One that is longer than Excel takes there, or
 * whose words hold a comma (which would cut them in two), stands on a hidden sheet of its own, where no sorting,
 * filtering or deleting of rows can reach it.
 */
import type { BookDescription, SheetDescription, Validation } from "../../../src/caseload/book";
import { cellAddress } from "../../../src/columns/formula";

/** Excel's own limit for a list inside a rule. */
const LONGEST_LIST = 255;
const NAME = "Lists";

const keyOf = (words: readonly string[]): string => words.join("\n");
const fits = (words: readonly string[]): boolean =>
  words.join(",").length <= LONGEST_LIST && !words.some((word) => word.includes(",") || word.trim() !== word);

export const quotedSheet = (name: string): string => `'${name.replaceAll("'", "''")}'`;

const absolute = (row: number, column: number): string =>
  cellAddress(row, column).replace(/^([A-Z]+)(\d+)$/, "$$$1$$$2");

function validationsOf({ cells, table }: SheetDescription): readonly Validation[] {
  return [...cells, ...(table?.columns ?? [])].flatMap(({ validation }) => validation ?? []);
}

export class Lists {
  /** One column each, in the order of first use. */
  private readonly columns: (readonly string[])[];

  constructor(book: BookDescription) {
    const long = book.sheets
      .flatMap(validationsOf)
      .flatMap((one) => (one.kind === "list" && !fits(one.words) ? [one.words] : []));
    this.columns = [...new Map(long.map((words) => [keyOf(words), words])).values()];
  }

  /** What the rule refers to. */
  source(words: readonly string[]): string {
    const column = this.columns.findIndex((one) => keyOf(one) === keyOf(words));
    if (column < 0) return `"${words.join(",").replaceAll('"', '""')}"`;
    return `${quotedSheet(NAME)}!${absolute(0, column)}:${absolute(words.length - 1, column)}`;
  }

  /** Undefined where every list is short. */
  sheet(): SheetDescription | undefined {
    if (this.columns.length === 0) return undefined;
    const cells = this.columns.flatMap((words, column) =>
      words.map((value, row) => ({ row, column, value, format: "@" })),
    );
    return { name: NAME, cells };
  }
}
