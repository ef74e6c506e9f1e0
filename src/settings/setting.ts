/** Clinic settings: numbers that a service agrees for itself, each with its default and where that comes from. */
import type { Evidence } from "../worksheet/define";

/** What services and papers say, in words and as the outermost numbers; null for an end that no number names. */
export interface SourceRange {
  readonly words: string;
  readonly least: number | null;
  readonly most: number | null;
}

export interface Setting<Name extends string = string> {
  /** A name as workbooks define it: the same in every formula and on the settings sheet. */
  readonly name: Name;
  readonly label: string;
  readonly default: number;
  readonly unit: "months" | "days" | "mL" | "share of fill";
  /** Null where nobody was found to say anything. */
  readonly range: SourceRange | null;
  /** An entry outside is refused. */
  readonly allowed: readonly [least: number, most: number];
  /** Who says so, or NO_SOURCE. */
  readonly source: string;
  readonly evidence: Evidence;
}

/** Said on screen for every number that nobody has published, and for those known from memory only. */
export const NO_SOURCE = "clinic setting, no published source";

export const setting = <const Name extends string>(facts: Setting<Name>): Setting<Name> => facts;

/** Null when the number may be used; otherwise a sentence. */
export function refuseNumber(of: Setting, value: number): string | null {
  const [least, most] = of.allowed;
  if (of.unit === "months" || of.unit === "days") {
    if (!Number.isInteger(value)) return `${of.label}: give a whole number of ${of.unit}.`;
  }
  if (value >= least && value <= most) return null;
  return `${of.label}: from ${least} to ${most} ${of.unit}.`;
}
