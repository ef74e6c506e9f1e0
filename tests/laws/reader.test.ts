/**
 * The reader works formulas out as they stand: those of the caseload the same after each edit as at once, those of Add
 * columns as the preview answers.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { BookDescription } from "../../src/caseload/book";
import { caseloadBook, caseloadBookOf } from "../../src/caseload/index";
import { rowsTables, sheetNames, type RowsTable } from "../../src/caseload/names";
import type { Header } from "../../src/caseload/headers";
import type { CaseloadRow, CaseloadRows } from "../../src/caseload/rows";
import { columnsOf } from "../../src/caseload/tables";
import type { SheetValue } from "../../src/columns/sheet-block";
import { shortOrLong } from "../budget";
import { AS_OF, hostileRows, joined, OPTIONS } from "../examples/caseload/hostile-rows";
import { recipesBook, TODAY } from "../witness/libreoffice/books";
import { differences, plain, readerOf } from "./described-reader";

const SEED = 20261130;

it("knows every formula of the caseload, with and without the columns that may be left out", () => {
  for (const groups of [OPTIONS.groups, []])
    expect(readerOf(caseloadBook({ asOf: TODAY, groups, people: "none" }), TODAY).unknown).toEqual([]);
});

it("gives what the preview of Add columns answers, on hostile cells", () => {
  const book = recipesBook();
  const reader = readerOf(book, TODAY);
  expect(reader.unknown).toEqual([]);
  expect(differences(reader, book)).toEqual([]);
});

describe("while cells change", () => {
  const start = joined(hostileRows(60, 60, 20));
  /** Cells to come: of other people, on other days. */
  const others = joined(hostileRows(90, 90, 40));
  /** Columns that are typed over now and then; hidden ones say whose row it is, and are not. */
  const overtyped: { readonly [T in RowsTable]: readonly (readonly [string, SheetValue])[] } = {
    tubes: [
      ["Balloon", "empty"],
      ["Change due", AS_OF - 4],
      ["Tract", null],
    ],
    checks: [
      ["State", "low"],
      ["Device in", AS_OF - 90],
    ],
    changes: [["Days in place", 7]],
  };
  type Rows = Record<RowsTable, CaseloadRow[]>;
  const isComputed = (table: RowsTable, header: string): boolean =>
    columnsOf(table, OPTIONS.groups).some((one) => one.header === header && one.kind === "computed");
  const typedIn = (rows: Rows): CaseloadRows => {
    const typed = (table: RowsTable) =>
      rows[table].map((row) =>
        Object.fromEntries(Object.entries(row).filter(([header]) => !isComputed(table, header))),
      );
    return { tubes: typed("tubes"), checks: typed("checks"), changes: typed("changes") };
  };
  const listsOf = (book: BookDescription) =>
    book.sheets.flatMap(({ name, table }) => (table ? [{ sheet: name, table }] : []));
  const overtypedIn = (rows: Rows, book: BookDescription) =>
    rowsTables.flatMap((list) => {
      const { sheet, table } = listsOf(book).find((one) => one.sheet === sheetNames[list])!;
      return rows[list].flatMap((row, place) =>
        table.columns.flatMap(({ header, kind }, c) =>
          kind === "computed" && header in row
            ? [
                {
                  sheet,
                  row: table.top + 1 + place,
                  column: table.left + c,
                  value: row[header as Header] as SheetValue,
                },
              ]
            : [],
        ),
      );
    });
  const edit = fc.record({
    table: fc.constantFrom(...rowsTables),
    at: fc.nat(200),
    from: fc.nat(200),
    header: fc.nat(60),
    isOvertyped: fc.nat(9).map((n) => n === 0),
  });

  it("only what depends on them is worked out, and all of it", () => {
    let [edits, given, all] = [0, 0, 0];
    fc.assert(
      fc.property(
        fc.array(fc.array(edit, { minLength: 1, maxLength: 3 }), { minLength: 1, maxLength: 8 }),
        (rounds) => {
          const rows: Rows = { tubes: [...start.tubes], checks: [...start.checks], changes: [...start.changes] };
          const first = caseloadBookOf(start, OPTIONS);
          const reader = readerOf(first, AS_OF);
          for (const round of rounds) {
            const cells = round.map(({ table, at, from, header: which, isOvertyped }) => {
              const columns = columnsOf(table, OPTIONS.groups);
              const typed = columns.filter(({ kind }) => kind !== "computed").map(({ header }) => header);
              const own = typed[which % typed.length]!;
              const other =
                (others[table] as readonly CaseloadRow[])[from % others[table].length]![own as Header] ?? null;
              const over = overtyped[table];
              const [header, value] = isOvertyped ? over[which % over.length]! : [own, other as SheetValue];
              const place = at % rows[table].length;
              rows[table][place] = { ...rows[table][place], [header]: value as null };
              const sheet = first.sheets.find(({ name }) => name === sheetNames[table])!;
              const { top, left } = sheet.table!;
              const column = left + columns.findIndex((one) => one.header === header);
              return { sheet: sheet.name, row: top + 1 + place, column, value };
            });
            given += reader.change(cells).length;
            const book = caseloadBookOf(typedIn(rows), OPTIONS);
            const anew = readerOf(book, AS_OF);
            anew.change(overtypedIn(rows, book));
            for (const { sheet, table } of listsOf(book)) {
              all += table.rows.length * table.columns.filter(({ kind }) => kind === "computed").length;
              table.rows.forEach((_, place) =>
                table.columns.forEach(({ header }, c) => {
                  const cell = { sheet, row: table.top + 1 + place, column: table.left + c };
                  const [found, expected] = [plain(reader.at(cell)), plain(anew.at(cell))];
                  if (found !== expected)
                    expect.fail(`${header}, row ${place}: ${String(found)}, not ${String(expected)}`);
                }),
              );
            }
            edits += 1;
          }
        },
      ),
      { seed: SEED, numRuns: shortOrLong(15, 200) },
    );
    expect(edits).toBeGreaterThan(40);
    // else nothing would be gained, or nothing be tested
    expect(given).toBeGreaterThan(edits);
    expect(given).toBeLessThan(all / 50);
  });
});
