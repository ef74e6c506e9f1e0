/** Earlier checks of the balloon now in: what came out, what was put in, and how often in a row it was low. */
import { unitTexts } from "../../../src/balloon/volumes";
import { BALLOONSTATE } from "../../../src/balloon/balloonstate";
import { call } from "../../../src/worksheet/call";
import { SheetError } from "../../../src/worksheet/error";
import { accessOf, dateOf, known, numberOf, type Read } from "../caseload/cells";
import { rowsOf, type Device, type Meant } from "../caseload/identity";
import { valueIn, type Caseload, type CaseloadRow } from "../caseload/read";
import { numberIn } from "../caseload/settings";
import type { Value } from "../../workbook/port";

const VOLUME_UNITS = ["mL", ...unitTexts];

/** 0 is a volume: the balloon was empty. */
export const volumeOf = (value: Value, names: Caseload["names"]): Read<number> =>
  numberOf(value, 0, numberIn(names, "Volume_Most"), VOLUME_UNITS);

/** A volume that a balloon is filled with: 0 is none. */
export const fillOf = (value: Value, names: Caseload["names"]): number | null => known(volumeOf(value, names)) || null;

export interface Check {
  readonly row: CaseloadRow;
  readonly day: number;
  /** Null: not measured. */
  readonly out: number | null;
  readonly putIn: number | null;
}

/** Oldest first; rows of one day in their order. A check without a readable date, or of another device, is none of these. */
export function checksOf(caseload: Caseload, { devices }: Meant, { row, id, access }: Device): readonly Check[] {
  const put = known(dateOf(valueIn(row, "Device in")));
  if (put === null) return [];
  const { checks, names } = caseload;
  return rowsOf(checks.rows, id)
    .flatMap((check): readonly Check[] => {
      const day = known(dateOf(valueIn(check, "Checked on")));
      const of = accessOf(valueIn(check, "Access"));
      const isOfThis = of === access || (of === "not known" && devices.length === 1);
      if (!isOfThis || day === null || day < put) return [];
      const out = known(volumeOf(valueIn(check, "Out mL"), names));
      return [{ row: check, day, out, putIn: known(volumeOf(valueIn(check, "Put in mL"), names)) }];
    })
    .sort((a, b) => a.day - b.day || a.row.index - b.row.index);
}

/** The loss above which a balloon reads low, by the clinic's settings; fills up to 5 mL count as small (settings.md). */
export const actionFor = (expected: number | null, names: Caseload["names"]): number =>
  numberIn(names, (expected ?? 0) <= 5 ? "Loss_Small" : "Loss_Large");

/** The word of BALLOONSTATE, or why there is none. */
export function stateOf(
  out: number | null,
  expected: number | null,
  most: number | null,
  names: Caseload["names"],
): string | SheetError {
  const answer = call(BALLOONSTATE, [out ?? "", expected ?? "", actionFor(expected, names), most ?? ""]);
  return typeof answer === "string" || answer instanceof SheetError ? answer : "not measured";
}

const LOW = ["low", "half or less", "empty"];

/** What should come out: what was put in last time, else the agreed fill. */
export const expectedAfter = (previous: Check | undefined, fill: number | null): number | null =>
  previous?.putIn || fill;

/** How often in a row, the last one included; a check that measured nothing does not end the row. */
export function lowInARow(
  checks: readonly Pick<Check, "out" | "putIn">[],
  fill: number | null,
  most: number | null,
  names: Caseload["names"],
): number {
  let count = 0;
  let expected = fill;
  for (const { out, putIn } of checks) {
    const state = stateOf(out, expected, most, names);
    if (typeof state === "string" && LOW.includes(state)) count += 1;
    else if (state !== "not measured") count = 0;
    expected = putIn || fill;
  }
  return count;
}
