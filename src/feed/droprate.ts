import { sources } from "../sources";
import { define } from "../worksheet/define";
import { documented } from "../worksheet/documented";
import { notAvailable } from "../worksheet/error";
import { rounded } from "../worksheet/numbers";
import { number } from "../worksheet/parameters";
import { startingPoint, volumeOf } from "./arguments";

/** Drops a minute: more than three a second cannot be told apart by eye. Clinic setting, no published source. */
const MOST_COUNTED = 200;
const tooFast = notAvailable(
  `above ${MOST_COUNTED} drops a minute, too fast to count: check volume, minutes and drops, or use a pump`,
);

export const DROPRATE = define(
  {
    name: "DROPRATE",
    family: "Feed and water",
    summary: "Drops a minute that let a volume of feed run in by gravity in so many minutes.",
    params: {
      volume: volumeOf("Feed to run in"),
      minutes: number("In so many minutes", {
        unit: "minutes",
        unitTexts: ["min"],
        above: 0,
        max: 1440,
        zeroIsBlank: true,
      }),
      dropspermillilitre: number("Drops that make 1 mL, from the pack of the giving set", {
        unit: "drops",
        above: 0,
        max: 100,
        zeroIsBlank: true,
      }),
    },
    subject: ["volume"],
    result: { shape: "cell", kind: "number", unit: "drops a minute", help: "Drops to count in a minute", blank: "" },
    compute: ({ volume, minutes, dropspermillilitre }) => {
      const drops = rounded((volume * dropspermillilitre) / minutes);
      return drops > MOST_COUNTED ? tooFast : drops;
    },
  },
  documented && {
    details:
      "Volume times drops per mL over minutes. There is no default: 14 and 20 drops per mL are both published. Above 200 a minute " +
      "nobody can count: #N/A (clinic setting, no published source).",
    cautions: [
      startingPoint,
      "The pack decides how many drops make a mL: a wrong figure is a wrong rate by a third or more.",
      "Thick feed drips otherwise than thin; count again after some minutes.",
      "Nobody is left alone with feed running by gravity unless the plan says so.",
    ],
    evidence: "common practice",
    sources: [sources.dropsAspen, sources.dropsOther, sources.noSource],
    examples: [
      {
        shows: "published",
        args: { volume: 60, minutes: 60, dropspermillilitre: 14 },
        gives: 14,
        source: `${sources.dropsAspen}: 60 mL in an hour are 840 drops an hour`,
      },
      {
        shows: "defined",
        args: { volume: 240, minutes: 30, dropspermillilitre: 20 },
        gives: 160,
        source: `${sources.dropsOther}; ${sources.reached}`,
      },
      {
        shows: "range",
        args: { volume: [[100], [""]], minutes: [[60], [60]], dropspermillilitre: 20 },
        gives: [[33.3], [""]],
        within: 0.05,
        source: `${sources.dropsOther}; ${sources.reached}`,
      },
      { shows: "blank", args: { volume: "", minutes: 60, dropspermillilitre: 20 }, gives: "", source: sources.input },
      {
        shows: "bad input",
        args: { volume: 240, minutes: 30, dropspermillilitre: "" },
        gives: { error: "#VALUE!", says: "dropspermillilitre is missing" },
        source: sources.catalogue,
      },
      {
        shows: "bad input",
        args: { volume: 250, minutes: 15, dropspermillilitre: 20 },
        gives: { error: "#N/A", says: "too fast to count" },
        source: `${sources.noSource}: 333 drops a minute`,
      },
      {
        shows: "boundary",
        args: { volume: 300, minutes: 30, dropspermillilitre: 20 },
        gives: 200,
        source: "by hand: 6,000 drops in 30 minutes",
      },
      {
        shows: "boundary",
        args: { volume: 100, minutes: 60, dropspermillilitre: 14 },
        gives: 23.3,
        within: 0.05,
        source: `${sources.dropsAspen}; ${sources.reached}`,
      },
    ],
  },
);
