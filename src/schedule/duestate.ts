import { sources } from "../sources";
import { define } from "../worksheet/define";
import { documented } from "../worksheet/documented";
import { argument, fault } from "../worksheet/error";
import { date, NOT_KNOWN, number, orNotKnown } from "../worksheet/parameters";

/** Days before the due date from which it is `due soon`: clinic setting, no published source. */
export const SOON_DAYS = 14;

/**
 * A due date further away than this contradicts every interval in use (the longest allowed is 60 months): then a year
 * was typed, here or there, and `later` would reassure. Clinic setting, no published source.
 */
const FAR_DAYS = 3653;
const tooFar = fault`${argument("due")} is more than 10 years after ${argument("asof")}: check both dates`;

export const DUESTATE = define(
  {
    name: "DUESTATE",
    family: "Schedule",
    summary: "Where a due date stands today, in a word: past limit, overdue, due soon or later.",
    params: {
      due: orNotKnown(date("Due date", {})),
      asof: date("Today, or the day that the answer is for", {}),
      soon: number("Days before the due date that count as soon", {
        unit: "days",
        min: 0,
        whole: true,
        fallback: SOON_DAYS,
      }),
      latest: date("Date by which the change must have been done", { optional: true, fallbackHelp: "no limit" }),
    },
    subject: ["asof"],
    result: { shape: "cell", kind: "text", help: "past limit, overdue, due soon, later or no date", blank: "no date" },
    compute: ({ due, asof, soon, latest }) => {
      if (latest !== undefined && latest < asof) return "past limit";
      if (due === NOT_KNOWN) return "no date";
      // A limit before the due date contradicts it: the earlier one counts.
      const first = latest === undefined ? due : Math.min(due, latest);
      if (first < asof) return "overdue";
      if (first - asof > FAR_DAYS) return tooFar;
      return first - asof <= soon ? "due soon" : "later";
    },
  },
  documented && {
    details:
      "Past limit: the latest date has gone by, also where there is no due date. Overdue: the due date has gone by. Due soon: today, or within the days " +
      "given, the last of them included. If the latest date lies before the due date, it counts as the due date. A due " +
      "date more than ten years away is refused.",
    cautions: [
      "Later is a comparison of dates. It does not show that a tube is sound or in the right place.",
      "Let today stand in one cell (the name As_of) instead of TODAY() in every formula.",
    ],
    evidence: "clinic setting",
    sources: [sources.noSource],
    examples: [
      {
        shows: "defined",
        args: { due: "2026-05-14", asof: "2026-05-15" },
        gives: "overdue",
        source: sources.catalogue,
      },
      {
        shows: "defined",
        args: { due: "2026-05-14", asof: "2026-08-15", latest: "2026-08-14" },
        gives: "past limit",
        source: sources.catalogue,
      },
      { shows: "use", args: { due: "2026-05-14", asof: "2026-03-01" }, gives: "later", source: sources.catalogue },
      {
        shows: "range",
        args: { due: [["2026-05-01"], ["2026-05-20"], [""]], asof: "2026-05-10" },
        gives: [["overdue"], ["due soon"], ["no date"]],
        source: sources.catalogue,
      },
      { shows: "blank", args: { due: "", asof: "2026-05-10" }, gives: "no date", source: sources.catalogue },
      {
        shows: "blank",
        args: { due: "", asof: "2026-05-10", latest: "2026-05-09" },
        gives: "past limit",
        source: "defined by this function's rule: a limit that has gone by needs no due date",
      },
      {
        shows: "blank",
        args: { due: "", asof: "2026-05-10", latest: "2026-05-10" },
        gives: "no date",
        source: "defined by this function's rule: how long there is still time is not known",
      },
      { shows: "blank", args: { due: "2026-05-10", asof: "" }, gives: "no date", source: sources.catalogue },
      {
        shows: "bad input",
        args: { due: "14/5/26", asof: "2026-05-10" },
        gives: { error: "#VALUE!", says: "due must be a date" },
        source: sources.input,
      },
      {
        shows: "boundary",
        args: { due: "2026-05-14", asof: "2026-05-14" },
        gives: "due soon",
        source: sources.catalogue,
      },
      {
        shows: "boundary",
        args: { due: "2026-05-24", asof: "2026-05-10" },
        gives: "due soon",
        source: sources.catalogue,
      },
      { shows: "boundary", args: { due: "2026-05-25", asof: "2026-05-10" }, gives: "later", source: sources.catalogue },
      {
        shows: "boundary",
        args: { due: "2026-09-01", asof: "2026-05-10", latest: "2026-05-20" },
        gives: "due soon",
        source: "defined by this function's rule: the earlier of two contradicting dates counts",
      },
    ],
  },
);
