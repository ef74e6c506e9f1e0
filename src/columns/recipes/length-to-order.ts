import { STOMALENGTH } from "../../fit/stomalength";
import type { SettingName } from "../../settings/index";
import { formula } from "../formula";
import { fromFunction } from "./from-function";
import { longUnmeasured, lyingCell, readingsIn, sittingBelowLying, sittingCell } from "./opening";
import type { Recipe } from "./recipe";

/** The rule under which STOMAFIT calls the length in range. */
const RULE = "larger";

const cells = [lyingCell, sittingCell];

const column = (numbers: readonly SettingName[]) =>
  fromFunction({
    of: STOMALENGTH,
    plain: {
      /* The last of rising values that is not larger than what is asked: below 0, the first that is long enough. */
      answer: (slots, using) => {
        const { larger, mean } = readingsIn(slots);
        const enough = formula`MAX(${slots.lying!},${slots.sitting!},ROUND(${mean}+${using.written("Slack_Least")},9))`;
        const stocked = [...(using.lengths ?? [])].reverse().map((length) => `-${length}`);
        const shortest = formula`-LOOKUP(-${enough},{${stocked.join(";")}})`;
        const most = formula`ROUND(${larger}+${using.written("Slack_Most")},9)`;
        return formula`IF(${shortest}>${most},NA(),${shortest})`;
      },
      isAscending: true,
    },
    cells,
    between: ({ lengths = [] }) => [
      { written: `{${lengths.join(";")}}`, value: lengths.map((length) => [length]) },
      { written: `"${RULE}"`, value: RULE },
    ],
    numbers,
    blank: "not measured",
    apart: longUnmeasured(cells),
    doubt: sittingBelowLying,
  });

export const lengthToOrder: Recipe = {
  key: "lengthToOrder",
  group: "Fit",
  header: "Length to order",
  label: "Length to order, low-profile",
  help: "The shortest length in your own stock that is in range for the opening. Blank for long tubes that nothing was measured for.",
  caution: "Measure in both positions: lying alone may be too short. Too short is worse than too long.",
  needsKinds: false,
  needsLengths: true,
  usesAsOf: false,
  usesDates: false,
  format: "0.0",
  words: [],
  ...column(["Slack_Least", "Slack_Most"]),
  earlier: column(["Slack_Least"]).template,
};
