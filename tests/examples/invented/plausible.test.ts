/** Apart from its deliberate messes the invented caseload holds only what the shared template allows, and fits itself. */
import { describe, expect, it } from "vitest";
import { inventedCaseload } from "../../../src/caseload/invented";
import type { Header } from "../../../src/caseload/headers";
import type { CaseloadRow } from "../../../src/caseload/rows";
import { day, someDays } from "./days";

const heldBy = ["balloon", "bumper", "loop", "winged", "stitched", "catheter", "not known"];
const shapes = ["long", "low-profile"];
const changers = ["carer", "nurse at home", "nurse in clinic", "radiology", "endoscopy", "surgery", "not decided"];

/** Word lists of the shared template, by header. */
const lists: Readonly<Record<"tubes" | "checks" | "changes", Readonly<Record<string, readonly string[]>>>> = {
  tubes: {
    Status: ["active", "in hospital", "on hold", "left"],
    Access: ["G", "GJ", "J"],
    "Placed by": ["endoscopy", "radiology", "surgery", "not known"],
    "Slow healing": ["no", "yes", "not known"],
    "Held by": [...heldBy, "PEG", "button", "RIG", "BGT "],
    "Known from": ["record", "label", "seen", "not known"],
    Shape: shapes,
    "Checked by": ["carer, tells us", "carer, keeps card", "nurse", "not arranged"],
    "Changed by": changers,
    "Trained for tube out": ["put in spare", "hold opening only", "no", "not known"],
    "Own tube-out plan": ["yes", "no"],
    "Spare at home": ["same size", "smaller", "both", "none", "not known"],
    Site: ["quiet", "red", "overgrown", "leaking", "infected", "tight or stuck", "not seen"],
  },
  checks: {
    Access: ["G", "GJ", "J"],
    Looked: ["clear", "cloudy", "milky, yellow or like feed", "nothing came"],
    Water: ["fresh", "same put back"],
    By: ["carer", "nurse", "other"],
    "How known": ["seen", "phone", "card"],
  },
  changes: {
    Access: ["G", "GJ", "J"],
    "Held by": heldBy,
    Shape: shapes,
    Reason: [
      ...["planned", "balloon burst", "balloon leaking", "split or broken", "came out, balloon empty"],
      ...["came out, balloon full or bumper", "blocked", "too short or too long", "buried or stuck", "moved (GJ)"],
      ...["change of type", "recall", "no longer needed", "left", "other"],
    ],
    Where: ["home", "clinic", "ward", "emergency department", "radiology", "endoscopy", "theatre"],
    "Unplanned visit": ["no", "yes"],
    "Changed by": changers,
    "Position confirmed by": ["pH", "X-ray or contrast", "other", "not recorded"],
    "New held by": heldBy,
    "New shape": shapes,
  },
};

/** Least and most of the shared template, by header, and what else stands there on purpose. */
const numbers: readonly (readonly [
  table: "tubes" | "checks" | "changes",
  header: Header,
  least: number,
  most: number,
  onPurpose?: readonly unknown[],
])[] = [
  ["tubes", "Weight kg", 0.4, 300, ["?"]],
  ["tubes", "Size Fr", 5, 30, ["14FR", "CH 14", "14,0", "14G", "12/14", 4.7]],
  ["tubes", "Length cm", 0.5, 10, [23]],
  ["tubes", "Fill mL", 0.5, 30],
  ["tubes", "Most mL", 0.5, 30, ["3-5 mL", "5cc"]],
  ["tubes", "Lying cm", 0.5, 10],
  ["tubes", "Sitting cm", 0.5, 10],
  ["tubes", "Mark then cm", 0, 30],
  ["tubes", "Mark now cm", 0, 30],
  ["tubes", "Play mm", 0, 60],
  ["tubes", "Own interval months", 1, 60],
  ["tubes", "Spare Fr", 5, 30],
  ["tubes", "Spare cm", 0.5, 10],
  ["checks", "Out mL", 0, 60],
  ["checks", "Put in mL", 0, 60],
  ["changes", "Size Fr", 5, 30],
  ["changes", "Length cm", 0.5, 10],
  ["changes", "Fill mL", 0.5, 30],
  ["changes", "Nights", 0, 99],
  ["changes", "Hours out", 0, 240],
  ["changes", "pH", 0, 14],
];

/** Days that may lie ahead, and answers that are no days on purpose. */
const ahead = ["Booked for", "Date set by placing team", "Spare expires"] as const;
const notDays = ["3/4/24", "n/k", "see letter"];

/**
 * Weights that people with tubes may have, kg by age in years up to; wide, because many are small for their age.
 * Middle of the range: WHO growth standards, from memory (9 weeks 5, 1 year 9, 5 years 18, 10 years 32).
 */
const weights: readonly (readonly [upTo: number, least: number, most: number])[] = [
  [0.25, 3, 7],
  [1, 5, 11],
  [2, 7, 15],
  [4, 9.5, 20],
  [7, 12, 28],
  [10, 16, 40],
  [13, 22, 60],
  [18, 30, 80],
  [120, 40, 110],
];

const blank = (cell: unknown) => cell === null || cell === undefined || cell === "";

