import { sources } from "../sources";
import { define } from "../worksheet/define";
import { documented } from "../worksheet/documented";
import { argument, fault, SheetError } from "../worksheet/error";
import { number } from "../worksheet/parameters";
import { hoursRunning, pumpStep, startingPoint, volumeOf } from "./arguments";
import { FASTEST, FASTEST_FEED, pumpRate } from "./pump";

const tooFast = fault`the rate would be above ${FASTEST_FEED} mL an hour: check ${argument("volume")} and ${argument("hours")}, or give ${argument("cap")}`;

export const PUMPRATE = define(
  {
    name: "PUMPRATE",
    family: "Feed and water",
    summary: "Rate of the pump that gives a volume in so many hours, to the pump's own step.",
    params: {
      volume: volumeOf("Feed to be given"),
      hours: hoursRunning("Hours in which it is to run"),
      step: pumpStep(),
      cap: number("Highest rate for this person", {
        unit: "mL/h",
        above: 0,
        max: FASTEST,
        optional: true,
        fallbackHelp: `none; a rate above ${FASTEST_FEED} is then refused`,
      }),
    },
    subject: ["volume"],
    result: {
      shape: "cell",
      kind: "number",
      unit: "mL an hour",
      help: "A rate that the pump can be set to",
      blank: "",
    },
    compute: ({ volume, hours, step, cap }) => {
      const rate = pumpRate(volume / hours, step, cap);
      if (rate instanceof SheetError || cap !== undefined) return rate;
      return rate > FASTEST_FEED ? tooFast : rate;
    },
  },
  documented && {
    details:
      "The nearest step of the pump, halves up. Above the cap: the highest step that is not above it; the volume then " +
      "does not run through in these hours. Without a cap a rate above 400 mL an hour is refused as a slip in volume or " +
      "hours: published goals by pump end at 125 mL an hour (KDOQI 2008); the limit is a clinic setting, no published source.",
    cautions: [
      startingPoint,
      "Rounding changes what is given: the rate times the hours is what runs in.",
      "Into the bowel rates go up slowly and only as the team orders.",
    ],
    evidence: "textbook",
    sources: [sources.msdEnteral, sources.drugHandbook, sources.collegeFluid],
    examples: [
      { shows: "published", args: { volume: 2400, hours: 24 }, gives: 100, source: sources.msdEnteral },
      { shows: "published", args: { volume: 1540, hours: 24 }, gives: 64, source: sources.drugHandbook },
      { shows: "published", args: { volume: 1250, hours: 24 }, gives: 52, source: sources.collegeFluid },
      { shows: "use", args: { volume: 1500, hours: 10, cap: 120 }, gives: 120, source: sources.catalogue },
      {
        shows: "range",
        args: { volume: [[1800], [""]], hours: [[24], [24]] },
        gives: [[75], [""]],
        source: sources.courseNotes,
      },
      { shows: "blank", args: { volume: "", hours: 24 }, gives: "", source: sources.input },
      {
        shows: "bad input",
        args: { volume: 1500, hours: 25 },
        gives: { error: "#VALUE!", says: "hours must be above 0, at most 24" },
        source: sources.catalogue,
      },
      {
        shows: "bad input",
        args: { volume: 20000, hours: 0.5 },
        gives: { error: "#VALUE!", says: "above 2000 mL an hour" },
        source: "defined by this function's rule: no pump runs 40,000 mL an hour",
      },
      {
        shows: "bad input",
        args: { volume: 1500, hours: 1 },
        gives: { error: "#VALUE!", says: "above 400 mL an hour: check volume and hours, or give cap" },
        source: "defined by this function's rule: 1 hour for 10; clinic setting, no published source",
      },
      {
        shows: "boundary",
        args: { volume: 250, hours: 0.5, cap: 600 },
        gives: 500,
        source: "by hand: a portion by pump, as this person's cap allows",
      },
      {
        shows: "bad input",
        args: { volume: 1500, hours: 10, step: 0 },
        gives: { error: "#VALUE!", says: "step must be above 0" },
        source: sources.catalogue,
      },
      {
        shows: "bad input",
        args: { volume: 1500, hours: 10, cap: 0 },
        gives: { error: "#VALUE!", says: "cap must be above 0" },
        source: "defined by this function's rule: an empty cell must not lift the cap",
      },
      {
        shows: "boundary",
        args: { volume: 1500, hours: 24, step: 5 },
        gives: 65,
        source: "by hand: 62.5 is half-way and goes up",
      },
      {
        shows: "boundary",
        args: { volume: 1500, hours: 10, step: 0.1, cap: 0.3 },
        gives: 0.3,
        source: "by hand: 0.3 is 3 steps of 0.1, though a little less in binary",
      },
      {
        shows: "boundary",
        args: { volume: 5, hours: 24 },
        gives: { error: "#VALUE!", says: "below half a step" },
        source: sources.catalogue,
      },
    ],
  },
);
