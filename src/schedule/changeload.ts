import { calendarDate, dayNumber } from "../maths/calendar";
import { sources } from "../sources";
import { day, readDate } from "../worksheet/dates";
import { define } from "../worksheet/define";
import { documented } from "../worksheet/documented";
import { argument, fault, SheetError } from "../worksheet/error";
import { date, number, numberReader } from "../worksheet/parameters";
import { columnOf, filledRows } from "../worksheet/rows";
import { monthsRule } from "./interval";

const monthCount = (serial: number): number => {
  const { year, month } = calendarDate(serial);
  return 12 * year + month - 1;
};
const firstOfMonth = (count: number): number => dayNumber(Math.floor(count / 12), (count % 12) + 1, 1);

const beyond = new SheetError("the last month would be after 9999");

export const CHANGELOAD = define(
  {
    name: "CHANGELOAD",
    family: "Schedule",
    summary: "How many planned changes fall into each month, from the due dates of all tubes.",
    params: {
      due: columnOf("Next due date of each tube", { unit: "date" }, readDate),
      interval: columnOf(
        "Months from one change to the next, for each tube or one for all",
        { unit: "months", limits: `whole number, above 0, at most ${monthsRule.max}` },
        numberReader(monthsRule),
      ),
      from: date("Any day of the first month", {}),
      months: number("How many months", { min: 1, max: 240, whole: true }),
    },
    subject: ["from"],
    result: {
      shape: "block",
      kind: "mixed",
      columns: ["first of month", "changes expected"],
      columnKinds: ["date", "number"],
      help: "A row a month; format the first column as dates",
      blank: "",
    },
    compute: ({ due, interval, from, months }) => {
      const oneForAll = interval.values.length === 1 && due.values.length > 1 ? interval.values[0]! : undefined;
      if (Number.isNaN(oneForAll)) return fault`${argument("interval")} is missing`;
      const rows = filledRows(oneForAll === undefined ? { due, interval } : { due });
      if (rows instanceof SheetError) return rows;

      const first = monthCount(from);
      if (first + months > 12 * 10_000) return beyond;
      const counts = new Array<number>(months).fill(0);
      for (const row of rows) {
        const step = oneForAll ?? interval.values[row]!;
        const behind = monthCount(due.values[row]!) - first;
        // What fell due before the first month is done in it, once.
        if (behind < 0) counts[0]! += 1;
        const next = behind >= 0 ? behind : ((behind % step) + step) % step;
        for (let month = next === 0 && behind < 0 ? step : next; month < months; month += step) counts[month]! += 1;
      }
      return counts.map((count, i) => [firstOfMonth(first + i), count]);
    },
  },
  documented && {
    details:
      "Each tube falls due at its date and then every so many months. What fell due before the first month counts once, " +
      "in the first month. A tube counts at most once a month.",
    cautions: [
      "Planned changes only: add your own unplanned ones. Most balloons end by bursting, before their date.",
      "For staff, rooms and supplies; not a list of who is due.",
    ],
    evidence: "clinic setting",
    sources: [sources.edate, sources.michaud, sources.noSource],
    examples: [
      {
        shows: "defined",
        args: {
          due: [["2026-05-14"], ["2026-03-02"], ["2026-06-30"]],
          interval: [[3], [3], [6]],
          from: "2026-05-01",
          months: 4,
        },
        gives: [
          [day("2026-05-01"), 2],
          [day("2026-06-01"), 2],
          [day("2026-07-01"), 0],
          [day("2026-08-01"), 1],
        ],
        source: `${sources.calendar}: first tube May, August; second overdue in May, then June; third June`,
      },
      {
        shows: "range",
        args: { due: [["2026-01-31"], [""]], interval: 1, from: "2026-01-15", months: 2 },
        gives: [
          [day("2026-01-01"), 1],
          [day("2026-02-01"), 1],
        ],
        source: sources.calendar,
      },
      {
        shows: "blank",
        args: { due: [["2026-01-31"]], interval: 3, from: "", months: 2 },
        gives: "",
        source: sources.input,
      },
      {
        shows: "bad input",
        args: { due: [["2026-01-31"], [""]], interval: [[3], [3]], from: "2026-01-01", months: 2 },
        gives: { error: "#VALUE!", says: "due is missing in row 2" },
        source: sources.input,
      },
      {
        shows: "bad input",
        args: { due: [["2026-01-31"], ["2026-02-28"]], interval: [[3], [90]], from: "2026-01-01", months: 2 },
        gives: { error: "#VALUE!", says: "interval in row 2 must be above 0, at most 60: weeks or days?" },
        source: sources.noSource,
      },
      {
        shows: "boundary",
        args: { due: [["2026-04-30"]], interval: 1, from: "2026-05-01", months: 2 },
        gives: [
          [day("2026-05-01"), 1],
          [day("2026-06-01"), 1],
        ],
        source: "defined by this function's rule: overdue and due again in the first month count once",
      },
    ],
  },
);
