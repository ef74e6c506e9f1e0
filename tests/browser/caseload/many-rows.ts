/**
 * Invented rows by the thousand: a ready-made caseload, and a clinic's own list. How they are made decides what must be
 * counted, by row number from 0: held by a bumper where i ends in 6 or 7 (a fifth of them, half of those typed with a
 * blank behind), by a loop where it ends in 8, not written where it ends in 9, by a balloon in all others. No usable date
 * where i is 6 or 17 in 25 (blank; text) or 20 in 50 (a year not come yet): a tenth of all; of 50 in a row, two such rows
 * are bumpers.
 */
import { caseloadBookOf, type CaseloadRow, type CaseloadRows } from "../../../src/caseload/index";
import { writeBook } from "../../../taskpane/workbook/file";

export const TODAY = 46_352; /* 26 November 2026 */

const held = (i: number): string | null =>
  ["balloon", "balloon", "balloon", "balloon", "balloon", "balloon", "bumper", "bumper ", "loop", null][i % 10]!;

/** A simple generator (Lehmer, the numbers of Park and Miller) with a fixed seed. */
function spread(seed: number): (below: number) => number {
  let state = seed;
  return (below) => (state = (state * 48_271) % 2_147_483_647) % below;
}

const dateIn = (i: number, daysAgo: number): number | string | null => {
  if (i % 25 === 6) return null;
  if (i % 25 === 17) return "3/4/24";
  return i % 50 === 20 ? TODAY + 9_000 : TODAY - daysAgo;
};

function tubes(count: number): CaseloadRow[] {
  const below = spread(20_261_126);
  return Array.from({ length: count }, (_, i): CaseloadRow => {
    const isBalloon = held(i) === "balloon";
    return {
      ID: `M-${String(i + 1).padStart(4, "0")}`,
      Status: "active",
      Born: TODAY - 3_000 - below(25_000),
      Access: "G",
      "Stoma made": TODAY - 1_500 - below(1_000),
      "Slow healing": "no",
      "Held by": held(i),
      Shape: "long",
      "Size Fr": 12 + 2 * below(5),
      /* The first row: put in on 1 June 2026. */
      "Device in": i === 0 ? TODAY - 178 : dateIn(i, 5 + below(400)),
      Lot: `L${below(90)}`,
      ...(isBalloon && { "Fill mL": 5, "Most mL": 10, "Checked by": "carer, keeps card" }),
      "Changed by": isBalloon ? "nurse at home" : "endoscopy",
      "Spare at home": "same size",
    };
  });
}

const checks = (count: number): CaseloadRow[] =>
  Array.from({ length: count / 10 }, (_, i) => ({
    ID: `M-${String(10 * i + 2).padStart(4, "0")}`,
    "Checked on": TODAY - 2,
    "Out mL": 4.8,
    "Put in mL": 5,
    By: "carer",
  }));

/** So many devices, and a check of every tenth. */
export const caseloadRows = (count: number): CaseloadRows => ({
  tubes: tubes(count),
  checks: checks(count),
  changes: [],
});

export const manyRows = (count: number): Promise<Uint8Array> =>
  writeBook(caseloadBookOf(caseloadRows(count), { asOf: TODAY, people: "none", groups: ["fit", "plan", "spare"] }));

/** A clinic's own list, under headings that are nobody else's; kinds and dates as above. */
export const ownList = (count: number): (string | number | null)[][] => [
  ["Who", "What keeps it in", "Since", "Remarks"],
  ...Array.from({ length: count }, (_, i) => [
    `W-${i + 1}`,
    held(i),
    dateIn(i, 5 + ((i * 37) % 400)),
    i % 7 === 0 ? "rings first" : null,
  ]),
];
