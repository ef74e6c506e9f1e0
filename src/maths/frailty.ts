/**
 * Lives of devices of people who wear them through at unlike speeds: a Weibull hazard that everybody shares, times a
 * factor of each person's own that is drawn from a gamma distribution with mean 1 (parametric gamma frailty: Duchateau L,
 * Janssen P, The Frailty Model, Springer 2008).
 *
 * How far people differ (the factor's variance) is not known from a small clinic, and one best value gives a false
 * certainty. So the curve is fitted for each of a row of spreads, and everything that is said is an average over them,
 * weighted by how well each explains what was seen and by a half-normal prior on the factor's standard deviation.
 */
import { gammaTails, gammaTerm } from "./gamma";
import { gammaQuantile } from "./gamma-quantile";
import { findRoot } from "./root";
import { countByDay, placesIn } from "./survival";
import { fitWeibull } from "./weibull";

/** Devices, one place each. */
export interface OwnedLives {
  readonly days: Float64Array;
  readonly failed: Uint8Array;
  /** Whose it was: 0 to people - 1. */
  readonly person: Uint32Array;
  readonly people: number;
}

/** The fit at one spread. */
interface Point {
  /** Variance of the factor. */
  readonly variance: number;
  readonly shape: number;
  readonly logScale: number;
  /** Share of the average; all sum to 1. */
  readonly weight: number;
  /** Each person's cumulative hazard over all own devices, at factor 1. */
  readonly hazard: Float64Array;
}

export interface Frailty {
  readonly points: readonly Point[];
  /** Each person's failures. */
  readonly failures: Uint32Array;
  readonly devices: Uint32Array;
}

/** Standard deviations of the factor at which the curve is fitted, and their prior's scale. Clinic setting, no published source. */
const DEVIATIONS = Array.from({ length: 20 }, (_, i) => 0.02 + (1.58 * i) / 19);
const PRIOR_SCALE = 0.75;

/** A point whose weight is a smaller share of the largest than this adds nothing to twelve digits. */
const NEGLIGIBLE = 1e-13;

const MOST_STEPS = 200;
/** A step in ln shape and ln scale below which nothing changes any more. */
const LAST_STEP = 1e-10;

/** What the likelihood and its slopes are at one place; theta is the factor's variance. */
interface Height {
  readonly height: number;
  readonly slope: readonly [logShape: number, level: number];
  readonly bend: readonly [shapes: number, mixed: number, levels: number];
  readonly hazard: Float64Array;
}

/** ln of the likelihood as a function of ln shape and of "level", the ln hazard of a life as long as the typical one. */
function likelihoodOf({ days, failed, person, people }: OwnedLives, typical: number) {
  const counts = countByDay({ days, failed });
  const distinct = counts.days;
  const at = placesIn(counts, days);
  const logs = distinct.map((day) => Math.log(day) - typical);
  const failures = new Uint32Array(people);
  const devices = new Uint32Array(people);
  let [allFailures, logsOfFailures] = [0, 0];
  for (let i = 0; i < days.length; i++) {
    devices[person[i]!]!++;
    if (failed[i] === 0) continue;
    failures[person[i]!]!++;
    allFailures++;
    logsOfFailures += logs[at[i]!]!;
  }
  const own = new Float64Array(distinct.length);
  const [first, second] = [new Float64Array(people), new Float64Array(people)];

  const heightAt = (logShape: number, level: number, theta: number): Height => {
    const shape = Math.exp(logShape);
    for (let i = 0; i < own.length; i++) own[i] = Math.exp(shape * logs[i]! + level);
    const hazard = new Float64Array(people);
    first.fill(0);
    second.fill(0);
    for (let i = 0; i < at.length; i++) {
      const [day, whose] = [at[i]!, person[i]!];
      const h = own[day]!;
      const log = logs[day]!;
      hazard[whose]! += h;
      first[whose]! += h * log;
      second[whose]! += h * log * log;
    }
    let height = allFailures * (logShape + level) + shape * logsOfFailures;
    let [byLevel, byShape] = [allFailures, allFailures / shape + logsOfFailures];
    let [levels, mixed, shapes] = [0, 0, -allFailures / (shape * shape)];
    for (let i = 0; i < people; i++) {
      const n = failures[i]!;
      const [s, s1, s2] = [hazard[i]!, first[i]!, second[i]!];
      const near = 1 + theta * s;
      const pull = (1 + theta * n) / near;
      // ln of gamma(1/theta + n) / gamma(1/theta), as the product that it is
      for (let j = 1; j < n; j++) height += Math.log1p(j * theta);
      height -= (1 / theta + n) * Math.log1p(theta * s);
      byLevel -= pull * s;
      byShape -= pull * s1;
      levels -= (pull * s) / near;
      mixed -= (pull * s1) / near;
      shapes -= pull * (s2 - (theta * s1 * s1) / near);
    }
    return {
      height,
      slope: [shape * byShape, byLevel],
      bend: [shape * shape * shapes + shape * byShape, shape * mixed, levels],
      hazard,
    };
  };
  return { heightAt, failures, devices };
}

