/**
 * After how many months a device is due, and the latest it may stay: by how it is held, where it ends, its shape and the
 * person's age. How it was placed ("PEG", "RIG") or looks ("button") says none of that and is not known.
 */
import { formula, type FormulaTemplate } from "../../columns/formula";
import { KIND_NOT_KNOWN, NO_DATE, NO_SET_CHANGE } from "../../columns/state-words";
import type { ClinicSettingName } from "../../settings/index";
import { is, isOneOf } from "../reading";
import { CHECK_SETTINGS } from "../ready";

/** On LET names born and bornis. */
export const ageClassIn = formula`IF(bornis=1,IF(born<Day_Adult+1,"adult","child"),"not known")`;

const months = (name: ClinicSettingName) => formula`IF(ISNUMBER(${name}),${name},"${CHECK_SETTINGS}")`;

const byTeam = ["loop", "winged", "stitched", "catheter"];
const accessWords = ["g", "gj", "j"];

interface Limits {
  readonly balloon: { readonly g: ClinicSettingName; readonly gj: ClinicSettingName; readonly j: ClinicSettingName };
  /** A bumper in the stomach, on LET names age and shape. */
  readonly bumper: FormulaTemplate;
  /** A bumper tube through which another runs into the bowel. */
  readonly through: FormulaTemplate;
}

/** Months, or a word, on LET names held, access, shape, age and filled. */
export function monthsIn({ balloon, bumper, through }: Limits): FormulaTemplate {
  const ofBalloon = formula`IF(${is("access", "g")},${months(balloon.g)},IF(${is("access", "gj")},${months(balloon.gj)},${months(balloon.j)}))`;
  const ofBumper = formula`IF(${is("access", "g")},${bumper},IF(${is("access", "gj")},${through},"${NO_DATE}"))`;
  return formula`IF(${isOneOf("held", byTeam)},"${NO_DATE}",IF(NOT(${isOneOf("access", accessWords)}),"${KIND_NOT_KNOWN}",IF(${is("held", "balloon")},${ofBalloon},IF(AND(${is("held", "bumper")},NOT(filled)),${ofBumper},"${KIND_NOT_KNOWN}"))))`;
}

const openMonths = (name: ClinicSettingName, otherwise: string) =>
  formula`IF(ISNUMBER(${name}),${name},"${otherwise}")`;

const through = openMonths("Int_PEGJ", NO_DATE);

export const dueAfter: Limits = {
  balloon: { g: "Int_Balloon_G", gj: "Int_GJ", j: "Int_Balloon_J" },
  bumper: formula`IF(${is("age", "child")},"${NO_SET_CHANGE}",${openMonths("Int_Bumper_Adult", NO_SET_CHANGE)})`,
  through,
};

/** The least of several limits; one that is missing spoils it. */
const least = (names: readonly ClinicSettingName[]) =>
  formula`IF(AND(${names.map((name) => `ISNUMBER(${name})`).join(",")}),MIN(${names.join(",")}),"${CHECK_SETTINGS}")`;

const anyChild = ["Lim_Bumper_Child", "Lim_Bumper_Low"] as const;
const anybody = ["Lim_Bumper_Adult", ...anyChild] as const;
const ofChild = formula`IF(${is("shape", "low-profile")},${months("Lim_Bumper_Low")},IF(${is("shape", "long")},${months("Lim_Bumper_Child")},${least(anyChild)}))`;

export const latestAfter: Limits = {
  balloon: { g: "Lim_Balloon_G", gj: "Lim_GJ", j: "Lim_Balloon_J" },
  bumper: formula`IF(${is("age", "adult")},${months("Lim_Bumper_Adult")},IF(${is("age", "child")},${ofChild},${least(anybody)}))`,
  through,
};
