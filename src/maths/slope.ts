/**
 * Theil-Sen slope: the median of the slopes of all pairs, with Sen's interval from Kendall's statistic (Sen PK, J Am
 * Stat Assoc 1968;63:1379-1389). A few odd readings hardly move it.
 */

export interface Slope {
  readonly slope: number;
  readonly low: number;
  readonly high: number;
}

const pairsTerm = (n: number): number => n * (n - 1) * (2 * n + 5);

/** Sum of the terms of values that occur more than once. */
function tiedTerm(values: ArrayLike<number>): number {
  const sizes = new Map<number, number>();
  for (let i = 0; i < values.length; i++) sizes.set(values[i]!, (sizes.get(values[i]!) ?? 0) + 1);
  return [...sizes.values()].reduce((sum, size) => sum + pairsTerm(size), 0);
}

/**
 * Pairs with the same x are left out, and only ties in x narrow the interval, as in Sen's paper; programs that also
 * correct for ties in y give narrower limits. The work grows with the square of the number of points.
 *
 * @param z standard errors to either side: 1.96 for 95%
 * @returns undefined when no two points differ in x; limits never beyond the smallest and largest slope
 */
export function theilSen(x: ArrayLike<number>, y: ArrayLike<number>, z: number): Slope | undefined {
  const all = new Float64Array((x.length * (x.length - 1)) / 2);
  let pairs = 0;
  for (let i = 0; i < x.length; i++) {
    for (let j = i + 1; j < x.length; j++) {
      // Adding 0 makes a 0 of a -0, which the sort would tell apart.
      if (x[i] !== x[j]) all[pairs++] = (y[j]! - y[i]!) / (x[j]! - x[i]!) + 0;
    }
  }
  if (pairs === 0) return undefined;
  const slopes = all.subarray(0, pairs).sort();
  const middle = Math.floor(pairs / 2);
  const slope = pairs % 2 === 1 ? slopes[middle]! : (slopes[middle - 1]! + slopes[middle]!) / 2;

  const spread = z * Math.sqrt((pairsTerm(x.length) - tiedTerm(x)) / 18);
  // Ranks count from 1 and are rounded outwards.
  const low = Math.max(1, Math.floor((pairs - spread) / 2));
  const high = Math.min(pairs, Math.ceil((pairs + spread) / 2 + 1));
  return { slope, low: slopes[low - 1]!, high: slopes[high - 1]! };
}
