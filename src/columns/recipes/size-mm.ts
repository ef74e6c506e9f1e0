import { settingNamed } from "../../settings/index";
import { LARGEST_FRENCH } from "../../sizes/french";
import { FRTOMM } from "../../sizes/frtomm";
import { formula } from "../formula";
import { fromFunction } from "./from-function";
import type { Recipe } from "./recipe";

/** Outside of these a "size" is rather a diameter or a length. */
export const SMALLEST_FRENCH = settingNamed("Size_Least").default;
export const LARGEST_USUAL_FRENCH = settingNamed("Size_Most").default;

export const sizeMm: Recipe = {
  key: "sizeMm",
  group: "Size",
  header: "Size mm",
  label: "Size in mm",
  help: "The outside diameter in millimetres of a size written in French.",
  needsKinds: false,
  usesAsOf: false,
  usesDates: false,
  format: "0.0",
  words: [],
  ...fromFunction({
    of: FRTOMM,
    plain: {
      tests: ({ size }) => [formula`ISNUMBER(${size!})`, formula`${size!}>=0`, formula`${size!}<=${LARGEST_FRENCH}`],
      answer: ({ size }) => formula`IF(${size!}=0,"",${size!}/3)`,
    },
    cells: [{ role: "size", called: "size", missing: "blank" }],
    blank: "",
    doubt: (_, millimetres) => {
      const french = Number(millimetres) * 3;
      return french < SMALLEST_FRENCH || french > LARGEST_USUAL_FRENCH ? "looks like mm?" : null;
    },
  }),
};
