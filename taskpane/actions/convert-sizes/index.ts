import type { Action } from "../action";
import { afterSizes } from "./afterwards";
import type { Asked, Choices, SizesPlan, SizesSurvey } from "./interface";
import { planSizes } from "./plan";
import { surveySizes } from "./survey";

export { roomFor } from "./room";

/** A column of sizes, however they were typed: French to millimetres, or back. */
export const convertSizes: Action<SizesSurvey, Asked, Choices, SizesPlan> = {
  key: "convertSizes",
  section: "Convert",
  label: "Convert sizes",
  help: "French to millimetres, or back, beside your own column. What cannot be read is listed.",
  needs: ["addColumns", "writeFormula"],
  survey: surveySizes,
  plan: planSizes,
  afterwards: afterSizes,
};
