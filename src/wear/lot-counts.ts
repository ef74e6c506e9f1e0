/** How many devices of each lot have failed, and how many would be expected to, by the curve of all devices outside it. */
import { countByDay, placesIn, without, type Lifetimes } from "../maths/survival";
import { SheetError } from "../worksheet/error";
import { curveOfCounts, hazardAt } from "./devices";
import type { Weibull } from "../maths/weibull";

export interface LotCount {
  readonly seen: number;
  readonly expected: number;
  /** Of devices outside the lot. */
  readonly curve: Weibull;
}

export interface LotCounts {
  /** Devices of each lot, by their places. */
  readonly known: ReadonlyMap<string, readonly number[]>;
  /** A sentence where the devices outside the lot are too few to say what is expected. */
  readonly count: (lot: string) => LotCount | SheetError;
}

/** @param lotOf the lot of the device at a place; "" where it is not known */
export function lotCounts(lives: Lifetimes, lotOf: (place: number) => string): LotCounts {
  const known = new Map<string, number[]>();
  for (let i = 0; i < lives.days.length; i++) {
    const lot = lotOf(i);
    if (lot === "") continue;
    const own = known.get(lot);
    if (own) own.push(i);
    else known.set(lot, [i]);
  }
  const counts = countByDay(lives);
  const places = placesIn(counts, lives.days);
  return {
    known,
    count: (lot) => {
      const own = known.get(lot)!;
      const fails = own.map((i) => lives.failed[i]!);
      const curve = curveOfCounts(
        without(
          counts,
          own.map((i) => places[i]!),
          fails,
        ),
      );
      if (curve instanceof SheetError) return curve;
      return {
        seen: fails.reduce((sum, one) => sum + one, 0),
        expected: own.reduce((sum, i) => sum + hazardAt(curve, lives.days[i]!), 0),
        curve,
      };
    },
  };
}
