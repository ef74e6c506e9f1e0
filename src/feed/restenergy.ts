import { sources } from "../sources";
import type { Cell } from "../worksheet/cell";
import { define } from "../worksheet/define";
import { documented } from "../worksheet/documented";
import { argument, fault, SheetError } from "../worksheet/error";
import { number, openChoice, reading } from "../worksheet/parameters";
import { startingPoint, weightKg } from "./arguments";
import { byBands, henry, mifflinStJeor, schofield, type Sex } from "./rest-energy";

const SEXES: ReadonlyMap<string, Sex> = new Map([
  ...["m", "male", "man", "boy"].map((word) => [word, "male"] as const),
  ...["f", "female", "woman", "girl"].map((word) => [word, "female"] as const),
]);

const readSex = (cell: Exclude<Cell, null>): Sex | null | SheetError => {
  if (cell === 0) return null;
  return (
    SEXES.get(String(cell).trim().toLowerCase()) ??
    new SheetError("must be M or F (or male, female, man, woman, boy, girl)")
  );
};

/** Above this weight nobody is under 1 year old; from memory, only to find an age that was not entered. */
const NOT_AN_INFANT = 20;
const noAge = fault`${argument("age")} is missing or 0`;
/**
 * Below it the straight lines run towards 0, which they reach at about half a kilogram: an infant of that weight was
 * born too early for them. The limit itself is a clinic setting, no published source.
 */
const LEAST_WEIGHT = 2;
const tooLight = fault`${argument("weight")} is below ${LEAST_WEIGHT} kg: these equations do not hold for so small an infant`;
/**
 * Least weight in kg from an age in years on: below it the age is rather in months. Clinic setting, no published source;
 * each lies well below the lightest children of that age.
 */
const LEAST_AT_AGE = [
  [18, 18],
  [10, 12],
  [6, 9],
  [2, 6],
] as const;
const tooLightAt = LEAST_AT_AGE.map(
  ([from, least]) =>
    fault`${argument("weight")} is below ${least} kg though ${argument("age")} is ${from} years or more: months?`,
);
/** Height in cm; clinic setting, no published source. */
const LEAST_ADULT_HEIGHT = 100;
const tooShort = fault`${argument("height")} is below ${LEAST_ADULT_HEIGHT} cm for the adults' equation: inches?`;
const noHeight = fault`${argument("height")} is missing: Mifflin-St Jeor needs it, Schofield and Henry do not`;
const outsideMifflin = new SheetError("Mifflin-St Jeor was studied from 19 to 78 years: use Schofield or Henry");

