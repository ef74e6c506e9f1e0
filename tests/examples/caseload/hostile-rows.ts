/** Rows as nobody should type them and somebody does: from fixed pools, the same in every run. */
import type { CaseloadOptions } from "../../../src/caseload/index";
import type { CaseloadRow, CaseloadRows } from "../../../src/caseload/rows";
import { columnsOf, type RowsTable } from "../../../src/caseload/tables";
import type { SheetValue } from "../../../src/columns/sheet-block";
import { day } from "../../../src/worksheet/dates";
import { CellError } from "../../../src/worksheet/error";

export const AS_OF = day("2026-11-30");
export const OPTIONS: CaseloadOptions = { asOf: AS_OF, groups: ["fit", "plan", "spare"], people: "none" };

/** Park and Miller's generator: the same rows in every run. */
export function randoms(seed: number): () => number {
  let state = seed;
  return () => (state = (state * 48271) % 2147483647) / 2147483647;
}

const NA = new CellError("#N/A");
const odd: readonly SheetValue[] = [null, null, "  ", 0, "*", "?", "~*", true, NA, -1];
const ids: readonly SheetValue[] = [
  ...["D-001", "d-001 ", "D-002", "D-003", "D-004", "1E5", "03-04", "007", "=1+1", "<>", ">5", "k:", "D|G", "D-00?"],
  ...[7, 100000, "* "],
];
const days: readonly SheetValue[] = [
  ...[AS_OF, AS_OF - 1, AS_OF - 6, AS_OF - 13, AS_OF - 20, AS_OF - 40, AS_OF - 90, AS_OF - 100.25, AS_OF - 400],
  ...[day("2026-08-31"), day("2024-02-29"), day("2026-05-31"), AS_OF + 0.5, AS_OF + 1, AS_OF + 12, day("2052-03-04")],
  ...["3/4/24", "2026-05-14", 2019, 20260514],
];
const volumes: readonly SheetValue[] = [0, 5, 4.5, 4.4, 2.5, 4, 6, 5.6, 10, 9, 8.9, 61, "5cc", "3-5", "14,0", 0.3];
const lengths: readonly SheetValue[] = [2.3, 2.1, 1.8, 2, 23, 0.6, 1.1, 4, 3, "2.3 cm", 12, 14.5, 14];

const pools: Readonly<Record<string, readonly SheetValue[]>> = {
  ID: ids,
  Status: [...Array<string>(12).fill("active"), "Active ", "in hospital", "left", "on hold", "gone"],
  "Held by": [
    ...Array<string>(8).fill("balloon"),
    "balloon",
    "balloon ",
    "BUMPER",
    "bumper",
    "loop",
    "stitched",
    "catheter",
    "PEG",
    "not known",
  ],
  Access: ["G", "G", "G", "G", "G", "g", "GJ", "J", "G-J", "x"],
  Shape: ["long", "low-profile", "Low-profile ", "button"],
  "Slow healing": ["no", "No", "yes", "not known"],
  "Size Fr": [14, "14FR", "CH 14", "14,0", "14G", "12/14", 4.7, 60],
  "Checked by": ["nurse", "carer, keeps card", "carer, tells us", "not arranged"],
  "Changed by": ["carer", "nurse in clinic", "not decided"],
  "Own interval months": [null, null, null, 2, 2.5, 61, "8 weeks"],
  "Date set by placing team": [null, null, null, AS_OF + 30, AS_OF - 3, day("2052-03-04"), "soon"],
  "Spare at home": ["same size", "both", "none", "smaller", "not known"],
  Turning: ["never", "weekly"],
  "Known from": ["record", "label", "seen", "Seen ", "not known"],
  Site: [
    ...Array<string>(20).fill("quiet"),
    "quiet",
    "quiet ",
    "red",
    "overgrown",
    "leaking",
    "infected",
    "Infected",
    "tight or stuck",
    "not seen",
    "oozing",
  ],
  "Trained for tube out": ["put in spare", "hold opening only", "no", "not known"],
  "Own tube-out plan": ["yes", "no"],
  "Cannot wait": [
    "none",
    "insulin",
    "other medicine, Insulin",
    "fluid or glucose",
    "seizure medicine",
    "Fluids",
    "not known",
    7,
  ],
  "Fill mL": [...Array<number>(9).fill(5), ...volumes],
  "Put in mL": [...Array<number>(30).fill(5), ...volumes],
  Looked: [...Array<string>(8).fill("clear"), "cloudy", "milky, yellow or like feed", "nothing came", "Milky", "brown"],
  Reason: ["planned", "balloon burst", "came out, balloon empty", "Recall ", "fell out"],
};
const dated = ["Born", "Weighed on", "Stoma made", "Device in", "Booked for", "Measured on", "Spare expires"];
const more = ["Site seen on", "Status since"];
const dates = new Set([...dated, ...more, "Checked on", "In", "Out"]);
const volume = new Set(["Fill mL", "Most mL", "Out mL", "Put in mL"]);
const length = new Set(["Length cm", "Lying cm", "Sitting cm", "Mark then cm", "Mark now cm", "Play mm", "Weight kg"]);
length.add("Weight then kg");

function hostile(table: RowsTable, count: number, random: () => number): readonly CaseloadRow[] {
  const pick = (from: readonly SheetValue[]) => from[Math.floor(random() * from.length)]!;
  const typed = columnsOf(table, OPTIONS.groups).filter(({ kind }) => kind !== "computed");
  return Array.from({ length: count }, () => {
    const share = random() * 0.3;
    const cells = typed.flatMap(({ header }) => {
      const own =
        pools[header] ??
        (dates.has(header) ? days : volume.has(header) ? volumes : length.has(header) ? lengths : null);
      return own ? [[header, random() < share ? pick(odd) : pick(own)]] : [];
    });
    return Object.fromEntries(cells) as CaseloadRow;
  });
}

export function hostileRows(tubes: number, checks: number, changes: number): CaseloadRows {
  const random = randoms(20_261_126);
  const rows = {
    tubes: [...hostile("tubes", tubes, random), {}],
    checks: [...hostile("checks", checks, random), {}],
    changes: [...hostile("changes", changes, random), {}],
  };
  // Most identifiers stand once, so that checks find their device.
  return { ...rows, tubes: rows.tubes.map((row, i) => (i % 5 < 3 && i > 20 ? { ...row, ID: `P-${i}` } : row)) };
}

/** Checks of people who are in the list. */
export function joined({ tubes, checks, changes }: CaseloadRows): CaseloadRows {
  const known = tubes.map(({ ID }) => ID).filter((id) => typeof id === "string" && id.startsWith("P-"));
  const withId = (rows: readonly CaseloadRow[]) =>
    rows.map((row, i) =>
      i % 6 === 0 || Object.keys(row).length === 0 ? row : { ...row, ID: known[Math.floor(i / 5) % known.length]! },
    );
  return {
    tubes,
    checks: withId(checks).map((row, i) => (i % 4 ? { ...row, Access: null } : row)),
    changes: withId(changes),
  };
}
