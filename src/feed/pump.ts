/** Rates that a pump can be set to. */
import { argument, fault, SheetError } from "../worksheet/error";
import { rounded } from "../worksheet/numbers";

/** mL an hour. From memory: no feeding pump comes near it, so a larger rate is a slip in volume, energy or hours. */
export const FASTEST = 2000;

/**
 * mL an hour, and mL an hour for each kg, above which a plan is rather a slip in hours or density. Published goals by
 * pump end at 125 mL an hour, and at 6 mL an hour for each kg in infants (KDOQI 2008); these limits are clinic settings,
 * no published source.
 */
export const FASTEST_FEED = 400;
export const FASTEST_FEED_PER_KG = 25;

const tooFast = new SheetError(`the rate would be above ${FASTEST} mL an hour: check the amounts and the hours`);
const tooSmall = fault`the rate is below half a step of the pump: check ${argument("step")}`;
const capTooSmall = fault`${argument("cap")} is below one step of the pump`;

/** The nearest step, halves up; above the cap the largest step not above it. */
export function pumpRate(exact: number, step: number, cap = Infinity): number | SheetError {
  const nearest = rounded(Math.floor(rounded(exact / step) + 0.5) * step);
  if (nearest === 0) return tooSmall;
  if (Math.min(nearest, cap) > FASTEST) return tooFast;
  if (nearest <= cap) return nearest;
  const steps = Math.floor(rounded(cap / step));
  return steps === 0 ? capTooSmall : rounded(steps * step);
}

/**
 * A sentence where a rate is faster than feed is given.
 * @param fastest what this person's plan allows; given, it stands in place of the usual limits
 */
export function tooFastFor(
  rate: number,
  weight: number | undefined,
  fastest: number | undefined,
): SheetError | undefined {
  const given = argument("fastest");
  if (fastest !== undefined)
    return rate > fastest
      ? fault`the rate would be ${rate} mL an hour, above ${given}: more hours, or another feed?`
      : undefined;
  if (rate > FASTEST_FEED)
    return fault`the rate would be ${rate} mL an hour, above ${FASTEST_FEED}: check hours and density, or give ${given}`;
  if (weight !== undefined && rounded(rate / weight) > FASTEST_FEED_PER_KG) {
    return fault`the rate would be ${rate} mL an hour, above ${FASTEST_FEED_PER_KG} for each kg: check hours and weight, or give ${given}`;
  }
  return undefined;
}
