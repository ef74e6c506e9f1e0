import { normalQuantile } from "../maths/normal";
import { sources } from "../sources";
import { define, type Row } from "../worksheet/define";
import { documented } from "../worksheet/documented";
import { SheetError } from "../worksheet/error";
import { censoring, confidenceLevel, deviceColumns, lifeCautions, weibullOf } from "./devices";

export const LIFEWEIBULL = define(
  {
    name: "LIFEWEIBULL",
    family: "Wear",
    summary: "Shape and scale of the Weibull distribution that fits the lives of devices best, with limits.",
    params: { ...deviceColumns(), level: confidenceLevel(0.95) },
    subject: ["days"],
    result: {
      shape: "row",
      kind: "number",
      columns: ["shape", "low", "high", "scale", "low", "high"],
      help: "Shape above 1: wears out with age; 1: fails at any age alike; the scale is in days",
      blank: "",
    },
    compute: ({ days, failed, level }): string | SheetError | Row => {
      const fit = weibullOf(days, failed);
      if (fit === undefined) return "";
      if (fit instanceof SheetError) return fit;
      const z = normalQuantile((1 + level) / 2);
      const around = (log: number, variance: number): number[] => {
        const swing = z * Math.sqrt(variance);
        return [Math.exp(log), Math.exp(log - swing), Math.exp(log + swing)];
      };
      return [...around(Math.log(fit.shape), fit.variance.logShape), ...around(fit.logScale, fit.variance.logScale)];
    },
  },
  documented && {
    details:
      `Maximum likelihood. ${censoring} By the scale 63% have failed. A shape whose limits lie above 1 says that devices ` +
      "wear out, so that a planned change can forestall failures; near 1 a new device fails as soon as an old one.",
    cautions: [
      ...lifeCautions,
      "The curve is a model: compare it with LIFETABLE before you believe it, above all far from your own data.",
      "Do not mix kinds or sizes of device: a mixture looks as if devices wore out less than each kind does.",
    ],
    evidence: "textbook",
    sources: [sources.cohen, sources.nistWeibull],
    examples: [
      {
        shows: "published",
        args: {
          days: [[54], [187], [216], [240], [244], [335], [361], [373], [375], [386], ...new Array(10).fill([500])],
          failed: [...new Array(10).fill(["yes"]), ...new Array(10).fill(["no"])],
        },
        gives: [[1.7207972608, 0.971266101954, 3.04874555678, 606.527558004, 405.089293533, 908.134785319]],
        within: 1e-8,
        source: sources.nistWeibullExact,
      },
      {
        shows: "range",
        args: { days: [[100], [""], [200]], failed: [["yes"], [""], ["yes"]], level: 0.9 },
        gives: [[3.46154085, 1.312869101, 9.126778172, 167.8677414, 117.7309373, 239.3557653]],
        within: 1e-7,
        source:
          "worked by hand: the shape is 2 x / ln 2 with x tanh x = 1, var(ln shape) = 1 / (2 x^2); agrees with R survreg",
      },
      {
        shows: "blank",
        args: { days: [[""]], failed: [[""]] },
        gives: [["", "", "", "", "", ""]],
        source: sources.input,
      },
      {
        shows: "bad input",
        args: { days: [[100], [-2]], failed: [["yes"], ["yes"]] },
        gives: { error: "#VALUE!", says: "days in row 2 must be above 0" },
        source: sources.catalogue,
      },
      {
        shows: "boundary",
        args: { days: [[100], [200]], failed: [["yes"], ["no"]] },
        gives: [[{ error: "#N/A" }, "", "", "", "", ""]],
        source: sources.catalogue,
      },
      {
        shows: "boundary",
        args: { days: [[100], [100], [100]], failed: [["yes"], ["yes"], ["yes"]] },
        gives: [[{ error: "#N/A" }, "", "", "", "", ""]],
        source: sources.catalogue,
      },
    ],
  },
);
