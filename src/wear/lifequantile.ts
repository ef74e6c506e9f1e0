import { lifeQuantile } from "../maths/survival";
import { sources } from "../sources";
import { define, type Row } from "../worksheet/define";
import { documented } from "../worksheet/documented";
import { SheetError } from "../worksheet/error";
import { number } from "../worksheet/parameters";
import { censoring, confidenceLevel, countedByDay, curveOf, deviceColumns, lifeCautions } from "./devices";
import { placebo, treated } from "./published-list";

export const LIFEQUANTILE = define(
  {
    name: "LIFEQUANTILE",
    family: "Wear",
    summary: "Day by which a share of the devices has failed, half of them if not said otherwise, with limits.",
    params: {
      ...deviceColumns(),
      share: number("Share that has failed by then", { above: 0, max: 1, fallback: 0.5 }),
      level: confidenceLevel(0.95),
    },
    subject: ["days"],
    result: {
      shape: "row",
      kind: "number",
      unit: "days",
      columns: ["days", "low", "high"],
      help: "Day and its limits; a cell is blank where so many have not failed",
      blank: "",
    },
    compute: ({ days, failed, share, level }): string | SheetError | Row => {
      const counts = countedByDay(days, failed);
      if (counts === undefined) return "";
      if (counts instanceof SheetError) return counts;
      const { day, low, high } = lifeQuantile(curveOf(counts, level), share);
      return [day ?? "", low ?? "", high ?? ""];
    },
  },
  documented && {
    details:
      `Read from the Kaplan-Meier curve (LIFETABLE). ${censoring} Where the curve lies exactly at the share for a while, ` +
      "the middle of that time is given, as R does. A blank cell means: not yet reached by these devices.",
    cautions: [
      ...lifeCautions,
      "A median is not an interval for change: by then half have failed.",
      "Published lives differ by kind and size of device (median 148 to 262 days in one study): do not mix kinds.",
    ],
    evidence: "textbook",
    sources: [sources.kaplanMeier, sources.survfitQuantile, sources.freireich, sources.cha],
    examples: [
      {
        shows: "published",
        args: treated,
        gives: [[23, 13, ""]],
        source: `${sources.freireich}: published median 23 weeks`,
      },
      {
        shows: "published",
        args: placebo,
        gives: [[8, 4, 11]],
        source: `${sources.freireich}: published median 8 weeks`,
      },
      {
        shows: "range",
        args: {
          days: [[9], [3], [5], [3], [12], [5], [20]],
          failed: [["yes"], ["yes"], ["no"], ["yes"], ["no"], ["yes"], ["yes"]],
          share: [[0.1], [0.5], [0.9]],
        },
        gives: [
          [3, 3, 5],
          [9, 3, ""],
          [20, 9, ""],
        ],
        source: "R survival 3.5-3, quantile.survfit, log-log limits",
      },
      {
        shows: "boundary",
        args: { days: [[10], [20], [30], [40]], failed: [["yes"], ["yes"], ["no"], ["no"]] },
        gives: [[30, 10, ""]],
        source: `${sources.survfitQuantile}: half from day 20 to day 40`,
      },
      {
        shows: "boundary",
        args: { days: [[90], [120]], failed: [["no"], ["no"]] },
        gives: [["", "", ""]],
        source: sources.catalogue,
      },
      {
        shows: "blank",
        args: { days: [[""], [0]], failed: [[""], [0]] },
        gives: [["", "", ""]],
        source: sources.input,
      },
      {
        shows: "bad input",
        args: { days: [[90], [120]], failed: [["yes"], ["no"]], share: 50 },
        gives: [[{ error: "#VALUE!" }, "", ""]],
        source: sources.catalogue,
      },
      {
        shows: "bad input",
        args: { days: [[90], [120], [60]], failed: [["yes"], ["no"]] },
        gives: [[{ error: "#VALUE!" }, "", ""]],
        source: sources.input,
      },
    ],
  },
);
