import { sources } from "../sources";
import { define } from "../worksheet/define";
import { documented } from "../worksheet/documented";
import { argument, fault } from "../worksheet/error";
import { rounded } from "../worksheet/numbers";
import { number } from "../worksheet/parameters";
import { rateOf, startingPoint } from "./arguments";

const MOST_ROWS = 200;
const tooMany = fault`more than ${MOST_ROWS} steps: check ${argument("start")}, ${argument("step")} and ${argument("goal")}`;
const backwards = fault`${argument("start")} is above ${argument("goal")}: check both rates`;

export const FEEDSTEPS = define(
  {
    name: "FEEDSTEPS",
    family: "Feed and water",
    summary: "A table of rising rates, from the start to the goal.",
    params: {
      start: rateOf("First rate"),
      step: rateOf("How much more at each step"),
      everyhours: number("Hours from one step to the next", {
        unit: "hours",
        unitTexts: ["h", "hour"],
        above: 0,
        max: 168,
        zeroIsBlank: true,
      }),
      goal: rateOf("Rate to be reached"),
    },
    subject: ["start"],
    result: {
      shape: "block",
      kind: "number",
      columns: ["hour", "mL an hour", "mL given by then"],
      help: "A row a step; the last row is the goal",
      blank: "",
    },
    compute: ({ start, step, everyhours, goal }) => {
      if (start > goal) return backwards;
      const steps = Math.ceil(rounded((goal - start) / step));
      if (steps + 1 > MOST_ROWS) return tooMany;
      const rows: number[][] = [];
      let given = 0;
      for (let k = 0; k <= steps; k++) {
        const rate = k === steps ? goal : rounded(start + k * step);
        rows.push([rounded(k * everyhours), rate, rounded(given)]);
        given += rate * everyhours;
      }
      return rows;
    },
  },
  documented && {
    details:
      "Row by row the hour from the start, the rate from then on, and what has run in by then. Adults: start 20 to 30 mL " +
      "an hour, 10 to 20 more every 4 to 8 hours (MSD Manual); other services start and rise otherwise, children by weight.",
    cautions: [
      startingPoint,
      "A step is taken only if the one before was well borne.",
      "Somebody who has eaten little for days starts lower and slower: look at the risk of refeeding problems.",
    ],
    evidence: "textbook",
    sources: [sources.msdSteps, sources.fhirContinuous],
    examples: [
      {
        shows: "published",
        args: { start: 60, step: 20, everyhours: 4, goal: 100 },
        gives: [
          [0, 60, 0],
          [4, 80, 240],
          [8, 100, 560],
        ],
        source: `${sources.fhirContinuous}; volumes by hand`,
      },
      {
        shows: "range",
        args: { start: 25, step: 20, everyhours: 4, goal: 75 },
        gives: [
          [0, 25, 0],
          [4, 45, 100],
          [8, 65, 280],
          [12, 75, 540],
        ],
        source: `${sources.msdSteps}; volumes by hand`,
      },
      { shows: "blank", args: { start: "", step: 20, everyhours: 4, goal: 75 }, gives: "", source: sources.input },
      {
        shows: "bad input",
        args: { start: 80, step: 20, everyhours: 4, goal: 75 },
        gives: { error: "#VALUE!", says: "start is above goal" },
        source: sources.catalogue,
      },
      {
        shows: "bad input",
        args: { start: 1, step: 1, everyhours: 4, goal: 201 },
        gives: { error: "#VALUE!", says: "more than 200 steps" },
        source: sources.catalogue,
      },
      {
        shows: "boundary",
        args: { start: 75, step: 20, everyhours: 4, goal: 75 },
        gives: [[0, 75, 0]],
        source: sources.catalogue,
      },
      {
        shows: "boundary",
        args: { start: 0.1, step: 0.1, everyhours: 1, goal: 0.3 },
        gives: [
          [0, 0.1, 0],
          [1, 0.2, 0.1],
          [2, 0.3, 0.3],
        ],
        source: sources.floats,
      },
    ],
  },
);
