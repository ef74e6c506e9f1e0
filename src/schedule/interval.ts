/** How long a tube may be planned to stay: a longer interval is a slip in number or unit. */
import type { SheetError } from "../worksheet/error";
import { argument, fault } from "../worksheet/error";
import { choice, number } from "../worksheet/parameters";

export type IntervalUnit = "months" | "weeks" | "days";

/**
 * Five years. The longest interval found is 2 years (bumper in children, Starship); the limit is a clinic setting, no
 * published source.
 */
const LONGEST: Readonly<Record<IntervalUnit, number>> = { months: 60, weeks: 260, days: 1830 };
const SLIP: Readonly<Record<IntervalUnit, string>> = { months: "weeks or days?", weeks: "days?", days: "a date?" };
const above = (unit: IntervalUnit) => fault`${argument("interval")} is above ${LONGEST[unit]} ${unit}: ${SLIP[unit]}`;
const tooLong = { months: above("months"), weeks: above("weeks"), days: above("days") };

/** The sentence for an interval that is too long in its unit. */
export const longInterval = (interval: number, unit: IntervalUnit): SheetError | undefined =>
  // The months are the smallest of the three: most rows need no look into the table.
  interval > LONGEST.months && interval > LONGEST[unit] ? tooLong[unit] : undefined;

/** One interval, in the unit of `intervalUnit`. */
export const changeInterval = (help: string) => ({
  ...number(help, { above: 0, whole: true, zeroIsBlank: true }),
  limits: "whole number, above 0, at most 60 months, 260 weeks or 1,830 days",
});

export const intervalUnit = () =>
  choice<IntervalUnit>("What the interval counts", ["months", "weeks", "days"], { fallback: "months" });

/** Months from one change to the next, for columns that know no other unit. */
export const monthsRule = {
  above: 0,
  max: LONGEST.months,
  whole: true,
  zeroIsBlank: true,
  slipAbove: SLIP.months,
} as const;
