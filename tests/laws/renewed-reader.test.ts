/**
 * Rows that are inserted, removed, sorted, edited and put back, one after the other: the reader, which takes results along
 * with their rows and works out what has changed, stands as one that works all out anew.
 */
import fc from "fast-check";
import { expect, it } from "vitest";
import type { BookDescription } from "../../src/caseload/book";
import { caseloadBookOf } from "../../src/caseload/index";
import { rowsTables, sheetNames, type RowsTable } from "../../src/caseload/names";
import { putInto, readerBook } from "../../src/caseload/results";
import type { CaseloadRow, CaseloadRows } from "../../src/caseload/rows";
import { columnsOf } from "../../src/caseload/tables";
import { Reader } from "../../src/formula/reader/reader";
import type { Value } from "../../src/formula/reader/values";
import { shortOrLong } from "../budget";
import { AS_OF, hostileRows, joined, OPTIONS } from "../examples/caseload/hostile-rows";
import { plain, readerOf } from "./described-reader";

const SEED = 20261130;

type Rows = Readonly<Record<RowsTable, readonly CaseloadRow[]>>;

const start: Rows = joined(hostileRows(40, 40, 16));
const others: Rows = joined(hostileRows(70, 70, 30));
const bookOf = (rows: Rows): BookDescription => caseloadBookOf(rows as CaseloadRows, OPTIONS);

const typedHeaders = (table: RowsTable): readonly string[] =>
  columnsOf(table, OPTIONS.groups).flatMap(({ header, kind }) => (kind === "computed" ? [] : [header]));

const step = fc.record({
  table: fc.constantFrom(...rowsTables),
  what: fc.constantFrom("insert", "append", "remove", "sort", "edit", "undo", "twice"),
  at: fc.nat(200),
  from: fc.nat(200),
  header: fc.nat(60),
});
type Step = typeof step extends fc.Arbitrary<infer S> ? S : never;

const without = <T>(list: readonly T[], at: number): readonly T[] => list.filter((_, place) => place !== at);
const inserted = <T>(list: readonly T[], at: number, one: T): readonly T[] => [
  ...list.slice(0, at),
  one,
  ...list.slice(at),
];

function rowsAfter(
  { what, at, from, header }: Step,
  table: RowsTable,
  rows: readonly CaseloadRow[],
): readonly CaseloadRow[] {
  const other = others[table][from % others[table].length]!;
  const place = rows.length === 0 ? 0 : at % rows.length;
  const headers = typedHeaders(table);
  const by = headers[header % headers.length] as keyof CaseloadRow;
  switch (what) {
    case "insert":
      return inserted(rows, place, other);
    case "append":
      return [...rows, other];
    case "twice":
      return rows.length === 0 ? rows : inserted(rows, place, rows[from % rows.length]!);
    case "remove":
      return rows.length > 1 ? without(rows, place) : rows;
    case "sort":
      return [...rows].sort((one, two) => String(one[by] ?? "").localeCompare(String(two[by] ?? "")));
    default:
      return rows.map((row, i) => (i === place ? { ...row, [by]: other[by] } : row));
  }
}

const everything = (reader: Reader, book: BookDescription): readonly unknown[] =>
  book.sheets.flatMap(({ name: sheet, table, cells }) => [
    ...cells.map(({ row, column }) => plain(reader.at({ sheet, row, column }))),
    // and two rows behind the list
    ...(table ? Array.from({ length: table.rows.length + 3 }, (_, r) => table.top + r) : []).flatMap((row) =>
      table!.columns.map((_, c) => plain(reader.at({ sheet, row, column: table!.left + c }))),
    ),
  ]);

