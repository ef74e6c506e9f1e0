import { sources } from "../sources";
import { day } from "../worksheet/dates";
import { define, type Param } from "../worksheet/define";
import { documented } from "../worksheet/documented";
import { argument, fault } from "../worksheet/error";
import { date } from "../worksheet/parameters";

const STILL_IN = "still in";
const orStillIn = (out: Param<number>): Param<number | typeof STILL_IN> => ({ ...out, ifBlank: STILL_IN });

/** Longer than a life: then a year was typed instead of a date, and every period would look full. */
const TOO_LONG = 36_525;
const tooOld = fault`${argument("in")} is more than 100 years before ${argument("from")}: write the whole date, not the year`;
const outFirst = fault`${argument("out")} is before ${argument("in")}: check both dates`;
const periodTurned = fault`${argument("to")} is before ${argument("from")}: check both dates`;

export const TUBEDAYS = define(
  {
    name: "TUBEDAYS",
    family: "Service",
    summary: "Days on which a tube was in place within a period.",
    params: {
      in: date("Day on which the tube was put in", {}),
      out: orStillIn(date("Day on which it came out; blank when still in", {})),
      from: date("First day of the period", {}),
      to: date("Last day of the period, no later than the day up to which your list is complete", {}),
    },
    subject: ["in"],
    result: { shape: "cell", kind: "number", unit: "days", help: "Tube-days within the period", blank: "" },
    compute: ({ in: start, out, from, to }) => {
      if (out !== STILL_IN && out < start) return outFirst;
      if (to < from) return periodTurned;
      if (from - start > TOO_LONG) return tooOld;
      const last = out === STILL_IN ? to : Math.min(out - 1, to);
      return Math.max(0, last - Math.max(start, from) + 1);
    },
  },
  documented && {
    details:
      "The day on which a tube is put in counts, the day on which it comes out does not, so that the day of a change counts " +
      "once. A tube still in counts up to the period's last day, which counts too. Added up over all tubes, this is what " +
      "rates are divided by.",
    cautions: [
      "A tube whose end was not written down counts as still in and makes every rate look better.",
      "A person with two tubes at once gives two tube-days a day: the published definition counts a person once a day.",
    ],
    evidence: "study",
    sources: [sources.deviceDay],
    examples: [
      {
        shows: "defined",
        args: { in: "2026-03-10", out: "2026-03-20", from: "2026-03-01", to: "2026-03-31" },
        gives: 10,
        source: "counted on a calendar: 10 to 19 March",
      },
      {
        shows: "use",
        args: { in: "2026-03-20", out: "", from: "2026-03-01", to: "2026-03-31" },
        gives: 12,
        source: "counted on a calendar: 20 to 31 March; with the row above 22 days, the change day once",
      },
      {
        shows: "range",
        args: {
          in: [["2025-11-02"], ["2026-04-02"], [""], ["2026-03-05"]],
          out: [["2026-03-02"], [""], [""], ["2026-02-05"]],
          from: "2026-03-01",
          to: "2026-03-31",
        },
        gives: [[1], [0], [""], [{ error: "#VALUE!" }]],
        source: "counted on a calendar: 1 March only; after the period; blank; out before in",
      },
      {
        shows: "blank",
        args: { in: "", out: "2026-03-20", from: "2026-03-01", to: "2026-03-31" },
        gives: "",
        source: sources.input,
      },
      {
        shows: "bad input",
        args: { in: "2026-03-10", out: "2026-03-09", from: "2026-03-01", to: "2026-03-31" },
        gives: { error: "#VALUE!", says: "out is before in" },
        source: sources.catalogue,
      },
      {
        shows: "bad input",
        args: { in: "2026-03-10", out: "", from: "2026-03-31", to: "2026-03-01" },
        gives: { error: "#VALUE!", says: "to is before from" },
        source: sources.catalogue,
      },
      {
        shows: "bad input",
        args: { in: 2019, out: "", from: "2026-03-01", to: "2026-03-31" },
        gives: { error: "#VALUE!", says: "write the whole date" },
        source: "2019 as a day number is a day of 1905 (ECMA-376 part 1, 18.17.4)",
      },
      {
        shows: "boundary",
        args: { in: "2026-03-10", out: "2026-03-10", from: "2026-03-01", to: "2026-03-31" },
        gives: 0,
        source: `${sources.deviceDay}; in and out on one day: the next tube has that day`,
      },
      {
        shows: "boundary",
        args: { in: day("2024-02-28"), out: day("2024-03-01"), from: "2024-02-01", to: "2024-02-29" },
        gives: 2,
        source: "counted on a calendar: 28 and 29 February of a leap year",
      },
    ],
  },
);
