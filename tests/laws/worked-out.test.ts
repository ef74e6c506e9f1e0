/** A caseload whose cells change one after the other reads as if it had been worked out as it stands in the end. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { WorkedOut, workOut, type ChangedRow } from "../../src/caseload/work-out";
import { rowsTables, type RowsTable } from "../../src/caseload/names";
import { columnsOf } from "../../src/caseload/tables";
import type { SheetValue } from "../../src/columns/sheet-block";
import { AS_OF, hostileRows, joined, OPTIONS } from "../examples/caseload/hostile-rows";

const SEED = 20261127;
const GIVEN = { asOf: AS_OF, groups: OPTIONS.groups };
type Rows = Record<RowsTable, ChangedRow["row"][]>;

const start = joined(hostileRows(60, 60, 20)) as Rows;
/** Rows that other rows are to turn into: other people, other days, other amounts. */
const others = joined(hostileRows(90, 90, 40)) as Rows;

/** A computed column that somebody has typed over. */
const overtyped: Readonly<Record<RowsTable, readonly [string, SheetValue]>> = {
  tubes: ["Balloon", "empty"],
  checks: ["State", "low"],
  changes: ["Days in place", 7],
};

const edit = fc.record({
  table: fc.constantFrom(...rowsTables),
  at: fc.nat(200),
  from: fc.nat(200),
  /** Now and then only the identifier moves: somebody else's row. */
  isIdOnly: fc.boolean(),
  isOvertyped: fc.nat(4).map((n) => n === 0),
});

describe("changing rows of a caseload that is worked out", () => {
  test("gives what working all out anew gives, whoever's rows they were and are; also new rows at the end", () => {
    let [reached, all] = [0, 0];
    fc.assert(
      fc.property(
        fc.array(fc.array(edit, { minLength: 1, maxLength: 3 }), { minLength: 1, maxLength: 6 }),
        (rounds) => {
          const rows: Rows = { tubes: [...start.tubes], checks: [...start.checks], changes: [...start.changes] };
          const worked = new WorkedOut(start, GIVEN);
          for (const round of rounds) {
            const changed = round.map(({ table, at, from, isIdOnly, isOvertyped }): ChangedRow => {
              const place = at % (rows[table].length + 1);
              const other = others[table][from % others[table].length]!;
              const row = isIdOnly && rows[table][place] ? { ...rows[table][place], ID: other["ID"] ?? null } : other;
              const [header, value] = overtyped[table];
              rows[table][place] = isOvertyped ? { ...row, [header]: value } : row;
              return { table, place, row: rows[table][place] };
            });
            reached += worked.change(changed).length;
            all += rows.tubes.length + rows.checks.length + rows.changes.length;
            const anew = new WorkedOut(rows, GIVEN).tables;
            for (const table of rowsTables) expect(worked.tables[table]).toEqual(anew[table]);
          }
        },
      ),
      { seed: SEED, numRuns: 60 },
    );
    /* else nothing would be gained, or nothing be tested */
    expect(reached).toBeLessThan(all / 4);
    expect(reached).toBeGreaterThan(500);
  });

  test("keeps what was typed over a formula, and lets others read it", () => {
    const row = { ...start.tubes[22], ID: "Q-1", Status: "active", "Held by": "bumper", "Change due": AS_OF - 1 };
    const { tubes } = new WorkedOut({ tubes: [row], checks: [], changes: [] }, GIVEN).tables;
    expect(tubes[0]).toMatchObject({
      "Change due": AS_OF - 1,
      Change: expect.stringMatching(/^(overdue|past limit|check date)$/) as string,
    });
  });

  test("refuses a hidden column that was typed over, because it could lead to anybody's rows", () => {
    const tubes = [{ ID: "Q-1", Newest: 3 }];
    expect(() => new WorkedOut({ tubes, checks: [], changes: [] }, GIVEN)).toThrow("Newest is hidden");
  });

  test("reads the clinic's own reasons for a change, as they stand on the settings sheet", () => {
    const changes = [
      { ID: "Q-1", Reason: " Pulled " },
      { ID: "Q-1", Reason: "planned" },
    ];
    const reasons = [{ word: "pulled", failed: "no", unplanned: null }];
    const worked = workOut({ tubes: [], checks: [], changes }, { ...GIVEN, reasons }).changes;
    expect(worked.map(({ Failed, Unplanned }) => [Failed, Unplanned])).toEqual([
      ["no", 0],
      ["not known", "not known"],
    ]);
  });

  test("leaves no header out", () => {
    const { tubes } = workOut({ tubes: [{}], checks: [], changes: [] }, GIVEN);
    expect(Object.keys(tubes[0]!).sort()).toEqual(
      columnsOf("tubes", OPTIONS.groups)
        .map(({ header }) => header)
        .sort(),
    );
  });
});