export const RESTENERGY = define(
  {
    name: "RESTENERGY",
    family: "Feed and water",
    summary: "Energy that a body needs at rest in a day, by one of three published equations.",
    params: {
      sex: reading<Sex, object>("M or F; also male, female, man, woman, boy, girl", {}, readSex),
      age: number("Age", { unit: "years", min: 0, max: 120, slipAbove: "months, or the year of birth?" }),
      weight: weightKg(),
      height: number("Height", {
        unit: "cm",
        min: 30,
        max: 250,
        zeroIsBlank: true,
        slipBelow: "metres, or feet?",
        slipAbove: "mm?",
        optional: true,
        fallbackHelp: "not used",
      }),
      method: openChoice(
        "Equation",
        ["Mifflin-St Jeor", "Schofield", "Henry"],
        "Mifflin-St Jeor when height is given, else Schofield",
      ),
    },
    subject: ["sex"],
    result: { shape: "cell", kind: "number", unit: "kcal a day", help: "Energy at rest", blank: "" },
    compute: ({ sex, age, weight, height, method }) => {
      if (age === 0 && weight > NOT_AN_INFANT) return noAge;
      if (weight < LEAST_WEIGHT) return tooLight;
      const band = LEAST_AT_AGE.findIndex(([from]) => age >= from);
      if (band >= 0 && weight < LEAST_AT_AGE[band]![1]) return tooLightAt[band]!;
      const equation = method ?? (height === undefined ? "Schofield" : "Mifflin-St Jeor");
      if (equation === "Schofield") return byBands(schofield, sex, age, weight);
      if (equation === "Henry") return byBands(henry, sex, age, weight);
      if (height === undefined) return noHeight;
      if (!(age >= 19 && age < 79)) return outsideMifflin;
      return height < LEAST_ADULT_HEIGHT ? tooShort : mifflinStJeor(sex, age, weight, height);
    },
  },
  documented && {
    details:
      "Mifflin-St Jeor (10 W + 6.25 H - 5 A, + 5 for men, - 161 for women; 19 to 78 years), Schofield by weight " +
      "(FAO/WHO/UNU 2004) or Henry by weight (2005). Bands of age hold their lower end: 18 belongs to 18 to 30; two " +
      "functions of one program differ in that. No factor for activity or illness is inside. Henry's set in kcal is used; the set in MJ " +
      "gives about 4% less for boys of 3 to 10. An older simplified set " +
      "(WHO 1985) is also called the WHO equation and is not this one. Refused as a slip (clinic settings, no published " +
      "source): weights below 6 kg from 2 years, 9 from 6, 12 from 10, 18 from 18; heights below 100 cm for Mifflin-St " +
      "Jeor. Sources add factors (10% and 15% make 25%) or " +
      "multiply them (26.5%): say which.",
    cautions: [
      startingPoint,
      "No equation is reliable for one person. In severe cerebral palsy needs may be 60 to 70% of the typical (from memory).",
      "Energy at rest is not the target for feeding: activity, growth, illness and the risk of refeeding come on top.",
    ],
    evidence: "study",
    sources: [sources.mifflin, sources.schofield, sources.henry, sources.frankenfield, sources.noSource],
    examples: [
      {
        shows: "published",
        args: { sex: "F", age: 45, weight: 75, height: 165.1 },
        gives: 1396,
        within: 0.5,
        source: sources.mifflinHandbook,
      },
      {
        shows: "published",
        args: { sex: "woman", age: 25, weight: 60, height: 160 },
        gives: 1314,
        within: 0.5,
        source: sources.mifflinLecture,
      },
      {
        shows: "published",
        args: { sex: "F", age: 25, weight: 55 },
        gives: 1302,
        within: 0.5,
        source: sources.faoWoman,
      },
      {
        shows: "published",
        args: { sex: "M", age: 22, weight: 70 },
        gives: 1745,
        within: 1.75,
        source: sources.faoMan,
      },
      {
        shows: "published",
        args: { sex: "M", age: 45, weight: 70 },
        gives: 1676,
        within: 0.5,
        source: sources.nutritionAtlas,
      },
      {
        shows: "defined",
        args: { sex: "M", age: 32, weight: 67, method: "Henry" },
        gives: 1544.4,
        source: `${sources.henry}; ${sources.reached}`,
      },
      {
        shows: "range",
        args: { sex: [["M"], ["F"], [""]], age: [[5], [5], [5]], weight: [[20], ["20 kg"], [20]] },
        gives: [[958.42], [892.2], [""]],
        source: `${sources.schofield}; ${sources.reached}`,
      },
      { shows: "blank", args: { sex: "", age: 45, weight: 75 }, gives: "", source: sources.input },
      {
        shows: "bad input",
        args: { sex: "M", age: 0, weight: 70 },
        gives: { error: "#VALUE!", says: "age is missing or 0" },
        source: sources.catalogue,
      },
      {
        shows: "bad input",
        args: { sex: "M", age: 12, weight: 40, height: 150 },
        gives: { error: "#VALUE!", says: "Schofield or Henry" },
        source: sources.mifflin,
      },
      {
        shows: "bad input",
        args: { sex: "M", age: 30, weight: 70, height: 1.75 },
        gives: { error: "#VALUE!", says: "height must be at least 30" },
        source: "defined by this function's rule: 1.75 is a height in metres",
      },
      {
        shows: "bad input",
        args: { sex: "F", age: 30, weight: 60, height: 65 },
        gives: { error: "#VALUE!", says: "inches?" },
        source: `${sources.noSource}: 65 inches are 165.1 cm`,
      },
      {
        shows: "bad input",
        args: { sex: "M", age: 6, weight: 8 },
        gives: { error: "#VALUE!", says: "months?" },
        source: `${sources.noSource}: 8 kg is an infant of 6 months`,
      },
      {
        shows: "boundary",
        args: { sex: "M", age: 6, weight: 9 },
        gives: 708.654,
        source: `${sources.schofield}, band 3 to 10: 22.706 x 9 + 504.3; ${sources.reached}`,
      },
      {
        shows: "bad input",
        args: { sex: "M", age: 0, weight: 0.5 },
        gives: { error: "#VALUE!", says: "below 2 kg" },
        source: `${sources.schofield}: 59.512 x 0.5 - 30.4 is below 0`,
      },
      {
        shows: "boundary",
        args: { sex: "F", age: 18, weight: 45 },
        gives: 1153.41,
        source: `${sources.schofield}, band 18 to 30: 14.818 x 45 + 486.6; ${sources.reached}`,
      },
    ],
  },
);
