import { sources } from "../sources";
import { define } from "../worksheet/define";
import { documented } from "../worksheet/documented";
import { rounded } from "../worksheet/numbers";
import { density, optionalVolume, proteinPerLitre, startingPoint, volumeOf, waterPercent, weightKg } from "./arguments";
import { tooMuchEnergy } from "./energy";

export const FEEDGIVES = define(
  {
    name: "FEEDGIVES",
    family: "Feed and water",
    summary: "What the feed now running gives in a day, in all and for each kg of weight.",
    params: {
      volume: volumeOf("Feed given in a day"),
      density: density(),
      proteinperlitre: proteinPerLitre(),
      waterpercent: waterPercent(),
      weight: weightKg(),
      flush: optionalVolume("Water given as flushes in a day"),
    },
    subject: ["volume"],
    result: {
      shape: "row",
      kind: "number",
      columns: ["kcal", "kcal per kg", "protein g", "protein g per kg", "water mL", "water mL per kg"],
      help: "What the feed and the flushes give in a day",
      blank: "",
    },
    compute: ({ volume, density, proteinperlitre, waterpercent, weight, flush }) => {
      const energy = rounded(volume * density);
      const tooMuch = tooMuchEnergy(energy, weight);
      if (tooMuch) return tooMuch;
      const protein = proteinperlitre === 0 ? undefined : rounded((volume * proteinperlitre) / 1000);
      const water = rounded((volume * waterpercent) / 100 + flush);
      const perKg = (amount: number): number => rounded(amount / weight);
      return [energy, perKg(energy), protein ?? "", protein === undefined ? "" : perKg(protein), water, perKg(water)];
    },
  },
  documented && {
    details:
      "Volume times what the pack says for each mL, and the same for each kg. Only the water of the feed counts as fluid. " +
      "Published ranges differ by group: adults 25 to 35 kcal and 0.8 to 1.5 g of protein per kg (NICE CG32). More than " +
      "6,000 kcal, or 200 kcal per kg, is refused as a slip (clinic settings, no published source).",
    cautions: [
      startingPoint,
      "What was ordered is not always what was given: enter what was given.",
      "An old weight gives old figures.",
    ],
    evidence: "textbook",
    sources: [
      sources.courseNotesFlush,
      sources.niceFeeding,
      sources.feedWater,
      sources.pretermEnergy,
      sources.noSource,
    ],
    examples: [
      {
        shows: "published",
        args: { volume: 1920, density: 1.2, proteinperlitre: 54, waterpercent: 81, weight: 60, flush: 600 },
        gives: [[2304, 38.4, 103.68, 1.728, 2155.2, 35.92]],
        source: `${sources.courseNotesFlush}; per kg by hand`,
      },
      {
        shows: "range",
        args: { volume: [[1000], [""]], density: 1, proteinperlitre: 0, waterpercent: 85, weight: [[50], [50]] },
        gives: [
          [1000, 20, "", "", 850, 17],
          ["", "", "", "", "", ""],
        ],
        source: "by hand: 85% of 1,000 mL",
      },
      {
        shows: "blank",
        args: { volume: "", density: 1, proteinperlitre: 40, waterpercent: 85, weight: 50 },
        gives: [["", "", "", "", "", ""]],
        source: sources.input,
      },
      {
        shows: "bad input",
        args: { volume: 1000, density: 1, proteinperlitre: 40, waterpercent: 85, weight: "" },
        gives: [[{ error: "#VALUE!" }, "", "", "", "", ""]],
        source: sources.input,
      },
      {
        shows: "bad input",
        args: { volume: 1000, density: 1, proteinperlitre: 40, waterpercent: 0, weight: 50 },
        gives: [[{ error: "#VALUE!" }, "", "", "", "", ""]],
        source: `${sources.feedWater}: 0% is a blank`,
      },
      {
        shows: "bad input",
        args: { volume: 1000, density: 1, proteinperlitre: 40, waterpercent: 85, weight: 4.9 },
        gives: [[{ error: "#VALUE!" }, "", "", "", "", ""]],
        source: `${sources.pretermEnergy}: 204 kcal for each kg are a slip`,
      },
      {
        shows: "boundary",
        args: { volume: 1000, density: 1, proteinperlitre: 40, waterpercent: 40, weight: 5 },
        gives: [[1000, 200, 40, 8, 400, 80]],
        source: `by hand; ${sources.noSource} for both limits`,
      },
    ],
  },
);
