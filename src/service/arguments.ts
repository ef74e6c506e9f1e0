/** Counts of events and tube-days as arguments, the same in every function of this family. */
import { number } from "../worksheet/parameters";

/** More than any service will ever count; beyond it the exact sums would take too long. */
export const MOST_EVENTS = 1e9;

export const eventCount = (help: string) => number(help, { min: 0, max: MOST_EVENTS, whole: true });

export const tubeDays = (help: string) => number(help, { unit: "tube-days", unitTexts: ["days"], above: 0 });

export const ratePer = () =>
  number("Tube-days that the rate is given for", { unit: "tube-days", above: 0, fallback: 1000 });

export const twoSided = () =>
  number("Confidence level of the limits, two-sided", { above: 0, below: 1, fallback: 0.95 });

/** Said with every rate. */
export const rateCautions = [
  "A rate is no better than the log behind it: events that were not written down make it look good.",
  "No published rate of unplanned changes at home was found to compare with: compare with your own earlier months.",
] as const;
