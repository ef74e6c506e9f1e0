/**
 * Roots of functions that rise or fall throughout, so that there is one root only. Places are logarithms here, so steps
 * below the last digits of 1 change nothing any more.
 */
const LAST_DIGITS = 1e-15;

/** Newton's next place is wrong by about the square of its step: below this one nothing would change any more. */
const SURE_STEP = 1e-10;

const isNear = (step: number, x: number): boolean => Math.abs(step) <= LAST_DIGITS * Math.max(1, Math.abs(x));

/**
 * Newton's method that cannot run away: every step stays inside a bracket that holds the root, and where a step would
 * leave it the bracket is halved instead.
 *
 * @param f value and slope at x; the values at `low` and `high` differ in sign
 * @param rising whether f rises, where that is known
 */
export function findRoot(
  f: (x: number) => readonly [value: number, slope: number],
  low: number,
  high: number,
  start: number,
  rising = f(low)[0] <= 0,
): number {
  let [below, above] = [low, high];
  let x = start > low && start < high ? start : (low + high) / 2;
  for (let step = 0; step < 200; step++) {
    const [value, slope] = f(x);
    if (value === 0) return x;
    if (value < 0 === rising) below = x;
    else above = x;
    const newton = x - value / slope;
    const isNewton = newton > below && newton < above;
    const next = isNewton ? newton : (below + above) / 2;
    if (isNear(next - x, x)) return next;
    if (isNewton && Math.abs(next - x) <= SURE_STEP) return next;
    x = next;
  }
  return x;
}

/** The same without a slope: false position after Illinois (Dowell and Jarratt, BIT 1971;11:168-174). */
export function findRootBetween(f: (x: number) => number, low: number, high: number): number {
  let [a, b] = [low, high];
  let [fa, fb] = [f(a), f(b)];
  for (let step = 0; step < 100 && !isNear(b - a, b); step++) {
    const guess = b - (fb * (b - a)) / (fb - fa);
    const x = guess > Math.min(a, b) && guess < Math.max(a, b) ? guess : (a + b) / 2;
    const fx = f(x);
    if (fx === 0) return x;
    if (fx < 0 === fb < 0) {
      fa /= 2;
    } else {
      a = b;
      fa = fb;
    }
    if (isNear(x - b, x)) return x;
    b = x;
    fb = fx;
  }
  return b;
}
