/**
 * Counts of few people are not handed round, and neither is what gives them away: a total less the figures beside it, or
 * one page less another (secondary suppression, as statistical offices do it: Hundepool and others, Statistical
 * Disclosure Control, 2012).
 *
 * Somebody who reads every page knows the shown figures, that "under 5" lies between 0 and 4, and that a figure held back
 * is at least 5. From that, no count that is under may follow, neither of one cell nor of all that one sum holds back.
 */

export type Shown = "shown" | "under" | "held back";

/** A figure that is the sum of others. */
export interface Sum {
  readonly total: string;
  readonly parts: readonly string[];
}

interface Bounds {
  low: number;
  high: number;
}

const boundsOf = (what: Shown, value: number, least: number): Bounds =>
  what === "shown"
    ? { low: value, high: value }
    : what === "under"
      ? { low: 0, high: least - 1 }
      : { low: least, high: Infinity };

/** What a reader can work out of every cell: narrowed by each sum until nothing changes. */
function knownBounds(
  cells: ReadonlyMap<string, number>,
  sums: readonly Sum[],
  shown: ReadonlyMap<string, Shown>,
  least: number,
): ReadonlyMap<string, Bounds> {
  const bounds = new Map([...cells].map(([key, value]) => [key, boundsOf(shown.get(key)!, value, least)]));
  for (let isNarrower = true; isNarrower;) {
    isNarrower = false;
    const narrow = (key: string, low: number, high: number): void => {
      const one = bounds.get(key)!;
      if (low > one.low) [one.low, isNarrower] = [low, true];
      if (high < one.high) [one.high, isNarrower] = [high, true];
    };
    for (const { total, parts } of sums) {
      const low = parts.reduce((sum, part) => sum + bounds.get(part)!.low, 0);
      const high = parts.reduce((sum, part) => sum + bounds.get(part)!.high, 0);
      narrow(total, low, high);
      const whole = bounds.get(total)!;
      for (const part of parts) {
        const own = bounds.get(part)!;
        const othersHigh = parts.reduce((sum, other) => (other === part ? sum : sum + bounds.get(other)!.high), 0);
        narrow(part, whole.low - othersHigh, whole.high - (low - own.low));
      }
    }
  }
  return bounds;
}

/**
 * Which figures may be shown.
 *
 * @param cells every figure, those that were handed out before too
 * @param sums which of them add up to which
 * @param least counts below it are not shown; 1 or less: everything is
 * @param before what was decided earlier: it is out, and cannot be taken back
 */
export function protect(
  cells: ReadonlyMap<string, number>,
  sums: readonly Sum[],
  least: number,
  before: ReadonlyMap<string, Shown> = new Map(),
): ReadonlyMap<string, Shown> {
  const shown = new Map<string, Shown>();
  for (const [key, value] of cells) shown.set(key, before.get(key) ?? (least > 1 && value < least ? "under" : "shown"));
  if (least <= 1) return shown;
  const smallest = (keys: readonly string[]): string | undefined =>
    keys
      .filter((key) => shown.get(key) === "shown" && !before.has(key))
      .sort((a, b) => cells.get(a)! - cells.get(b)! || (a < b ? -1 : 1))[0];
  const holdBack = (sum: Sum): boolean => {
    const key = smallest(sum.parts) ?? smallest([sum.total]);
    if (key !== undefined) shown.set(key, "held back");
    return key !== undefined;
  };

  for (let isLeaking = true; isLeaking;) {
    isLeaking = false;
    for (const sum of sums) {
      const hidden = sum.parts.filter((part) => shown.get(part) !== "shown");
      if (hidden.length === 0 || shown.get(sum.total) !== "shown") continue;
      const together = hidden.reduce((all, part) => all + cells.get(part)!, 0);
      if (together < least && holdBack(sum)) isLeaking = true;
    }
    if (isLeaking) continue;
    const bounds = knownBounds(cells, sums, shown, least);
    for (const [key, what] of shown) {
      if (what !== "under" || bounds.get(key)!.low < bounds.get(key)!.high) continue;
      const around = sums.filter(({ total, parts }) => total === key || parts.includes(key));
      if (around.some(holdBack) || sums.some(holdBack)) {
        isLeaking = true;
        break;
      }
    }
  }
  return shown;
}
