import type { Action } from "../action";
import { afterMend } from "./afterwards";
import type { Asked, MendChoices, MendPlan, MendSurvey } from "./interface";
import { planMend } from "./plan";
import { surveyMend } from "./survey";

export { readingOf } from "./reading";
export { choicesFor } from "./survey";

/** Dates, sizes and kinds of somebody's own list, brought to what formulas read, once by wording. */
export const mend = {
  survey: surveyMend,
  plan: planMend,
  afterwards: afterMend,
} satisfies Action<MendSurvey, Asked, MendChoices, MendPlan>;
