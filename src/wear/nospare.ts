import { sources } from "../sources";
import { define } from "../worksheet/define";
import { documented } from "../worksheet/documented";
import { SheetError } from "../worksheet/error";
import { number } from "../worksheet/parameters";
import { censoring, clinicCurve, deviceColumns, hazardAt, lifeCautions } from "./devices";
import { invented } from "./invented-list";

export const NOSPARE = define(
  {
    name: "NOSPARE",
    family: "Wear",
    summary: "Chance that the device now in fails before a spare ordered today is there.",
    params: {
      age: number("Days that the device has been in", { unit: "days", min: 0 }),
      lead: number("Days until an ordered spare is there", { unit: "days", above: 0, zeroIsBlank: true }),
      ...deviceColumns(),
    },
    subject: ["age"],
    result: {
      shape: "cell",
      kind: "number",
      help: "A chance between 0 and 1: rank people without a spare by it",
      blank: "",
    },
    compute: ({ age, lead, days, failed }): number | SheetError => {
      const curve = clinicCurve(days, failed);
      if (curve instanceof SheetError) return curve;
      return -Math.expm1(hazardAt(curve, age) - hazardAt(curve, age + lead));
    },
  },
  documented && {
    details: `From the Weibull curve of the clinic's list, by maximum likelihood. ${censoring}`,
    cautions: [
      "A small chance is no reason to leave anybody without a spare: it only says whose order comes first.",
      ...lifeCautions,
      "It knows the clinic's devices, not this person: who wears them through fast stands first whatever it says.",
    ],
    evidence: "textbook",
    sources: [sources.cohen, sources.noSource],
    examples: [
      {
        shows: "defined",
        args: { age: 100, lead: 14, days: invented.days, failed: invented.failed },
        gives: 0.056941531016209,
        within: 1e-7,
        source: "R 4.2.2: survreg 3.5-3, then pweibull",
      },
      {
        shows: "range",
        args: { age: [[0], [""], [170]], lead: 14, days: invented.days, failed: invented.failed },
        gives: [[0.009960511948399], [""], [0.077325207464914]],
        within: 1e-7,
        source: "R 4.2.2: survreg 3.5-3, then pweibull",
      },
      {
        shows: "blank",
        args: { age: "", lead: 14, days: invented.days, failed: invented.failed },
        gives: "",
        source: sources.input,
      },
      {
        shows: "bad input",
        args: { age: -1, lead: 14, days: invented.days, failed: invented.failed },
        gives: { error: "#VALUE!", says: "age must be at least 0" },
        source: sources.input,
      },
      {
        shows: "boundary",
        args: { age: 100, lead: 14, days: invented.days.slice(3), failed: invented.failed.slice(3) },
        gives: { error: "#N/A", says: "too few to say: 5 failures of 18 devices" },
        source: sources.noSource,
      },
    ],
  },
);
