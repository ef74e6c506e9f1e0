/** Invented rows are told from real ones, which may bear the same identifiers. */
import { describe, expect, it } from "vitest";
import { inventedCaseload, inventedRows, type AnyRow } from "../../../src/caseload/invented";
import { day, someDays } from "./days";

const asOf = day("2027-05-05");
const invented = inventedCaseload(asOf);
const all = (rows: readonly unknown[]) => rows.map((_, i) => i);

describe("invented rows", () => {
  it.each(someDays)("are all found again when they were invented on %s", (iso) => {
    const caseload = inventedCaseload(day(iso));
    expect(inventedRows(caseload)).toEqual({
      inventedOn: day(iso),
      tubes: all(caseload.tubes),
      checks: all(caseload.checks),
      changes: all(caseload.changes),
    });
  });

  it("are not confused with real people who bear their identifiers", () => {
    const real = invented.tubes.map((row, i) => ({ ID: row.ID, Born: day("1950-01-01") + 97 * i }));
    expect(inventedRows({ tubes: real, checks: invented.checks, changes: [] })).toEqual({
      inventedOn: null,
      tubes: [],
      checks: [],
      changes: [],
    });
  });

  it("leave a real person's rows alone where one invented person has the same identifier", () => {
    const person: AnyRow = { ID: "d-022", Born: day("1971-03-09"), "Held by": "balloon" };
    const ownCheck: AnyRow = { ID: "D-022", "Checked on": asOf + 3, "Out mL": 4.5, "Put in mL": 5 };
    const ownChange: AnyRow = { ID: "D-022", In: asOf - 9, Out: asOf + 2, Reason: "balloon burst" };
    const found = inventedRows({
      tubes: [person, ...invented.tubes],
      checks: [ownCheck, ...invented.checks],
      changes: [...invented.changes, ownChange],
    });
    expect(found.tubes).toEqual(all(invented.tubes).map((i) => i + 1));
    expect(found.checks).toEqual(all(invented.checks).map((i) => i + 1));
    expect(found.changes).toEqual(all(invented.changes));
  });

  it("take what was recorded for invented people along", () => {
    const recorded: AnyRow = { ID: "D-025", "Checked on": asOf + 1, "Out mL": 3.8, "Put in mL": 4 };
    const found = inventedRows({ ...invented, checks: [...invented.checks, recorded] });
    expect(found.checks).toContain(invented.checks.length);
  });

  it("are still found when most have been taken out, and not when fewer than three people agree", () => {
    const left = (count: number) => ({ tubes: invented.tubes.slice(0, count), checks: [], changes: [] });
    expect(inventedRows(left(3)).tubes).toEqual([0, 1, 2]);
    expect(inventedRows(left(2)).tubes).toEqual([]);
  });

  it("no longer count as invented once the day of birth has been typed over", () => {
    const tubes = invented.tubes.map((row, i) => (i === 4 ? { ...row, Born: day("1960-06-06") } : row));
    expect(inventedRows({ tubes, checks: [], changes: [] }).tubes).not.toContain(4);
  });
});
