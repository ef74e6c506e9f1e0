import { STOMAFIT } from "../../fit/stomafit";
import { formula } from "../formula";
import { fromFunction, type GivenCell } from "./from-function";
import { lengthOfALongTube, longUnmeasured, lyingCell, readingsIn, sittingBelowLying, sittingCell } from "./opening";
import type { Recipe } from "./recipe";

const cells: readonly GivenCell[] = [
  { role: "length", called: "length", missing: "blank or 0" },
  lyingCell,
  sittingCell,
];

export const fit: Recipe = {
  key: "fit",
  group: "Fit",
  header: "Fit",
  label: "Fit of a low-profile tube",
  help: "Whether the length in use goes with the opening as last measured: too short, too long, in range. Blank for long tubes that nothing was measured for.",
  caution: "Fit is as old as the measurement: weight and growth change it. Look at the skin.",
  needsKinds: false,
  usesAsOf: false,
  usesDates: false,
  format: "General",
  words: ["too short", "too long", "not measured", "in range"],
  ...fromFunction({
    of: STOMAFIT,
    plain: {
      answer: (slots, using) => {
        const { length } = slots;
        const { larger, mean } = readingsIn(slots);
        const short = formula`OR(${length!}<${larger},${length!}<ROUND(${mean}+${using.written("Slack_Least")},9))`;
        const long = formula`${length!}>ROUND(${larger}+${using.written("Slack_Most")},9)`;
        return formula`IF(${short},"too short",IF(${long},"too long","in range"))`;
      },
      isAscending: true,
    },
    cells,
    numbers: ["Slack_Least", "Slack_Most"],
    blank: "not measured",
    apart: longUnmeasured(cells),
    doubt: (row) => lengthOfALongTube(row) ?? sittingBelowLying(row),
  }),
};
