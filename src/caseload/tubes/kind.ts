/**
 * After how many months a device is due, and the latest it may stay: by how it is held, where it ends, its shape and the
 * person's age. How it was placed ("PEG", "RIG") or looks ("button") says none of that and is not known.
 */
import { formula, type FormulaTemplate } from "../../columns/formula";
import { KIND_NOT_KNOWN, NO_DATE, NO_SET_CHANGE } from "../../columns/state-words";
import type { ClinicSettingName } from "../../settings/index";
import type { RowCells } from "../column";
import { is, isBlank, isNumber, isOneOf, word } from "../reading";
import { countedDay } from "../counted-days";
import { CHECK_SETTINGS } from "../ready";
import { stateOfDay } from "../reading";
import type { Sight } from "../sight";

/** Not known: held to the limit that comes first. */
export type AgeClass = "adult" | "child" | "not known";

/** On LET names born and bornis. */
export const ageClassIn = formula`IF(bornis=1,IF(born<Day_Adult+1,"adult","child"),"not known")`;
export function ageClassOf(row: RowCells, sight: Sight): AgeClass {
  const born = row["Born"]!;
  if (stateOfDay(born, sight) !== 1 || !isNumber(born)) return "not known";
  return born < countedDay("Day_Adult", sight) + 1 ? "adult" : "child";
}

const months = (name: ClinicSettingName) => formula`IF(ISNUMBER(${name}),${name},"${CHECK_SETTINGS}")`;
const monthsOf = (name: ClinicSettingName, { setting }: Sight): number | string => {
  const value = setting(name);
  return isNumber(value) ? value : CHECK_SETTINGS;
};

const byTeam = ["loop", "winged", "stitched", "catheter"];
const accessWords = ["g", "gj", "j"];

interface Limits {
  readonly balloon: { readonly g: ClinicSettingName; readonly gj: ClinicSettingName; readonly j: ClinicSettingName };
  /** A bumper in the stomach, on LET names age and shape. */
  readonly bumper: FormulaTemplate;
  readonly bumperOf: (row: RowCells, sight: Sight) => number | string;
  /** A bumper tube through which another runs into the bowel. */
  readonly through: FormulaTemplate;
  readonly throughOf: (sight: Sight) => number | string;
}

/** A bumper with a balloon's volume, or with a balloon check, is one or the other; on LET names held and filled. */
const isContradicted = (row: RowCells): boolean =>
  !isBlank(row["Fill mL"]!) || !isBlank(row["Most mL"]!) || isNumber(row["Newest"]!);

/** Months, or a word, on LET names held, access, shape, age and filled. */
export function monthsIn({ balloon, bumper, through }: Limits): FormulaTemplate {
  const ofBalloon = formula`IF(${is("access", "g")},${months(balloon.g)},IF(${is("access", "gj")},${months(balloon.gj)},${months(balloon.j)}))`;
  const ofBumper = formula`IF(${is("access", "g")},${bumper},IF(${is("access", "gj")},${through},"${NO_DATE}"))`;
  return formula`IF(${isOneOf("held", byTeam)},"${NO_DATE}",IF(NOT(${isOneOf("access", accessWords)}),"${KIND_NOT_KNOWN}",IF(${is("held", "balloon")},${ofBalloon},IF(AND(${is("held", "bumper")},NOT(filled)),${ofBumper},"${KIND_NOT_KNOWN}"))))`;
}

export function monthsFor(limits: Limits, row: RowCells, sight: Sight): number | string {
  const [held, access] = [word(row["Held by"]!), word(row["Access"]!)];
  if (byTeam.includes(held)) return NO_DATE;
  if (access !== "g" && access !== "gj" && access !== "j") return KIND_NOT_KNOWN;
  if (held === "balloon") return monthsOf(limits.balloon[access], sight);
  if (held !== "bumper" || isContradicted(row)) return KIND_NOT_KNOWN;
  if (access === "g") return limits.bumperOf(row, sight);
  return access === "gj" ? limits.throughOf(sight) : NO_DATE;
}

const openMonths = (name: ClinicSettingName, otherwise: string) =>
  formula`IF(ISNUMBER(${name}),${name},"${otherwise}")`;
const openMonthsOf = (name: ClinicSettingName, otherwise: string, { setting }: Sight): number | string => {
  const value = setting(name);
  return isNumber(value) ? value : otherwise;
};

const through = openMonths("Int_PEGJ", NO_DATE);
const throughOf = (sight: Sight) => openMonthsOf("Int_PEGJ", NO_DATE, sight);

export const dueAfter: Limits = {
  balloon: { g: "Int_Balloon_G", gj: "Int_GJ", j: "Int_Balloon_J" },
  bumper: formula`IF(${is("age", "child")},"${NO_SET_CHANGE}",${openMonths("Int_Bumper_Adult", NO_SET_CHANGE)})`,
  bumperOf: (row, sight) =>
    ageClassOf(row, sight) === "child" ? NO_SET_CHANGE : openMonthsOf("Int_Bumper_Adult", NO_SET_CHANGE, sight),
  through,
  throughOf,
};

/** The least of several limits; one that is missing spoils it. */
const least = (names: readonly ClinicSettingName[]) =>
  formula`IF(AND(${names.map((name) => `ISNUMBER(${name})`).join(",")}),MIN(${names.join(",")}),"${CHECK_SETTINGS}")`;
const leastOf = (names: readonly ClinicSettingName[], sight: Sight): number | string => {
  const all = names.map((name) => monthsOf(name, sight));
  return all.every(isNumber) ? Math.min(...(all as number[])) : CHECK_SETTINGS;
};

const anyChild = ["Lim_Bumper_Child", "Lim_Bumper_Low"] as const;
const anybody = ["Lim_Bumper_Adult", ...anyChild] as const;
const ofChild = formula`IF(${is("shape", "low-profile")},${months("Lim_Bumper_Low")},IF(${is("shape", "long")},${months("Lim_Bumper_Child")},${least(anyChild)}))`;

export const latestAfter: Limits = {
  balloon: { g: "Lim_Balloon_G", gj: "Lim_GJ", j: "Lim_Balloon_J" },
  bumper: formula`IF(${is("age", "adult")},${months("Lim_Bumper_Adult")},IF(${is("age", "child")},${ofChild},${least(anybody)}))`,
  bumperOf: (row, sight) => {
    const age = ageClassOf(row, sight);
    if (age === "adult") return monthsOf("Lim_Bumper_Adult", sight);
    if (age === "not known") return leastOf(anybody, sight);
    const shape = word(row["Shape"]!);
    if (shape === "low-profile") return monthsOf("Lim_Bumper_Low", sight);
    return shape === "long" ? monthsOf("Lim_Bumper_Child", sight) : leastOf(anyChild, sight);
  },
  through,
  throughOf,
};
