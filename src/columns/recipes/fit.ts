import { STOMAFIT } from "../../fit/stomafit";
import { fromFunction } from "./from-function";
import { lyingCell, sittingBelowLying, sittingCell } from "./opening";
import type { Recipe } from "./recipe";

export const fit: Recipe = {
  key: "fit",
  group: "Fit",
  header: "Fit",
  label: "Fit of a low-profile tube",
  help: "Whether the length in use goes with the opening as last measured: too short, too long, in range.",
  caution: "Fit is as old as the measurement: weight and growth change it. Look at the skin.",
  needsKinds: false,
  usesAsOf: false,
  usesDates: false,
  format: "General",
  words: ["too short", "too long", "not measured", "in range"],
  ...fromFunction({
    of: STOMAFIT,
    cells: [{ role: "length", called: "length", missing: "blank or 0" }, lyingCell, sittingCell],
    numbers: ["Slack_Least", "Slack_Most"],
    blank: "not measured",
    doubt: sittingBelowLying,
  }),
};
