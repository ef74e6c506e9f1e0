/** Arguments that several feed functions share. The pack decides density, protein and water, so none has a default. */
import type { Cell } from "../worksheet/cell";
import { SheetError } from "../worksheet/error";
import { number, numberReader, reading } from "../worksheet/parameters";
import { FASTEST } from "./pump";

const millilitres = { unit: "mL", unitTexts: ["mls", "cc", "millilitres", "milliliters"] } as const;

/** A volume that cannot be 0: a blank cell may arrive as 0. */
export const volumeOf = (help: string) => number(help, { ...millilitres, above: 0, max: 20_000, zeroIsBlank: true });

/** A volume of which there may be none. */
export const volumeOrNone = (help: string) => number(help, { ...millilitres, min: 0, max: 20_000 });
export const optionalVolume = (help: string) => number(help, { ...millilitres, min: 0, max: 20_000, fallback: 0 });

/**
 * Feeds in use have 1 to 2 kcal a mL (national therapeutic guideline), from memory 0.5 to 2.4; the limits only catch a
 * number that is something else. Clinic setting, no published source.
 */
export const density = () =>
  number("Energy of the feed, from the pack", {
    unit: "kcal/mL",
    min: 0.1,
    max: 3,
    zeroIsBlank: true,
    slipAbove: "kJ, or for 100 mL?",
  });

export const proteinPerLitre = () =>
  number("Protein of the feed, from the pack; 0: not worked out", {
    unit: "g/L",
    unitTexts: ["g"],
    min: 0,
    max: 500,
  });

/**
 * Published shares of water lie between 69% (2 kcal a mL) and 85% (1 kcal); the limit only catches a number that is
 * something else. Clinic setting, no published source.
 */
const LEAST_WATER = 40;
const fraction = new SheetError("looks like a share of 1: write 85 for 85%");
const tooDry = new SheetError(`must be at least ${LEAST_WATER}, at most 100: the dry part, or the energy?`);
const readPercent = numberReader({ unit: "%", min: 0, max: 100, zeroIsBlank: true });

/**
 * A cell that shows 85% holds 0.85, and a blank one may arrive as 0: taken as they stand, nearly no water would be
 * counted, and all of it would be given again.
 */
const percentOf = (cell: Exclude<Cell, null>): number | null | SheetError => {
  const value = readPercent(cell);
  if (typeof value !== "number" || value >= LEAST_WATER) return value;
  return value <= 1 ? fraction : tooDry;
};

export const waterPercent = () =>
  reading<number, object>(
    "Water in the feed, from the pack: 85 for 85%",
    { unit: "%", limits: `at least ${LEAST_WATER}, at most 100` },
    percentOf,
  );

export const NO_WATER = 0;
/** Where there may be no feed: 0 or a blank is then `NO_WATER`. */
export const waterPercentOrNone = () => ({ ...waterPercent(), ifBlank: NO_WATER });

export const hoursRunning = (help = "Hours that the feed runs in a day") =>
  number(help, { unit: "hours", unitTexts: ["hour", "h"], above: 0, max: 24, zeroIsBlank: true });

/** mL an hour; clinic setting, the pump decides. */
export const pumpStep = () => number("Step of the pump", { unit: "mL/h", above: 0, max: 100, fallback: 1 });

export const rateOf = (help: string) => number(help, { unit: "mL/h", above: 0, max: FASTEST, zeroIsBlank: true });

const kilograms = { unit: "kg", min: 0.3, max: 400, zeroIsBlank: true, slipAbove: "grams, or pounds?" } as const;

export const weightKg = () => number("Weight", kilograms);
export const optionalWeight = (fallbackHelp: string) =>
  number("Weight", { ...kilograms, optional: true, fallbackHelp });

/** Said in every help text of the family. */
export const startingPoint = "A starting point for a dietitian: the figures do not know the illness.";
export const noBolusIntoBowel = "No bolus into the bowel: never through a GJ or J tube.";
