import { leastCostLogAge, meanStay } from "../maths/age-replacement";
import { normalQuantile } from "../maths/normal";
import type { Weibull } from "../maths/weibull";
import { sources } from "../sources";
import { define, type Row } from "../worksheet/define";
import { documented } from "../worksheet/documented";
import { notAvailable, SheetError } from "../worksheet/error";
import { number } from "../worksheet/parameters";
import { censoring, clinicCurve, confidenceLevel, deviceColumns, lifeCautions } from "./devices";
import { invented } from "./invented-list";

const DAYS_A_YEAR = 365.25;
const PEOPLE = 100;

/** Half a step in ln shape for a slope: small beside its standard error, large beside rounding. */
const HALF_STEP = 1e-4;

const neverPays = notAvailable(
  "no planned change pays in these data: devices fail at any age alike, or younger ones sooner; the agreed interval and the label stand",
);

/** Standard error of ln of the best day (delta method). */
function logError({ shape, variance }: Weibull, costRatio: number): number {
  const half = Math.min(HALF_STEP, Math.log(shape) / 2);
  const at = (logShape: number): number => leastCostLogAge(Math.exp(logShape), costRatio) ?? NaN;
  const slope = (at(Math.log(shape) + half) - at(Math.log(shape) - half)) / (2 * half);
  return Math.sqrt(variance.logScale + slope * slope * variance.logShape + 2 * slope * variance.covariance);
}

export const AGEREPLACE = define(
  {
    name: "AGEREPLACE",
    family: "Wear",
    summary: "Does a planned change pay, and when: the day at which planned and unplanned changes together cost least.",
    params: {
      ...deviceColumns(),
      costratio: number("What an unplanned change costs over a planned one (visits, hours): 3 is three times", {
        above: 1,
      }),
      level: confidenceLevel(0.9),
    },
    subject: ["days"],
    result: {
      shape: "row",
      kind: "number",
      columns: ["day", "share failing before it", "planned a year", "unplanned a year", "low", "high"],
      help: "Day, share of devices that fail before it, changes a year for 100 people, and the day's limits",
      blank: "",
    },
    compute: ({ days, failed, costratio, level }): string | SheetError | Row => {
      if (days.values.every(Number.isNaN)) return "";
      const curve = clinicCurve(days, failed);
      if (curve instanceof SheetError) return curve;
      const logAge = leastCostLogAge(curve.shape, costratio);
      if (logAge === undefined) return neverPays;
      const age = Math.exp(logAge);
      const lasting = Math.exp(-(age ** curve.shape));
      const scale = Math.exp(curve.logScale);
      const cycles = (PEOPLE * DAYS_A_YEAR) / (meanStay(curve.shape, age) * scale);
      const swing = Math.exp(normalQuantile((1 + level) / 2) * logError(curve, costratio));
      const day = age * scale;
      return [day, 1 - lasting, lasting * cycles, (1 - lasting) * cycles, day / swing, day * swing];
    },
  },
  documented && {
    details:
      `Age replacement on the Weibull curve of the list, by maximum likelihood. ${censoring} Only the ratio of the costs ` +
      "matters, and they are the clinic's own. Where the curve's shape is not above 1 no planned change pays: #N/A.",
    cautions: [
      "Only ever a reason to change earlier than agreed. A later day is no reason to wait: the agreed interval and the label stand.",
      ...lifeCautions,
      "It counts visits or hours, not what an unplanned change means to the person: a tract can close.",
      "Do not mix kinds or sizes of device.",
    ],
    evidence: "textbook",
    sources: [sources.barlowProschan, sources.cohen, sources.noSource],
    examples: [
      {
        shows: "defined",
        args: { days: invented.days, failed: invented.failed, costratio: 5 },
        gives: [
          [140.665515136936, 0.34919371027274, 197.363928153155, 105.896706030113, 55.3922815422811, 357.211990512366],
        ],
        within: 1e-3,
        source: "R 4.2.2: survreg 3.5-3; least cost by optimize over integrate; limits by the delta method",
      },
      {
        shows: "range",
        args: { days: invented.days, failed: invented.failed, costratio: [[3], [""], [10]] },
        gives: [
          [226.461964843288, 0.6066753150089, 87.143935681289, 134.413314617565, 64.7718621894365, 791.779327046656],
          [{ error: "#VALUE!" }, "", "", "", "", ""],
          [83.2370671712001, 0.1669895526708, 391.251357913235, 78.4322567012893, 43.4136109507677, 159.590718199412],
        ],
        within: 1e-3,
        source: "R 4.2.2: survreg 3.5-3; least cost by optimize over integrate; limits by the delta method",
      },
      {
        shows: "blank",
        args: { days: [[""]], failed: [[""]], costratio: 5 },
        gives: [["", "", "", "", "", ""]],
        source: sources.input,
      },
      {
        shows: "bad input",
        args: { days: invented.days, failed: invented.failed, costratio: 1 },
        gives: [[{ error: "#VALUE!" }, "", "", "", "", ""]],
        source: sources.barlowProschan,
      },
      {
        shows: "boundary",
        args: {
          days: [[1], [1], [2], [3], [5], [9], [20], [60], ...new Array(12).fill([180])],
          failed: [...new Array(8).fill(["yes"]), ...new Array(12).fill(["no"])],
          costratio: 5,
        },
        gives: [[{ error: "#N/A" }, "", "", "", "", ""]],
        source: "R 4.2.2, survreg 3.5-3: the shape is below 1 (young devices fail sooner), so that no day costs least",
      },
    ],
  },
);
