import { notExceeded } from "../maths/poisson-binomial";
import { sources } from "../sources";
import { define } from "../worksheet/define";
import { documented } from "../worksheet/documented";
import { SheetError } from "../worksheet/error";
import { number } from "../worksheet/parameters";
import { numberColumn } from "../worksheet/rows";
import { censoring, clinicCurve, deviceColumns, hazardAt, lifeCautions } from "./devices";
import { invented } from "./invented-list";

export const UNPLANNED = define(
  {
    name: "UNPLANNED",
    family: "Wear",
    summary:
      "How many of the devices now in fail within a window: the number that is not exceeded in a given share of cases.",
    params: {
      age: numberColumn("Days that each device has been in, one row a device now in", {
        unit: "days",
        limits: "at least 0",
        min: 0,
      }),
      window: number("Days to look ahead", { unit: "days", above: 0, zeroIsBlank: true }),
      ...deviceColumns(),
      share: number("Share of cases in which the number is enough: 0.9 is nine months in ten", {
        above: 0,
        below: 1,
        fallback: 0.9,
      }),
    },
    subject: ["window"],
    result: { shape: "cell", kind: "number", help: "Unplanned changes that are not exceeded in that share", blank: "" },
    compute: ({ age, window, days, failed, share }): number | string | SheetError => {
      const curve = clinicCurve(days, failed);
      if (curve instanceof SheetError) return curve;
      const ages = age.values.filter((one) => !Number.isNaN(one));
      if (ages.length === 0) return "";
      const chances = ages.map((one) => -Math.expm1(hazardAt(curve, one) - hazardAt(curve, one + window)));
      return notExceeded(chances, share);
    },
  },
  documented && {
    details:
      "Each device has a chance of its own to fail within the window, given how long it has lasted, from the Weibull curve " +
      `of the list. ${censoring} Their number is then worked out exactly (Poisson-binomial). Planned changes within the ` +
      "window are not counted: add them.",
    cautions: [
      "A device of unknown age is left out: count such rows and add them in mind, or the number is too small.",
      "One failure for each device at most: what is put in instead and fails too is not counted.",
      ...lifeCautions,
    ],
    evidence: "textbook",
    sources: [sources.hong, sources.cohen, sources.noSource],
    examples: [
      {
        shows: "defined",
        args: { age: [[10], [60], [100], [150], [170]], window: 30, days: invented.days, failed: invented.failed },
        gives: 2,
        source: "R 4.2.2: survreg 3.5-3; all 32 outcomes of five devices added up",
      },
      {
        shows: "range",
        args: {
          age: [[10], [60], [""], [100], [150], [170]],
          window: [[30], [""], [180]],
          days: invented.days,
          failed: invented.failed,
          share: 0.5,
        },
        gives: [[0], [""], [3]],
        source: "R 4.2.2: survreg 3.5-3; all 32 outcomes of five devices added up",
      },
      {
        shows: "blank",
        args: { age: [[10]], window: "", days: invented.days, failed: invented.failed },
        gives: "",
        source: sources.input,
      },
      {
        shows: "bad input",
        args: { age: [[10], [-5]], window: 30, days: invented.days, failed: invented.failed },
        gives: { error: "#VALUE!", says: "age in row 2 must be at least 0" },
        source: sources.input,
      },
      {
        shows: "boundary",
        args: { age: [[10]], window: 30, days: invented.days.slice(3), failed: invented.failed.slice(3) },
        gives: { error: "#N/A", says: "too few to say" },
        source: sources.noSource,
      },
    ],
  },
);
