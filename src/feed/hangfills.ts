import { sources } from "../sources";
import { define } from "../worksheet/define";
import { documented } from "../worksheet/documented";
import { rounded } from "../worksheet/numbers";
import { number } from "../worksheet/parameters";
import { hoursRunning, rateOf, startingPoint } from "./arguments";

export const HANGFILLS = define(
  {
    name: "HANGFILLS",
    family: "Feed and water",
    summary: "How often a container is filled anew, so that no feed hangs longer than it may.",
    params: {
      rate: rateOf("Rate of the pump"),
      hours: hoursRunning(),
      limit: number("Hours that a fill may hang, as your service has set it for this kind of feed", {
        unit: "hours",
        unitTexts: ["h", "hour"],
        above: 0,
        max: 48,
        zeroIsBlank: true,
      }),
    },
    subject: ["rate"],
    result: {
      shape: "row",
      kind: "number",
      columns: ["fills", "mL each at most"],
      help: "Fills in a day and the largest of them",
      blank: "",
    },
    compute: ({ rate, hours, limit }) => [Math.ceil(rounded(hours / limit)), rounded(rate * Math.min(limit, hours))],
  },
  documented && {
    details:
      "Hours over the limit, rounded up; each fill holds at most what runs through in the limit. Published limits differ: " +
      "ready to use 24 hours a session (NICE), decanted 8 (from memory) or 12, made up or with an addition 4; for adults' modular feeds " +
      "12 in New Zealand against 4 elsewhere.",
    cautions: [
      startingPoint,
      "The clinic sets the limit for each kind of feed; warm rooms and open feeds shorten it.",
      "Giving sets have limits of their own.",
    ],
    evidence: "guideline",
    sources: [sources.hangTimes],
    examples: [
      {
        shows: "defined",
        args: { rate: 75, hours: 20, limit: 8 },
        gives: [[3, 600]],
        source: `${sources.hangTimes}; ${sources.reached}`,
      },
      {
        shows: "range",
        args: { rate: [[75], [""]], hours: [[20], [20]], limit: 4 },
        gives: [
          [5, 300],
          ["", ""],
        ],
        source: `${sources.hangTimes}; ${sources.reached}`,
      },
      { shows: "blank", args: { rate: "", hours: 20, limit: 8 }, gives: [["", ""]], source: sources.input },
      {
        shows: "bad input",
        args: { rate: 75, hours: 20, limit: "" },
        gives: [[{ error: "#VALUE!" }, ""]],
        source: sources.input,
      },
      {
        shows: "boundary",
        args: { rate: 75, hours: 8, limit: 8 },
        gives: [[1, 600]],
        source: sources.catalogue,
      },
      {
        shows: "boundary",
        args: { rate: 75, hours: 4, limit: 24 },
        gives: [[1, 300]],
        source: "by hand: 4 hours only",
      },
    ],
  },
);
