/** Earlier checks of the balloon now in: what came out, what was put in, and how often in a row it was low. */
import { unitTexts } from "../../../src/balloon/volumes";
import { BALLOONSTATE } from "../../../src/balloon/balloonstate";
import { call } from "../../../src/worksheet/call";
import { SheetError } from "../../../src/worksheet/error";
import { rounded } from "../../../src/worksheet/numbers";
import { accessOf, dateOf, known, numberOf, type Read } from "../caseload/cells";
import { rowsOf, type Device, type Meant } from "../caseload/identity";
import { valueIn, type Caseload, type CaseloadRow } from "../caseload/read";
import { numberIn } from "../caseload/settings";
import type { Value } from "../../workbook/port";

const VOLUME_UNITS = ["mL", ...unitTexts];

/** 0 is a volume: the balloon was empty. */
const volumeOf = (value: Value, names: Caseload["names"]): Read<number> =>
  numberOf(value, 0, numberIn(names, "Volume_Most"), VOLUME_UNITS);

/** A volume that a balloon is filled with: 0 is none. */
export const fillOf = (value: Value, names: Caseload["names"]): number | null => known(volumeOf(value, names)) || null;

export interface Check {
  readonly row: CaseloadRow<"checks">;
  readonly day: number;
  /** Null: not measured. */
  readonly out: number | null;
  /** Unreadable, or 0: nothing can be expected of the next check. */
  readonly putIn: Read<number>;
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
      return [{ row: check, day, out, putIn: volumeOf(valueIn(check, "Put in mL"), names) }];
    })
    .sort((a, b) => a.day - b.day || a.row.index - b.row.index);
}

/** The loss above which a balloon reads low, by the clinic's settings. */
export const actionFor = (expected: number | null, names: Caseload["names"]): number =>
  numberIn(names, (expected ?? 0) <= numberIn(names, "Fill_Small") ? "Loss_Small" : "Loss_Large");

/**
 * The word of BALLOONSTATE, or why there is none. A balloon that gave nothing is empty whatever was expected. Settings
 * that are stricter than the function's own numbers count; more lenient ones would only take bad news away.
 */
export function stateOf(
  out: number | null,
  expected: number | null,
  most: number | null,
  names: Caseload["names"],
): string | SheetError {
  if (out === 0) return "empty";
  if (out === null || expected === null) return "not measured";
  const word = call(BALLOONSTATE, [out, expected, actionFor(expected, names), most ?? ""]);
  if (word instanceof SheetError) return word;
  if (rounded(out - expected) > numberIn(names, "Over_Read")) return "more than put in";
  const isHalf = out <= rounded(expected * numberIn(names, "Loss_Half"));
  return isHalf && word !== "more than put in" ? "half or less" : String(word);
}

const LOW = ["low", "half or less", "empty"];

/** What should come out: what was put in last time; where that was left blank, the agreed fill. */
export function expectedAfter(previous: Pick<Check, "putIn"> | undefined, fill: number | null): number | null {
  if (!previous || previous.putIn === null) return fill;
  return known(previous.putIn) || null;
}

/** How often in a row, the last one included; a check that measured nothing neither counts nor ends the row. */
export function lowInARow(
  checks: readonly Pick<Check, "out" | "putIn">[],
  fill: number | null,
  most: number | null,
  names: Caseload["names"],
): number {
  let count = 0;
  for (const [i, { out }] of checks.entries()) {
    const state = stateOf(out, expectedAfter(checks[i - 1], fill), most, names);
    if (typeof state === "string" && LOW.includes(state)) count += 1;
    else if (state !== "not measured") count = 0;
  }
  return count;
}
