import { sources } from "../sources";
import type { Matrix } from "../worksheet/cell";
import { cited } from "../worksheet/cited";
import { define } from "../worksheet/define";
import { documented } from "../worksheet/documented";
import { notAvailable, SheetError } from "../worksheet/error";
import { rounded } from "../worksheet/numbers";
import { choice, NOT_KNOWN, number, orNotKnown, range } from "../worksheet/parameters";
import { lengthCm, LONGEST, SLACK_LEAST } from "./lengths";

const oneLength = lengthCm("Length");

/** Lengths in stock, ascending; blanks are passed over. */
function readLengths(cells: Matrix): readonly number[] | SheetError {
  const lengths: number[] = [];
  for (const cell of cells.flat()) {
    if (cell === null || cell === undefined || String(cell).trim() === "") continue;
    const length = oneLength.read(cell);
    if (length instanceof SheetError) return new SheetError(`holds ${cited(String(cell))}: ${length.message}`);
    if (length !== null) lengths.push(length);
  }
  return lengths.length > 0 ? lengths.sort((a, b) => a - b) : new SheetError("is missing: give the lengths in stock");
}

const measureBoth = new SheetError("measure lying and sitting; for somebody who cannot sit use the rule lying only");
const noneLongEnough = notAvailable("no length in stock is long enough");

export const STOMALENGTH = define(
  {
    name: "STOMALENGTH",
    family: "Fit",
    summary: "The shortest low-profile length in stock that is long enough for an opening measured lying and sitting.",
    params: {
      lying: lengthCm("Opening measured lying"),
      sitting: orNotKnown(lengthCm("Opening measured sitting; may be blank under the rule lying only")),
      lengths: range<readonly number[], object>(
        "Lengths in stock",
        { unit: "cm", limits: `above 0, at most ${LONGEST}` },
        readLengths,
      ),
      rule: choice(
        "Larger: not below the larger reading nor the mean plus slack; mean: not below the mean plus slack; " +
          "lying only: for somebody who cannot sit",
        ["larger", "mean", "lying only"],
        { fallback: "larger" },
      ),
      slack: number("Slack above the mean", { unit: "cm", min: 0, max: 2, fallback: SLACK_LEAST }),
    },
    subject: ["lying"],
    result: { shape: "cell", kind: "number", unit: "cm", help: "One of the lengths in stock", blank: "" },
    compute: ({ lying, sitting, lengths, rule, slack }) => {
      if (rule !== "lying only" && sitting === NOT_KNOWN) return measureBoth;
      const other = rule === "lying only" || sitting === NOT_KNOWN ? lying : sitting;
      const enough = rounded((lying + other) / 2 + slack);
      const least = rule === "larger" ? Math.max(lying, other, enough) : enough;
      return lengths.find((length) => length >= least) ?? noneLongEnough;
    },
  },
  documented && {
    details:
      "Larger, the default: the shortest length that is below neither the larger reading nor the mean of both plus slack; " +
      "STOMAFIT never calls it too short. Mean: not below the mean plus slack, so it may be shorter than the larger " +
      "reading. Lying only: the lying reading plus slack. Measuring in both positions is published; the rule and the " +
      "slack are clinic settings.",
    cautions: [
      "In 28 adults the opening was longer sitting than lying: 4.9 against 3.6 cm on average. Lying alone may be too short.",
      "Too short is worse than too long: a tight tube can be buried. Look at the skin after the change.",
      "Measure again at every change, when weight changes, and in growing children.",
    ],
    evidence: "clinic setting",
    sources: [sources.steenblik, sources.noSource],
    examples: [
      {
        shows: "defined",
        args: { lying: 3.6, sitting: 4.9, lengths: [[3.5], [4], [4.5], [5]] },
        gives: 5,
        source: `${sources.steenblik}; the length by this function's rule`,
      },
      {
        shows: "use",
        args: { lying: 3.6, sitting: 4.9, lengths: [[3.5], [4], [4.5], [5]], rule: "mean" },
        gives: 4.5,
        source: "by hand: mean 4.25, plus 0.2 is 4.45",
      },
      {
        shows: "use",
        args: { lying: 2, sitting: "", lengths: [[1.7], [2], [2.3], [2.5]], rule: "lying only" },
        gives: 2.3,
        source: "by hand: 2 plus 0.2 is 2.2",
      },
      {
        shows: "range",
        args: { lying: [[2], [""], [2.1]], sitting: [[2.2], [2], [""]], lengths: [[2, 2.3, 2.5]] },
        gives: [[2.3], [""], [{ error: "#VALUE!" }]],
        source: "by hand: mean 2.1, plus 0.2 is 2.3",
      },
      { shows: "blank", args: { lying: "", sitting: 2, lengths: [[2], [2.3]] }, gives: "", source: sources.input },
      {
        shows: "bad input",
        args: { lying: 2, sitting: 0, lengths: [[2], [2.3]] },
        gives: { error: "#VALUE!", says: "measure lying and sitting" },
        source: sources.catalogue,
      },
      {
        shows: "bad input",
        args: { lying: 23, sitting: 25, lengths: [[2], [2.3]] },
        gives: { error: "#VALUE!", says: "at most 10" },
        source: sources.catalogue,
      },
      {
        shows: "boundary",
        args: { lying: 2.1, sitting: 2.1, lengths: [[2.2], [2.3]] },
        gives: 2.3,
        source: `${sources.floats}: 2.1 plus 0.2 is a little more than 2.3 in binary, and 2.3 is long enough`,
      },
      {
        shows: "boundary",
        args: { lying: 4, sitting: 4.9, lengths: [[3], [4]] },
        gives: { error: "#N/A", says: "long enough" },
        source: sources.catalogue,
      },
    ],
  },
);
