import { sources } from "../sources";
import type { Cell } from "../worksheet/cell";
import { define } from "../worksheet/define";
import { documented } from "../worksheet/documented";
import { SheetError } from "../worksheet/error";
import { NOT_KNOWN, number, numberReader, orNotKnown, reading } from "../worksheet/parameters";
import { yesNo } from "../worksheet/yes-no";
import { startingPoint } from "./arguments";

const ADULT = 18;

const fraction = new SheetError("looks like a share of 1: write 15 for 15%, and a loss below 1% as 0");
const readPercent = numberReader({ unit: "%", min: -100, max: 100 });

/** A cell that shows 15% holds 0.15: taken as it stands, a great loss would pass for none. */
const lossOf = (cell: Exclude<Cell, null>): number | null | SheetError => {
  const value = readPercent(cell);
  return typeof value === "number" && value > 0 && value < 1 ? fraction : value;
};

type Known<T> = T | typeof NOT_KNOWN;
const above = (value: Known<number>, limit: number): boolean => value !== NOT_KNOWN && value > limit;
const below = (value: Known<number>, limit: number): boolean => value !== NOT_KNOWN && value < limit;

export const REFEEDINGRISK = define(
  {
    name: "REFEEDINGRISK",
    family: "Feed and water",
    summary: "Which of NICE's criteria for the risk of refeeding problems an adult meets.",
    params: {
      age: orNotKnown(number("Age", { unit: "years", min: 0, max: 120 })),
      bmi: orNotKnown(number("Body mass index", { unit: "kg/m2", min: 5, max: 150, zeroIsBlank: true })),
      losspercent: orNotKnown(
        reading<number, object>(
          "Weight lost without wanting to in the last 3 to 6 months: 15 for 15%; negative: gained",
          { unit: "%", limits: "not between 0 and 1, at most 100" },
          lossOf,
        ),
      ),
      dayslittle: orNotKnown(number("Days with little or no intake", { unit: "days", min: 0, max: 3650 })),
      lowelectrolytes: yesNo("Potassium, phosphate or magnesium low before feeding? yes, no or not known", {
        fallback: NOT_KNOWN,
      }),
      history: yesNo("Alcohol misuse, or insulin, chemotherapy, antacids or diuretics? yes, no or not known", {
        fallback: NOT_KNOWN,
      }),
    },
    subject: [],
    result: {
      shape: "cell",
      kind: "text",
      help: "very high, high, at risk, criteria not met, incomplete or adults only",
      blank: "incomplete",
    },
    compute: ({ age, bmi, losspercent, dayslittle, lowelectrolytes, history }) => {
      if (age === NOT_KNOWN) return "incomplete";
      if (age < ADULT) return "adults only";
      if (below(bmi, 14) || above(dayslittle, 15)) return "very high";
      if (below(bmi, 16) || above(losspercent, 15) || above(dayslittle, 10) || lowelectrolytes === "yes") return "high";
      const lesser = [below(bmi, 18.5), above(losspercent, 10), above(dayslittle, 5), history === "yes"];
      if (lesser.filter(Boolean).length >= 2) return "high";
      const everything = [bmi, losspercent, dayslittle, lowelectrolytes, history];
      if (everything.includes(NOT_KNOWN)) return "incomplete";
      return above(dayslittle, 5) ? "at risk" : "criteria not met";
    },
  },
  documented && {
    details:
      "High: any one of BMI below 16, loss above 15%, more than 10 days of little or no intake, low potassium, phosphate " +
      "or magnesium; or any two of BMI below 18.5, loss above 10%, more than 5 days, history. Very high: BMI below 14 or " +
      "more than 15 days. At risk: neither, but more than 5 days of little or no intake; NICE then starts at no more than " +
      "half of what is needed for the first 2 days. The limits themselves do not count. What is given decides as soon as " +
      "it suffices; at risk and criteria not met need every answer. Other bodies (ASPEN 2020) draw the lines elsewhere.",
    cautions: [
      startingPoint,
      "Criteria not met is not a statement that feeding is without risk.",
      "Adults only: children have other criteria.",
      "At risk: a dietitian plans a slow start, with blood tests.",
      "High or very high: a dietitian and a doctor plan the start, with blood tests, before any feed.",
    ],
    evidence: "guideline",
    sources: [sources.niceRefeeding, sources.niceFiveDays, sources.refeedingTable],
    examples: [
      {
        shows: "published",
        args: { age: 40, bmi: 15.9, losspercent: 0, dayslittle: 0 },
        gives: "high",
        source: sources.niceRefeeding,
      },
      {
        shows: "published",
        args: { age: 40, bmi: 17, losspercent: 0, dayslittle: 6 },
        gives: "high",
        source: `${sources.niceRefeeding}: two of the lesser criteria`,
      },
      {
        shows: "published",
        args: { age: 40, bmi: 13.9, losspercent: "", dayslittle: "" },
        gives: "very high",
        source: sources.niceRefeeding,
      },
      {
        shows: "use",
        args: { age: 40, bmi: 17, losspercent: 0, dayslittle: 0, lowelectrolytes: "no", history: "no" },
        gives: "criteria not met",
        source: `${sources.niceRefeeding}: one of the lesser criteria alone`,
      },
      {
        shows: "published",
        args: { age: 40, bmi: 22, losspercent: 0, dayslittle: 6, lowelectrolytes: "no", history: "no" },
        gives: "at risk",
        source: sources.niceFiveDays,
      },
      {
        shows: "use",
        args: { age: 40, bmi: 22, losspercent: 0, dayslittle: 6, lowelectrolytes: "no", history: "" },
        gives: "incomplete",
        source: `${sources.niceRefeeding}: a second lesser criterion would make it high`,
      },
      {
        shows: "range",
        args: {
          age: [[40], [9], [40]],
          bmi: [[22], [15], [22]],
          losspercent: [[16], [16], [0]],
          dayslittle: [[0], [0], [0]],
        },
        gives: [["high"], ["adults only"], ["incomplete"]],
        source: sources.niceRefeeding,
      },
      {
        shows: "blank",
        args: { age: "", bmi: "", losspercent: "", dayslittle: "" },
        gives: "incomplete",
        source: sources.catalogue,
      },
      {
        shows: "bad input",
        args: { age: 40, bmi: 22, losspercent: 0.16, dayslittle: 0 },
        gives: { error: "#VALUE!", says: "write 15 for 15%" },
        source: "defined by this function's rule: a cell that shows 16% holds 0.16",
      },
      {
        shows: "bad input",
        args: { age: 40, bmi: 22, losspercent: 0, dayslittle: 0, history: "some" },
        gives: { error: "#VALUE!", says: "history must be yes, no or not known" },
        source: sources.catalogue,
      },
      {
        shows: "boundary",
        args: { age: 40, bmi: 16, losspercent: 15, dayslittle: 10, lowelectrolytes: "no", history: "no" },
        gives: "high",
        source: `${sources.niceRefeeding}: none of the greater ones, but three of the lesser`,
      },
      {
        shows: "boundary",
        args: { age: 40, bmi: 16, losspercent: 10, dayslittle: 5, lowelectrolytes: "no", history: "no" },
        gives: "criteria not met",
        source: `${sources.niceRefeeding}: strict comparisons`,
      },
      {
        shows: "boundary",
        args: { age: 18, bmi: 14, losspercent: 0, dayslittle: 15 },
        gives: "high",
        source: `${sources.niceRefeeding}: strict comparisons`,
      },
    ],
  },
);
