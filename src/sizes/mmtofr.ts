import { sources } from "../sources";
import { define } from "../worksheet/define";
import { documented } from "../worksheet/documented";
import { number } from "../worksheet/parameters";
import { LARGEST_FRENCH } from "./french";

export const MMTOFR = define(
  {
    name: "MMTOFR",
    family: "Sizes",
    summary: "French (Charrière) size of a tube whose outside diameter is given in millimetres.",
    params: {
      diameter: number("Outside diameter", {
        unit: "mm",
        unitTexts: ["millimetres", "millimeters"],
        above: 0,
        max: LARGEST_FRENCH / 3,
        zeroIsBlank: true,
      }),
    },
    subject: ["diameter"],
    result: { shape: "cell", kind: "number", unit: "Fr", help: "French size, not rounded", blank: "" },
    compute: ({ diameter }) => 3 * diameter,
  },
  documented && {
    details: "Three French to the millimetre, not rounded: 4.7 mm gives 14.1 Fr.",
    cautions: [
      "A measured diameter cannot tell neighbouring sizes apart: read the size on the tube or its label.",
      "Order by the printed size, never by this figure alone.",
    ],
    evidence: "standard",
    sources: [sources.french, sources.frenchOverlap],
    examples: [
      { shows: "published", args: { diameter: 4 }, gives: 12, source: sources.french },
      { shows: "use", args: { diameter: "4.7 mm" }, gives: 14.1, source: sources.french },
      { shows: "use", args: { diameter: "6,0" }, gives: 18, source: sources.french },
      {
        shows: "range",
        args: { diameter: [[5], ["8 mm"], [""], ["18 Fr"]] },
        gives: [[15], [24], [""], [{ error: "#VALUE!" }]],
        source: sources.french,
      },
      { shows: "blank", args: { diameter: "" }, gives: "", source: sources.input },
      {
        shows: "bad input",
        args: { diameter: "4.7-5 mm" },
        gives: { error: "#VALUE!", says: "diameter must be one number of mm" },
        source: sources.input,
      },
      { shows: "boundary", args: { diameter: 20 }, gives: 60, source: sources.french },
      { shows: "boundary", args: { diameter: 20.1 }, gives: { error: "#VALUE!" }, source: sources.catalogue },
    ],
  },
);
