import { criticalValue, logRatio } from "../maths/max-sprt";
import { poissonLimits } from "../maths/poisson";
import { sources } from "../sources";
import { define, type Row } from "../worksheet/define";
import { documented } from "../worksheet/documented";
import { argument, notAvailable, SheetError } from "../worksheet/error";
import { number, reading } from "../worksheet/parameters";
import { rememberEach, rememberLast } from "../worksheet/remember";
import { missingIn, sameText, textColumn, unlike, type NumberColumn, type TextColumn } from "../worksheet/rows";
import { deviceColumns, lifeCautions, lifetimes } from "./devices";
import { inventedLots } from "./invented-list";
import { lotCounts } from "./lot-counts";

/** Excel may hand a blank over as 0. */
const isKnown = (lot: string): boolean => lot !== "" && lot !== "0";

/** What was seen and expected of each lot, worked out when it is asked for. */
const lotsOf = rememberLast((lots: TextColumn, days: NumberColumn, failed: NumberColumn) => {
  const odd = unlike({ lots, days, failed });
  if (odd) return odd;
  const lives = lifetimes({ days, failed });
  if (lives instanceof SheetError) return lives;
  const lost = lots.values.findIndex((lot, i) => isKnown(lot) && Number.isNaN(days.values[i]));
  if (lost >= 0) return missingIn("days", days, lost);
  const { known, count } = lotCounts(lives, (i) => {
    const lot = lots.values[lives.rows[i]!]!;
    return isKnown(lot) ? lot : "";
  });
  return { known, count: rememberEach(count) };
});

const criticalOf = rememberEach((key: string) => {
  const [total, level, least] = key.split(" ").map(Number) as [number, number, number];
  return { value: criticalValue(total, level, least) };
});

const unknown = notAvailable([argument("lot"), " does not stand in ", argument("lots")]);
const spent = notAvailable([
  "more failures are expected by now than ",
  argument("expectedtotal"),
  " allows: the watch has ended",
]);

export const LOTSIGNAL = define(
  {
    name: "LOTSIGNAL",
    family: "Wear",
    summary: "Do devices of one lot fail more often than their age explains, looked at again and again.",
    params: {
      lot: reading("The lot, or a column of lots", {}, (cell) => (cell === 0 ? null : sameText(cell))),
      lots: textColumn("Each device's lot, one row a device; blank where it is not known"),
      ...deviceColumns(),
      expectedtotal: number(
        "Failures that would be expected of the lot's devices by their agreed intervals; fixed when first looked at",
        { above: 0, max: 1000, zeroIsBlank: true },
      ),
      level: number("Chance of a false signal among all lots of the list together", {
        above: 0,
        below: 0.5,
        fallback: 0.05,
      }),
      least: number("Fewest failures that can signal", { min: 1, max: 100, whole: true, fallback: 4 }),
    },
    subject: ["lot"],
    result: {
      shape: "row",
      kind: "mixed",
      columns: ["seen", "expected", "ratio", "low", "high", "signal"],
      columnKinds: ["number", "number", "number", "number", "number", "text"],
      help: "Failures seen and expected, their ratio with limits, and: look at this lot, no signal, too few to say",
      blank: "",
    },
    compute: ({ lot, lots, days, failed, expectedtotal, level, least }): string | SheetError | Row => {
      const all = lotsOf(lots, days, failed);
      if (all instanceof SheetError) return all;
      if (!all.known.has(lot)) return unknown;
      const counted = all.count(lot);
      if (counted instanceof SheetError) return counted.behind(["without this lot "]);
      const { seen, expected } = counted;
      const limits = poissonLimits(seen, 1 - level);
      const numbers = [seen, expected, seen / expected, limits.low / expected, limits.high / expected];
      if (expected > expectedtotal * (1 + 1e-9)) return [...numbers, spent];
      if (seen < least) return [...numbers, "too few to say"];
      const critical = criticalOf(`${expectedtotal} ${level / all.known.size} ${least}`).value;
      const signals = seen > expected && logRatio(seen, expected) >= critical;
      return [...numbers, signals ? "look at this lot" : "no signal"];
    },
  },
  documented && {
    details:
      "What is expected is the sum of the cumulative hazards of the lot's devices at their ages, from a Weibull curve of " +
      "all other devices. The maximised sequential probability ratio test may be looked at after every event; looking " +
      "less often makes false signals rarer still. Its level is divided by the number of lots in the list, because one lot in twenty " +
      "would stand out by chance alone. The limits of the ratio are Garwood's, at 1 - level.",
    cautions: [
      "A signal is a reason to look at the lot (fluid, handling, people, transport), never a finding that it is faulty.",
      "No signal does not show that a lot is sound, and no sign of it is needed to report a device.",
      "A device without a lot is counted among the others: it cannot be ruled out.",
      ...lifeCautions,
    ],
    evidence: "textbook",
    sources: [sources.maxSprt, sources.maxSprtLeast, sources.garwood, sources.cohen, sources.noSource],
    examples: [
      {
        shows: "defined",
        args: { lot: "B2291", ...inventedLots, expectedtotal: 4 },
        gives: [[4, 0.5406094561756, 7.3990566652258, 2.0159939142322, 18.9445237378117, "look at this lot"]],
        within: 1e-6,
        source: "R 4.2.2: survreg 3.5-3 without the lot, poisson.test, and the chain of counts by dpois",
      },
      {
        shows: "range",
        args: { lot: [["b2291 "], [""], ["Z1"]], ...inventedLots, expectedtotal: 4, least: 5 },
        gives: [
          [4, 0.5406094561756, 7.3990566652258, 2.0159939142322, 18.9445237378117, "too few to say"],
          ["", "", "", "", "", ""],
          [{ error: "#N/A" }, "", "", "", "", ""],
        ],
        within: 1e-6,
        source: "R 4.2.2: survreg 3.5-3 without the lot, poisson.test, and the chain of counts by dpois",
      },
      {
        shows: "blank",
        args: { lot: "", ...inventedLots, expectedtotal: 4 },
        gives: [["", "", "", "", "", ""]],
        source: sources.input,
      },
      {
        shows: "bad input",
        args: { lot: "B2291", ...inventedLots, expectedtotal: 4, least: 0 },
        gives: [[{ error: "#VALUE!" }, "", "", "", "", ""]],
        source: sources.input,
      },
      {
        shows: "boundary",
        args: { lot: "A10", ...inventedLots, expectedtotal: 4 },
        gives: [[{ error: "#N/A" }, "", "", "", "", ""]],
        source: sources.noSource,
      },
    ],
  },
);
