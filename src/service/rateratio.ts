import { rateRatio } from "../maths/poisson";
import { sources } from "../sources";
import { define, type Row } from "../worksheet/define";
import { documented } from "../worksheet/documented";
import { notAvailable, type SheetError } from "../worksheet/error";
import { eventCount, rateCautions, tubeDays, twoSided } from "./arguments";

const noEvents = notAvailable("no event on either side: nothing to compare");

const finite = (value: number): number | "" => (Number.isFinite(value) ? value : "");

export const RATERATIO = define(
  {
    name: "RATERATIO",
    family: "Service",
    summary: "How many times as high rate A is as rate B, with exact limits and p.",
    params: {
      eventsa: eventCount("Events of A: this year, say"),
      daysa: tubeDays("Tube-days of A"),
      eventsb: eventCount("Events of B: last year, say"),
      daysb: tubeDays("Tube-days of B"),
      level: twoSided(),
    },
    subject: ["eventsa"],
    result: {
      shape: "row",
      kind: "number",
      columns: ["ratio", "low", "high", "p"],
      help: "Ratio, its limits and p; blank where infinite",
      blank: "",
    },
    compute: ({ eventsa, daysa, eventsb, daysb, level }): SheetError | Row => {
      if (eventsa + eventsb === 0) return noEvents;
      const { ratio, low, high, p } = rateRatio(eventsa, daysa, eventsb, daysb, level);
      return [finite(ratio), low, finite(high), p];
    },
  },
  documented && {
    details:
      "Exact, by the share of all events that fell to A. p is two-sided: the chance of a split at most as likely as this " +
      "one if both rates were equal, as R's poisson.test gives it. Without an event in B the ratio has no upper limit: " +
      "its cell is blank.",
    cautions: [
      ...rateCautions,
      "Periods and services differ in more than the care: in the people, the kinds of tube, and what was written down.",
      "A large p does not show that the rates are equal.",
    ],
    evidence: "textbook",
    sources: [sources.conditional, sources.rPoissonTest],
    examples: [
      {
        shows: "defined",
        args: { eventsa: 11, daysa: 800, eventsb: 23, daysb: 3011 },
        gives: [[1.8000543478261, 0.79220508583301, 3.843862740395, 0.13663444706428]],
        within: 1e-9,
        source: sources.rPoissonTest,
      },
      {
        shows: "range",
        args: {
          eventsa: [[0], [5], [""], [7]],
          daysa: 5,
          eventsb: [[5], [0], [3], [7]],
          daysb: 5,
        },
        gives: [
          [0, 0, 1.0912791051825, 0.0625],
          ["", 0.91635585731546, "", 0.0625],
          ["", "", "", ""],
          [1, 0.2993096818106, 3.3410212257444, 1],
        ],
        within: 1e-9,
        source: `${sources.rPoissonTest}; p of 5 to 0 by hand: 2 / 2^5`,
      },
      {
        shows: "blank",
        args: { eventsa: "", daysa: 800, eventsb: 23, daysb: 3011 },
        gives: [["", "", "", ""]],
        source: sources.input,
      },
      {
        shows: "bad input",
        args: { eventsa: 11, daysa: 800, eventsb: "", daysb: 3011 },
        gives: [[{ error: "#VALUE!" }, "", "", ""]],
        source: sources.input,
      },
      {
        shows: "boundary",
        args: { eventsa: 0, daysa: 800, eventsb: 0, daysb: 3011 },
        gives: [[{ error: "#N/A" }, "", "", ""]],
        source: sources.catalogue,
      },
    ],
  },
);
