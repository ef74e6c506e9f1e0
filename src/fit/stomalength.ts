import { sources } from "../sources";
import type { Matrix } from "../worksheet/cell";
import { define } from "../worksheet/define";
import { documented } from "../worksheet/documented";
import { argument, cellText, fault, notAvailable, SheetError } from "../worksheet/error";
import { rounded } from "../worksheet/numbers";
import { choice, NOT_KNOWN, number, orNotKnown, range } from "../worksheet/parameters";
import { fitOf, lengthCm, LONGEST, mostSlack, SLACK_LEAST, slacksCross } from "./lengths";

const oneLength = lengthCm("Length");

/** Lengths in stock, ascending; blanks are passed over. */
function readLengths(cells: Matrix): readonly number[] | SheetError {
  const lengths: number[] = [];
  for (const cell of cells.flat()) {
    if (cell === null || cell === undefined || String(cell).trim() === "") continue;
    const length = oneLength.read(cell);
    if (length instanceof SheetError) return length.behind(["holds ", cellText(String(cell)), ": "]);
    if (length !== null) lengths.push(length);
  }
  return lengths.length > 0 ? lengths.sort((a, b) => a - b) : new SheetError("is missing: give the lengths in stock");
}

const measureBoth = fault`measure ${argument("lying")} and ${argument("sitting")}; for somebody who cannot sit use the rule lying only`;
const canSit = fault`${argument("sitting")} is above ${argument("lying")}: lying only is for somebody who cannot sit, and a tube of that length would be too short`;
const crossed = slacksCross("slack");
const noneLongEnough = notAvailable("no length in stock is long enough");
const noneInRange = notAvailable("no length in stock is in range: those that are long enough are too long");

export const STOMALENGTH = define(
  {
    name: "STOMALENGTH",
    family: "Fit",
    summary: "The shortest low-profile length in stock that is in range for an opening measured lying and sitting.",
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
      most: mostSlack(),
    },
    subject: ["lying"],
    result: { shape: "cell", kind: "number", unit: "cm", help: "One of the lengths in stock", blank: "" },
    compute: ({ lying, sitting, lengths, rule, slack, most }) => {
      if (slack > most) return crossed;
      if (rule !== "lying only" && sitting === NOT_KNOWN) return measureBoth;
      if (rule === "lying only" && sitting !== NOT_KNOWN && sitting > lying) return canSit;
      const other = rule === "lying only" || sitting === NOT_KNOWN ? lying : sitting;
      const fits = lengths.map((length) => fitOf(length, lying, other, slack, most));
      if (!fits.includes("in range")) return fits.includes("too long") ? noneInRange : noneLongEnough;
      if (rule !== "mean") return lengths[fits.indexOf("in range")]!;
      const enough = rounded((lying + other) / 2 + slack);
      return lengths.find((length) => length >= enough)!;
    },
  },
  documented && {
    details:
      "Larger, the default: the shortest length that STOMAFIT calls in range, neither below the larger reading or the mean " +
      "of both plus slack, nor above the larger reading plus most. Mean: the shortest that is not below the mean plus " +
      "slack, so it may be shorter than the larger reading. Lying only: the lying reading plus slack; refused where a " +
      "larger sitting reading stands there. #N/A where STOMAFIT would call nothing in stock in range. Measuring in both positions is published; the rule and the " +
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
        shows: "bad input",
        args: { lying: 3.6, sitting: 4.9, lengths: [[4], [5]], rule: "lying only" },
        gives: { error: "#VALUE!", says: "sitting is above lying" },
        source: `${sources.steenblik}: lying alone is too short`,
      },
      {
        shows: "boundary",
        args: { lying: 2, sitting: 2.2, lengths: [[2], [2.8], [4]] },
        gives: { error: "#N/A", says: "those that are long enough are too long" },
        source: "by hand: 2 is below the larger reading, 2.8 above 2.2 plus 0.5",
      },
      {
        shows: "boundary",
        args: { lying: 2, sitting: 2.2, lengths: [[2], [2.7], [4]] },
        gives: 2.7,
        source: "by hand: 2.2 plus 0.5 is 2.7, and the limit itself is in range",
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
