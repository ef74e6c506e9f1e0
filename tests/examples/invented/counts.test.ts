/**
 * How many people, rows and devices of each kind: as the shared template lists them. A kind that is typed in another
 * word counts as what the row's fill shows it to be.
 */
import { describe, expect, it } from "vitest";
import { inventedCaseload } from "../../../src/caseload/invented";
import type { CaseloadRow } from "../../../src/caseload/rows";
import { day, someDays } from "./days";

const kindOf = (row: CaseloadRow): string => {
  const word = String(row["Held by"]);
  if (["balloon", "bumper", "loop", "winged", "stitched", "catheter", "not known"].includes(word)) return word;
  return row["Fill mL"] === undefined ? "bumper" : "balloon";
};

const tally = (words: readonly unknown[]) =>
  Object.fromEntries([...new Set(words)].map((word) => [word, words.filter((each) => each === word).length]));

describe.each(someDays)("the invented caseload on %s", (iso) => {
  const asOf = day(iso);
  const { tubes, checks, changes } = inventedCaseload(asOf);

  it("has 48 identifiers in 50 rows", () => {
    expect(tubes).toHaveLength(50);
    expect(new Set(tubes.map((row) => row.ID)).size).toBe(48);
  });

  it("has the kinds, accesses and states of the template", () => {
    expect(tally(tubes.map(kindOf))).toEqual({
      ...{ balloon: 33, bumper: 12, loop: 2, winged: 1, catheter: 1, "not known": 1 },
    });
    expect(tally(tubes.map((row) => row.Access))).toEqual({ G: 43, GJ: 5, J: 2 });
    expect(tally(tubes.map((row) => row.Status))).toEqual({ active: 44, left: 3, "in hospital": 2, "on hold": 1 });
  });

  it("has 26 adults and 22 children, from weeks to 92 years old", () => {
    const byId = new Map(tubes.map((row) => [row.ID, (asOf - Number(row.Born)) / 365.25]));
    const ages = [...byId.values()];
    expect(ages.filter((age) => age >= 18)).toHaveLength(26);
    expect(ages.filter((age) => age < 18)).toHaveLength(22);
    expect(Math.floor(Math.max(...ages))).toBe(92);
    expect(Math.min(...ages) * 52).toBeLessThan(16);
  });

  it("has about 150 past devices and a hundred checks", () => {
    expect(changes.length).toBeGreaterThan(140);
    expect(changes.length).toBeLessThan(170);
    expect(checks.length).toBeGreaterThan(90);
  });

  it("is the same whenever it is invented for the same day", () => {
    expect(inventedCaseload(asOf)).toEqual({ tubes, checks, changes });
  });
});
