/**
 * Of which kind a device is: how it is held and where it ends, a bumper in the stomach by the person's age too. How it was
 * placed ("PEG", "RIG") or looks ("button") says none of that and is not known. The months of each kind stand in a table
 * on the settings sheet.
 */
import { KIND_NOT_KNOWN, NO_DATE, NO_SET_CHANGE } from "../../columns/state-words";
import type { ClinicSettingName } from "../../settings/index";
import { type CaseloadColumn } from "../column";
import { isBlank, isOneOf } from "../phrases";
import { hidden } from "../shown";

/** A bumper with a balloon's volume, or with a balloon check, is one or the other. */
export const kindColumns: readonly CaseloadColumn[] = [
  hidden(
    "Balloon signs",
    `IF(OR(ISNUMBER([@Newest]),NOT(${isBlank("[@[Fill mL]]")}),NOT(${isBlank("[@[Most mL]]")})),"yes","no")`,
  ),
  hidden(
    "Kind",
    `IF(${isOneOf("[@Held]", ["loop", "winged", "stitched", "catheter"])},"placing team",IF([@End]="not known","kind not known",IF([@Held]="balloon","balloon "&[@End],IF(OR([@Held]="not known",[@[Balloon signs]]="yes"),"kind not known","bumper "&[@End]&IF([@End]="g",", "&[@[Age class]],"")))))`,
  ),
];

interface KindMonths {
  readonly kind: string;
  /** After how many months a change is due, and the latest; a word where no number is set. */
  readonly due: string;
  readonly latest: string;
}

/** Months of a setting that must be there; 0 becomes `check settings`. */
const months = (name: ClinicSettingName): string => `N(${name})`;
/** Where nothing is known, what comes first; one that is missing spoils it. */
const least = (...names: readonly ClinicSettingName[]): string => `MIN(${names.map(months).join(",")})`;
const monthsOr = (name: ClinicSettingName, word: string): string => `IF(ISNUMBER(${name}),${name},"${word}")`;
const word = (text: string): string => `"${text}"`;

const bumperDue = monthsOr("Int_Bumper_Adult", NO_SET_CHANGE);
const through = monthsOr("Int_PEGJ", NO_DATE);

/** A child's bumper by its shape; without one the limit that comes first. */
export const kindMonths: readonly KindMonths[] = [
  { kind: "balloon g", due: months("Int_Balloon_G"), latest: months("Lim_Balloon_G") },
  { kind: "balloon gj", due: months("Int_GJ"), latest: months("Lim_GJ") },
  { kind: "balloon j", due: months("Int_Balloon_J"), latest: months("Lim_Balloon_J") },
  { kind: "bumper g, adult", due: bumperDue, latest: months("Lim_Bumper_Adult") },
  {
    kind: "bumper g, not known",
    due: bumperDue,
    latest: least("Lim_Bumper_Adult", "Lim_Bumper_Child", "Lim_Bumper_Low"),
  },
  { kind: "bumper g, child", due: word(NO_SET_CHANGE), latest: least("Lim_Bumper_Child", "Lim_Bumper_Low") },
  { kind: "bumper g, child, long", due: word(NO_SET_CHANGE), latest: months("Lim_Bumper_Child") },
  { kind: "bumper g, child, low-profile", due: word(NO_SET_CHANGE), latest: months("Lim_Bumper_Low") },
  { kind: "bumper gj", due: through, latest: through },
  { kind: "bumper j", due: word(NO_DATE), latest: word(NO_DATE) },
  { kind: "placing team", due: word(NO_DATE), latest: word(NO_DATE) },
  { kind: KIND_NOT_KNOWN, due: word(KIND_NOT_KNOWN), latest: word(KIND_NOT_KNOWN) },
];
