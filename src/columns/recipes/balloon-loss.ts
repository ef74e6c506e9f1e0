import { BALLOONDEVIATION } from "../../balloon/balloondeviation";
import { fromFunction } from "./from-function";
import type { Recipe } from "./recipe";

/** The function's difference turned round, so that a loss is a loss: the caseload's own "Loss mL" counts so too. */
export const balloonLoss: Recipe = {
  key: "balloonLoss",
  group: "Balloon",
  header: "Balloon loss",
  label: "Balloon loss in mL",
  help: "mL that were put in and did not come out at the last check. Below 0: more came out than was put in.",
  needsKinds: false,
  usesAsOf: false,
  usesDates: false,
  format: "0.0",
  words: [],
  ...fromFunction({
    of: BALLOONDEVIATION,
    cells: [
      { role: "out", called: "water out", missing: "blank" },
      { role: "putIn", called: "water put in", missing: "blank or 0" },
    ],
    blank: "not measured",
    negated: true,
    doubt: (_, loss, using) => (Number(loss) < -using.value("Over_Read") ? "more came out than was put in" : null),
  }),
};