/** Newton's steps uphill, each held back (Levenberg and Marquardt) until it leads up. */
function climb(at: (logShape: number, level: number) => Height, start: readonly [number, number]) {
  let [logShape, level] = start;
  let here = at(logShape, level);
  let holdBack = 0;
  for (let turn = 0; turn < MOST_STEPS; turn++) {
    const [up, across] = here.slope;
    const [shapes, mixed, levels] = [here.bend[0] - holdBack, here.bend[1], here.bend[2] - holdBack];
    const determinant = shapes * levels - mixed * mixed;
    const isHill = shapes < 0 && determinant > 0;
    const [stepShape, stepLevel] = isHill
      ? [(mixed * across - levels * up) / determinant, (mixed * up - shapes * across) / determinant]
      : [NaN, NaN];
    const isLast = Math.abs(stepShape) + Math.abs(stepLevel) < LAST_STEP * (1 + Math.abs(level));
    const next = isHill && Math.abs(stepShape) < 3 ? at(logShape + stepShape, level + stepLevel) : undefined;
    // At the top the height's last digits are noise.
    if (next && (isLast || next.height >= here.height - 1e-12 * Math.abs(here.height))) {
      [logShape, level, here] = [logShape + stepShape, level + stepLevel, next];
      if (isLast && holdBack < 1e-6) return { logShape, level, here };
      holdBack = holdBack < 1e-6 ? 0 : holdBack / 10;
    } else holdBack = Math.max(1e-3, holdBack * 10);
  }
  return undefined;
}

/** @returns undefined where no curve fits best: fewer than 2 failures, or all on one day */
export function fitFrailty(lives: OwnedLives): Frailty | undefined {
  const alone = fitWeibull(countByDay(lives));
  if (!alone) return undefined;
  const { heightAt, failures, devices } = likelihoodOf(lives, alone.logScale);
  const found: { point: Omit<Point, "weight">; height: number }[] = [];
  let start: readonly [number, number] = [Math.log(alone.shape), 0];
  for (const deviation of DEVIATIONS) {
    const variance = deviation * deviation;
    const top = climb((logShape, level) => heightAt(logShape, level, variance), start);
    if (!top) return undefined;
    start = [top.logShape, top.level];
    const shape = Math.exp(top.logShape);
    found.push({
      point: { variance, shape, logScale: alone.logScale - top.level / shape, hazard: top.here.hazard },
      height: top.here.height - (deviation / PRIOR_SCALE) ** 2 / 2,
    });
  }
  const highest = Math.max(...found.map(({ height }) => height));
  const likely = found.map(({ point, height }) => ({ ...point, weight: Math.exp(height - highest) }));
  const all = likely.reduce((sum, { weight }) => sum + weight, 0);
  const points = likely
    .filter(({ weight }) => weight > NEGLIGIBLE)
    .map((one) => ({ ...one, weight: one.weight / all }));
  return { points, failures, devices };
}

/** What is known of one person's factor at each point: gamma with this shape and rate. */
interface Factor {
  readonly weight: number;
  readonly shape: number;
  readonly rate: number;
  readonly curve: Point;
}

/** @param person undefined: somebody of whom nothing is known yet */
const factorsOf = ({ points, failures }: Frailty, person: number | undefined): readonly Factor[] =>
  points.map((curve) => ({
    weight: curve.weight,
    shape: 1 / curve.variance + (person === undefined ? 0 : failures[person]!),
    rate: 1 / curve.variance + (person === undefined ? 0 : curve.hazard[person]!),
    curve,
  }));

