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

/** From memory: feeds lie between 0.5 and 2.4 kcal a mL; wider limits only catch a number that is something else. */
export const density = () =>
  number("Energy of the feed, from the pack", { unit: "kcal/mL", min: 0.1, max: 9, zeroIsBlank: true });

export const proteinPerLitre = () =>
  number("Protein of the feed, from the pack; 0: not worked out", {
    unit: "g/L",
    unitTexts: ["g"],
    min: 0,
    max: 500,
  });

const fraction = new SheetError("looks like a share of 1: write 85 for 85%");
const readPercent = numberReader({ unit: "%", min: 0, max: 100 });

/** A cell that shows 85% holds 0.85: taken as it stands, nearly no water would be counted. */
const percentOf = (cell: Exclude<Cell, null>): number | null | SheetError => {
  const value = readPercent(cell);
  return typeof value === "number" && value > 0 && value <= 1 ? fraction : value;
};

export const waterPercent = () =>
  reading<number, object>(
    "Water in the feed, from the pack: 85 for 85%",
    { unit: "%", limits: "0, or above 1, at most 100" },
    percentOf,
  );

export const hoursRunning = (help = "Hours that the feed runs in a day") =>
  number(help, { unit: "hours", unitTexts: ["hour", "h"], above: 0, max: 24, zeroIsBlank: true });

/** mL an hour; clinic setting, the pump decides. */
export const pumpStep = () => number("Step of the pump", { unit: "mL/h", above: 0, max: 100, fallback: 1 });

export const rateOf = (help: string) => number(help, { unit: "mL/h", above: 0, max: FASTEST, zeroIsBlank: true });

export const weightKg = () => number("Weight", { unit: "kg", min: 0.3, max: 400, zeroIsBlank: true });

/** Said in every help text of the family. */
export const startingPoint = "A starting point for a dietitian: the figures do not know the illness.";
export const noBolusIntoBowel = "No bolus into the bowel: never through a GJ or J tube.";
