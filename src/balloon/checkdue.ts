import { sources } from "../sources";
import { dateResult, day } from "../worksheet/dates";
import { define } from "../worksheet/define";
import { documented } from "../worksheet/documented";
import { argument, fault } from "../worksheet/error";
import { date, number } from "../worksheet/parameters";

/** Days. Longer than a life: then a year was typed instead of a date, and the first-check rule would be lost. */
export const LONGEST_OPENING = 36_525;
const tooOld = fault`${argument("stomamade")} is more than 100 years before ${argument("devicein")}: write the whole date, not the year`;
/** Days. Longer than any balloon lasts: then a year was mistyped, and the next check would be put off by years. */
export const LATEST_CHECK = 3653;
const tooLate = fault`${argument("lastcheck")} is more than 10 years after ${argument("devicein")}: check both dates`;
/** Days. Services check every 1 to 2 weeks, first after 2 to 4; the limits are clinic settings, no published source. */
const LATEST_FIRST = 180;
const between = { unit: "days", max: 90, whole: true, fallback: 7, slipAbove: "hours, or a date?" } as const;
const deviceFirst = fault`${argument("devicein")} is before ${argument("stomamade")}: check both dates`;
const checkFirst = fault`${argument("lastcheck")} is before ${argument("stomamade")}: check both dates`;

export const CHECKDUE = define(
  {
    name: "CHECKDUE",
    family: "Balloon",
    summary: "Date of the next balloon check.",
    params: {
      stomamade: date("When the opening was made", {}),
      devicein: date("When the tube now in was put in", {}),
      lastcheck: date("Last balloon check", { optional: true, fallbackHelp: "none yet" }),
      first: number("No check before this many days after the opening was made", {
        unit: "days",
        min: 1,
        max: LATEST_FIRST,
        whole: true,
        fallback: 28,
        slipAbove: "hours, or a date?",
      }),
      every: number("Days from one check to the next", { ...between, min: 1 }),
      after: number("Days from a change to the first check", { ...between, min: 0 }),
    },
    subject: ["stomamade"],
    result: { shape: "cell", kind: "date", help: "Next check; format the cell as a date", blank: "" },
    compute: ({ stomamade, devicein, lastcheck, first, every, after }) => {
      if (devicein < stomamade) return deviceFirst;
      if (devicein - stomamade > LONGEST_OPENING) return tooOld;
      if (lastcheck !== undefined && lastcheck < stomamade) return checkFirst;
      if (lastcheck !== undefined && lastcheck - devicein > LATEST_CHECK) return tooLate;
      // A check from before the change was another balloon's.
      const next = lastcheck === undefined || lastcheck < devicein ? devicein + after : lastcheck + every;
      return dateResult(Math.max(next, stomamade + first));
    },
  },
  documented && {
    details:
      "The last check plus the days between checks; when this tube has not been checked yet, the day it was put in plus " +
      "the days after a change. Never before the first-check date of the opening. A check from before the tube was put " +
      "in belongs to another balloon and does not count.",
    cautions: [
      "Do not empty a balloon in a new opening before the placing team's date.",
      "A date is a reminder: a tube that slides more than usual or leaks is checked at once.",
      "Without the date on which the opening was made there is no answer.",
    ],
    evidence: "hospital",
    sources: [sources.sickKidsWeekly, sources.cambridgeFirst, sources.newcastleFirst, sources.noSource],
    examples: [
      {
        shows: "published",
        args: { stomamade: "2025-01-06", devicein: "2026-03-02", lastcheck: "2026-03-09" },
        gives: day("2026-03-16"),
        source: sources.sickKidsWeekly,
      },
      {
        shows: "published",
        args: { stomamade: "2026-03-02", devicein: "2026-03-02", lastcheck: "" },
        gives: day("2026-03-30"),
        source: sources.cambridgeFirst,
      },
      {
        shows: "published",
        args: { stomamade: "2026-03-02", devicein: "2026-03-02", lastcheck: "", first: 14 },
        gives: day("2026-03-16"),
        source: sources.newcastleFirst,
      },
      {
        shows: "use",
        args: { stomamade: "2025-01-06", devicein: "2026-03-12", lastcheck: "2026-03-09" },
        gives: day("2026-03-19"),
        source: sources.catalogue,
      },
      {
        shows: "range",
        args: {
          stomamade: [["2025-01-06"], [""]],
          devicein: [["2026-03-02"], ["2026-03-02"]],
          lastcheck: [["2026-03-16"], ["2026-03-16"]],
        },
        gives: [[day("2026-03-23")], [""]],
        source: sources.catalogue,
      },
      {
        shows: "blank",
        args: { stomamade: "", devicein: "2026-03-02", lastcheck: "2026-03-09" },
        gives: "",
        source: sources.catalogue,
      },
      {
        shows: "bad input",
        args: { stomamade: "2026-03-02", devicein: "", lastcheck: "" },
        gives: { error: "#VALUE!", says: "devicein is missing" },
        source: sources.input,
      },
      {
        shows: "bad input",
        args: { stomamade: "2026-03-02", devicein: "2026-02-02", lastcheck: "" },
        gives: { error: "#VALUE!", says: "devicein is before stomamade" },
        source: sources.catalogue,
      },
      {
        shows: "bad input",
        args: { stomamade: 2019, devicein: "2026-03-02", lastcheck: "" },
        gives: { error: "#VALUE!", says: "write the whole date" },
        source: "2019 as a day number is a day of 1905 (ECMA-376 part 1, 18.17.4)",
      },
      {
        shows: "bad input",
        args: { stomamade: "2026-03-02", devicein: "2026-03-02", lastcheck: "", first: 0 },
        gives: { error: "#VALUE!", says: "first must be at least 1" },
        source: "defined by this function's rule: an empty settings cell must not empty the balloon of a new opening",
      },
      {
        shows: "bad input",
        args: { stomamade: "2025-01-06", devicein: "2026-03-02", lastcheck: "2026-03-09", first: 28, every: 168 },
        gives: { error: "#VALUE!", says: "every must be at least 1, at most 90: hours" },
        source: `${sources.noSource}: 168 hours are 7 days`,
      },
      {
        shows: "bad input",
        args: { stomamade: "2025-01-06", devicein: "2026-03-02", lastcheck: "2062-03-09" },
        gives: { error: "#VALUE!", says: "more than 10 years after devicein" },
        source: "defined by this function's rule: 2062 typed for 2026 would put the next check off by 36 years",
      },
      {
        shows: "boundary",
        args: { stomamade: "2026-03-02", devicein: "2026-03-02", lastcheck: "2026-03-23" },
        gives: day("2026-03-30"),
        source: `${sources.cambridgeFirst}: a weekly check lands on the same day`,
      },
    ],
  },
);
