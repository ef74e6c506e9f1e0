/** The weight, its day, and lengths measured on the body. */
import { formula } from "../../../columns/formula";
import { rounded } from "../../../worksheet/numbers";
import { countedDay } from "../../counted-days";
import { is, isAbove, isAboveIn, isBlank } from "../../reading";
import { ageClassOf } from "../kind";
import { both, isFilledIn, isWrong, wrong, type Gap } from "./gap";

export const weightGaps: readonly Gap[] = [
  {
    says: "weight is not a number above 0",
    when: wrong("weight", isAboveIn("weight")),
    applies: ({ at }) => isWrong(at("Weight kg"), isAbove(at("Weight kg"))),
  },
  {
    says: "no usable date of the weight",
    when: both(isFilledIn("weight"), formula`weighedis<1`),
    applies: ({ at, day }) => !isBlank(at("Weight kg")) && day("Weighed on") < 1,
  },
  {
    says: "weight is old",
    when: both(
      formula`AND(${isFilledIn("weight")},weighedis=1)`,
      formula`weighed<IF(${is("age", "adult")},Day_WeightAdult,Day_WeightChild)`,
    ),
    applies: ({ at, day, row, sight }) => {
      if (isBlank(at("Weight kg")) || day("Weighed on") !== 1) return false;
      const since = ageClassOf(row, sight) === "adult" ? "Day_WeightAdult" : "Day_WeightChild";
      return (at("Weighed on") as number) < countedDay(since, sight);
    },
  },
  {
    says: "weight has jumped",
    needs: "Weight then kg",
    when: both(
      formula`AND(${isAboveIn("weight")},${isAboveIn("then")})`,
      formula`ROUND(100*ABS(weight/then-1),9)>Weight_Jump`,
    ),
    applies: ({ at, sight }) => {
      const [weight, then] = [at("Weight kg"), at("Weight then kg")];
      return (
        isAbove(weight) && isAbove(then) && rounded(100 * Math.abs(weight / then - 1)) > sight.number("Weight_Jump")
      );
    },
  },
  {
    says: "sitting below lying",
    needs: "Sitting cm",
    when: both(formula`AND(${isAboveIn("lying")},${isAboveIn("sitting")})`, formula`sitting<lying`),
    applies: ({ at }) => {
      const [lying, sitting] = [at("Lying cm"), at("Sitting cm")];
      return isAbove(lying) && isAbove(sitting) && sitting < lying;
    },
  },
];
