/** Checking a list never throws, names only rows that are there, and finds the same in whatever order the rows stand. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { shortOrLong } from "../budget";
import { checkRows } from "../../src/checking/check-rows";
import { roles, type Role } from "../../src/columns/role";
import type { RowCells } from "../../src/columns/recipes/recipe";
import { day } from "../../src/worksheet/dates";
import { CellError } from "../../src/worksheet/error";

const TODAY = day("2026-11-30");
const keys = roles.map(({ key }) => key);
const cell = fc.oneof(
  fc.constantFrom(
    "balloon",
    "GJ",
    "PEG",
    "bumper adult",
    "carer",
    "active",
    "long",
    "J",
    "g",
    "?",
    "3/4/24",
    "2026-05-14",
    "",
    " ",
  ),
  fc.string({ unit: "binary", maxLength: 12 }),
  fc.integer({ min: -5, max: 60_000 }),
  fc.double(),
  fc.boolean(),
  fc.constant(null),
  fc.constant(new CellError("#N/A")),
);
const row: fc.Arbitrary<RowCells> = fc.record(Object.fromEntries(keys.map((key) => [key, cell])));
const options = { seed: 20261130, numRuns: shortOrLong(200, 8_000) };

test("hostile rows: each finding names rows of the list in their order, and no blank row", () => {
  fc.assert(
    fc.property(fc.array(row, { maxLength: 12 }), fc.subarray(keys), (rows, columns) => {
      const asked = new Set<Role>(columns);
      for (const { reason, at, rows: found } of checkRows(rows, asked, TODAY)) {
        expect(reason).not.toBe("");
        expect(asked.has(at)).toBe(true);
        expect(found.length).toBeGreaterThan(0);
        expect(found.every((i, n) => rows[i] !== undefined && (n === 0 || i > found[n - 1]!))).toBe(true);
      }
      const blank: RowCells = Object.fromEntries(keys.map((key) => [key, null]));
      expect(checkRows([blank], asked, TODAY)).toEqual([]);
    }),
    options,
  );
});

test("a row's findings do not hang on the rows beside it", () => {
  fc.assert(
    fc.property(fc.array(row, { minLength: 1, maxLength: 6 }), (rows) => {
      const all = new Set<Role>(keys);
      const alone = rows.map((one) => checkRows([one], all, TODAY).map(({ reason }) => reason));
      const together = checkRows(rows, all, TODAY);
      rows.forEach((_, i) => {
        const found = together.filter(({ rows: named }) => named.includes(i)).map(({ reason }) => reason);
        expect(found.sort()).toEqual([...alone[i]!].sort());
      });
    }),
    options,
  );
});
