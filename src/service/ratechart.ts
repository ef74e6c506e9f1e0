import { sources } from "../sources";
import { define, type Row } from "../worksheet/define";
import { documented } from "../worksheet/documented";
import type { SheetError } from "../worksheet/error";
import { rounded } from "../worksheet/numbers";
import { missingIn, numberColumn, unlike } from "../worksheet/rows";
import { MOST_EVENTS, rateCautions, ratePer } from "./arguments";

/** Control limits lie this many standard deviations from the centre. */
const SIGMA = 3;

const NO_DAYS: Row = ["", "", "", "", ""];

export const RATECHART = define(
  {
    name: "RATECHART",
    family: "Service",
    summary: "Control chart of a rate month by month: which months are out of line with the others (u chart).",
    params: {
      events: numberColumn("Events of each month, 0 where there was none", {
        limits: "whole number, at least 0",
        min: 0,
        max: MOST_EVENTS,
        whole: true,
      }),
      tubedays: numberColumn("Tube-days of each month", {
        unit: "tube-days",
        limits: "above 0",
        above: 0,
        zeroIsBlank: true,
      }),
      per: ratePer(),
    },
    subject: ["tubedays"],
    result: {
      shape: "block",
      kind: "mixed",
      columns: ["rate", "centre", "lower", "upper", "signal"],
      columnKinds: ["number", "number", "number", "number", "text"],
      help: "A row a month; signal: above limits, below limits, or a blank",
      blank: "",
    },
    compute: ({ events, tubedays, per }): SheetError | Row[] => {
      const fault = unlike({ events, tubedays });
      if (fault) return fault;
      const days = tubedays.values;
      let [allEvents, allDays] = [0, 0];
      for (let i = 0; i < days.length; i++) {
        if (Number.isNaN(days[i])) continue;
        if (Number.isNaN(events.values[i])) return missingIn("events", events, i);
        allEvents += events.values[i]!;
        allDays += days[i]!;
      }
      const centre = allEvents / allDays;
      return Array.from(days, (n, i) => {
        if (Number.isNaN(n)) return NO_DAYS;
        const swing = SIGMA * Math.sqrt(centre / n);
        const rate = (events.values[i]! / n) * per;
        const [lower, upper] = [Math.max(0, centre - swing) * per, (centre + swing) * per];
        const signal = rounded(rate - upper) > 0 ? "above limits" : rounded(lower - rate) > 0 ? "below limits" : "";
        return [rate, centre * per, lower, upper, signal];
      });
    },
  },
  documented && {
    details:
      "Centre: all events over all tube-days of the rows. Limits: three standard deviations to either side, wider in months " +
      "with few tube-days, never below 0. A month outside them is unlikely to be chance alone: look for its reason. A month " +
      "without tube-days gives a blank row, and its events do not count.",
    cautions: [
      ...rateCautions,
      "Below limits can also mean that events were not written down.",
      "A blank signal does not mean that all is well: a rate can be high every month.",
      "With fewer than about 20 months the limits are provisional; with few events a month they catch little.",
    ],
    evidence: "textbook",
    sources: [sources.uChart, sources.uChartData],
    examples: [
      {
        shows: "range",
        args: {
          events: [
            [10],
            [12],
            [8],
            [14],
            [10],
            [16],
            [11],
            [7],
            [10],
            [15],
            [9],
            [5],
            [7],
            [11],
            [12],
            [6],
            [8],
            [10],
            [7],
            [5],
          ],
          tubedays: new Array(20).fill([5]),
          per: 1,
        },
        gives: [10, 12, 8, 14, 10, 16, 11, 7, 10, 15, 9, 5, 7, 11, 12, 6, 8, 10, 7, 5].map((x) => [
          x / 5,
          1.93,
          0.0661330519589,
          3.79386694804,
          "",
        ]),
        within: 1e-10,
        source: sources.uChartData,
      },
      {
        shows: "defined",
        args: { events: [[2], [""], [9], [0]], tubedays: [[1000], [0], [1000], [4000]] },
        gives: [
          [2, 11 / 6, 0, 11 / 6 + 3 * Math.sqrt(11 / 6), ""],
          ["", "", "", "", ""],
          [9, 11 / 6, 0, 11 / 6 + 3 * Math.sqrt(11 / 6), "above limits"],
          [0, 11 / 6, 0, 11 / 6 + 3 * Math.sqrt(11 / 24), ""],
        ],
        within: 1e-9,
        source: "worked by hand: 11 events in 6,000 tube-days",
      },
      {
        shows: "defined",
        args: { events: [[100], [40]], tubedays: [[1000], [1000]] },
        gives: [
          [100, 70, 70 - 3 * Math.sqrt(70), 70 + 3 * Math.sqrt(70), "above limits"],
          [40, 70, 70 - 3 * Math.sqrt(70), 70 + 3 * Math.sqrt(70), "below limits"],
        ],
        within: 1e-9,
        source: "worked by hand: centre 70, three square roots of 70 to either side",
      },
      {
        shows: "blank",
        args: { events: [[""]], tubedays: [[""]] },
        gives: [["", "", "", "", ""]],
        source: sources.input,
      },
      {
        shows: "bad input",
        args: { events: [[2], [""]], tubedays: [[1000], [900]] },
        gives: { error: "#VALUE!", says: "events is missing in row 2" },
        source: sources.input,
      },
      {
        shows: "bad input",
        args: { events: [[2], [1]], tubedays: [[1000]] },
        gives: { error: "#VALUE!", says: "make them alike" },
        source: sources.input,
      },
      {
        shows: "boundary",
        args: { events: [[9], [0]], tubedays: [[1], [8]], per: 1 },
        gives: [
          [9, 1, 0, 4, "above limits"],
          [0, 1, 0, 1 + 3 * Math.sqrt(1 / 8), ""],
        ],
        within: 1e-12,
        source: "worked by hand: 9 events in 9 days; the lower limit stops at 0",
      },
      {
        shows: "boundary",
        args: { events: [[16], [4]], tubedays: [[4], [16]], per: 1 },
        gives: [
          [4, 1, 0, 2.5, "above limits"],
          [0.25, 1, 0.25, 1.75, ""],
        ],
        within: 1e-12,
        source: "worked by hand: exactly at a limit is within it",
      },
    ],
  },
);
