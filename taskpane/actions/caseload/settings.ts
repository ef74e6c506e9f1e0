/** The clinic's settings, as they stand under their names in this workbook. */
import { settingNamed, type ClinicSettingName, type SettingName } from "../../../src/settings/index";
import { refuseNumber } from "../../../src/settings/setting";
import { textOf } from "./cells";
import { named, type Caseload } from "./read";

export interface SettingUsed {
  readonly value: number;
  /** Why this is not what stands there, or that it is unusual; null where all is well. */
  readonly doubt: string | null;
}

/** An unusual number is used and told, as the sheets' own formulas use it; what is no number gives the default. */
export function settingIn(names: Caseload["names"], name: SettingName): SettingUsed {
  const setting = settingNamed(name);
  const cell = named(names, name);
  if (typeof cell !== "number" || !Number.isFinite(cell) || cell < 0) {
    const stands = textOf(cell) === "" ? "is not entered" : "cannot be read";
    return {
      value: setting.default,
      doubt: `Clinic setting "${setting.label}" ${stands}: ${setting.default} ${setting.unit} is used.`,
    };
  }
  const refusal = refuseNumber(setting, cell);
  return { value: cell, doubt: refusal && `Clinic setting not usual: who agreed? ${refusal}` };
}

export const numberIn = (names: Caseload["names"], name: SettingName): number => settingIn(names, name).value;

/** For limits that protect: an entry on the daring side of what is allowed is not believed. */
export function carefulIn(names: Caseload["names"], name: SettingName, daring: "low" | "high"): number {
  const { allowed, default: usual } = settingNamed(name);
  const value = numberIn(names, name);
  return (daring === "low" ? value < allowed[0] : value > allowed[1]) ? usual : value;
}

export const textSettingIn = (names: Caseload["names"], name: ClinicSettingName): string => textOf(named(names, name));
