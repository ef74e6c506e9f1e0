/**
 * Roots of functions that rise or fall throughout, so that there is one root only. Places are logarithms here, so steps
 * below the last digits of 1 change nothing any more.
 */
const LAST_DIGITS = 1e-15;

/** Newton's next place is wrong by about the square of its step, Halley's by its cube: below these nothing would change. */
const SURE_STEP = 1e-10;
const SURE_STEP_BENT = 1e-7;

const isNear = (step: number, x: number): boolean => Math.abs(step) <= LAST_DIGITS * Math.max(1, Math.abs(x));

/**
 * Newton's method, or Halley's where the bend is known, that cannot run away: every step stays inside a bracket that
 * holds the root, and where a step would leave it the bracket is halved instead.
 *
 * @param f value, slope and, where known, bend (second derivative) at x; the values at `low` and `high` differ in sign
 * @param rising whether f rises, where that is known
 */
export function findRoot(
  f: (x: number) => readonly [value: number, slope: number, bend?: number],
  low: number,
  high: number,
  start: number,
  rising = f(low)[0] <= 0,
): number {
  let [below, above] = [low, high];
  let x = start > low && start < high ? start : (low + high) / 2;
  for (let turn = 0; turn < 200; turn++) {
    const [value, slope, bend] = f(x);
    if (value === 0) return x;
    if (value < 0 === rising) below = x;
    else above = x;
    const step = bend === undefined ? value / slope : (2 * value * slope) / (2 * slope * slope - value * bend);
    const newton = x - step;
    // Asked before the bracket, whose end x is: a last step may come to nothing.
    if (isNear(step, x)) return newton;
    const isNewton = newton > below && newton < above;
    const next = isNewton ? newton : (below + above) / 2;
    if (isNear(next - x, x)) return next;
    if (isNewton && Math.abs(step) <= (bend === undefined ? SURE_STEP : SURE_STEP_BENT)) return next;
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