describe.each(someDays)("the invented caseload on %s", (iso) => {
  const asOf = day(iso);
  const caseload = inventedCaseload(asOf);
  const { tubes, checks, changes } = caseload;
  const cells = (rows: readonly CaseloadRow[], header: Header) =>
    rows.map((row) => row[header]).filter((cell) => !blank(cell));

  it("holds only words of the lists, and the words that stand there on purpose", () => {
    for (const table of ["tubes", "checks", "changes"] as const) {
      for (const [header, words] of Object.entries(lists[table]) as [Header, readonly unknown[]][]) {
        for (const cell of cells(caseload[table], header)) expect(words, `${table}, ${header}`).toContain(cell);
      }
    }
    const reasons = ["insulin", "seizure medicine", "other medicine", "fluid or glucose", "none", "not known"];
    for (const cell of cells(tubes, "Cannot wait")) {
      for (const word of String(cell).split(", ")) expect(reasons).toContain(word);
    }
  });

  it("holds only figures within the limits, and those that stand there on purpose, each once", () => {
    for (const [table, header, least, most, onPurpose = []] of numbers) {
      const odd = cells(caseload[table], header).filter(
        (cell) => !(typeof cell === "number" && cell >= least && cell <= most),
      );
      expect(new Set(odd), header).toEqual(new Set(onPurpose));
      expect(odd, header).toHaveLength(onPurpose.length);
    }
  });

  it("holds no day ahead but one typed wrongly, what is booked, set, or expires", () => {
    for (const row of [...tubes, ...checks, ...changes] as readonly CaseloadRow[]) {
      for (const header of ["Born", "Weighed on", "Stoma made", "Device in", "Measured on", "Site seen on"] as const) {
        const cell = row[header];
        if (blank(cell) || notDays.includes(String(cell)) || row.ID === "D-011") continue;
        expect(Number(cell), `${row.ID}, ${header}`).toBeLessThanOrEqual(asOf);
      }
      for (const header of ["Checked on", "In", "Out"] as const) {
        if (!blank(row[header])) expect(Number(row[header]), `${row.ID}, ${header}`).toBeLessThanOrEqual(asOf);
      }
      for (const header of ahead) {
        if (!blank(row[header]) && !notDays.includes(String(row[header]))) {
          expect(Number(row[header])).toBeLessThan(asOf + 3 * 366);
        }
      }
    }
  });

  it("counts every person's days in order, but for the one whose device went in before the opening", () => {
    for (const row of tubes) {
      const made = row["Stoma made"];
      if (typeof made === "number") expect(Number(row.Born), `${row.ID}`).toBeLessThan(made);
      if (typeof made === "number" && typeof row["Device in"] === "number" && row.ID !== "D-019") {
        expect(row["Device in"], `${row.ID}`).toBeGreaterThanOrEqual(made);
      }
    }
  });

  it("has weights that go with ages", () => {
    for (const row of tubes) {
      if (typeof row["Weight kg"] !== "number") continue;
      const age = (asOf - Number(row.Born)) / 365.25;
      const [, least, most] = weights.find(([upTo]) => age <= upTo)!;
      expect(row["Weight kg"], `${row.ID}, ${age} years`).toBeGreaterThanOrEqual(least);
      expect(row["Weight kg"], `${row.ID}, ${age} years`).toBeLessThanOrEqual(most);
    }
  });

  /* SickKids' chart: 12 Fr low-profile 2-5 mL, 14 Fr low-profile 3-10; the label's most is never passed. */
  it("has fills that go with sizes, and no agreed fill above its label", () => {
    for (const row of tubes) {
      const { "Fill mL": fill, "Most mL": most } = row;
      if (typeof fill !== "number") continue;
      if (typeof most === "number") expect(fill, `${row.ID}`).toBeLessThanOrEqual(most);
      if (row.Shape === "low-profile" && row["Size Fr"] === 12) expect(fill >= 2 && fill <= 5).toBe(true);
      if (row.Shape === "low-profile" && row["Size Fr"] === 14) expect(fill >= 3 && fill <= 10).toBe(true);
    }
  });

  it("has no tube that ends in the bowel changed at home, but the one that names a carer", () => {
    const atHome = tubes.filter(
      (row) => row.Access !== "G" && ["carer", "nurse at home"].includes(String(row["Changed by"])),
    );
    expect(atHome.map((row) => row.ID)).toEqual(["D-013"]);
    for (const row of changes.filter((each) => each.Access !== "G")) {
      expect([row.Where, row["Position confirmed by"]], `${row.ID}`).toEqual(["radiology", "X-ray or contrast"]);
    }
  });

  /* ACI/GENCA: mature from 12 weeks; before that the opening is not trusted. */
  it("has no tube changed at home while the opening was younger than 12 weeks", () => {
    const young = changes.filter((row) => {
      const made = tubes.find((tube) => tube.ID === row.ID)!["Stoma made"];
      return typeof made === "number" && Number(row.Out) - made < 84;
    });
    expect(young.filter((row) => row.Where === "home" || row["Position confirmed by"] === "pH")).toEqual([]);
  });

  it("has past devices that follow on one another and end in the device in use", () => {
    const key = (row: CaseloadRow) => `${row.ID}|${row.Access}`;
    for (const device of new Set(changes.map(key))) {
      const past = changes.filter((row) => key(row) === device);
      for (const [i, row] of past.entries()) {
        expect(Number(row.Out) - Number(row.In), device).toBeGreaterThan(0);
        const next = past[i + 1];
        if (next) expect(next.In, device).toBe(row.Out);
      }
      const inUse = tubes.find((row) => key(row) === device)!;
      if (inUse.Status === "left" || inUse.ID === "D-017") continue;
      expect(past.at(-1)!.Out, device).toBe(inUse["Device in"]);
      if (past.at(-1)!["New lot"] !== null) expect(past.at(-1)!["New lot"], device).toBe(inUse.Lot);
    }
  });

  it("names nobody: identifiers are D and a number", () => {
    for (const row of [...tubes, ...checks, ...changes]) expect(String(row.ID).trim()).toMatch(/^D-0\d\d$/i);
  });
});
