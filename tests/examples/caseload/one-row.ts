/** A row in which everything is in order, and what becomes of it when some cells are otherwise. */
import type { RowCells } from "../../../src/caseload/column";
import type { SheetValue } from "../../../src/columns/sheet-block";
import { day } from "../../../src/worksheet/dates";
import { workOut, type Given, type Rows } from "./worked-rows";

/** Today is 26 November 2026. */
export const AS_OF = day("2026-11-26");
export const ALL = ["fit", "plan", "spare"] as const;

export type Cells = Readonly<Record<string, SheetValue>>;

/** An adult with a low-profile balloon gastrostomy, changed 6 weeks ago, checked 3 days ago. */
export const goodTube: Cells = {
  ID: "T-1",
  Status: "active",
  Born: day("1980-02-01"),
  "Weight kg": 60,
  "Weighed on": AS_OF - 20,
  Access: "G",
  "Stoma made": day("2022-03-01"),
  "Slow healing": "no",
  "Held by": "balloon",
  "Known from": "record",
  Shape: "low-profile",
  "Size Fr": 14,
  "Length cm": 2.3,
  "Device in": AS_OF - 42,
  "Fill mL": 5,
  "Most mL": 7,
  "Checked by": "nurse",
  "Lying cm": 2,
  "Sitting cm": 2.1,
  "Measured on": AS_OF - 42,
  "Weight then kg": 60,
  "Changed by": "nurse in clinic",
  Turning: "weekly",
  "Spare at home": "same size",
  "Spare lot": "A1",
  "Spare expires": AS_OF + 300,
  "Cannot wait": "none",
};
/** The same person with a long bumper tube. */
export const goodBumper: Cells = {
  ...goodTube,
  "Held by": "bumper",
  Shape: "long",
  "Length cm": null,
  "Fill mL": null,
  "Most mL": null,
  "Mark then cm": 4,
  "Mark now cm": 4,
  "Play mm": 10,
  "Changed by": "endoscopy",
};
export const goodCheck: Cells = { ID: "T-1", "Checked on": AS_OF - 3, "Out mL": 5, "Put in mL": 5 };

export interface Case {
  readonly tube?: Cells;
  readonly tubes?: readonly Cells[];
  readonly checks?: readonly Cells[];
  readonly changes?: readonly Cells[];
  readonly settings?: Given["settings"];
  readonly groups?: Given["groups"];
}

/** The number to call is entered, so that it does not stand before what is booked or calm. */
export function worked({ tube = goodTube, tubes, checks = [goodCheck], changes = [], settings, groups = ALL }: Case) {
  const rows: Rows = { tubes: tubes ?? [tube], checks, changes };
  return workOut(rows, { asOf: AS_OF, groups, settings: { Call_Day: "01 234", ...settings } });
}

export const tube = (cells: Cells): Case => ({ tube: { ...goodTube, ...cells } });
export const bumper = (cells: Cells): Case => ({ tube: { ...goodBumper, ...cells }, checks: [] });
export const check = (cells: Cells): Cells => ({ ...goodCheck, ...cells });

export const tubeOf = (one: Case): RowCells => worked(one).tubes[0]!;
export const checksOf = (one: Case): readonly RowCells[] => worked(one).checks;
export const word = (header: string, one: Case) => tubeOf(one)[header];
