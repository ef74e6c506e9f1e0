import { STOMALENGTH } from "../../fit/stomalength";
import { fromFunction } from "./from-function";
import { lyingCell, sittingBelowLying, sittingCell } from "./opening";
import type { Recipe } from "./recipe";

/** The rule under which STOMAFIT never calls the length too short. */
const RULE = "larger";

export const lengthToOrder: Recipe = {
  key: "lengthToOrder",
  group: "Fit",
  header: "Length to order",
  label: "Length to order, low-profile",
  help: "The shortest length in your own stock that is long enough for the opening.",
  caution: "Measure in both positions: lying alone may be too short. Too short is worse than too long.",
  needsKinds: false,
  needsLengths: true,
  usesAsOf: false,
  usesDates: false,
  format: "0.0",
  words: [],
  ...fromFunction({
    of: STOMALENGTH,
    cells: [lyingCell, sittingCell],
    between: ({ lengths = [] }) => [
      { written: `{${lengths.join(";")}}`, value: lengths.map((length) => [length]) },
      { written: `"${RULE}"`, value: RULE },
    ],
    numbers: ["Slack_Least"],
    blank: "not measured",
    doubt: sittingBelowLying,
  }),
};
