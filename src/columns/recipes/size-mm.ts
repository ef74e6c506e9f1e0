import { FRTOMM } from "../../sizes/frtomm";
import { call } from "../../worksheet/call";
import type { Cell } from "../../worksheet/cell";
import { CellError, SheetError } from "../../worksheet/error";
import { formula } from "../formula";
import { spelled } from "../spelling";
import type { Recipe, RowCells } from "./recipe";

/** Outside of these a "size" is rather a diameter or a length. Clinic setting, no published source. */
const SMALLEST_FRENCH = 5;
const LARGEST_USUAL_FRENCH = 30;

const sizeIn = ({ size = null }: RowCells): Cell | SheetError | CellError => {
  if (size instanceof CellError) return size;
  return spelled(size) === "" ? "" : (call(FRTOMM, [size]) as Cell | SheetError);
};

export const sizeMm: Recipe = {
  key: "sizeMm",
  header: "Size mm",
  label: "Size in mm",
  help: "The outside diameter in millimetres of a size written in French.",
  needs: [{ role: "size", optional: false }],
  needsKinds: false,
  functions: ["FRTOMM"],
  settings: () => [],
  usesAsOf: false,
  usesDates: false,
  format: "0.0",
  words: [],
  template: ({ size }) => formula`IF(LEN(TRIM(${size!}))=0,"",TUBE.FRTOMM(${size!}))`,
  answer: sizeIn,
  problem: (row) => {
    const answer = sizeIn(row);
    if (answer instanceof CellError) return { severity: "no answer", shows: answer.code, reason: "size is an error" };
    if (answer instanceof SheetError)
      return { severity: "no answer", shows: answer.code, reason: answer.message.replace(/^size /, "") };
    if (typeof answer !== "number") return { severity: "no answer", shows: "", reason: "no size" };
    const french = answer * 3;
    return french < SMALLEST_FRENCH || french > LARGEST_USUAL_FRENCH
      ? { severity: "doubt", shows: answer.toFixed(1), reason: "looks like mm?" }
      : null;
  },
};
