import { FREEPLAY } from "../../fit/freeplay";
import { formula } from "../formula";
import { fromFunction } from "./from-function";
import type { Recipe } from "./recipe";

export const play: Recipe = {
  key: "play",
  group: "Fit",
  header: "Play",
  label: "Play of a long tube",
  help: "Whether the outer bolster stands at a good distance from the skin: tight, loose, in range.",
  caution:
    "Tight: it may be buried, most of all if it will not turn or push in, hurts, leaks or feeds slowly. Stop the feed and call; do not force. The word is as old as the measurement.",
  needsKinds: false,
  usesAsOf: false,
  usesDates: false,
  format: "General",
  words: ["tight", "loose", "not measured", "in range"],
  ...fromFunction({
    of: FREEPLAY,
    plain: {
      answer: ({ gap }, { written }) =>
        formula`IF(${gap!}<${written("Play_Least")},"tight",IF(${gap!}>${written("Play_Most")},"loose","in range"))`,
      isAscending: true,
    },
    cells: [{ role: "gap", called: "gap to the skin", missing: "blank" }],
    numbers: ["Play_Least", "Play_Most"],
    blank: "not measured",
    doubt: ({ gap }) => (gap === 0 ? "the gap is 0, or the cell is linked to an empty one" : null),
  }),
};
