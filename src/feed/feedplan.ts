import { sources } from "../sources";
import { define } from "../worksheet/define";
import { documented } from "../worksheet/documented";
import { SheetError } from "../worksheet/error";
import { rounded } from "../worksheet/numbers";
import { number } from "../worksheet/parameters";
import {
  density,
  hoursRunning,
  optionalVolume,
  optionalWeight,
  proteinPerLitre,
  pumpStep,
  startingPoint,
  volumeOf,
  waterPercent,
} from "./arguments";
import { MOST_ENERGY, tooMuchEnergy } from "./energy";
import { FASTEST, FASTEST_FEED, FASTEST_FEED_PER_KG, pumpRate, tooFastFor } from "./pump";

export const FEEDPLAN = define(
  {
    name: "FEEDPLAN",
    family: "Feed and water",
    summary: "From an energy target to a rate of the pump, and all that this rate gives in a day.",
    params: {
      energytarget: number("Energy to be given in a day", {
        unit: "kcal",
        above: 0,
        max: MOST_ENERGY,
        zeroIsBlank: true,
        slipAbove: "kJ?",
      }),
      density: density(),
      hours: hoursRunning(),
      waterpercent: waterPercent(),
      proteinperlitre: proteinPerLitre(),
      fluidgoal: volumeOf("Fluid to be given in a day"),
      flush: optionalVolume("Water given as flushes in a day"),
      step: pumpStep(),
      weight: optionalWeight("energy and rate are not compared with it"),
      fastest: number("Fastest rate that this person's plan allows", {
        unit: "mL/h",
        above: 0,
        max: FASTEST,
        zeroIsBlank: true,
        optional: true,
        fallbackHelp: `${FASTEST_FEED}, and ${FASTEST_FEED_PER_KG} for each kg of weight`,
      }),
    },
    subject: ["energytarget"],
    result: {
      shape: "row",
      kind: "number",
      columns: [
        "mL a day",
        "mL an hour",
        "kcal",
        "protein g",
        "water from feed mL",
        "water in all mL",
        "water still to give mL",
      ],
      help: "Everything follows from the rate that the pump can be set to",
      blank: "",
    },
    compute: ({
      energytarget,
      density,
      hours,
      waterpercent,
      proteinperlitre,
      fluidgoal,
      flush,
      step,
      weight,
      fastest,
    }) => {
      const tooMuch = tooMuchEnergy(energytarget, weight);
      if (tooMuch) return tooMuch;
      const rate = pumpRate(energytarget / density / hours, step);
      if (rate instanceof SheetError) return rate;
      const tooFast = tooFastFor(rate, weight, fastest);
      if (tooFast) return tooFast;
      const volume = rounded(rate * hours);
      const feedWater = rounded((volume * waterpercent) / 100);
      const water = rounded(feedWater + flush);
      return [
        volume,
        rate,
        rounded(volume * density),
        proteinperlitre === 0 ? "" : rounded((volume * proteinperlitre) / 1000),
        feedWater,
        water,
        rounded(fluidgoal - water),
      ];
    },
  },
  documented && {
    details:
      "Target divided by density and hours, rounded to the pump's step (halves up); volume, energy, protein and water " +
      "then follow from that rate, so they can differ a little from the target. Only the water of the feed counts " +
      "towards fluid; some charts count its whole volume. Water still to give is negative when the goal is passed. " +
      "Refused as a slip: a target above 6,000 kcal or 200 kcal per kg, and a rate above 400 mL an hour or 25 mL an hour " +
      "per kg unless fastest allows it (clinic settings, no published source). What needs the weight is left out without it.",
    cautions: [
      startingPoint,
      "Density, protein and water come from the pack; there is no default.",
      "Somebody who has eaten little for days starts lower: look at the risk of refeeding problems.",
    ],
    evidence: "textbook",
    sources: [sources.courseNotes, sources.msdEnteral, sources.noSource],
    examples: [
      {
        shows: "published",
        args: { energytarget: 1800, density: 1, hours: 24, waterpercent: 83, proteinperlitre: 40, fluidgoal: 1800 },
        gives: [[1800, 75, 1800, 72, 1494, 1494, 306]],
        source: sources.courseNotes,
      },
      {
        shows: "published",
        args: {
          energytarget: 2304,
          density: 1.2,
          hours: 24,
          waterpercent: 81,
          proteinperlitre: 54,
          fluidgoal: 2155,
          flush: 600,
        },
        gives: [[1920, 80, 2304, 103.68, 1555.2, 2155.2, -0.2]],
        source: sources.courseNotesFlush,
      },
      {
        shows: "range",
        args: {
          energytarget: [[2400], [""]],
          density: 1,
          hours: 24,
          waterpercent: 85,
          proteinperlitre: 0,
          fluidgoal: 2400,
        },
        gives: [
          [2400, 100, 2400, "", 2040, 2040, 360],
          ["", "", "", "", "", "", ""],
        ],
        source: `${sources.msdEnteral}; water by hand`,
      },
      {
        shows: "blank",
        args: { energytarget: "", density: 1, hours: 24, waterpercent: 85, proteinperlitre: 40, fluidgoal: 1800 },
        gives: [["", "", "", "", "", "", ""]],
        source: sources.input,
      },
      {
        shows: "bad input",
        args: { energytarget: 7531, density: 1, hours: 24, waterpercent: 83, proteinperlitre: 40, fluidgoal: 1800 },
        gives: [[{ error: "#VALUE!" }, "", "", "", "", "", ""]],
        source: `${sources.noSource}: 7,531 kJ are 1,800 kcal (4.184 kJ are 1 kcal)`,
      },
      {
        shows: "bad input",
        args: {
          energytarget: 1800,
          density: 1,
          hours: 4,
          waterpercent: 83,
          proteinperlitre: 40,
          fluidgoal: 1800,
          flush: 0,
          step: 1,
        },
        gives: [[{ error: "#VALUE!" }, "", "", "", "", "", ""]],
        source: `${sources.noSource}: 450 mL an hour`,
      },
      {
        shows: "use",
        args: {
          energytarget: 1800,
          density: 1,
          hours: 4,
          waterpercent: 83,
          proteinperlitre: 40,
          fluidgoal: 1800,
          flush: 0,
          step: 1,
          weight: 60,
          fastest: 450,
        },
        gives: [[1800, 450, 1800, 72, 1494, 1494, 306]],
        source: `${sources.courseNotes}; in 4 hours, by hand`,
      },
      {
        shows: "bad input",
        args: { energytarget: 1800, density: 1, hours: 24, waterpercent: 0.83, proteinperlitre: 40, fluidgoal: 1800 },
        gives: [[{ error: "#VALUE!" }, "", "", "", "", "", ""]],
        source: "defined by this function's rule: a cell that shows 83% holds 0.83",
      },
      {
        shows: "boundary",
        args: {
          energytarget: 1500,
          density: 1,
          hours: 24,
          waterpercent: 85,
          proteinperlitre: 40,
          fluidgoal: 1500,
          step: 5,
        },
        gives: [[1560, 65, 1560, 62.4, 1326, 1326, 174]],
        source: "by hand: 62.5 is half-way between two steps of 5 and goes up",
      },
    ],
  },
);
