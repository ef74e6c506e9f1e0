import { sources } from "../sources";
import type { Cell } from "../worksheet/cell";
import { define } from "../worksheet/define";
import { documented } from "../worksheet/documented";
import { argument, fault, SheetError } from "../worksheet/error";
import { rounded } from "../worksheet/numbers";
import { numberReader, reading } from "../worksheet/parameters";
import { startingPoint, weightKg } from "./arguments";

const RULES = ["Holliday-Segar", "4-2-1"] as const;
type Method = (typeof RULES)[number] | number;

/** The curve was drawn from 3 to 70 kg (Holliday and Segar 1957). */
const CURVE_BEGINS = 3;
const CURVE_ENDS = 70;
/** mL per kg: the largest figure found, for preterm infants. A larger number is rather a day's volume. */
const MOST_PER_KG = 200;
/** mL per kg: a smaller number is rather litres, or none. Clinic setting, no published source. */
const LEAST_PER_KG = 5;

const readPerKg = numberReader({
  unit: "mL per kg",
  unitTexts: ["mL/kg", "mL/kg/d", "mL/kg/day"],
  min: LEAST_PER_KG,
  max: MOST_PER_KG,
  zeroIsBlank: true,
  slipBelow: "litres, or for an hour?",
  slipAbove: "a whole day's volume?",
});

const readMethod = (cell: Exclude<Cell, null>): Method | null | SheetError => {
  const word = String(cell).trim().toLowerCase();
  const rule = RULES.find((name) => name.toLowerCase() === word);
  if (rule) return rule;
  const perKg = readPerKg(cell);
  return perKg instanceof SheetError && typeof cell !== "number"
    ? new SheetError(`must be ${RULES.join(", ")} or a number of mL per kg (${LEAST_PER_KG} to ${MOST_PER_KG})`)
    : perKg;
};

const tooSmall = fault`${argument("weight")} is below ${CURVE_BEGINS} kg: these rules begin there; give mL per kg`;
const children = fault`${argument("weight")} is above ${CURVE_ENDS} kg: these rules are for children; give mL per kg`;

/** Three slopes: up to 10 kg, the next 10 kg, and above. */
const stepped = (weight: number, [first, second, third]: readonly [number, number, number]): number =>
  first * Math.min(weight, 10) + second * Math.min(Math.max(weight - 10, 0), 10) + third * Math.max(weight - 20, 0);

export const FLUIDGOAL = define(
  {
    name: "FLUIDGOAL",
    family: "Feed and water",
    summary: "Fluid for a day by weight: a children's rule, or so many mL per kg.",
    params: {
      weight: weightKg(),
      method: reading<Method, object>(
        "Holliday-Segar, 4-2-1, or a number of mL per kg; there is no default",
        { limits: `a number: at least ${LEAST_PER_KG}, at most ${MOST_PER_KG}` },
        readMethod,
      ),
    },
    subject: ["weight"],
    result: { shape: "cell", kind: "number", unit: "mL a day", help: "Fluid for a day", blank: "" },
    compute: ({ weight, method }) => {
      if (typeof method === "number") return rounded(weight * method);
      if (weight < CURVE_BEGINS) return tooSmall;
      if (weight > CURVE_ENDS) return children;
      return rounded(method === "4-2-1" ? 24 * stepped(weight, [4, 2, 1]) : stepped(weight, [100, 50, 20]));
    },
  },
  documented && {
    details:
      "Holliday-Segar: 100 mL per kg up to 10 kg, 50 for the next 10, 20 above. 4-2-1 is the hourly rule, here times 24; " +
      "the two differ (22 kg: 1,540 and 1,488 mL). Some texts use 25 mL instead of 20 above 20 kg; this is the original. Both rules hold from 3 to 70 kg. " +
      "Adults: a number of mL per kg; NICE says 30 to 35, others split by age (30 from 60 years, or 25 from 75).",
    cautions: [
      startingPoint,
      "Not under 14 days of age. Not for heart or kidney disease, fever, losses or a fluid limit.",
      "It counts all fluid: feed, flushes, medicines, drinks and drips.",
    ],
    evidence: "study",
    sources: [sources.hollidaySegar, sources.niceFluid, sources.utmb, sources.pretermWater, sources.noSource],
    examples: [
      {
        shows: "published",
        args: { weight: 22, method: "Holliday-Segar" },
        gives: 1540,
        source: sources.drugHandbook,
      },
      { shows: "published", args: { weight: 32, method: "Holliday-Segar" }, gives: 1740, source: sources.fluid32 },
      {
        shows: "published",
        args: { weight: 30, method: "4-2-1" },
        gives: 1680,
        source: `${sources.utmb}, times 24`,
      },
      { shows: "published", args: { weight: 80, method: 35 }, gives: 2800, source: sources.csun },
      {
        shows: "range",
        args: { weight: [[5], [15], [""]], method: "Holliday-Segar" },
        gives: [[500], [1250], [""]],
        source: sources.collegeFluid,
      },
      { shows: "blank", args: { weight: "", method: 30 }, gives: "", source: sources.input },
      {
        shows: "bad input",
        args: { weight: 22, method: "" },
        gives: { error: "#VALUE!", says: "method is missing" },
        source: sources.catalogue,
      },
      {
        shows: "bad input",
        args: { weight: 70.5, method: "Holliday-Segar" },
        gives: { error: "#VALUE!", says: "for children" },
        source: sources.hollidaySegar,
      },
      {
        shows: "bad input",
        args: { weight: 2.9, method: "Holliday-Segar" },
        gives: { error: "#VALUE!", says: "below 3 kg" },
        source: `${sources.hollidaySegar}: the curve was drawn from 3 kg`,
      },
      {
        shows: "bad input",
        args: { weight: 70, method: 0.03 },
        gives: { error: "#VALUE!", says: "litres" },
        source: `${sources.noSource}: 0.03 litres are 30 mL`,
      },
      {
        shows: "boundary",
        args: { weight: 3, method: "Holliday-Segar" },
        gives: 300,
        source: `${sources.hollidaySegar}; ${sources.reached}`,
      },
      {
        shows: "boundary",
        args: { weight: 10, method: "Holliday-Segar" },
        gives: 1000,
        source: sources.hollidaySegar,
      },
      {
        shows: "boundary",
        args: { weight: 70, method: "Holliday-Segar" },
        gives: 2500,
        source: `${sources.hollidaySegar}; ${sources.reached}`,
      },
    ],
  },
);
