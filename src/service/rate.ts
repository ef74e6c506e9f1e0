import { poissonLimits } from "../maths/poisson";
import { sources } from "../sources";
import { define } from "../worksheet/define";
import { documented } from "../worksheet/documented";
import { eventCount, rateCautions, ratePer, tubeDays, twoSided } from "./arguments";

export const RATE = define(
  {
    name: "RATE",
    family: "Service",
    summary: "Events for every 1,000 tube-days, with exact limits.",
    params: {
      events: eventCount("How many events, such as unplanned changes"),
      tubedays: tubeDays("Tube-days in which they happened"),
      per: ratePer(),
      level: twoSided(),
    },
    subject: ["events"],
    result: {
      shape: "row",
      kind: "number",
      columns: ["rate", "low", "high"],
      help: "Rate and its limits, per 1,000 tube-days if not said otherwise",
      blank: "",
    },
    compute: ({ events, tubedays, per, level }) => {
      const { low, high } = poissonLimits(events, level);
      return [(events / tubedays) * per, (low / tubedays) * per, (high / tubedays) * per];
    },
  },
  documented && {
    details:
      "Events over tube-days. The limits are exact for counts that happen one by one and by chance (Poisson, Garwood): " +
      "with few events they are wide, and 0 events still leave an upper limit.",
    cautions: [
      ...rateCautions,
      "Below about 750 tube-days a rate says little: give the time since the last event instead.",
      "0 events is not a rate of 0: read the upper limit.",
    ],
    evidence: "textbook",
    sources: [sources.garwood, sources.deviceDay, sources.fewDays, sources.deRaddo],
    examples: [
      {
        shows: "published",
        args: { events: 3, tubedays: 1250 },
        gives: [[2.4, 0.4949376983168, 7.013818455792]],
        within: 1e-9,
        source: `${sources.calculatorRate}; limits: ${sources.garwood}`,
      },
      {
        shows: "published",
        args: { events: 10, tubedays: 1, per: 1 },
        gives: [[10, 4.8, 18.39]],
        within: 0.005,
        source: sources.garwoodPages,
      },
      {
        shows: "range",
        args: { events: [[202], [3], [""]], tubedays: [[31378], [31378], [31378]] },
        gives: [
          [6.44, 5.58, 7.39],
          [0.096, 0.02, 0.28],
          ["", "", ""],
        ],
        within: 0.005,
        source: `${sources.deRaddo}; limits: R poisson.test`,
      },
      { shows: "blank", args: { events: "", tubedays: 1250 }, gives: [["", "", ""]], source: sources.input },
      {
        shows: "bad input",
        args: { events: 3, tubedays: 0 },
        gives: [[{ error: "#VALUE!" }, "", ""]],
        source: sources.catalogue,
      },
      {
        shows: "bad input",
        args: { events: 2.5, tubedays: 1250 },
        gives: [[{ error: "#VALUE!" }, "", ""]],
        source: sources.catalogue,
      },
      {
        shows: "boundary",
        args: { events: 0, tubedays: 1000 },
        gives: [[0, 0, 3.68887945411]],
        within: 1e-10,
        source: `${sources.garwoodPages}; here minus the natural logarithm of 0.025`,
      },
    ],
  },
);