/** ln of factors that nobody has: smaller ones are no numbers any more, larger ones would fail all devices at once. */
const [LOWEST_LOG, HIGHEST_LOG] = [-744, 50];

/** The factor below or above which the average distribution leaves `tail`. */
function factorLimit(factors: readonly Factor[], tail: number, side: "lower" | "upper"): number {
  const off = (log: number): readonly [number, number] => {
    const x = Math.exp(log);
    let [chance, density] = [0, 0];
    for (const { weight, shape, rate } of factors) {
      chance += weight * gammaTails(shape, rate * x)[side];
      density += weight * shape * gammaTerm(shape, rate * x);
    }
    const slope = density / chance;
    return [Math.log(chance) - Math.log(tail), side === "lower" ? slope : -slope];
  };
  const first = factors.reduce((most, one) => (one.weight > most.weight ? one : most));
  const start = Math.log(gammaQuantile(tail, first.shape, side) / first.rate);
  return Math.exp(findRoot(off, LOWEST_LOG, HIGHEST_LOG, start, side === "lower"));
}

/** The chance that a person's factor is below one: whoever has it below `tail` wears devices through faster than that. */
export function chanceBelow(fit: Frailty, person: number, factor: number): number {
  return factorsOf(fit, person).reduce(
    (sum, { weight, shape, rate }) => sum + weight * gammaTails(shape, rate * factor).lower,
    0,
  );
}

/** The mean of a person's factor alone, without its limits: for putting many people in order. */
export const meanWear = (fit: Frailty, person: number): number =>
  factorsOf(fit, person).reduce((sum, { weight, shape, rate }) => sum + (weight * shape) / rate, 0);

/** A value with its limits. */
export interface Bounded {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/** How many times as fast as the mean person this one wears devices through. */
export function relativeWear(fit: Frailty, person: number | undefined, level: number): Bounded {
  const factors = factorsOf(fit, person);
  const tail = (1 - level) / 2;
  const value = factors.reduce((sum, { weight, shape, rate }) => sum + (weight * shape) / rate, 0);
  // At a low level a skewed distribution's mean can lie beyond a limit; the interval is then widened to hold it.
  return {
    value,
    low: Math.min(value, factorLimit(factors, tail, "lower")),
    high: Math.max(value, factorLimit(factors, tail, "upper")),
  };
}

/** Far enough from any scale, in ln days, for a survival to be 1 or 0. */
const FAR = 700;

/** The day at which a survival, averaged over the points, falls to 1 - risk. */
function dayAt(
  factors: readonly Factor[],
  risk: number,
  part: (factor: Factor, hazard: number) => readonly [survival: number, fall: number],
): number {
  const off = (log: number): readonly [number, number] => {
    let [survival, fall] = [0, 0];
    for (const factor of factors) {
      const { shape, logScale } = factor.curve;
      const hazard = Math.exp(shape * (log - logScale));
      const [own, falls] = part(factor, hazard);
      survival += factor.weight * own;
      // hazard's own slope in ln days; far out both are 0
      if (own > 0) fall += factor.weight * falls * shape * hazard;
    }
    return [survival - (1 - risk), -fall];
  };
  const start = Math.max(...factors.map(({ weight }) => weight));
  const { shape, logScale } = factors.find(({ weight }) => weight === start)!.curve;
  const guess = logScale + Math.log(-Math.log1p(-risk)) / shape;
  return Math.exp(findRoot(off, guess - FAR, guess + FAR, guess, false));
}

/**
 * The day by which `risk` of a person's devices will have failed; its limits are the same day at the limits of the
 * person's factor.
 */
export function dayByWhich(fit: Frailty, person: number | undefined, risk: number, level: number): Bounded {
  const factors = factorsOf(fit, person);
  const { low, high } = relativeWear(fit, person, level);
  const value = dayAt(factors, risk, ({ shape, rate }, hazard) => {
    const survival = Math.exp(-shape * Math.log1p(hazard / rate));
    return [survival, (survival * shape) / (rate + hazard)];
  });
  const at = (factor: number): number =>
    dayAt(factors, risk, (_, hazard) => {
      const survival = Math.exp(-factor * hazard);
      return [survival, survival * factor];
    });
  return { value, low: Math.min(value, at(high)), high: Math.max(value, at(low)) };
}
