/**
 * Each column of the caseload and each of Add columns is written twice: as a formula, and as a rule in TypeScript
 * (`answer`). The reader works the formulas out as they stand; both give the same, also while cells change.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { caseloadBook, caseloadBookOf } from "../../src/caseload/index";
import { rowsTables, sheetNames, type RowsTable } from "../../src/caseload/names";
import type { Header } from "../../src/caseload/headers";
import type { CaseloadRow, CaseloadRows } from "../../src/caseload/rows";
import { columnsOf } from "../../src/caseload/tables";
import type { SheetValue } from "../../src/columns/sheet-block";
import { AS_OF, hostileRows, joined, OPTIONS } from "../examples/caseload/hostile-rows";
import { recipesBook, TODAY } from "../witness/libreoffice/books";
import { differences, readerOf } from "./described-reader";

const SEED = 20261130;

describe("the reader of formulas gives what the rules give", () => {
  it.each([
    ["the invented caseload", caseloadBook({ asOf: TODAY, groups: OPTIONS.groups, people: "invented" }), TODAY],
    ["the invented caseload, columns left out", caseloadBook({ asOf: TODAY, groups: [], people: "invented" }), TODAY],
    ["hostile rows", caseloadBookOf(joined(hostileRows(240, 240, 40)), OPTIONS), AS_OF],
    [
      "hostile rows, columns left out",
      caseloadBookOf(joined(hostileRows(240, 240, 40)), { ...OPTIONS, groups: [] }),
      AS_OF,
    ],
    ["an empty caseload", caseloadBookOf({ tubes: [], checks: [], changes: [] }, OPTIONS), AS_OF],
    ["columns that can be added, on hostile cells", recipesBook(), TODAY],
  ])("%s", (_, book, today) => {
    const reader = readerOf(book, today);
    expect(reader.unknown).toEqual([]);
    expect(differences(reader, book)).toEqual([]);
  });
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
          const rows: Record<RowsTable, CaseloadRow[]> = {
            tubes: [...start.tubes],
            checks: [...start.checks],
            changes: [...start.changes],
          };
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
            const now = caseloadBookOf(rows as CaseloadRows, OPTIONS);
            edits += 1;
            all += now.sheets.reduce(
              (sum, { table }) => sum + (table ? table.rows.length * table.columns.length : 0),
              0,
            );
            expect(differences(reader, now)).toEqual([]);
          }
        },
      ),
      { seed: SEED, numRuns: 40 },
    );
    expect(edits).toBeGreaterThan(100);
    // else nothing would be gained, or nothing be tested
    expect(given).toBeGreaterThan(edits);
    expect(given).toBeLessThan(all / 50);
  });
});
