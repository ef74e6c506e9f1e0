/** How few and how many events chance alone makes where some are expected: exact Poisson limits instead of 3 sigma. */
import { poissonEnough } from "../maths/poisson";

/** The chance beyond each limit: that of a normal distribution beyond three standard deviations. */
const TAIL = 0.00135;

export const chanceLimits = (expected: number) => ({
  least: poissonEnough(expected, TAIL),
  most: poissonEnough(expected, 1 - TAIL),
});
