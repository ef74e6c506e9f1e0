import { BALLOONSTATE } from "../../balloon/balloonstate";
import { call } from "../../worksheet/call";
import type { Cell } from "../../worksheet/cell";
import { CellError, SheetError } from "../../worksheet/error";
import { formula } from "../formula";
import { spelled } from "../spelling";
import { blankKept } from "./guards";
import type { Recipe, RowCells } from "./recipe";

const NOT_MEASURED = "not measured";

const stateOf = ({ out = null, putIn = null }: RowCells) => call(BALLOONSTATE, [out, putIn]) as Cell | SheetError;

const isMissing = (cell: Cell | CellError | undefined): boolean =>
  cell === undefined || (!(cell instanceof CellError) && spelled(cell) === "");

export const balloon: Recipe = {
  key: "balloon",
  header: "Balloon",
  label: "Balloon",
  help: "What the last balloon check found, in a word: empty, half or less, low, more than put in, as filled.",
  needs: [
    { role: "out", optional: false },
    { role: "putIn", optional: false },
  ],
  needsKinds: false,
  functions: ["BALLOONSTATE"],
  settings: () => ["Loss_Small", "Loss_Large", "Loss_Half", "Over_Read"],
  usesAsOf: false,
  usesDates: false,
  format: "General",
  words: ["empty", "half or less", "low", "more than put in", NOT_MEASURED, "as filled"],
  template: ({ out, putIn }) => formula`TUBE.BALLOONSTATE(${blankKept(out!)},${blankKept(putIn!)})`,
  answer: stateOf,
  problem: (row) => {
    const answer = stateOf(row);
    if (answer instanceof SheetError) {
      const reason = answer.message.replace(/^out\b/, "water out").replace(/^expected\b/, "water put in");
      return { severity: "no answer", shows: answer.code, reason };
    }
    if (answer !== NOT_MEASURED) return null;
    const reason = isMissing(row.out) ? "no water out" : "no water put in";
    return { severity: "no answer", shows: NOT_MEASURED, reason };
  },
};
