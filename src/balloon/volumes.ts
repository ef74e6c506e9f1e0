/** Balloon volumes as arguments, the same in every function. */
import { number } from "../worksheet/parameters";

/**
 * Largest volume read, mL. From memory: no balloon for this use comes near it, so a larger figure is a slip, and two
 * equal slips must not read `as filled`.
 */
export const LARGEST_VOLUME = 60;

/** Spellings of the millilitre on tubes and in notes; a cc is a mL. */
export const unitTexts = ["mls", "cc", "ccs", "millilitres", "milliliters"];

export const volumeOut = () =>
  number("Water drawn out; 0 means that the balloon was empty", { unit: "mL", unitTexts, min: 0, max: LARGEST_VOLUME });

export const expectedVolume = () =>
  number("Water put in last time; if not known, the fill agreed for this person", {
    unit: "mL",
    unitTexts,
    above: 0,
    max: LARGEST_VOLUME,
    zeroIsBlank: true,
  });

export const largestVolume = () =>
  number("Largest volume printed on the device", {
    unit: "mL",
    unitTexts,
    above: 0,
    max: LARGEST_VOLUME,
    zeroIsBlank: true,
    optional: true,
    fallbackHelp: "not checked",
  });
