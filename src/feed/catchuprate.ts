import { sources } from "../sources";
import { define } from "../worksheet/define";
import { documented } from "../worksheet/documented";
import { rounded } from "../worksheet/numbers";
import { hoursRunning, rateOf, startingPoint, volumeOf, volumeOrNone } from "./arguments";

export const CATCHUPRATE = define(
  {
    name: "CATCHUPRATE",
    family: "Feed and water",
    summary: "Rate that would still give the day's volume after a break, never above this person's cap.",
    params: {
      goal: volumeOf("Feed to be given in the day"),
      given: volumeOrNone("Feed given so far"),
      hoursleft: hoursRunning("Hours left of the day's feeding"),
      cap: rateOf("Highest rate, set by the dietitian for this person"),
    },
    subject: ["goal"],
    result: { shape: "cell", kind: "number", unit: "mL an hour", help: "Never below 0 or above the cap", blank: "" },
    compute: ({ goal, given, hoursleft, cap }) => Math.min(cap, Math.max(0, rounded((goal - given) / hoursleft))),
  },
  documented && {
    details:
      "What is missing over the hours left. The cap has no default: one intensive-care protocol uses 150 mL an hour, " +
      "which says nothing about somebody at home.",
    cautions: [
      startingPoint,
      "Not overnight unattended, not into the bowel, not for children, unless the dietitian sets it.",
      "At the cap the day's volume is not reached.",
    ],
    evidence: "study",
    sources: [sources.heyland],
    examples: [
      {
        shows: "published",
        args: { goal: 1500, given: 300, hoursleft: 6, cap: 150 },
        gives: 150,
        source: `${sources.heyland}; 1,200 mL in 6 hours would be 200`,
      },
      {
        shows: "defined",
        args: { goal: 1500, given: 600, hoursleft: 10, cap: 150 },
        gives: 90,
        source: `${sources.heyland}; ${sources.reached}`,
      },
      {
        shows: "range",
        args: { goal: [[1500], [""]], given: [[900], [0]], hoursleft: 8, cap: 150 },
        gives: [[75], [""]],
        source: "by hand: 600 mL in 8 hours",
      },
      { shows: "blank", args: { goal: "", given: 300, hoursleft: 6, cap: 150 }, gives: "", source: sources.input },
      {
        shows: "bad input",
        args: { goal: 1500, given: 300, hoursleft: 6, cap: "" },
        gives: { error: "#VALUE!", says: "cap is missing" },
        source: sources.catalogue,
      },
      {
        shows: "boundary",
        args: { goal: 1500, given: 1600, hoursleft: 6, cap: 150 },
        gives: 0,
        source: sources.catalogue,
      },
    ],
  },
);
