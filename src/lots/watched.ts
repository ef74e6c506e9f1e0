/**
 * Which lots fail more often than the age of their devices explains, each held against all other devices of its kind:
 * LOTSIGNAL's test (Kulldorff and others 2011, with a least number of events: Kulldorff and Silva 2015), for a caseload.
 *
 * Many lots are looked at together, so the level is divided by their number. A lot with fewer devices than the least
 * number of failures cannot signal, whatever happens to it: it is no look, and is only counted.
 */
import { criticalValue, logRatio } from "../maths/max-sprt";
import { poissonLimits } from "../maths/poisson";
import { hazardAt } from "../wear/devices";
import { lotCounts, type LotCounts } from "../wear/lot-counts";
import { SheetError } from "../worksheet/error";

/** Chance of a false signal among all lots together (convention), and the fewest failures that can signal. */
export const [LEVEL, LEAST] = [0.05, 4];
/** Level of the limits that stand beside each ratio (convention). */
const LIMITS = 0.95;

export interface WatchedDevice {
  /** Lots are told apart by this; "" where it is not known. */
  readonly lot: string;
  readonly kind: string;
  readonly days: number;
  readonly failed: boolean;
  /** Days after which a change of such a device is agreed; null where none is. */
  readonly agreed: number | null;
}

export interface WatchedLot {
  readonly lot: string;
  readonly kind: string;
  readonly devices: number;
  readonly seen: number;
  readonly expected: number;
  readonly ratio: number;
  readonly low: number;
  readonly high: number;
  readonly signals: boolean;
}

export interface Watch {
  /** Those that could signal, signals first, then the most failures beyond what is expected. */
  readonly lots: readonly WatchedLot[];
  /** Lots with too few devices to signal. */
  readonly small: number;
  /** Lots of a kind of which too few others are known to say what is expected. */
  readonly notToTell: number;
  /** Devices without a lot: counted among the others. */
  readonly withoutLot: number;
  /** The level of each single look. */
  readonly levelEach: number;
}

interface Look {
  readonly kind: string;
  readonly lot: string;
  readonly own: readonly WatchedDevice[];
  readonly counts: LotCounts;
}

export function watchLots(devices: readonly WatchedDevice[]): Watch {
  const kinds = [...new Set(devices.map(({ kind }) => kind))];
  const all = kinds.flatMap((kind): Look[] => {
    const own = devices.filter((device) => device.kind === kind);
    const counts = lotCounts(
      {
        days: Float64Array.from(own, ({ days }) => days),
        failed: Uint8Array.from(own, ({ failed }) => (failed ? 1 : 0)),
      },
      (place) => own[place]!.lot,
    );
    return [...counts.known].map(([lot, places]) => ({ kind, lot, counts, own: places.map((i) => own[i]!) }));
  });
  const large = all.filter(({ own }) => own.length >= LEAST);
  const told = large.flatMap((look) => {
    const count = look.counts.count(look.lot);
    return count instanceof SheetError ? [] : [{ ...look, ...count }];
  });
  const levelEach = LEVEL / Math.max(1, told.length);
  const lots = told.map(({ kind, lot, own, seen, expected, curve }): WatchedLot => {
    /* What would be expected by their agreed days; one that has stayed longer counts for as long as it has stayed. */
    const total = own.reduce((sum, { days, agreed }) => sum + hazardAt(curve, Math.max(days, agreed ?? 0)), 0);
    const { low, high } = poissonLimits(seen, LIMITS);
    const signals =
      seen >= LEAST && seen > expected && logRatio(seen, expected) >= criticalValue(total, levelEach, LEAST);
    return {
      ...{ lot, kind, devices: own.length, seen, expected, signals },
      ...{ ratio: seen / expected, low: low / expected, high: high / expected },
    };
  });
  return {
    lots: lots.sort(
      (a, b) =>
        Number(b.signals) - Number(a.signals) ||
        b.seen - b.expected - (a.seen - a.expected) ||
        (a.lot < b.lot ? -1 : 1),
    ),
    small: all.length - large.length,
    notToTell: large.length - told.length,
    withoutLot: devices.filter(({ lot }) => lot === "").length,
    levelEach,
  };
}
