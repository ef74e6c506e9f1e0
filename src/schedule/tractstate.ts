import { sources } from "../sources";
import { define } from "../worksheet/define";
import { documented } from "../worksheet/documented";
import { argument, fault } from "../worksheet/error";
import { date } from "../worksheet/parameters";
import { bandsCross, immatureBelow, LEAST_MATURE_FROM, matureFrom, slowHealing, tractBand } from "./tract";

const future = fault`${argument("stomamade")} is after ${argument("asof")}: check both dates`;
const tooOld = fault`${argument("stomamade")} is more than 100 years before ${argument("asof")}: write the whole date, not the year`;

export const TRACTSTATE = define(
  {
    name: "TRACTSTATE",
    family: "Schedule",
    summary: "How old an opening is, in a word: immature, uncertain or mature by weeks.",
    params: {
      stomamade: date("When the opening was made; closed and made again: the new date", {}),
      asof: date("Today, or the day that the answer is for", {}),
      immature: immatureBelow(),
      mature: matureFrom(LEAST_MATURE_FROM),
      slow: slowHealing(),
    },
    subject: ["stomamade", "asof"],
    result: { shape: "cell", kind: "text", help: "immature, uncertain, mature by weeks or no date", blank: "no date" },
    compute: ({ stomamade, asof, immature, mature, slow }) => {
      if (immature > mature) return bandsCross;
      const band = tractBand(stomamade, asof, immature, mature);
      if (band === "future") return future;
      if (band === "too old") return tooOld;
      return band === "mature by weeks" && slow !== "no" ? "uncertain" : band;
    },
  },
  documented && {
    details:
      "Whole weeks since the opening was made, never since the last change. Slow healing, or not known whether (also " +
      "left out or blank): never better than uncertain. Services differ from 1 to 12 weeks; the more careful figures stand " +
      `as defaults, and fewer than ${LEAST_MATURE_FROM} weeks are not taken for mature.`,
    cautions: [
      "Weeks are not proof: replacements have gone astray, with deaths, through old openings too.",
      "Tube out or half out: urgent at any age of the opening.",
      "Closed and made again: the date starts anew.",
    ],
    evidence: "guideline",
    sources: [sources.aciMaturity, sources.bordersMaturity, sources.otherMaturity, sources.npsa2012],
    examples: [
      {
        shows: "published",
        args: { stomamade: "2026-04-20", asof: "2026-05-14" },
        gives: "immature",
        source: `${sources.aciMaturity}: 3 weeks`,
      },
      {
        shows: "published",
        args: { stomamade: "2026-03-20", asof: "2026-05-14" },
        gives: "uncertain",
        source: `${sources.aciMaturity}: 7 weeks`,
      },
      {
        shows: "published",
        args: { stomamade: "2025-05-14", asof: "2026-05-14", slow: "no" },
        gives: "mature by weeks",
        source: `${sources.aciMaturity}: 52 weeks`,
      },
      {
        shows: "blank",
        args: { stomamade: "2025-05-14", asof: "2026-05-14", slow: "" },
        gives: "uncertain",
        source: "defined by this function's rule: a blank is not known",
      },
      {
        shows: "use",
        args: { stomamade: "2025-05-14", asof: "2026-05-14", slow: "yes" },
        gives: "uncertain",
        source: sources.catalogue,
      },
      {
        shows: "range",
        args: { stomamade: [["2026-05-01"], [""], ["2026-06-01"]], asof: "2026-05-14" },
        gives: [["immature"], ["no date"], [{ error: "#VALUE!" }]],
        source: sources.aciMaturity,
      },
      { shows: "blank", args: { stomamade: "2025-05-14", asof: "" }, gives: "no date", source: sources.catalogue },
      {
        shows: "bad input",
        args: { stomamade: "2026-05-15", asof: "2026-05-14" },
        gives: { error: "#VALUE!", says: "stomamade is after asof" },
        source: sources.catalogue,
      },
      {
        shows: "bad input",
        args: { stomamade: 2019, asof: "2026-05-14" },
        gives: { error: "#VALUE!", says: "not the year" },
        source: "defined by this function's rule: 2019 as a day number is a day of 1905",
      },
      {
        shows: "bad input",
        args: { stomamade: "2025-05-14", asof: "2026-05-14", immature: 12, mature: 10 },
        gives: { error: "#VALUE!", says: "immature is above mature" },
        source: sources.catalogue,
      },
      {
        shows: "bad input",
        args: { stomamade: "2025-05-14", asof: "2026-05-14", mature: 7, slow: "no" },
        gives: { error: "#VALUE!", says: "mature must be at least 8" },
        source: `${sources.otherMaturity}`,
      },
      {
        shows: "boundary",
        args: { stomamade: "2026-01-05", asof: "2026-02-15" },
        gives: "immature",
        source: `${sources.aciMaturity}: day 41`,
      },
      {
        shows: "boundary",
        args: { stomamade: "2026-01-05", asof: "2026-02-16" },
        gives: "uncertain",
        source: `${sources.aciMaturity}: day 42`,
      },
      {
        shows: "boundary",
        args: { stomamade: "2026-01-05", asof: "2026-03-30", slow: "no" },
        gives: "mature by weeks",
        source: `${sources.aciMaturity}: day 84`,
      },
    ],
  },
);
