import { BALLOONDEVIATION } from "../../balloon/balloondeviation";
import { formula } from "../formula";
import { NO_BALLOON } from "../state-words";
import { fromFunction, type Apart } from "./from-function";
import { hasNoBalloon, noBalloonProblem, unlessNoBalloon } from "./not-a-balloon";
import type { Recipe } from "./recipe";

const notABalloon: Apart = {
  needs: [{ role: "kind", optional: true }],
  template: (slots, using, answered) => unlessNoBalloon(answered, slots, using),
  answer: (row, using) => (hasNoBalloon(row, using) ? NO_BALLOON : null),
  problem: noBalloonProblem,
};

const column = (apart?: Apart) =>
  fromFunction({
    of: BALLOONDEVIATION,
    plain: { answer: ({ out, putIn }) => formula`ROUND(${putIn!}-${out!},9)` },
    cells: [
      { role: "out", called: "water out", missing: "blank" },
      { role: "putIn", called: "water put in", missing: "blank or 0" },
    ],
    blank: "not measured",
    negated: true,
    ...(apart && { apart }),
    doubt: (_, loss, using) => (Number(loss) < -using.value("Over_Read") ? "more came out than was put in" : null),
  });

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
  ...column(notABalloon),
  earlier: column().template,
};
