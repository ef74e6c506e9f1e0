/** The opening as it is measured for a low-profile tube, the same for every column about it. */
import { lengthCm } from "../../fit/lengths";
import { CellError } from "../../worksheet/error";
import { formula, quoted } from "../formula";
import { spelled } from "../spelling";
import type { Apart, GivenCell } from "./from-function";
import { listed } from "./guards";
import type { RowCells, Slots } from "./recipe";

export const lyingCell: GivenCell = { role: "lying", called: "reading lying", missing: "blank or 0" };
export const sittingCell: GivenCell = { role: "sitting", called: "reading sitting", missing: "blank or 0" };

/** The larger of both readings, and their mean, in plain Excel. */
export const readingsIn = ({ lying, sitting }: Slots) => ({
  larger: formula`MAX(${lying!},${sitting!})`,
  mean: formula`(${lying!}+${sitting!})/2`,
});

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

/** A blank or an unknown shape may be a low-profile tube: only these words say that it is none. */
const LONG = ["long", "long tube"] as const;

const isLong = (shape: RowCells["shape"]): boolean =>
  shape !== undefined && !(shape instanceof CellError) && LONG.some((word) => word === spelled(shape));

/**
 * Somebody with a long tube, for whom nothing has been measured, is no row without an answer. Where something has been
 * measured the function is asked all the same.
 */
export const longUnmeasured = (cells: readonly GivenCell[]): Apart => ({
  needs: [{ role: "shape", optional: true }],
  template: (slots, _, answered) => {
    const { shape } = slots;
    if (!shape) return answered;
    const word = formula`LOWER(TRIM(${shape}))`;
    const long = formula`OR(${listed(LONG.map((text) => formula`EXACT(${word},${quoted(text)})`))})`;
    const texts = cells
      .map(({ role }) => formula`TRIM(${slots[role]!})`)
      .reduce((all, text) => formula`${all}&${text}`);
    return formula`IF(IF(ISERROR(${shape}),FALSE,IF(${long},LEN(${texts})=0,FALSE)),"",${answered})`;
  },
  answer: (row) => {
    const isEmpty = cells.every(({ role }) => {
      const value = row[role] ?? null;
      return !(value instanceof CellError) && spelled(value) === "";
    });
    return isLong(row.shape) && isEmpty ? "" : null;
  },
  problem: () => null,
});

/** Long tubes are not made by the length of the opening. */
export const lengthOfALongTube = ({ shape }: RowCells): string | null =>
  isLong(shape) ? "a length beside a long tube: one of the two is wrong" : null;
