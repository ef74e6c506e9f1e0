import { addMonths } from "../maths/calendar";
import { sources } from "../sources";
import { WHO_DECIDES } from "../words/who-decides";
import { dateResult, day } from "../worksheet/dates";
import { define } from "../worksheet/define";
import { documented } from "../worksheet/documented";
import { argument, fault } from "../worksheet/error";
import { date, range } from "../worksheet/parameters";
import { noClosedDays, openDayAtOrBefore, readClosedDays, type ClosedDays } from "./closed-days";
import { changeInterval, intervalUnit, longInterval } from "./interval";

const noOpenDay = fault`no open day between the last change and the due date: check ${argument("closed")} and ${argument("interval")}`;

export const CHANGEDUE = define(
  {
    name: "CHANGEDUE",
    family: "Schedule",
    summary: "Date on which a tube is due for change: the last change plus the interval that your service has set.",
    params: {
      lastchange: date("When the tube now in was put in", {}),
      interval: changeInterval("How long until the next change, as your service has set it for this kind of tube"),
      unit: intervalUnit(),
      closed: range<ClosedDays, { optional: true; fallback: ClosedDays; fallbackHelp: string }>(
        "Days on which the clinic is shut: dates, or day names such as Sat",
        { optional: true, fallback: noClosedDays, fallbackHelp: "no closed days" },
        readClosedDays,
      ),
    },
    subject: ["lastchange"],
    result: { shape: "cell", kind: "date", help: "Due date; format the cell as a date", blank: "" },
    compute: ({ lastchange, interval, unit, closed }) => {
      const long = longInterval(interval, unit);
      if (long) return long;
      const due =
        unit === "months" ? addMonths(lastchange, interval) : lastchange + interval * (unit === "weeks" ? 7 : 1);
      const possible = dateResult(due);
      if (typeof possible !== "number" || closed === noClosedDays) return possible;
      return openDayAtOrBefore(possible, closed, lastchange) ?? noOpenDay;
    },
  },
  documented && {
    details:
      "Months are calendar months: a day that the month does not have becomes its last day (31 August plus 6 months is " +
      "28 or 29 February). Count from the change itself, never from the due date before. If the day is closed, the " +
      "nearest earlier open day is given. There is no default interval: services differ (1 to 8 months for balloons). More " +
      "than 60 months, 260 weeks or 1,830 days is refused as a slip (clinic setting, no published source).",
    cautions: [
      "A date is a reminder. It does not show that a tube is sound: balloons burst without warning.",
      WHO_DECIDES,
      "Never one interval for a mixed list: balloon, bumper and jejunal tubes have different ones.",
    ],
    evidence: "hospital",
    sources: [
      sources.edate,
      sources.temporal,
      sources.nca,
      sources.rchMelbourne,
      sources.espghan,
      sources.gosh,
      sources.toronto,
      sources.japan,
      sources.noSource,
    ],
    examples: [
      {
        shows: "published",
        args: { lastchange: "2019-01-31", interval: 1 },
        gives: day("2019-02-28"),
        source: sources.temporal,
      },
      {
        shows: "published",
        args: { lastchange: "2006-01-01", interval: 2 },
        gives: day("2006-03-01"),
        source: sources.edate,
      },
      {
        shows: "published",
        args: { lastchange: "2000-04-05", interval: 24 },
        gives: day("2002-04-05"),
        source: sources.edate,
      },
      {
        shows: "published",
        args: { lastchange: "2008-10-15", interval: 2 },
        gives: day("2008-12-15"),
        source: sources.edateWiki,
      },
      {
        shows: "use",
        args: { lastchange: "2026-02-11", interval: 12, unit: "weeks" },
        gives: day("2026-05-06"),
        source: "12 weeks are 84 days, counted on a calendar",
      },
      {
        shows: "use",
        args: { lastchange: "2026-02-14", interval: 3, unit: "months", closed: [["Sat"], ["2026-05-14"]] },
        gives: day("2026-05-13"),
        source: "counted on a calendar: 14 May 2026 is closed, 13 May is a Wednesday",
      },
      {
        shows: "range",
        args: { lastchange: [["2026-01-15"], [""], ["see letter"]], interval: 3 },
        gives: [[day("2026-04-15")], [""], [{ error: "#VALUE!" }]],
        source: sources.catalogue,
      },
      { shows: "blank", args: { lastchange: "", interval: 3 }, gives: "", source: sources.input },
      {
        shows: "bad input",
        args: { lastchange: "2026-01-15", interval: "" },
        gives: { error: "#VALUE!", says: "interval is missing" },
        source: sources.input,
      },
      {
        shows: "bad input",
        args: { lastchange: "2026-01-15", interval: 90 },
        gives: { error: "#VALUE!", says: "above 60 months: weeks or days?" },
        source: `${sources.noSource}: 90 days typed as months are 7 years and a half`,
      },
      {
        shows: "boundary",
        args: { lastchange: "2026-01-15", interval: 60 },
        gives: day("2031-01-15"),
        source: `${sources.edate}; 5 years, counted on a calendar`,
      },
      {
        shows: "bad input",
        args: { lastchange: "3/4/2026", interval: 3 },
        gives: { error: "#VALUE!", says: "lastchange must be a date" },
        source: sources.input,
      },
      {
        shows: "boundary",
        args: { lastchange: "2025-08-31", interval: 6 },
        gives: day("2026-02-28"),
        source: `${sources.edate}: the day is clipped to the month's end`,
      },
      {
        shows: "boundary",
        args: { lastchange: "9999-12-01", interval: 1 },
        gives: { error: "#VALUE!", says: "1900 to 9999" },
        source: sources.input,
      },
    ],
  },
);
