/** Rates that a pump can be set to. */
import { SheetError } from "../worksheet/error";
import { rounded } from "../worksheet/numbers";

/** mL an hour. From memory: no feeding pump comes near it, so a larger rate is a slip in volume, energy or hours. */
export const FASTEST = 2000;

const tooFast = new SheetError(`the rate would be above ${FASTEST} mL an hour: check the amounts and the hours`);
const tooSmall = new SheetError("the rate is below half a step of the pump: check step");
const capTooSmall = new SheetError("cap is below one step of the pump");

/** The nearest step, halves up; above the cap the largest step not above it. */
export function pumpRate(exact: number, step: number, cap = Infinity): number | SheetError {
  const nearest = rounded(Math.floor(rounded(exact / step) + 0.5) * step);
  if (nearest === 0) return tooSmall;
  if (Math.min(nearest, cap) > FASTEST) return tooFast;
  if (nearest <= cap) return nearest;
  const steps = Math.floor(rounded(cap / step));
  return steps === 0 ? capTooSmall : rounded(steps * step);
}
