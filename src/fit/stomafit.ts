import { sources } from "../sources";
import { define } from "../worksheet/define";
import { documented } from "../worksheet/documented";
import { number } from "../worksheet/parameters";
import { fitOf, lengthCm, mostSlack, SLACK_LEAST, slacksCross } from "./lengths";

const crossed = slacksCross("least");

export const STOMAFIT = define(
  {
    name: "STOMAFIT",
    family: "Fit",
    summary: "Whether a low-profile tube's length still goes with the opening: too short, in range or too long.",
    params: {
      length: lengthCm("Length of the tube now in"),
      lying: lengthCm("Opening measured lying"),
      sitting: lengthCm("Opening measured sitting"),
      least: number("Least slack above the mean of both readings", {
        unit: "cm",
        min: 0,
        max: 2,
        fallback: SLACK_LEAST,
      }),
      most: mostSlack(),
    },
    subject: ["length", "lying", "sitting"],
    result: {
      shape: "cell",
      kind: "text",
      help: "too short, in range, too long or not measured",
      blank: "not measured",
    },
    compute: ({ length, lying, sitting, least, most }) =>
      least > most ? crossed : fitOf(length, lying, sitting, least, most),
  },
  documented && {
    details:
      "Too short: below the larger reading, or below the mean of both plus the least slack. Too long: above the larger " +
      "reading plus the most slack. The limits themselves are in range. Both slacks are clinic settings from memory.",
    cautions: [
      "In range compares numbers as old as the measurement: weight and growth change them. Look at the skin.",
      "Tight, marked skin, pain, or a tube that will not turn: stop the feed and call; do not force.",
      "In and out movement, leakage or overgrown skin can mean too long. A leak is not cured by more water.",
    ],
    evidence: "clinic setting",
    sources: [sources.steenblik, sources.noSource],
    examples: [
      {
        shows: "defined",
        args: { length: 4, lying: 3.6, sitting: 4.9 },
        gives: "too short",
        source: `${sources.steenblik}; the word by this function's rule`,
      },
      { shows: "use", args: { length: 3, lying: 2, sitting: 2.2 }, gives: "too long", source: "by hand: 2.2 plus 0.5" },
      {
        shows: "range",
        args: { length: [[2.3], [2], [""]], lying: [[2], [2], [2]], sitting: [[2.1], [2.1], [2.1]] },
        gives: [["in range"], ["too short"], ["not measured"]],
        source: "by hand: mean 2.05, plus 0.2 is 2.25",
      },
      {
        shows: "blank",
        args: { length: 2.3, lying: 2, sitting: "" },
        gives: "not measured",
        source: sources.catalogue,
      },
      {
        shows: "bad input",
        args: { length: "2.3 inch", lying: 2, sitting: 2 },
        gives: { error: "#VALUE!", says: "length must be one number of cm" },
        source: sources.input,
      },
      {
        shows: "bad input",
        args: { length: 2.3, lying: 2, sitting: 2, least: 1, most: 0.5 },
        gives: { error: "#VALUE!", says: "least is above most" },
        source: sources.catalogue,
      },
      { shows: "boundary", args: { length: 2.3, lying: 2.1, sitting: 2.1 }, gives: "in range", source: sources.floats },
      {
        shows: "boundary",
        args: { length: 1.1, lying: 0.6, sitting: 0.6 },
        gives: "in range",
        source: sources.floats,
      },
    ],
  },
);
