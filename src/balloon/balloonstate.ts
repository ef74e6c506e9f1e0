import { sources } from "../sources";
import { define } from "../worksheet/define";
import { documented } from "../worksheet/documented";
import { argument, fault } from "../worksheet/error";
import { rounded } from "../worksheet/numbers";
import { number } from "../worksheet/parameters";
import { expectedVolume, largestVolume, volumeOut } from "./volumes";

/** Fills up to this many mL count as small. Clinic setting, no published source. */
const SMALL_FILL = 5;
/** Loss to act on in a small fill, mL: SickKids, "more than 0.5 mL less than was put in". */
const LOSS_SMALL = 0.5;
/** Loss to act on in a larger fill, mL: clinic setting, no published source. */
const LOSS_LARGE = 1;
/** Largest loss to act on, mL, as the settings allow it: a larger one would call nearly every loss as filled. */
const LARGEST_ACTION = 5;
/** Reading allowance of a syringe, mL; never a filling margin. Clinic setting, no published source. */
const OVER_READ = 0.5;
/** Share of the fill that counts as half. Clinic setting, no published source. */
const HALF = 0.5;

const overfilled = fault`${argument("expected")} is above ${argument("most")}: look at the label, then check both volumes`;

export const BALLOONSTATE = define(
  {
    name: "BALLOONSTATE",
    family: "Balloon",
    summary: "What a balloon check found, in a word: empty, half or less, low, more than put in, or as filled.",
    params: {
      out: volumeOut(),
      expected: expectedVolume(),
      action: number("Loss above which the balloon reads low", {
        unit: "mL",
        min: 0,
        max: LARGEST_ACTION,
        optional: true,
        fallbackHelp: `${LOSS_SMALL} mL for fills up to ${SMALL_FILL} mL, else ${LOSS_LARGE} mL`,
      }),
      most: largestVolume(),
    },
    subject: ["out", "expected"],
    result: {
      shape: "cell",
      kind: "text",
      help: "as filled, low, half or less, empty, more than put in, or not measured",
      blank: "not measured",
    },
    compute: ({ out, expected, action = expected <= SMALL_FILL ? LOSS_SMALL : LOSS_LARGE, most }) => {
      if (out === 0) return "empty";
      if (rounded(out - expected) > OVER_READ || (most !== undefined && out > most)) return "more than put in";
      if (out <= rounded(expected * HALF)) return "half or less";
      if (rounded(expected - out) > action) return "low";
      return most !== undefined && expected > most ? overfilled : "as filled";
    },
  },
  documented && {
    details:
      "Compares what came out with what was put in last time. Low: more is missing than the loss to act on. More than " +
      "put in: over 0.5 mL above what was expected (reading a syringe is no better), or above the largest volume " +
      "printed. As filled says only that the figures agree; it is refused when more was put in than the device may hold.",
    cautions: [
      "Hold the tube while the balloon is empty. Do not empty a balloon in a new opening before the placing team's date.",
      "Milky or feed-coloured fluid: the balloon may have burst, or the wrong port was used.",
      "Low: refill to the agreed volume, never above the label; check again the next day. Low twice: plan a change.",
      "Water also passes through a sound balloon's wall: look at the days since the fill.",
      "Only water in a balloon, never feed or medicine, never more than the label says.",
      "Balloons burst without warning: figures that agree today do not show that the balloon will hold.",
    ],
    evidence: "hospital",
    sources: [sources.sickKidsLoss, sources.permeation, sources.noSource],
    examples: [
      { shows: "published", args: { out: 4.4, expected: 5 }, gives: "low", source: sources.sickKidsLoss },
      {
        shows: "published",
        args: { out: 4.5, expected: 5 },
        gives: "as filled",
        source: `${sources.sickKidsLoss}: exactly 0.5 mL is not more`,
      },
      { shows: "use", args: { out: 0, expected: 5 }, gives: "empty", source: sources.catalogue },
      { shows: "use", args: { out: "8 mL", expected: 10 }, gives: "low", source: sources.noSource },
      { shows: "use", args: { out: 6, expected: 5 }, gives: "more than put in", source: sources.noSource },
      {
        shows: "use",
        args: { out: 5, expected: 5, most: 4 },
        gives: "more than put in",
        source: sources.catalogue,
      },
      {
        shows: "range",
        args: { out: [[4.8], [2], [""]], expected: [[5], [5], [5]] },
        gives: [["as filled"], ["half or less"], ["not measured"]],
        source: sources.catalogue,
      },
      { shows: "blank", args: { out: "", expected: 5 }, gives: "not measured", source: sources.catalogue },
      { shows: "blank", args: { out: 4, expected: "" }, gives: "not measured", source: sources.catalogue },
      {
        shows: "bad input",
        args: { out: 4, expected: 5, action: -1 },
        gives: { error: "#VALUE!", says: "action must be at least 0" },
        source: sources.catalogue,
      },
      {
        shows: "bad input",
        args: { out: "3-5 mL", expected: 5 },
        gives: { error: "#VALUE!", says: "out must be one number of mL" },
        source: sources.input,
      },
      {
        shows: "boundary",
        args: { out: 500, expected: 500 },
        gives: { error: "#VALUE!", says: "at most 60" },
        source: `${sources.noSource}: no balloon holds that much`,
      },
      {
        shows: "bad input",
        args: { out: 5, expected: 5.4, most: 5 },
        gives: { error: "#VALUE!", says: "expected is above most" },
        source:
          "defined by this function's rule: more was put in than the device may hold, so the figures may not agree",
      },
      {
        shows: "bad input",
        args: { out: 2.6, expected: 5, action: 50 },
        gives: { error: "#VALUE!", says: "action must be at least 0, at most 5" },
        source:
          "defined by this function's rule: a loss to act on that no balloon reaches would call every loss as filled",
      },
      { shows: "boundary", args: { out: 4, expected: 6, most: 5 }, gives: "low", source: sources.catalogue },
      { shows: "boundary", args: { out: 0.6, expected: 1.1, action: 0.5 }, gives: "as filled", source: sources.floats },
      { shows: "boundary", args: { out: 2.5, expected: 5 }, gives: "half or less", source: sources.noSource },
      { shows: "boundary", args: { out: 5.5, expected: 5 }, gives: "as filled", source: sources.noSource },
      { shows: "boundary", args: { out: 5.1, expected: 6 }, gives: "as filled", source: sources.noSource },
    ],
  },
);
