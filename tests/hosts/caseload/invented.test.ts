/** Every formula of the invented caseload, worked out by the grid's engine, gives what the columns promise. */
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { BookDescription } from "../../../src/caseload/book";
import { caseloadBook } from "../../../src/caseload/index";
import { day } from "../../../src/worksheet/dates";
import { shown, startBook } from "./book-engine";

const AS_OF = day("2026-11-26");

describe.each([[["fit", "plan", "spare"] as const], [[] as const]])("the invented caseload with %j", (groups) => {
  const book: BookDescription = caseloadBook({ asOf: AS_OF, groups, people: "invented" });
  const tables = book.sheets.flatMap(({ table }) => table ?? []);
  let grid: Awaited<ReturnType<typeof startBook>>;
  beforeAll(async () => {
    grid = await startBook(book, AS_OF);
  });
  afterAll(() => grid.stop());

  const computed = tables.flatMap((table) =>
    table.columns.flatMap(({ header, formula }, c) => (formula ? [{ table, header, c, name: table.name }] : [])),
  );
  it.each(computed)("$name: $header", ({ table, header, c }) => {
    const found = table.rows.map((_, r) => [r, grid.at(table.name, r, header)]);
    expect(found).toEqual(table.rows.map((row, r) => [r, shown(row[c] ?? null)]));
  });
});
