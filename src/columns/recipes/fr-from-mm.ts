import { MMTOFR } from "../../sizes/mmtofr";
import { formula } from "../formula";
import { fromFunction } from "./from-function";
import type { Recipe } from "./recipe";
import { LARGEST_USUAL_FRENCH, SMALLEST_FRENCH } from "./size-mm";

export const frFromMm: Recipe = {
  key: "frFromMm",
  group: "Size",
  header: "Fr from mm",
  label: "Fr from mm",
  help: "The French size of an outside diameter in millimetres. Order by the printed size, never by this figure alone.",
  needsKinds: false,
  usesAsOf: false,
  usesDates: false,
  format: "0.0",
  words: [],
  ...fromFunction({
    of: MMTOFR,
    plain: { answer: ({ diameter }) => formula`3*${diameter!}` },
    cells: [{ role: "diameter", called: "diameter", missing: "blank or 0" }],
    blank: "",
    doubt: (_, french) =>
      Number(french) < SMALLEST_FRENCH || Number(french) > LARGEST_USUAL_FRENCH ? "looks like Fr?" : null,
  }),
};
