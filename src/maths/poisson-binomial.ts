/**
 * How many of a number of things happen, each with a chance of its own (Hong Y, Comput Stat Data Anal 2013;59:41-51):
 * exact, one thing after the other.
 */

/** Chances so small that all left out together change nothing. */
const NOTHING = 1e-20;

/** The smallest count that is not exceeded with at least the chance `share`. */
export function notExceeded(chances: ArrayLike<number>, share: number): number {
  // Only the counts from `from` to below `to` can still be meant: their number grows with the root of the things'.
  const at = new Float64Array(chances.length + 2);
  at[0] = 1;
  let [from, to] = [0, 1];
  for (let i = 0; i < chances.length; i++) {
    const happens = chances[i]!;
    const not = 1 - happens;
    for (let k = to; k > from; k--) at[k] = at[k]! * not + at[k - 1]! * happens;
    at[from]! *= not;
    to++;
    while (to - from > 1 && at[from]! < NOTHING) at[from++] = 0;
    while (to - from > 1 && at[to - 1]! < NOTHING) at[--to] = 0;
  }
  let sum = 0;
  for (let k = from; k < to; k++) {
    sum += at[k]!;
    // A share typed with a table's own digits counts as reached.
    if (sum >= share * (1 - 1e-12)) return k;
  }
  return to - 1;
}
