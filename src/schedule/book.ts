import { sources } from "../sources";
import { day, readDate } from "../worksheet/dates";
import { define, type Param } from "../worksheet/define";
import { documented } from "../worksheet/documented";
import { argument, fault, SheetError } from "../worksheet/error";
import { choice, date, numberReader } from "../worksheet/parameters";
import { columnOf, type NumberColumn } from "../worksheet/rows";
import { bookMostInTime, bookWorstFirst, openSessions, type Session, type Waiting } from "./booking";

const optionalDates = (help: string, fallbackHelp: string): Param<NumberColumn | undefined> => ({
  ...columnOf(help, { unit: "date" }, readDate),
  optional: true,
  fallbackHelp,
});

const unlike = (name: string, { rows, columns }: NumberColumn, first: string, other: NumberColumn): SheetError =>
  fault`${argument(first)} has ${other.rows} x ${other.columns} cells and ${argument(name)} ${rows} x ${columns}: make them alike`;

/** @param from sessions before this day are over */
function readSessions(dates: NumberColumn, places: NumberColumn, from: number): Session[] | SheetError {
  const oneForAll = places.values.length === 1 ? places.values[0]! : undefined;
  if (oneForAll === undefined && places.values.length !== dates.values.length) {
    return unlike("places", places, "sessions", dates);
  }
  const sessions: Session[] = [];
  for (const [i, date] of dates.values.entries()) {
    const each = (oneForAll ?? places.values[i]!) || 0;
    if (date >= from) sessions.push({ date, places: each });
    else if (!Number.isNaN(date)) continue;
    else if (oneForAll === undefined && each > 0) return fault`${argument("sessions")} is missing in row ${i + 1}`;
  }
  return openSessions(sessions);
}

const NO_PLACE = "no place";

