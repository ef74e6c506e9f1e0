import { sources } from "../sources";
import { define } from "../worksheet/define";
import { documented } from "../worksheet/documented";
import { rounded } from "../worksheet/numbers";
import { choice } from "../worksheet/parameters";
import { expectedVolume, volumeOut } from "./volumes";

export const BALLOONDEVIATION = define(
  {
    name: "BALLOONDEVIATION",
    family: "Balloon",
    summary: "How much more or less water came out of the balloon than was put in.",
    params: {
      out: volumeOut(),
      expected: expectedVolume(),
      unit: choice("mL, or % of what was expected", ["mL", "%"], { fallback: "mL" }),
    },
    subject: ["out", "expected"],
    result: {
      shape: "cell",
      kind: "number",
      unit: "mL",
      help: "Water out less water expected; negative: a loss",
      blank: "",
    },
    compute: ({ out, expected, unit }) => {
      const difference = rounded(out - expected);
      return unit === "mL" ? difference : rounded((100 * difference) / expected);
    },
  },
  documented && {
    details:
      "Out minus expected. Expected is what was put in last time; if that is not known, the fill agreed for this person. " +
      "With % the answer is in percent points: -20 means 20% below.",
    cautions: [
      "The percentage is a report, not a judgement: no published tolerance in percent was found.",
      "Water also passes through a sound balloon's wall: look at the days since the fill.",
    ],
    evidence: "clinic setting",
    sources: [sources.sickKidsLoss, sources.permeation],
    examples: [
      {
        shows: "published",
        args: { out: 3.8, expected: 5 },
        gives: -1.2,
        source: `${sources.permeation} (1.2 mL, 24%)`,
      },
      {
        shows: "published",
        args: { out: 3.8, expected: 5, unit: "%" },
        gives: -24,
        source: `${sources.permeation} (1.2 mL, 24%)`,
      },
      { shows: "defined", args: { out: 4, expected: 5, unit: "%" }, gives: -20, source: sources.catalogue },
      { shows: "use", args: { out: "4,5 mL", expected: "5cc" }, gives: -0.5, source: sources.catalogue },
      {
        shows: "range",
        args: { out: [[4.5], [0], [""]], expected: [[5], [5], [5]] },
        gives: [[-0.5], [-5], [""]],
        source: sources.catalogue,
      },
      { shows: "blank", args: { out: "", expected: 5 }, gives: "", source: sources.input },
      { shows: "blank", args: { out: 4, expected: 0 }, gives: "", source: sources.input },
      {
        shows: "bad input",
        args: { out: -1, expected: 5 },
        gives: { error: "#VALUE!", says: "out must be at least 0" },
        source: sources.catalogue,
      },
      { shows: "boundary", args: { out: 0, expected: 5 }, gives: -5, source: sources.catalogue },
      { shows: "boundary", args: { out: 1.1, expected: 0.6 }, gives: 0.5, source: sources.floats },
    ],
  },
);
