import { sources } from "../sources";
import { define, type Row } from "../worksheet/define";
import { documented } from "../worksheet/documented";
import { notAvailable, SheetError } from "../worksheet/error";
import { censoring, confidenceLevel, countedByDay, curveOf, deviceColumns, lifeCautions } from "./devices";
import { treated } from "./published-list";

const noFailure = notAvailable("no device has failed yet: nothing to show");

const cell = (limit: number): number | "" => (Number.isNaN(limit) ? "" : limit);

export const LIFETABLE = define(
  {
    name: "LIFETABLE",
    family: "Wear",
    summary: "Share of devices still working after each day on which one failed, with limits (Kaplan-Meier).",
    params: { ...deviceColumns(), level: confidenceLevel(0.95) },
    subject: ["days"],
    result: {
      shape: "block",
      kind: "number",
      columns: ["day", "at risk", "failed", "share still working", "low", "high"],
      help: "One row for each day on which a device failed",
      blank: "",
    },
    compute: ({ days, failed, level }): string | SheetError | Row[] => {
      const counts = countedByDay(days, failed);
      if (counts === undefined) return "";
      if (counts instanceof SheetError) return counts;
      const { day, atRisk, failed: died, working, low, high } = curveOf(counts, level);
      if (day.length === 0) return noFailure;
      const rows: Row[] = [];
      for (let i = 0; i < day.length; i++) {
        rows.push([day[i]!, atRisk[i]!, died[i]!, working[i]!, cell(low[i]!), cell(high[i]!)]);
      }
      return rows;
    },
  },
  documented && {
    details:
      `${censoring} At risk are the devices in place that day; one that is only known to have lasted until that day is ` +
      "still counted. Where no share is left the limits are blank.",
    cautions: [
      ...lifeCautions,
      "With few devices at risk, at the end of the list, the share jumps: look at the limits.",
    ],
    evidence: "textbook",
    sources: [sources.kaplanMeier, sources.freireich],
    examples: [
      {
        shows: "published",
        args: treated,
        gives: [
          [6, 21, 3, 0.857142857143, 0.619717955266, 0.951551747647],
          [7, 17, 1, 0.806722689076, 0.563146564622, 0.922809019203],
          [10, 15, 1, 0.752941176471, 0.5031995108, 0.889361835169],
          [13, 12, 1, 0.690196078431, 0.431610222486, 0.849065963349],
          [16, 11, 1, 0.627450980392, 0.367510855988, 0.804912189472],
          [22, 7, 1, 0.53781512605, 0.267778936767, 0.746790717635],
          [23, 6, 1, 0.448179271709, 0.188052005959, 0.680142628495],
        ],
        within: 1e-9,
        source: sources.freireich,
      },
      {
        shows: "range",
        args: {
          days: [[90], [""], [150], [90]],
          failed: [["yes"], [""], ["no"], ["no"]],
        },
        gives: [[90, 3, 1, 2 / 3, 0.0540734267865, 0.945206387272]],
        within: 1e-11,
        source:
          "worked by hand: 2 of 3 left; limits (2/3) to the power of exp(1.95996 sqrt(1/6)/ln(2/3)) and its inverse",
      },
      { shows: "blank", args: { days: [[""], [""]], failed: [[""], [""]] }, gives: "", source: sources.input },
      {
        shows: "bad input",
        args: { days: [[90], [120]], failed: [["yes"], [""]] },
        gives: { error: "#VALUE!", says: "failed is missing in row 2" },
        source: sources.input,
      },
      {
        shows: "bad input",
        args: { days: [[90], [120]], failed: [["yes"], ["burst"]] },
        gives: { error: "#VALUE!", says: "failed in row 2 must be yes or no" },
        source: sources.catalogue,
      },
      {
        shows: "boundary",
        args: { days: [[90], [120]], failed: [["no"], ["no"]] },
        gives: { error: "#N/A", says: "no device has failed yet" },
        source: sources.catalogue,
      },
      {
        shows: "boundary",
        args: { days: 90, failed: "yes" },
        gives: [[90, 1, 1, 0, "", ""]],
        source: sources.catalogue,
      },
    ],
  },
);
