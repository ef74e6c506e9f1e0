import type { Action } from "../action";
import { afterSizes } from "./afterwards";
import type { Asked, Choices, SizesPlan, SizesSurvey } from "./interface";
import { planSizes } from "./plan";
import { surveySizes } from "./survey";

export { roomFor, spillCells } from "./room";

/** A column of sizes, however they were typed: French to millimetres, or back. */
export const convertSizes = {
  survey: surveySizes,
  plan: planSizes,
  afterwards: afterSizes,
} satisfies Action<SizesSurvey, Asked, Choices, SizesPlan>;
