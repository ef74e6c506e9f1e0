import { poissonEnough } from "../maths/poisson";
import { sources } from "../sources";
import { define } from "../worksheet/define";
import { documented } from "../worksheet/documented";
import { argument, fault } from "../worksheet/error";
import { rounded } from "../worksheet/numbers";
import { number } from "../worksheet/parameters";

/** Mean length of a month in the Gregorian calendar, leap years included. */
const DAYS_A_MONTH = 365.25 / 12;

const noDays = fault`${argument("leaddays")} and ${argument("reviewdays")} are both 0: give the days from order to delivery`;

export const STOCKLEVEL = define(
  {
    name: "STOCKLEVEL",
    family: "Supplies",
    summary: "How many pieces to have, in stock and on order together, so that they rarely run out before a delivery.",
    params: {
      permonth: number("Pieces used in a month, on average, planned and unplanned", { min: 0, max: 1e6 }),
      leaddays: number("Days from order to delivery", { unit: "days", min: 0, max: 3660 }),
      reviewdays: number("Days from one look at the stock to the next", {
        unit: "days",
        min: 0,
        max: 3660,
        fallback: 0,
      }),
      service: number("Chance that it is enough, of 1", { above: 0, below: 1, fallback: 0.95 }),
    },
    subject: ["permonth"],
    result: { shape: "cell", kind: "number", unit: "pieces", help: "Order up to this number", blank: "" },
    compute: ({ permonth, leaddays, reviewdays, service }) => {
      const days = leaddays + reviewdays;
      if (days === 0) return noDays;
      const enough = poissonEnough(rounded((permonth * days) / DAYS_A_MONTH), service);
      // Where few are used, none would often be enough; a size that somebody wears is never left without one.
      return permonth > 0 ? Math.max(1, enough) : enough;
    },
  },
  documented && {
    details:
      "What is used between two deliveries varies by chance (Poisson) around its mean; this is the smallest number that is " +
      "enough with the chance given, and at least 1 of a size that is used at all. Order up to it: what is on order counts. 0.95 is enough in 19 of 20 deliveries.",
    cautions: [
      "Count use of one size and kind: a 14 Fr does not stand in for a 16 Fr.",
      "The mean must come from your own log; a bad batch or a new group of people breaks it.",
      "One spare for each person is another matter: this counts the clinic's shelf.",
    ],
    evidence: "textbook",
    sources: [sources.stevenson, sources.poissonTable, sources.noSource],
    examples: [
      {
        shows: "published",
        args: { permonth: 4, leaddays: 30.4375, service: 0.6 },
        gives: 4,
        source: `${sources.stevenson}; one month's lead`,
      },
      {
        shows: "range",
        args: { permonth: [[1], [12], [""]], leaddays: 20.4375, reviewdays: 10 },
        gives: [[3], [18], [""]],
        source: `${sources.poissonTable}: mean 1: 0.920 up to 2, 0.981 up to 3; mean 12: 0.937 up to 17, 0.963 up to 18`,
      },
      { shows: "blank", args: { permonth: "", leaddays: 14 }, gives: "", source: sources.input },
      {
        shows: "bad input",
        args: { permonth: 4, leaddays: "" },
        gives: { error: "#VALUE!", says: "leaddays is missing" },
        source: sources.input,
      },
      {
        shows: "bad input",
        args: { permonth: 4, leaddays: 14, reviewdays: 7, service: 95 },
        gives: { error: "#VALUE!", says: "service must be above 0, below 1" },
        source: sources.catalogue,
      },
      {
        shows: "bad input",
        args: { permonth: 4, leaddays: 0 },
        gives: { error: "#VALUE!", says: "leaddays and reviewdays are both 0" },
        source: "defined by this function's rule: an empty settings cell must not empty the shelf",
      },
      { shows: "boundary", args: { permonth: 0, leaddays: 14 }, gives: 0, source: sources.catalogue },
      {
        shows: "boundary",
        args: { permonth: 0.01, leaddays: 7 },
        gives: 1,
        source: "defined by this function's rule: at least 1 of a size that is used",
      },
      {
        shows: "boundary",
        args: { permonth: 4, leaddays: 30.4375, service: 0.62883693518 },
        gives: 4,
        source: `${sources.stevenson}: printed 0.629 up to 4 (exactly 0.628836935...)`,
      },
    ],
  },
);
