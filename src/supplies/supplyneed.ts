import { sources } from "../sources";
import { define } from "../worksheet/define";
import { documented } from "../worksheet/documented";
import { rounded } from "../worksheet/numbers";
import { choice, number } from "../worksheet/parameters";

/** Whole packs, without one too many for a quotient that binary floats lift above a whole number. */
const packsFor = (pieces: number, size: number): number => Math.ceil(rounded(pieces / size));

export const SUPPLYNEED = define(
  {
    name: "SUPPLYNEED",
    family: "Supplies",
    summary: "How many packs cover so many pieces a day for so many days.",
    params: {
      perday: number("Pieces, or mL, used in a day", { min: 0, max: 1e6 }),
      days: number("Days to be covered", { unit: "days", min: 0, max: 3660, whole: true }),
      pack: number("Pieces, or mL, in a pack", { above: 0, max: 1e6, zeroIsBlank: true }),
      opened: choice("What becomes of the rest of an opened pack", ["kept", "discarded daily"], { fallback: "kept" }),
      case: number("Packs in a case, when only whole cases are delivered", {
        above: 0,
        max: 1e6,
        whole: true,
        fallback: 1,
      }),
    },
    subject: ["perday"],
    result: { shape: "cell", kind: "number", unit: "packs", help: "Packs to order", blank: "" },
    compute: ({ perday, days, pack, opened, case: inCase }) => {
      const packs = opened === "kept" ? packsFor(perday * days, pack) : days * packsFor(perday, pack);
      return packsFor(packs, inCase) * inCase;
    },
  },
  documented && {
    details:
      "Kept: what a pack still holds is used the next day, so the days are added up first. Discarded daily: each day begins " +
      "with a new pack (feed once opened, single-use items). Rounded up to whole packs, and to whole cases.",
    cautions: [
      "Nothing is added for loss or a late delivery: order earlier, or cover more days.",
      "Whether an opened pack may be kept, and how long, stands on its label.",
    ],
    evidence: "common practice",
    sources: [sources.commonPractice],
    examples: [
      {
        shows: "defined",
        args: { perday: 1500, days: 28, pack: 1000 },
        gives: 42,
        source: "worked by hand: 42,000 mL in packs of 1,000 mL",
      },
      {
        shows: "use",
        args: { perday: 1500, days: 28, pack: 1000, opened: "discarded daily", case: 8 },
        gives: 56,
        source: "worked by hand: 2 packs on each of 28 days, 7 cases of 8",
      },
      {
        shows: "range",
        args: { perday: [[4], [0.5], [""]], days: 30, pack: 7 },
        gives: [[18], [3], [""]],
        source: "worked by hand: 120 / 7 and 15 / 7, rounded up",
      },
      { shows: "blank", args: { perday: "", days: 28, pack: 100 }, gives: "", source: sources.input },
      {
        shows: "bad input",
        args: { perday: 4, days: 28, pack: 0 },
        gives: { error: "#VALUE!", says: "pack is missing" },
        source: sources.input,
      },
      {
        shows: "bad input",
        args: { perday: 4, days: 28, pack: 10, opened: "thrown away" },
        gives: { error: "#VALUE!", says: "opened must be one of: kept, discarded daily" },
        source: sources.input,
      },
      {
        shows: "boundary",
        args: { perday: 4, days: 25, pack: 100 },
        gives: 1,
        source: "worked by hand: exactly one pack",
      },
      {
        shows: "boundary",
        args: { perday: 0.1, days: 3, pack: 0.3 },
        gives: 1,
        source: "IEEE 754: 0.1 x 3 is a little more than 0.3 in binary",
      },
    ],
  },
);
