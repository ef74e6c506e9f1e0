import { LARGEST_FRENCH, readFrench } from "../sizes/french";
import { sources } from "../sources";
import { define } from "../worksheet/define";
import { documented } from "../worksheet/documented";
import { number, reading } from "../worksheet/parameters";
import { unitTexts } from "./volumes";

const CUBIC_MM_IN_ML = 1000;

export const BALLOONDIAMETER = define(
  {
    name: "BALLOONDIAMETER",
    family: "Balloon",
    summary: "Diameter of a balloon filled with so much water, if it were a sphere round the tube.",
    params: {
      volume: number("Water in the balloon", { unit: "mL", unitTexts, min: 0, max: 100 }),
      size: reading<number, { fallback: number; fallbackHelp: string; unit: string; limits: string }>(
        "Size of the tube that runs through it, as in FRTOMM",
        { fallback: 0, fallbackHelp: "no tube", unit: "Fr", limits: `above 0, at most ${LARGEST_FRENCH}` },
        readFrench,
      ),
    },
    subject: ["volume"],
    result: { shape: "cell", kind: "number", unit: "mm", help: "Outside diameter of the balloon", blank: "" },
    compute: ({ volume, size }) => {
      const radius = Math.cbrt((3 * volume * CUBIC_MM_IN_ML) / (4 * Math.PI));
      return 2 * Math.hypot(size / 6, radius);
    },
  },
  documented && {
    details:
      "Geometry only: the volume of a sphere with a cylindrical hole depends on nothing but the height of the hole, so " +
      "the radius is the root of (shaft radius squared + (3 V / 4 pi) to the power of 2/3).",
    cautions: [
      "A real balloon is no sphere. This is a picture of how large it is inside, not a way to choose a volume.",
      "Never above the volume on the label: a larger balloon can block the way out of the stomach and bursts sooner.",
    ],
    evidence: "textbook",
    sources: [sources.sphereRing],
    examples: [
      {
        shows: "published",
        args: { volume: Math.PI / 6 },
        gives: 10,
        within: 1e-9,
        source: "geometry: a sphere of 1 cm across holds pi/6 mL",
      },
      {
        shows: "defined",
        args: { volume: 5 },
        gives: 21.2,
        within: 0.05,
        source: "by hand: 5 mL, the cube root of 15 / (4 pi) is 1.0608 cm",
      },
      {
        shows: "defined",
        args: { volume: Math.PI / 6, size: 18 },
        gives: 11.6619,
        within: 0.00005,
        source: `${sources.sphereRing}: a hole 10 mm high and 6 mm wide, root of 136`,
      },
      {
        shows: "range",
        args: { volume: [[0], [""]], size: [[12], [12]] },
        gives: [[4], [""]],
        source: "geometry: an empty balloon is as wide as the tube",
      },
      { shows: "blank", args: { volume: "" }, gives: "", source: sources.input },
      {
        shows: "bad input",
        args: { volume: "3-5 mL" },
        gives: { error: "#VALUE!", says: "volume must be one number of mL" },
        source: sources.input,
      },
      { shows: "boundary", args: { volume: 0 }, gives: 0, source: sources.sphereRing },
    ],
  },
);
