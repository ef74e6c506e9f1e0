/** Clinic settings that a workbook holds under their names, as a ready-made caseload and its settings sheet do. */
import { readLengths } from "../../../src/columns/stocked-lengths";
import { settings, type SettingName } from "../../../src/settings/index";
import { refuseNumber } from "../../../src/settings/setting";
import type { NameOverview, Overview } from "../../workbook/port";

export interface SheetNumber {
  /** As the workbook spells the name. */
  readonly name: string;
  /** What stands there, where it may be used. */
  readonly value: number | null;
  /** Why it is not used: a sentence. Null where it is. */
  readonly refused: string | null;
}

export type SheetNumbers = { readonly [N in SettingName]?: SheetNumber };

/** One cell, absolute or not: `='Clinic settings'!$C$4`. */
const ONE_CELL = /^=(?:'(?:[^']|'')+'|[^'!,:()]+)!\$?[A-Z]{1,3}\$?\d+$/i;

const named = ({ names }: Overview, name: string): NameOverview | undefined =>
  names.find((one) => one.name.toLowerCase() === name.toLowerCase() && ONE_CELL.test(one.refersTo));

export function sheetNumbers(overview: Overview): SheetNumbers {
  const found: { [N in SettingName]?: SheetNumber } = {};
  for (const setting of settings) {
    const one = named(overview, setting.name);
    if (!one) continue;
    const { name, value } = one;
    const refusal =
      typeof value === "number"
        ? refuseNumber(setting, value)
        : `${setting.label}: ${value === null || value === "" ? "nothing is entered there" : "what stands there is no number"}.`;
    found[setting.name] =
      refusal === null
        ? { name, value: value as number, refused: null }
        : { name, value: null, refused: `The settings sheet is not used for this number. ${refusal}` };
  }
  return found;
}

/** The lengths in stock that the settings sheet names; empty where it names none that can be read. */
export function sheetLengths(overview: Overview): readonly number[] {
  const value = named(overview, "Lengths")?.value;
  const lengths = value === undefined || value === null ? [] : readLengths(String(value));
  return typeof lengths === "string" ? [] : lengths;
}
