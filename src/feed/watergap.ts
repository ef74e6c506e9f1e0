import { sources } from "../sources";
import { define } from "../worksheet/define";
import { documented } from "../worksheet/documented";
import { argument, fault } from "../worksheet/error";
import { rounded } from "../worksheet/numbers";
import { NO_WATER, optionalVolume, startingPoint, volumeOf, volumeOrNone, waterPercentOrNone } from "./arguments";

const noWater = fault`${argument("waterpercent")} is missing though ${argument("feed")} is given: the pack says it, 85 for 85%`;

export const WATERGAP = define(
  {
    name: "WATERGAP",
    family: "Feed and water",
    summary: "Water still to give in a day: the goal less the water in feed, flushes and all else.",
    params: {
      goal: volumeOf("Fluid to be given in a day"),
      feed: volumeOrNone("Feed given in a day"),
      waterpercent: waterPercentOrNone(),
      flush: optionalVolume("Water given as flushes in a day"),
      other: optionalVolume("Other fluid in a day: drinks, medicines, drips"),
    },
    subject: ["goal"],
    result: { shape: "cell", kind: "number", unit: "mL a day", help: "Negative: the goal is passed", blank: "" },
    compute: ({ goal, feed, waterpercent, flush, other }) => {
      if (waterpercent === NO_WATER && feed > 0) return noWater;
      return rounded(goal - (feed * waterpercent) / 100 - flush - other);
    },
  },
  documented && {
    details:
      "Only the water of the feed counts, not its volume; some charts count the whole volume. A feed of 1 kcal a mL is " +
      "83 to 85% water, one of 2 kcal 69 to 72%: the pack says. 0 or a blank is taken only where there is no feed.",
    cautions: [
      startingPoint,
      "Too much water does harm too: not for heart or kidney disease, or a fluid limit.",
      "A blank flush or other counts as none: enter what was given.",
    ],
    evidence: "textbook",
    sources: [sources.courseNotes, sources.waterFaq, sources.feedWater, sources.noSource],
    examples: [
      {
        shows: "published",
        args: { goal: 1800, feed: 1800, waterpercent: 83 },
        gives: 306,
        source: sources.courseNotes,
      },
      {
        shows: "published",
        args: { goal: 1600, feed: 1300, waterpercent: "70%" },
        gives: 690,
        source: sources.waterFaq,
      },
      {
        shows: "range",
        args: { goal: [[2000], [""]], feed: [[1920], [0]], waterpercent: 81, flush: 600 },
        gives: [[-155.2], [""]],
        source: `${sources.courseNotesFlush}; by hand: 2,000 less 2,155.2`,
      },
      { shows: "blank", args: { goal: "", feed: 1300, waterpercent: 70 }, gives: "", source: sources.input },
      {
        shows: "bad input",
        args: { goal: 1600, feed: 1300, waterpercent: 0.7 },
        gives: { error: "#VALUE!", says: "write 85 for 85%" },
        source: "defined by this function's rule: a cell that shows 70% holds 0.7",
      },
      {
        shows: "bad input",
        args: { goal: 1600, feed: "", waterpercent: 70 },
        gives: { error: "#VALUE!", says: "feed is missing" },
        source: sources.input,
      },
      {
        shows: "bad input",
        args: { goal: 1800, feed: 1800, waterpercent: 0 },
        gives: { error: "#VALUE!", says: "waterpercent is missing" },
        source: `${sources.courseNotes}; a blank cell may arrive as 0`,
      },
      {
        shows: "bad input",
        args: { goal: 1800, feed: 1800, waterpercent: 17 },
        gives: { error: "#VALUE!", says: "at least 40, at most 100: the dry part" },
        source: `${sources.feedWater}; ${sources.noSource} for the limit`,
      },
      {
        shows: "boundary",
        args: { goal: 1600, feed: 0, waterpercent: "" },
        gives: 1600,
        source: "by hand: no feed brings no water",
      },
      {
        shows: "boundary",
        args: { goal: 1600, feed: 0, waterpercent: 70, flush: 1600 },
        gives: 0,
        source: "by hand: no feed, all of it flushed",
      },
    ],
  },
);
