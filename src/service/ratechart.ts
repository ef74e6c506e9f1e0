import { sources } from "../sources";
import { define, type Row } from "../worksheet/define";
import { documented } from "../worksheet/documented";
import type { SheetError } from "../worksheet/error";
import { rememberEach } from "../worksheet/remember";
import { missingIn, numberColumn, unlike } from "../worksheet/rows";
import { chanceLimits } from "./chance-limits";
import { MOST_EVENTS, rateCautions, ratePer } from "./arguments";

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
      // Months have the same few numbers of tube-days again and again.
      const limits = rememberEach((n: number) => chanceLimits(centre * n));
      return Array.from(days, (n, i) => {
        if (Number.isNaN(n)) return NO_DAYS;
        const seen = events.values[i]!;
        const { least, most } = limits(n);
        const signal = seen > most ? "above limits" : seen < least ? "below limits" : "";
        return [(seen / n) * per, centre * per, (least / n) * per, (most / n) * per, signal];
      });
    },
  },
  documented && {
    details:
      "Centre: all events over all tube-days of the rows. Limits: the fewest and the most events that chance alone gives " +
      "(Poisson) but for 0.00135 to either side, which are three standard deviations of a normal distribution, over the " +
      "month's tube-days: steps, wider in months with few tube-days. A month outside them is unlikely to be chance alone: " +
      "look for its reason. A month without tube-days gives a blank row, and its events do not count.",
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
          0.4,
          4,
          "",
        ]),
        within: 1e-10,
        source: `${sources.uChartData}; exact limits for a mean count of 9.65 by R qpois: 2 and 20`,
      },
      {
        shows: "defined",
        args: { events: [[2], [""], [9], [0]], tubedays: [[1000], [0], [1000], [4000]] },
        gives: [
          [2, 11 / 6, 0, 7, ""],
          ["", "", "", "", ""],
          [9, 11 / 6, 0, 7, "above limits"],
          [0, 11 / 6, 0.25, 4.25, "below limits"],
        ],
        within: 1e-9,
        source: "11 events in 6,000 tube-days; R qpois: 0 to 7 where 1.83 are expected, 1 to 17 where 7.33 are",
      },
      {
        shows: "defined",
        args: { events: [[100], [40]], tubedays: [[1000], [1000]] },
        gives: [
          [100, 70, 46, 96, "above limits"],
          [40, 70, 46, 96, "below limits"],
        ],
        within: 1e-9,
        source: "R qpois: 46 to 96 where 70 are expected",
      },
      {
        shows: "use",
        args: { events: [[3], [0]], tubedays: [[1000], [7000]] },
        gives: [
          [3, 0.375, 0, 3, ""],
          [0, 0.375, 0, 9 / 7, ""],
        ],
        within: 1e-12,
        source: "R: 3 or more where 0.375 are expected have a chance of 0.7%; qpois: at most 3, and 9 where 2.625 are",
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
          [9, 1, 0, 5, "above limits"],
          [0, 1, 1 / 8, 18 / 8, "below limits"],
        ],
        within: 1e-12,
        source: "9 events in 9 days; R qpois: 0 to 5 where 1 is expected, 1 to 18 where 8 are",
      },
      {
        shows: "boundary",
        args: { events: [[11], [9]], tubedays: [[4], [16]], per: 1 },
        gives: [
          [2.75, 1, 0, 2.75, ""],
          [9 / 16, 1, 5 / 16, 29 / 16, ""],
        ],
        within: 1e-12,
        source: "exactly at a limit is within it; R qpois: 0 to 11 where 4 are expected, 5 to 29 where 16 are",
      },
    ],
  },
);
