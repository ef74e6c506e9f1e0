/** The opening as it is measured for a low-profile tube, the same for every column about it. */
import { lengthCm } from "../../fit/lengths";
import { CellError } from "../../worksheet/error";
import type { GivenCell } from "./from-function";
import type { RowCells } from "./recipe";

export const lyingCell: GivenCell = { role: "lying", called: "reading lying", missing: "blank or 0" };
export const sittingCell: GivenCell = { role: "sitting", called: "reading sitting", missing: "blank or 0" };

const reading = lengthCm("");

const lengthIn = (cell: RowCells["lying"]): number | null => {
  if (cell === undefined || cell === null || cell instanceof CellError) return null;
  const length = reading.read(cell);
  return typeof length === "number" ? length : null;
};

/** Openings are longer sitting than lying (Steenblik 2012): the other way round is rather a slip. */
export function sittingBelowLying({ lying, sitting }: RowCells): string | null {
  const [down, up] = [lengthIn(lying), lengthIn(sitting)];
  return down !== null && up !== null && up < down ? "sitting is below lying: measure again" : null;
}
