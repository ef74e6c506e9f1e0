/** What comes due, month by month, those without a date beside it, and how many unplanned changes a month may bring. */
import { addMonths } from "../maths/calendar";
import { notExceeded } from "../maths/poisson-binomial";
import { countByDay } from "../maths/survival";
import { SheetError } from "../worksheet/error";
import { curveOfCounts, hazardAt } from "../wear/devices";
import type { Device } from "./devices";
import { periodsBetween, type Period } from "./months";

/** Months that are looked ahead, and the share of cases in which the places are enough (nine months of ten). Clinic setting, no published source. */
export const [MONTHS_AHEAD, ENOUGH] = [6, 0.9];

export interface Due {
  /** The day on which the change is due, or booked for; null where there is none. */
  readonly day: number | null;
}

export interface DueMonth extends Period {
  readonly due: number;
  /** Unplanned changes that are not exceeded in nine months of ten; undefined where there are too few failures to say. */
  readonly unplanned: number | undefined;
}

export interface DuePicture {
  /** Day lies before today. */
  readonly past: number;
  readonly months: readonly DueMonth[];
  readonly later: number;
  readonly without: number;
}

/**
 * @param tubes every row in use
 * @param devices all devices with their lives, for the forecast
 */
export function duePicture(tubes: readonly Due[], devices: readonly Device[], asOf: number): DuePicture {
  const periods = periodsBetween(asOf, addMonths(asOf, MONTHS_AHEAD - 1), "month");
  const curve = curveOfCounts(
    countByDay({
      days: Float64Array.from(devices, ({ days }) => days),
      failed: Uint8Array.from(devices, ({ failed }) => (failed ? 1 : 0)),
    }),
  );
  const ages = devices.filter(({ isInUse }) => isInUse).map(({ days }) => days);
  const days = tubes.flatMap(({ day }) => (day === null ? [] : [day]));
  const months = periods.map((period): DueMonth => {
    const from = Math.max(period.from, asOf);
    const unplanned =
      curve instanceof SheetError
        ? undefined
        : notExceeded(
            ages.map((age) => {
              const start = hazardAt(curve, age + from - asOf);
              return (
                Math.exp(hazardAt(curve, age) - start) * -Math.expm1(start - hazardAt(curve, age + period.end - asOf))
              );
            }),
            ENOUGH,
          );
    return { ...period, due: days.filter((day) => day >= from && day < period.end).length, unplanned };
  });
  return {
    past: days.filter((day) => day < asOf).length,
    months,
    later: days.filter((day) => day >= months.at(-1)!.end).length,
    without: tubes.length - days.length,
  };
}
