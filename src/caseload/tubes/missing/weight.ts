/** The weight, its day, and lengths measured on the body. */
import { formula } from "../../../columns/formula";
import { is, isAboveIn } from "../../reading";
import { both, isFilledIn, wrong, type Gap } from "./gap";

export const weightGaps: readonly Gap[] = [
  {
    says: "weight is not a number above 0",
    when: wrong("weight", isAboveIn("weight")),
  },
  {
    says: "no usable date of the weight",
    when: both(isFilledIn("weight"), formula`weighedis<1`),
  },
  {
    says: "weight is old",
    when: both(
      formula`AND(${isFilledIn("weight")},weighedis=1)`,
      formula`weighed<IF(${is("age", "adult")},Day_WeightAdult,Day_WeightChild)`,
    ),
  },
  {
    says: "weight has jumped",
    needs: "Weight then kg",
    when: both(
      formula`AND(${isAboveIn("weight")},${isAboveIn("then")})`,
      formula`ROUND(100*ABS(weight/then-1),9)>Weight_Jump`,
    ),
  },
  {
    says: "sitting below lying",
    needs: "Sitting cm",
    when: both(formula`AND(${isAboveIn("lying")},${isAboveIn("sitting")})`, formula`sitting<lying`),
  },
];
