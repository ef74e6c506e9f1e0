/** Clinic settings: what a service agrees for itself, each with its default and where that comes from. */
import type { Evidence } from "../worksheet/define";

/** What services and papers say, in words and as the outermost numbers; null for an end that no number names. */
export interface SourceRange {
  readonly words: string;
  readonly least: number | null;
  readonly most: number | null;
}

export type Unit =
  | "months"
  | "weeks"
  | "days"
  | "hours"
  | "years"
  | "mL"
  | "cm"
  | "mm"
  | "Fr"
  | "kg"
  | "pH"
  | "%"
  | "share of fill"
  | "checks"
  | "people or changes";

interface Facts<Name extends string> {
  /** A name as workbooks define it: the same in every formula and on the settings sheet. */
  readonly name: Name;
  readonly label: string;
  /** Null where nobody was found to say anything. */
  readonly range: SourceRange | null;
  /** Who says so, or NO_SOURCE. */
  readonly source: string;
  readonly evidence: Evidence;
}

interface NumberFacts<Name extends string, Default> extends Facts<Name> {
  readonly kind: "number";
  readonly default: Default;
  readonly unit: Unit;
  /** An entry outside is refused in the pane; on the settings sheet its row asks who agreed to it. */
  readonly allowed: readonly [least: number, most: number];
}

/** A number that has a default. */
export type Setting<Name extends string = string> = NumberFacts<Name, number>;

/** A number without one, because any default would be taken for advice: no entry, no answer. */
export type OpenSetting<Name extends string = string> = NumberFacts<Name, null>;

/** A text, a list, or one of a few words. */
export interface TextSetting<Name extends string = string> extends Facts<Name> {
  readonly kind: "text";
  readonly default: string | null;
  readonly unit: string;
  /** The only words that may be chosen. */
  readonly words?: readonly string[];
}

export interface DateSetting<Name extends string = string> extends Facts<Name> {
  readonly kind: "date";
  readonly default: null;
  readonly unit: "date";
  /** Worked out until somebody types a date: a formula, without "=". */
  readonly formula?: string;
}

export type ClinicSetting<Name extends string = string> =
  Setting<Name> | OpenSetting<Name> | TextSetting<Name> | DateSetting<Name>;

/** Said on screen for every number that nobody has published, and for those known from memory only. */
export const NO_SOURCE = "clinic setting, no published source";

export const setting = <const Name extends string>(facts: Omit<Setting<Name>, "kind">): Setting<Name> => ({
  kind: "number",
  ...facts,
});

export const openSetting = <const Name extends string>(
  facts: Omit<OpenSetting<Name>, "kind" | "default">,
): OpenSetting<Name> => ({ kind: "number", default: null, ...facts });

/** Text and date that only the clinic can give. */
const THE_CLINIC = { range: null, source: `${NO_SOURCE}: the clinic's own`, evidence: "clinic setting" } as const;

export const textSetting = <const Name extends string>(
  facts: Pick<TextSetting<Name>, "name" | "label"> & Partial<TextSetting<Name>>,
): TextSetting<Name> => ({ ...THE_CLINIC, kind: "text", default: null, unit: "text", ...facts });

export const dateSetting = <const Name extends string>(
  facts: Pick<DateSetting<Name>, "name" | "label"> & Partial<DateSetting<Name>>,
): DateSetting<Name> => ({ ...THE_CLINIC, kind: "date", default: null, unit: "date", ...facts });

const WHOLE: readonly Unit[] = ["months", "weeks", "days", "years"];

/** Counted in whole ones only. */
const isWhole = ({ unit }: { readonly unit: Unit }): boolean => WHOLE.includes(unit);

/** Null when the number may be used; otherwise a sentence. */
export function refuseNumber(of: Setting | OpenSetting, value: number): string | null {
  const [least, most] = of.allowed;
  if (isWhole(of) && !Number.isInteger(value)) return `${of.label}: give a whole number of ${of.unit}.`;
  if (value >= least && value <= most) return null;
  return `${of.label}: from ${least} to ${most} ${of.unit}.`;
}