export const BOOK = define(
  {
    name: "BOOK",
    family: "Schedule",
    summary: "Books people into clinic sessions with so many places each: a session date for everybody, or no place.",
    params: {
      due: columnOf("Due date of each person, in one column", { unit: "date" }, readDate),
      sessions: columnOf("Dates of the sessions", { unit: "date" }, readDate),
      places: columnOf(
        "Places in each session, or one number for all; blank or 0: closed",
        { limits: "whole number, at least 0" },
        numberReader({ min: 0, max: 10_000, whole: true }),
      ),
      earliest: optionalDates("First day on which each person may come", "any day"),
      latest: optionalDates("Day by which each change must have been done", "no limit"),
      rule: choice("Who comes first", ["worst first", "most in time"], { fallback: "worst first" }),
      asof: date("Today: sessions before it are over and book nobody", {
        optional: true,
        fallbackHelp: "every session is still to come",
      }),
    },
    subject: [],
    result: {
      shape: "block",
      kind: "date",
      words: [NO_PLACE],
      columns: ["session"],
      help: "One row for each row of due: a session, no place, or a blank where due is blank; format as dates",
      blank: "",
    },
    compute: ({ due, sessions, places, earliest, latest, rule, asof = -Infinity }) => {
      if (due.columns !== 1) return fault`${argument("due")} must be one column`;
      if (earliest && earliest.values.length !== due.values.length) return unlike("earliest", earliest, "due", due);
      if (latest && latest.values.length !== due.values.length) return unlike("latest", latest, "due", due);
      const open = readSessions(sessions, places, asof);
      if (open instanceof SheetError) return open;

      const people: Waiting[] = [];
      const rows: number[] = [];
      for (const [row, date] of due.values.entries()) {
        if (Number.isNaN(date)) continue;
        const from = earliest?.values[row] ?? NaN;
        const limit = latest?.values[row] ?? NaN;
        rows.push(row);
        people.push({
          due: date,
          earliest: Number.isNaN(from) ? -Infinity : from,
          latest: Number.isNaN(limit) ? Infinity : limit,
        });
      }
      const booked = rule === "worst first" ? bookWorstFirst(people, open) : bookMostInTime(people, open);
      const result: [number | string][] = Array.from({ length: due.values.length }, () => [""]);
      rows.forEach((row, i) => (result[row] = [booked[i] ?? NO_PLACE]));
      return result;
    },
  },
  documented && {
    details:
      "Worst first: those past their latest day, the longest past first; then those overdue, the longest first; then by " +
      "due date. Both are counted against the first session that has a place. Each takes the first free place not before " +
      "the earliest day, so nobody past the limit waits behind somebody who is not. Most in time: the largest possible " +
      "number is booked by the due date, the others after them by due date: somebody long overdue may then wait. Ties go " +
      "by row. With today given, sessions before it are passed over.",
    cautions: [
      "Without today, a session that is already over books people too.",
      "No place is a finding: open a session or arrange another way.",
      "Most in time leaves those already overdue until last: look at them first.",
      "A booking does not say that waiting is without risk; symptoms go before dates.",
    ],
    evidence: "common practice",
    sources: [sources.edf, sources.edfMatching, sources.noSource],
    examples: [
      {
        shows: "defined",
        args: {
          due: [["2026-05-20"], ["2026-04-01"], ["2026-05-10"]],
          sessions: [["2026-05-05"], ["2026-05-12"]],
          places: [[1], [1]],
        },
        gives: [["no place"], [day("2026-05-05")], [day("2026-05-12")]],
        source: "by hand: the overdue one first, then the earlier due date",
      },
      {
        shows: "use",
        args: {
          due: [["2026-05-20"], ["2026-04-01"], ["2026-05-10"]],
          sessions: [["2026-05-05"], ["2026-05-12"]],
          places: 1,
          earliest: [[""], [""], ["2026-05-06"]],
          latest: [["2026-05-01"], [""], [""]],
        },
        gives: [[day("2026-05-05")], [day("2026-05-12")], ["no place"]],
        source: "by hand: the first is past the limit, the second overdue, and no place is left",
      },
      {
        shows: "use",
        args: {
          due: [["2026-05-20"], ["2026-04-01"], ["2026-05-10"]],
          sessions: [["2026-05-05"], ["2026-05-12"]],
          places: 1,
          rule: "most in time",
        },
        gives: [[day("2026-05-12")], ["no place"], [day("2026-05-05")]],
        source: "by hand: two can be in time, and the one already overdue cannot",
      },
      {
        shows: "use",
        args: {
          due: [["2026-05-20"], ["2026-04-01"]],
          sessions: [["2026-05-05"], ["2026-05-12"]],
          places: 1,
          asof: "2026-05-06",
        },
        gives: [["no place"], [day("2026-05-12")]],
        source: "by hand: the first session is over, and the second has one place",
      },
      {
        shows: "range",
        args: {
          due: [["2026-05-04"], [""], ["2026-05-03"]],
          sessions: [["2026-05-05"], ["2026-05-06"]],
          places: [[0], [1]],
        },
        gives: [["no place"], [""], [day("2026-05-06")]],
        source: "by hand: the first session is closed",
      },
      {
        shows: "blank",
        args: { due: [[""], [""]], sessions: [["2026-05-05"]], places: 4 },
        gives: [[""], [""]],
        source: sources.catalogue,
      },
      {
        shows: "bad input",
        args: { due: [["2026-05-04"], ["soon"]], sessions: [["2026-05-05"]], places: 4 },
        gives: { error: "#VALUE!", says: "due in row 2 must be a date" },
        source: sources.input,
      },
      {
        shows: "bad input",
        args: { due: [["2026-05-04"]], sessions: [["2026-05-05"], [""]], places: [[1], [1]] },
        gives: { error: "#VALUE!", says: "sessions is missing in row 2" },
        source: sources.input,
      },
      {
        shows: "boundary",
        args: { due: [["2026-05-05"], ["2026-05-05"]], sessions: [["2026-05-05"]], places: 1, rule: "most in time" },
        gives: [[day("2026-05-05")], ["no place"]],
        source: sources.catalogue,
      },
    ],
  },
);