it("what moves takes its results along, and what hangs on it is worked out", () => {
  let [steps, given, all] = [0, 0, 0];
  fc.assert(
    fc.property(fc.array(fc.array(step, { minLength: 1, maxLength: 2 }), { minLength: 1, maxLength: 8 }), (rounds) => {
      const states: Rows[] = [start];
      const reader = readerOf(bookOf(start), AS_OF);
      for (const round of rounds) {
        let rows = states.at(-1)!;
        const moved = new Set<string>();
        for (const one of round) {
          const { table } = one;
          if (one.what === "undo" && states.length > 1) {
            states.pop();
            rows = states.at(-1)!;
            for (const name of rowsTables) moved.add(sheetNames[name]);
          } else {
            rows = { ...rows, [table]: rowsAfter(one, table, rows[table]) };
            moved.add(sheetNames[table]);
          }
        }
        states.push(rows);
        const book = bookOf(rows);
        reader.renew(readerBook(book, AS_OF), moved);
        putInto(reader, book, moved);
        given += reader.workOn().length;
        const anew = readerOf(book, AS_OF);
        const [found, expected] = [everything(reader, book), everything(anew, book)];
        const at = found.findIndex((value, i) => !Object.is(value, expected[i]));
        if (at >= 0) expect.fail(`${String(found[at])}, not ${String(expected[at])} (${at} of ${found.length})`);
        all += found.length;
        steps += 1;
      }
    }),
    { seed: SEED, numRuns: shortOrLong(8, 300) },
  );
  expect(steps).toBeGreaterThan(15);
  // else nothing would be gained, or nothing be tested
  expect(given).toBeGreaterThan(steps);
  expect(given).toBeLessThan(all / 20);
});

it("ranges that grow and shrink are counted to their ends, and names that come to mean something else", () => {
  const values: readonly Value[] = [3, "x", 3, null, 8, "x", 1, 3];
  const formulas = [
    "COUNTIFS(List,$A1)",
    "SUM(List)",
    "ROWS(List)",
    "INDEX(List,$A1)",
    "LARGE(List,2)",
    "MATCH($A1,List,0)",
    "MATCH(2,List,1)",
    'COUNTIFS(List,"",Other,"")',
    "MAXIFS(Other,List,$A1)",
    "$A1+Factor",
    "ROW()*10",
    "A2",
    "SUM($A$1:A1)",
    "COUNTIFS(List,$A1,Other,3)",
  ];
  const rowsIn = (count: number, first = 0) =>
    Array.from({ length: count }, (_, i) => values[(i + first) % values.length]!);
  const bookWith = (list: number, other: number, factor: string) => ({
    sheets: ["S", "T"],
    tables: [],
    names: [
      { name: "List", refersTo: `S!$A$1:$A$${list}` },
      { name: "Other", refersTo: `T!$B$1:$B$${other}` },
      { name: "Factor", refersTo: factor },
    ],
    today: AS_OF,
    ours: () => undefined,
  });
  const fill = (reader: Reader, count: number, first: number, moved: readonly string[]) => {
    formulas.forEach((text, c) => reader.fill({ sheet: "S", row: 0, column: 3 + c }, count - 1, text));
    for (const [sheet, column] of [
      ["S", 0],
      ["T", 1],
    ] as const)
      if (moved.includes(sheet))
        rowsIn(12, sheet === "S" ? first : 0).forEach((value, row) => reader.put({ sheet, row, column }, value));
  };
  const said = (reader: Reader) =>
    Array.from({ length: 14 }, (_, row) =>
      formulas.map((text, c) => `${row} ${text}: ${String(plain(reader.at({ sheet: "S", row, column: 3 + c })))}`),
    ).flat();
  fc.assert(
    fc.property(
      fc.array(
        fc.record({
          list: fc.integer({ min: 2, max: 12 }),
          other: fc.integer({ min: 2, max: 12 }),
          factor: fc.constantFrom("2", "-1", "S!$A$1", "S!$A$5"),
          count: fc.integer({ min: 1, max: 12 }),
          first: fc.integer({ min: 0, max: 3 }),
        }),
        { minLength: 2, maxLength: 6 },
      ),
      ([begin, ...others]) => {
        const reader = new Reader(bookWith(begin!.list, begin!.other, begin!.factor));
        fill(reader, begin!.count, begin!.first, ["S", "T"]);
        reader.work();

        for (const now of others) {
          reader.renew(bookWith(now.list, now.other, now.factor), ["S"]);
          fill(reader, now.count, now.first, ["S"]);
          reader.workOn();
          const anew = new Reader(bookWith(now.list, now.other, now.factor));
          fill(anew, now.count, now.first, ["S", "T"]);
          anew.work();
          expect(said(reader)).toEqual(said(anew));
        }
      },
    ),
    { seed: SEED, numRuns: shortOrLong(100, 3_000) },
  );
});
