import { normalQuantile } from "../maths/normal";
import { weibullLogQuantile } from "../maths/weibull";
import { sources } from "../sources";
import { define, type Row } from "../worksheet/define";
import { documented } from "../worksheet/documented";
import { notAvailable, SheetError } from "../worksheet/error";
import { number } from "../worksheet/parameters";
import { censoring, deviceColumns, lifeCautions, weibullOf } from "./devices";

/** Below this many failures no interval is offered. Clinic setting, no published source. */
const LEAST_FAILURES = 10;

export const FAILBY = define(
  {
    name: "FAILBY",
    family: "Wear",
    summary: "Day by which a given share of devices fails, from a fitted Weibull distribution, with its lower limit.",
    params: {
      ...deviceColumns(),
      risk: number("Share that may have failed by then: 0.1 is one in ten", { above: 0, below: 1 }),
      level: number("Confidence level of the lower limit, one-sided", { min: 0.5, below: 1, fallback: 0.95 }),
    },
    subject: ["days"],
    result: {
      shape: "row",
      kind: "number",
      unit: "days",
      columns: ["days", "lower limit", "failures"],
      help: "Day, its one-sided lower limit, and the number of failures it rests on",
      blank: "",
    },
    compute: ({ days, failed, risk, level }): string | SheetError | Row => {
      const fit = weibullOf(days, failed);
      if (fit === undefined) return "";
      if (fit instanceof SheetError) return fit;
      if (fit.failures < LEAST_FAILURES) {
        return notAvailable(`too few: ${fit.failures} failures, at least ${LEAST_FAILURES} are needed`);
      }
      const { log, error } = weibullLogQuantile(fit, risk);
      return [Math.exp(log), Math.exp(log - normalQuantile(level) * error), fit.failures];
    },
  },
  documented && {
    details:
      `Weibull distribution by maximum likelihood. ${censoring} The lower limit says how early the day may truly lie; ` +
      "plan with it, not with the day itself.",
    cautions: [
      "Evidence for a clinic's own interval, never a reason to exceed the device's label or the clinic's limit.",
      ...lifeCautions,
      "A risk smaller than one in the number of devices lies outside the data: only the model speaks there.",
      "Do not mix kinds or sizes of device.",
    ],
    evidence: "textbook",
    sources: [sources.cohen, sources.nistWeibull, sources.noSource],
    examples: [
      {
        shows: "published",
        args: {
          days: [[54], [187], [216], [240], [244], [335], [361], [373], [375], [386], ...new Array(10).fill([500])],
          failed: [...new Array(10).fill(["yes"]), ...new Array(10).fill(["no"])],
          risk: 0.1,
          level: 0.975,
        },
        gives: [[164.02243866, 83.8751295255, 10]],
        within: 1e-7,
        source: sources.nistWeibullExact,
      },
      {
        shows: "range",
        args: {
          days: [[54], [187], [216], [240], [244], [335], [361], [373], [375], [386], ...new Array(10).fill([500])],
          failed: [...new Array(10).fill(["yes"]), ...new Array(10).fill(["no"])],
          risk: [[0.05], [0.5], [""]],
          level: 0.975,
        },
        gives: [
          [107.952631193, 44.6917009383, 10],
          [490.173781231, 340.206908067, 10],
          [{ error: "#VALUE!" }, "", ""],
        ],
        within: 1e-7,
        source: sources.nistWeibullExact,
      },
      {
        shows: "blank",
        args: { days: [[""]], failed: [[""]], risk: 0.1 },
        gives: [["", "", ""]],
        source: sources.input,
      },
      {
        shows: "bad input",
        args: { days: [[100], [200]], failed: [["yes"], ["yes"]], risk: 10 },
        gives: [[{ error: "#VALUE!" }, "", ""]],
        source: sources.catalogue,
      },
      {
        shows: "boundary",
        args: {
          days: [[54], [187], [216], [240], [244], [335], [361], [373], [375], [500]],
          failed: [...new Array(9).fill(["yes"]), ["no"]],
          risk: 0.1,
        },
        gives: [[{ error: "#N/A" }, "", ""]],
        source: sources.noSource,
      },
    ],
  },
);
