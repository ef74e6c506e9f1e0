import { sources } from "../sources";
import { dateResult, day } from "../worksheet/dates";
import { define } from "../worksheet/define";
import { documented } from "../worksheet/documented";
import { notAvailable, SheetError } from "../worksheet/error";
import { rounded } from "../worksheet/numbers";
import { number } from "../worksheet/parameters";
import { checkColumns, checkRows, FOR_LIMITS, trendOfAll } from "./checks";
import { expectedVolume } from "./volumes";

/** Share of the fill that is looked for: clinic setting, no published source. */
const HALF = 0.5;

const noLoss = notAvailable("these checks show no loss");

export const BALLOONHALF = define(
  {
    name: "BALLOONHALF",
    family: "Balloon",
    summary: "Day on which a leaking balloon would be down to half, losing as fast as its checks allow.",
    params: {
      ...checkColumns(),
      expected: expectedVolume(),
      share: number("Share of expected to look for", { above: 0, below: 1, fallback: HALF }),
    },
    subject: ["expected"],
    result: { shape: "cell", kind: "date", help: "A day; format the cell as a date", blank: "" },
    compute: ({ date, out, in: putIn, expected, share }) => {
      const checks = { date, out, in: putIn };
      const rows = checkRows(checks);
      if (rows instanceof SheetError) return rows;
      if (rows.length < FOR_LIMITS) {
        return notAvailable(`needs at least ${FOR_LIMITS} checks of this balloon; there are ${rows.length}`);
      }
      const trend = trendOfAll(date, out, putIn);
      if (trend instanceof SheetError) return trend;
      if (!(trend.high > 0)) return noLoss;
      const above = Math.max(0, rounded(trend.last.putIn - share * expected));
      return dateResult(trend.last.date + Math.floor(rounded(above / trend.high)));
    },
  },
  documented && {
    details:
      "Not a date until which the balloon is sound: most balloons burst without a trend. From the last fill on, losing at " +
      "the upper 95% limit of BALLOONTREND, this is the whole day on which the volume would reach the share of what is " +
      "expected. Fewer than 5 checks, or no loss: #N/A. Half is a clinic setting.",
    cautions: [
      "Not a date until which the balloon is sound. It never puts a check or a change off.",
      "A balloon that leaks is refilled, checked again the next day and, twice low, planned for a change.",
      "Only the checks of the balloon now in.",
    ],
    evidence: "clinic setting",
    sources: [sources.sen, sources.michaud, sources.noSource],
    examples: [
      {
        shows: "range",
        args: {
          date: [["2026-03-02"], ["2026-03-09"], ["2026-03-16"], ["2026-03-23"], ["2026-03-30"]],
          out: [[5], [4.3], [4.3], [4.3], [4.3]],
          in: [[5], [5], [5], [5], [5]],
          expected: 5,
        },
        gives: day("2026-04-24"),
        source: "by hand: 0.7 mL a week, 2.5 mL at 0.1 mL a day is 25 days",
      },
      {
        shows: "defined",
        args: {
          date: [["2026-03-02"], ["2026-03-09"], ["2026-03-16"], ["2026-03-23"], ["2026-03-30"]],
          out: [[5], [4.3], [4.3], [4.3], [4.3]],
          in: [[5], [5], [5], [5], [5]],
          expected: 5,
          share: 0.8,
        },
        gives: day("2026-04-09"),
        source: "by hand: 1 mL at 0.1 mL a day is 10 days",
      },
      {
        shows: "blank",
        args: { date: [["2026-03-02"]], out: [[5]], in: [[5]], expected: "" },
        gives: "",
        source: sources.input,
      },
      {
        shows: "bad input",
        args: {
          date: [["2026-03-02"], ["2026-03-09"], ["2026-03-16"], ["2026-03-23"]],
          out: [[5], [4.3], [4.3], [4.3]],
          in: [[5], [5], [5], [5]],
          expected: 5,
        },
        gives: { error: "#N/A", says: "at least 5 checks" },
        source: sources.catalogue,
      },
      {
        shows: "boundary",
        args: {
          date: [["2026-03-02"], ["2026-03-09"], ["2026-03-16"], ["2026-03-23"], ["2026-03-30"]],
          out: [[5], [5], [5], [5], [5]],
          in: [[5], [5], [5], [5], [5]],
          expected: 5,
        },
        gives: { error: "#N/A", says: "no loss" },
        source: sources.catalogue,
      },
      {
        shows: "boundary",
        args: {
          date: [["2026-03-02"], ["2026-03-09"], ["2026-03-16"], ["2026-03-23"], ["2026-03-30"]],
          out: [[5], [4.3], [4.3], [4.3], [4.3]],
          in: [[5], [5], [5], [5], [2]],
          expected: 5,
        },
        gives: day("2026-03-30"),
        source: "defined by this function's rule: already below half on the day of the fill",
      },
    ],
  },
);
