import { sources } from "../sources";
import { define } from "../worksheet/define";
import { documented } from "../worksheet/documented";
import { rounded } from "../worksheet/numbers";
import { noBolusIntoBowel, startingPoint, volumeOf } from "./arguments";

export const BOLUSPLAN = define(
  {
    name: "BOLUSPLAN",
    family: "Feed and water",
    summary: "The least number of equal bolus feeds in a day, none above the largest that is taken.",
    params: {
      volume: volumeOf("Feed to be given in a day"),
      largest: volumeOf("Largest bolus that this person takes"),
    },
    subject: ["volume"],
    result: {
      shape: "row",
      kind: "number",
      columns: ["feeds a day", "mL each"],
      help: "Equal feeds",
      blank: "",
    },
    compute: ({ volume, largest }) => {
      const feeds = Math.max(1, Math.ceil(rounded(volume / largest)));
      return [feeds, rounded(volume / feeds)];
    },
  },
  documented && {
    details:
      "The day's volume over the largest bolus, rounded up, in equal parts. There is no default for the largest: sources " +
      "differ (200 to 400, 250 to 300, 240 to 480 mL for adults).",
    cautions: [startingPoint, noBolusIntoBowel, "More and smaller feeds if there is vomiting, pain or leaking."],
    evidence: "textbook",
    sources: [sources.fhirBolus, sources.bolusGuideline, sources.bolusSizes, sources.msdBowel],
    examples: [
      { shows: "published", args: { volume: 1440, largest: 240 }, gives: [[6, 240]], source: sources.fhirBolus },
      { shows: "published", args: { volume: 1250, largest: 250 }, gives: [[5, 250]], source: sources.bolusGuideline },
      {
        shows: "range",
        args: { volume: [[1500], [""]], largest: [[400], [400]] },
        gives: [
          [4, 375],
          ["", ""],
        ],
        source: "by hand: 3.75 feeds are 4",
      },
      { shows: "blank", args: { volume: "", largest: 250 }, gives: [["", ""]], source: sources.input },
      {
        shows: "bad input",
        args: { volume: 1500, largest: "" },
        gives: [[{ error: "#VALUE!" }, ""]],
        source: sources.input,
      },
      {
        shows: "boundary",
        args: { volume: 0.3, largest: 0.1 },
        gives: [[3, 0.1]],
        source: "by hand: 0.3 over 0.1 is 3, though a little less in binary",
      },
    ],
  },
);
