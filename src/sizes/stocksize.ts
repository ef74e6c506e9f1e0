import { sources } from "../sources";
import type { Matrix } from "../worksheet/cell";
import { define } from "../worksheet/define";
import { documented } from "../worksheet/documented";
import { cellText, notAvailable, SheetError } from "../worksheet/error";
import { rounded } from "../worksheet/numbers";
import { choice, number, range, reading } from "../worksheet/parameters";
import { LARGEST_FRENCH, readFrench } from "./french";

/** Farthest size still offered, Fr: clinic setting, no published source. */
const MOST_AWAY = 4;

/** The sizes in stock, ascending; blanks are passed over. */
function readStock(cells: Matrix): readonly number[] | SheetError {
  const sizes: number[] = [];
  for (const cell of cells.flat()) {
    if (cell === null || cell === undefined || String(cell).trim() === "") continue;
    const size = readFrench(cell);
    if (size instanceof SheetError) return size.behind(["holds ", cellText(String(cell)), ": "]);
    if (size !== null) sizes.push(size);
  }
  return sizes.length > 0 ? sizes.sort((a, b) => a - b) : new SheetError("is missing: give the sizes in stock");
}

const none = notAvailable("no such size in stock");

export const STOCKSIZE = define(
  {
    name: "STOCKSIZE",
    family: "Sizes",
    summary: "The size in stock that comes nearest to a tube's size.",
    params: {
      size: reading(
        "Size of the tube, as in FRTOMM",
        { unit: "Fr", limits: `above 0, at most ${LARGEST_FRENCH}` },
        readFrench,
      ),
      stocked: range<readonly number[], object>("Sizes in stock", { unit: "Fr" }, readStock),
      pick: choice("Which size to take", ["same or smaller", "same or larger", "nearest", "next smaller"], {
        fallback: "same or smaller",
      }),
      most: number("A size farther away than this is not offered", { unit: "Fr", min: 0, fallback: MOST_AWAY }),
    },
    subject: ["size"],
    result: { shape: "cell", kind: "number", unit: "Fr", help: "A size in stock", blank: "" },
    compute: ({ size, stocked, pick, most }) => {
      const below = stocked.filter((s) => (pick === "next smaller" ? s < size : s <= size)).at(-1);
      const above = stocked.find((s) => s >= size);
      let best = below;
      if (pick === "same or larger") best = above;
      if (pick === "nearest" && above !== undefined) {
        // A tie goes to the smaller.
        if (below === undefined || rounded(above - size) < rounded(size - below)) best = above;
      }
      if (best === undefined) return none;
      const away = rounded(Math.abs(best - size));
      return away > most ? notAvailable(`the nearest such size, ${best} Fr, is more than ${most} Fr away`) : best;
    },
  },
  documented && {
    details:
      "Same or smaller: the largest size in stock that is not above the tube's. Next smaller: smaller than the tube's. " +
      "Nearest: a tie goes to the smaller. Sizes are read as in FRTOMM. The farthest size offered is a clinic setting.",
    cautions: [
      "The same size first. A smaller tube only holds the opening and is not for feeding until its position is confirmed.",
      "Never a larger one for a leak: it does not cure it.",
      "How it is held, its length and the placing team's word decide as well; a size alone is not a replacement.",
    ],
    evidence: "common practice",
    sources: [sources.medscapeReplacement, sources.bhambani, sources.leakSize, sources.noSource],
    examples: [
      {
        shows: "defined",
        args: { size: 14, stocked: [[10], [12], [14], [16]] },
        gives: 14,
        source: sources.medscapeReplacement,
      },
      {
        shows: "use",
        args: { size: 14, stocked: [[10], [12], [14], [16]], pick: "next smaller" },
        gives: 12,
        source: sources.catalogue,
      },
      { shows: "use", args: { size: "CH 15", stocked: [["14 Fr"], ["16 Fr"]] }, gives: 14, source: sources.catalogue },
      {
        shows: "range",
        args: { size: [[13], [""], ["14?"]], stocked: [[12, 16]] },
        gives: [[12], [""], [{ error: "#VALUE!" }]],
        source: sources.catalogue,
      },
      { shows: "blank", args: { size: "", stocked: [[12], [14]] }, gives: "", source: sources.input },
      {
        shows: "bad input",
        args: { size: 14, stocked: [["12/14"]] },
        gives: { error: "#VALUE!", says: "stocked holds" },
        source: sources.input,
      },
      {
        shows: "bad input",
        args: { size: 14, stocked: [[""]] },
        gives: { error: "#VALUE!", says: "stocked is missing" },
        source: sources.input,
      },
      {
        shows: "boundary",
        args: { size: 14, stocked: [[12], [16]], pick: "nearest" },
        gives: 12,
        source: sources.catalogue,
      },
      { shows: "boundary", args: { size: 18, stocked: [[14]] }, gives: 14, source: sources.noSource },
      {
        shows: "boundary",
        args: { size: 18.5, stocked: [[14]] },
        gives: { error: "#N/A", says: "more than 4 Fr away" },
        source: sources.noSource,
      },
    ],
  },
);
