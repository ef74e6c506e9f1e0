/**
 * Rates of people who have been watched for unlike times: each person's rate is drawn from a gamma distribution that all
 * share, the events are Poisson, and the gamma's two numbers are those under which what was seen is most likely
 * (marginal maximum likelihood: Clayton D, Kaldor J, Biometrics 1987;43:671-681). Little data then moves a person's rate
 * little away from everybody's.
 */
import { logExcess } from "./gamma";
import { gammaQuantile } from "./gamma-quantile";
import { findRoot, findRootBetween } from "./root";

/** A person: how many events in how long a time. */
export interface Exposure {
  readonly events: Float64Array;
  readonly time: Float64Array;
}

export interface SharedRate {
  readonly mean: number;
  /** Variance of the people's rates over the mean's square: one over the gamma's shape. 0: no spread between them. */
  readonly spread: number;
}

/** ln of the mean rate that fits best with a given spread: root of a function that falls. */
function logMeanFor({ events, time }: Exposure, spread: number, start: number): number {
  const off = (logMean: number): readonly [number, number] => {
    const mean = Math.exp(logMean);
    let value = 0;
    let slope = 0;
    for (let i = 0; i < events.length; i++) {
      const expected = mean * time[i]!;
      const weight = 1 / (1 + spread * expected);
      value += (events[i]! - expected) * weight;
      slope -= expected * (1 + spread * events[i]!) * weight * weight;
    }
    return [value, slope];
  };
  return findRoot(off, start - 200, start + 200, start);
}

/** For j = 0, 1, ...: how many people had more than j events. */
function moreThan(events: Float64Array): Float64Array {
  const people = new Float64Array(events.reduce((most, x) => Math.max(most, x), 0) + 1);
  for (const x of events) people[x]!++;
  for (let j = people.length - 1; j > 0; j--) people[j - 1]! += people[j]!;
  return people.subarray(1);
}

/** Spreads at which the likelihood is looked at first: 1e-9 to 1e6, two to a power of ten. */
const SPREADS = Array.from({ length: 31 }, (_, i) => 10 ** (i / 2 - 9));

/**
 * @returns undefined without any event; spread 0 when the people differ no more than chance makes them differ
 */
export function fitSharedRate(people: Exposure): SharedRate | undefined {
  const { events, time } = people;
  const allEvents = events.reduce((sum, x) => sum + x, 0);
  const allTime = time.reduce((sum, t) => sum + t, 0);
  if (allEvents === 0 || !Number.isFinite(allTime)) return undefined;
  const more = moreThan(events);
  const without = Math.log(allEvents / allTime);
  let last = without;

  /** Slope of the log-likelihood along the spread, each with its best mean. */
  const slopeAt = (spread: number): number => {
    last = logMeanFor(people, spread, last);
    const mean = Math.exp(last);
    let sum = 0;
    for (let j = 1; j < more.length; j++) sum += (more[j]! * j) / (1 + j * spread);
    for (let i = 0; i < events.length; i++) {
      const expected = mean * time[i]!;
      const u = spread * expected;
      sum += logExcess(-u / (1 + u)) / (spread * spread) - (events[i]! * expected) / (1 + u);
    }
    return sum;
  };
  /** Log-likelihood less what does not depend on the fit. */
  const likelihood = (logMean: number, spread: number): number => {
    const mean = Math.exp(logMean);
    let sum = allEvents * logMean;
    for (let j = 1; j < more.length; j++) sum += more[j]! * Math.log1p(j * spread);
    for (let i = 0; i < events.length; i++) {
      const u = spread * mean * time[i]!;
      sum -= spread === 0 ? mean * time[i]! : (events[i]! + 1 / spread) * Math.log1p(u);
    }
    return sum;
  };

  // With unlike times there may be more than one maximum: all sign changes are followed up, the highest wins.
  let best: SharedRate = { mean: allEvents / allTime, spread: 0 };
  let highest = likelihood(without, 0);
  const slopes = SPREADS.map(slopeAt);
  for (let i = 1; i < SPREADS.length; i++) {
    if (!(slopes[i - 1]! > 0 && slopes[i]! <= 0)) continue;
    const logSpread = findRootBetween((x) => slopeAt(Math.exp(x)), Math.log(SPREADS[i - 1]!), Math.log(SPREADS[i]!));
    const spread = Math.exp(logSpread);
    const logMean = logMeanFor(people, spread, last);
    const height = likelihood(logMean, spread);
    if (height > highest) [best, highest] = [{ mean: Math.exp(logMean), spread }, height];
  }
  return best;
}

/** One person's rate over the mean rate, after what was seen: the posterior's mean and limits; spread must be above 0. */
export function shrunkenRatio({ mean, spread }: SharedRate, events: number, time: number, level: number) {
  const shape = 1 / spread + events;
  const scale = spread / (1 + spread * mean * time);
  const tail = (1 - level) / 2;
  const ratio = shape * scale;
  // Where nearly all failures are one person's, everybody else's posterior is so skewed that its mean can lie beyond a
  // limit; the interval is then widened to hold it.
  return {
    ratio,
    low: Math.min(ratio, gammaQuantile(tail, shape) * scale),
    high: Math.max(ratio, gammaQuantile(tail, shape, "upper") * scale),
  };
}
