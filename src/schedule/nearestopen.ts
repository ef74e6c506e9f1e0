import { FIRST_DAY } from "../maths/calendar";
import { sources } from "../sources";
import { day } from "../worksheet/dates";
import { define } from "../worksheet/define";
import { documented } from "../worksheet/documented";
import { argument, fault } from "../worksheet/error";
import { choice, date, range } from "../worksheet/parameters";
import { neverOpen, openDayAtOrAfter, openDayAtOrBefore, readClosedDays, type ClosedDays } from "./closed-days";

const alwaysClosed = fault`${argument("closed")} names all seven days of the week: leave one open`;
const noneLeft = fault`no open day between 1900 and 9999: check ${argument("closed")}`;

export const NEARESTOPEN = define(
  {
    name: "NEARESTOPEN",
    family: "Schedule",
    summary: "The nearest day on which the clinic is open: the day itself, or the one before or after it.",
    params: {
      date: date("The day wished for", {}),
      closed: range<ClosedDays, object>(
        "Days on which the clinic is shut: dates, or day names such as Sat",
        {},
        readClosedDays,
      ),
      direction: choice("Which way to look", ["earlier", "later"], { fallback: "earlier" }),
    },
    subject: ["date"],
    result: { shape: "cell", kind: "date", help: "An open day; format the cell as a date", blank: "" },
    compute: ({ date, closed, direction }) => {
      if (neverOpen(closed)) return alwaysClosed;
      const open =
        direction === "earlier" ? openDayAtOrBefore(date, closed, FIRST_DAY - 1) : openDayAtOrAfter(date, closed);
      return open ?? noneLeft;
    },
  },
  documented && {
    details: "The day itself if it is open. Earlier is the default, because a change is better early than late.",
    cautions: ["Later may go past a limit: compare the result with the latest date.", "A date is a reminder only."],
    evidence: "clinic setting",
    sources: [sources.noSource, sources.calendar],
    examples: [
      {
        shows: "defined",
        args: { date: "2026-05-16", closed: [["Sat"], ["Sun"]] },
        gives: day("2026-05-15"),
        source: `${sources.calendar}: 16 May 2026 is a Saturday`,
      },
      {
        shows: "use",
        args: { date: "2026-05-16", closed: [["Saturday"], ["Sun"]], direction: "later" },
        gives: day("2026-05-18"),
        source: `${sources.calendar}: 18 May 2026 is a Monday`,
      },
      {
        shows: "range",
        args: { date: [["2026-05-13"], ["2026-05-14"], [""]], closed: [["2026-05-14"]] },
        gives: [[day("2026-05-13")], [day("2026-05-13")], [""]],
        source: sources.catalogue,
      },
      { shows: "blank", args: { date: "", closed: [["Sat"]] }, gives: "", source: sources.input },
      {
        shows: "bad input",
        args: { date: "2026-05-14", closed: [["Mon"], ["Tue"], ["Wed"], ["Thu"], ["Fri"], ["Sat"], ["Sun"]] },
        gives: { error: "#VALUE!", says: "all seven days" },
        source: sources.catalogue,
      },
      {
        shows: "bad input",
        args: { date: "2026-05-14", closed: [["bank holiday"]] },
        gives: { error: "#VALUE!", says: "closed holds" },
        source: sources.input,
      },
      {
        shows: "boundary",
        args: { date: "2026-05-14", closed: [["Sat"]] },
        gives: day("2026-05-14"),
        source: `${sources.calendar}: a Thursday, open`,
      },
      {
        shows: "boundary",
        args: { date: "1900-03-01", closed: [["1900-03-01"]] },
        gives: { error: "#VALUE!", says: "no open day" },
        source: sources.input,
      },
    ],
  },
);
