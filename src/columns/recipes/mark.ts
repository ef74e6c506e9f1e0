import { MARKSHIFT } from "../../fit/markshift";
import { formula } from "../formula";
import { fromFunction } from "./from-function";
import type { Recipe } from "./recipe";

export const mark: Recipe = {
  key: "mark",
  group: "Fit",
  header: "Mark",
  label: "Mark at the skin",
  help: "Whether the centimetre mark at the skin has moved: further out, further in, same mark.",
  caution:
    "Further out: treat as coming out; stop the feed until the position is confirmed. Marks count from the inner end. The word is as old as the reading.",
  needsKinds: false,
  usesAsOf: false,
  usesDates: false,
  format: "General",
  words: ["further out", "further in", "not measured", "same mark"],
  ...fromFunction({
    of: MARKSHIFT,
    plain: {
      answer: ({ markThen: then, markNow: now }, { written }) => {
        const moved = formula`IF(${now!}<${then!},"further out","further in")`;
        const isSame = formula`ABS(ROUND(${now!}-${then!},9))<=${written("Mark_Tol")}`;
        return formula`IF(${now!}=0,"further out",IF(${isSame},"same mark",${moved}))`;
      },
    },
    cells: [
      { role: "markThen", called: "mark then", missing: "blank or 0" },
      { role: "markNow", called: "mark now", missing: "blank" },
    ],
    numbers: ["Mark_Tol"],
    blank: "not measured",
    doubt: ({ markNow }) =>
      markNow === 0 ? "the mark now is 0: nothing is inside, or the cell is linked to an empty one" : null,
  }),
};
