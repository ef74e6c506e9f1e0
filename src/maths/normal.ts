/** The standard normal distribution, from the incomplete gamma function. */
import { gammaUpper } from "./gamma";

/** Chance of a value above z. */
export const normalUpper = (z: number): number => {
  const tail = gammaUpper(0.5, (z * z) / 2) / 2;
  return z >= 0 ? tail : 1 - tail;
};

/**
 * The z below which a share p lies: normalQuantile(0.975) is 1.96.
 *
 * A rough start (Hastings 1955, in Abramowitz and Stegun 26.2.23, good to 0.00045), then Halley's steps on the tail.
 */
export function normalQuantile(p: number): number {
  if (p === last.p) return last.z;
  const found = p === before.p ? before : { p, z: quantile(p) };
  before = last;
  last = found;
  return found.z;
}

/** A whole column asks for one level, or in turn for one at either side. */
let last = { p: NaN, z: NaN };
let before = last;

function quantile(p: number): number {
  if (p === 0.5) return 0;
  const tail = p < 0.5 ? p : 1 - p;
  if (!(tail > 0)) return p < 0.5 ? -Infinity : p <= 1 ? Infinity : NaN;
  const t = Math.sqrt(-2 * Math.log(tail));
  let z = t - (2.515517 + t * (0.802853 + t * 0.010328)) / (1 + t * (1.432788 + t * (0.189269 + t * 0.001308)));
  for (let step = 0; step < 3; step++) {
    const density = Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
    if (density === 0) break;
    const off = (normalUpper(z) - tail) / density;
    z += off / (1 - (off * z) / 2);
  }
  return p < 0.5 ? -z : z;
}
