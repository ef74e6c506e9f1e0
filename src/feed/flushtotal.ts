import { sources } from "../sources";
import { define } from "../worksheet/define";
import { documented } from "../worksheet/documented";
import { argument, fault } from "../worksheet/error";
import { rounded } from "../worksheet/numbers";
import { number } from "../worksheet/parameters";
import { optionalVolume, startingPoint, volumeOrNone } from "./arguments";

const noDrugs = fault`${argument("drugs")} is 0 though ${argument("rounds")} are given: say how many in a round`;
const noAround = fault`${argument("around")} is missing: say how much water before and after the medicines`;

export const FLUSHTOTAL = define(
  {
    name: "FLUSHTOTAL",
    family: "Feed and water",
    summary: "Water that flushes add up to in a day: routine ones, and those round medicines.",
    params: {
      routine: number("Routine flushes in a day", { min: 0, max: 100, whole: true }),
      volume: volumeOrNone("Water in each routine flush"),
      rounds: number("Rounds of medicines in a day", { min: 0, max: 50, whole: true, fallback: 0 }),
      drugs: number("Medicines in each round", { min: 0, max: 50, whole: true, fallback: 1 }),
      around: number("Water before and again after each round", {
        unit: "mL",
        above: 0,
        max: 1000,
        zeroIsBlank: true,
        optional: true,
        fallbackHelp: "needed when rounds are given",
      }),
      between: optionalVolume("Water between two medicines of a round"),
    },
    subject: ["routine"],
    result: { shape: "cell", kind: "number", unit: "mL a day", help: "Water from flushes", blank: "" },
    compute: ({ routine, volume, rounds, drugs, around, between }) => {
      const routinely = routine * volume;
      if (rounds === 0) return rounded(routinely);
      if (drugs === 0) return noDrugs;
      if (around === undefined) return noAround;
      return rounded(routinely + rounds * (2 * around + (drugs - 1) * between));
    },
  },
  documented && {
    details:
      "Routine flushes times their volume; for each round of medicines one flush before, one after and one between every " +
      "two. Adults: at least 30 mL, every 4 hours while feed runs all day (6 a day); others say 10 to 60. Children: 5 " +
      "to 10 mL in one hospital, otherwise the smallest that clears the tube; no guideline figure was found.",
    cautions: [
      startingPoint,
      "Flushes count towards the day's fluid.",
      "Water in which a medicine is dissolved is not counted here.",
    ],
    evidence: "hospital",
    sources: [sources.uicFlush, sources.flushOthers, sources.sickKidsFlush, sources.courseNotesFlush],
    examples: [
      { shows: "published", args: { routine: 6, volume: 100 }, gives: 600, source: sources.courseNotesFlush },
      {
        shows: "defined",
        args: { routine: 6, volume: 30 },
        gives: 180,
        source: `${sources.uicFlush}; ${sources.reached}`,
      },
      {
        shows: "defined",
        args: { routine: 0, volume: 0, rounds: 3, drugs: 2, around: 30, between: 15 },
        gives: 225,
        source: `by hand: 3 x (30 + 15 + 30); ${sources.reached}`,
      },
      {
        shows: "range",
        args: { routine: [[6], [""]], volume: 30, rounds: [[2], [2]], drugs: 1, around: 30 },
        gives: [[300], [""]],
        source: "by hand: 180 and 2 x 60",
      },
      { shows: "blank", args: { routine: "", volume: 30 }, gives: "", source: sources.input },
      {
        shows: "bad input",
        args: { routine: 6, volume: 30, rounds: 3 },
        gives: { error: "#VALUE!", says: "around is missing" },
        source: sources.catalogue,
      },
      {
        shows: "bad input",
        args: { routine: 6, volume: 30, rounds: 3, drugs: 0, around: 30 },
        gives: { error: "#VALUE!", says: "drugs is 0" },
        source: sources.catalogue,
      },
      {
        shows: "boundary",
        args: { routine: 6, volume: 30, rounds: 0, drugs: 0 },
        gives: 180,
        source: "by hand: without rounds the medicines do not matter",
      },
    ],
  },
);
