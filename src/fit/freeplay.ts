import { sources } from "../sources";
import { define } from "../worksheet/define";
import { documented } from "../worksheet/documented";
import { argument, fault } from "../worksheet/error";
import { number } from "../worksheet/parameters";

/** mm: Leeds, about 5. */
const PLAY_LEAST = 5;
/** mm: ESGE 2021, 10 to 20. */
const PLAY_MOST = 20;

const crossed = fault`${argument("least")} is above ${argument("most")}: check both settings`;

export const FREEPLAY = define(
  {
    name: "FREEPLAY",
    family: "Fit",
    summary:
      "Whether the outer bolster of a long tube stands at a good distance from the skin: tight, in range, loose.",
    params: {
      gap: number("From the bolster to the skin", { unit: "mm", min: 0, max: 200 }),
      least: number("Below this it is tight", { unit: "mm", above: 0, max: 30, fallback: PLAY_LEAST }),
      most: number("Above this it is loose", { unit: "mm", above: 0, max: 60, fallback: PLAY_MOST }),
    },
    subject: ["gap"],
    result: { shape: "cell", kind: "text", help: "tight, in range, loose or not measured", blank: "not measured" },
    compute: ({ gap, least, most }) => {
      if (least > most) return crossed;
      if (gap < least) return "tight";
      return gap > most ? "loose" : "in range";
    },
  },
  documented && {
    details:
      "For long tubes with an outer bolster. Sources differ: about 5 mm (Leeds), 10 to 20 mm (ESGE 2021). 0 reads tight: " +
      "the gap is 0, or nothing was entered and the cell arrived as 0.",
    cautions: [
      "Tight, and it also will not turn or push in, hurts, leaks or feeds slowly: stop the feed and call, it may be buried. Do not force.",
      "In range does not show that a bumper is not buried.",
      "Leave the bolster of a new tube alone until the placing team's date. Never turn a tube with a part in the bowel, nor a stitched one.",
    ],
    evidence: "guideline",
    sources: [sources.esge, sources.leedsPlay, sources.singh],
    examples: [
      { shows: "published", args: { gap: 15 }, gives: "in range", source: sources.esge },
      { shows: "published", args: { gap: 8, least: 10 }, gives: "tight", source: sources.esge },
      { shows: "use", args: { gap: 25 }, gives: "loose", source: sources.esge },
      {
        shows: "range",
        args: { gap: [[2], ["10 mm"], [""], [0]] },
        gives: [["tight"], ["in range"], ["not measured"], ["tight"]],
        source: sources.catalogue,
      },
      { shows: "blank", args: { gap: "" }, gives: "not measured", source: sources.catalogue },
      {
        shows: "bad input",
        args: { gap: "1 cm" },
        gives: { error: "#VALUE!", says: "gap must be one number of mm" },
        source: sources.input,
      },
      {
        shows: "bad input",
        args: { gap: 3, least: 0 },
        gives: { error: "#VALUE!", says: "least must be above 0" },
        source: "defined by this function's rule: an empty settings cell must not make nothing tight",
      },
      { shows: "boundary", args: { gap: 5 }, gives: "in range", source: sources.leedsPlay },
      { shows: "boundary", args: { gap: 20 }, gives: "in range", source: sources.esge },
    ],
  },
);
