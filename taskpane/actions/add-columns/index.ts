import type { Action } from "../action";
import { afterColumns } from "./afterwards";
import type { AddColumnsPlan, Choices, Survey } from "./interface";
import type { Asked } from "../list/interface";
import { planColumns } from "./plan";
import { surveyWorkbook } from "./survey";

/** The main job: columns of ours in somebody's own list. */
export const addColumns: Action<Survey, Asked, Choices, AddColumnsPlan> = {
  survey: surveyWorkbook,
  plan: planColumns,
  afterwards: afterColumns,
};
