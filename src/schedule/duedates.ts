import { addMonths, LAST_DAY } from "../maths/calendar";
import { sources } from "../sources";
import { day } from "../worksheet/dates";
import { define } from "../worksheet/define";
import { documented } from "../worksheet/documented";
import { argument, fault } from "../worksheet/error";
import { date, number } from "../worksheet/parameters";
import { changeInterval, intervalUnit, longInterval } from "./interval";

const beyond = fault`the last date would be after 9999: check ${argument("interval")} and ${argument("count")}`;

export const DUEDATES = define(
  {
    name: "DUEDATES",
    family: "Schedule",
    summary: "The next planned changes as a column of dates, all counted from one change.",
    params: {
      lastchange: date("When the tube now in was put in", {}),
      interval: changeInterval(
        "How long from one change to the next, as your service has set it for this kind of tube",
      ),
      count: number("How many dates", { min: 1, max: 1000, whole: true }),
      unit: intervalUnit(),
    },
    subject: ["lastchange"],
    result: {
      shape: "block",
      kind: "date",
      columns: ["due"],
      help: "One date below the other; format the cells as dates",
      blank: "",
    },
    compute: ({ lastchange, interval, count, unit }) => {
      const long = longInterval(interval, unit);
      if (long) return long;
      const due = (k: number): number =>
        unit === "months"
          ? addMonths(lastchange, k * interval)
          : lastchange + k * interval * (unit === "weeks" ? 7 : 1);
      if (!(due(count) <= LAST_DAY)) return beyond;
      return Array.from({ length: count }, (_, i) => [due(i + 1)]);
    },
  },
  documented && {
    details:
      "Always counted from the first date, never from the one before: 31 January plus 1, 2, 3 months is 28 February, " +
      "31 March, 30 April. After each change, count anew from the change itself. More than 60 months, 260 weeks or 1,830 " +
      "days is refused as a slip (clinic setting, no published source).",
    cautions: [
      "Dates for planning supplies and clinics. Each change moves those behind it.",
      "A date is a reminder. It does not show that a tube is sound: balloons burst without warning.",
    ],
    evidence: "clinic setting",
    sources: [sources.edate, sources.temporal, sources.noSource],
    examples: [
      {
        shows: "published",
        args: { lastchange: "2019-01-31", interval: 1, count: 1 },
        gives: [[day("2019-02-28")]],
        source: sources.temporal,
      },
      {
        shows: "range",
        args: { lastchange: "2026-01-31", interval: 1, count: 3 },
        gives: [[day("2026-02-28")], [day("2026-03-31")], [day("2026-04-30")]],
        source: `${sources.edate}: the day is clipped to the month's end`,
      },
      {
        shows: "use",
        args: { lastchange: "2026-01-05", interval: 12, count: 2, unit: "weeks" },
        gives: [[day("2026-03-30")], [day("2026-06-22")]],
        source: `${sources.calendar}: 84 and 168 days`,
      },
      { shows: "blank", args: { lastchange: "", interval: 3, count: 4 }, gives: "", source: sources.input },
      {
        shows: "bad input",
        args: { lastchange: "2026-01-31", interval: 3, count: 0 },
        gives: { error: "#VALUE!", says: "count must be at least 1" },
        source: sources.catalogue,
      },
      {
        shows: "bad input",
        args: { lastchange: "2026-01-31", interval: 2.5, count: 4 },
        gives: { error: "#VALUE!", says: "interval must be a whole number" },
        source: sources.catalogue,
      },
      {
        shows: "bad input",
        args: { lastchange: "2026-01-31", interval: 1831, count: 4, unit: "days" },
        gives: { error: "#VALUE!", says: "above 1830 days" },
        source: sources.noSource,
      },
      {
        shows: "boundary",
        args: { lastchange: "2026-01-05", interval: 260, count: 1, unit: "weeks" },
        gives: [[day("2030-12-30")]],
        source: `${sources.calendar}: 1,820 days are 5 years less 6 days, one of the years a leap year`,
      },
      {
        shows: "boundary",
        args: { lastchange: "9999-11-30", interval: 1, count: 2 },
        gives: { error: "#VALUE!", says: "after 9999" },
        source: sources.input,
      },
    ],
  },
);
