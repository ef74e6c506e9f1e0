import {
  doubtfulOptionalDate,
  LEAST_MATURE_FROM,
  matureFrom,
  slowHealingOrDoubt,
  tractOrDoubt,
} from "../schedule/tract";
import { sources } from "../sources";
import { WHO_DECIDES } from "../words/who-decides";
import { define } from "../worksheet/define";
import { documented } from "../worksheet/documented";
import { yesNoOrDoubt } from "../worksheet/yes-no";
import { access } from "./access";
import { removalTexts } from "./removal-texts";
import { held } from "./retention-words";

export const REMOVAL = define(
  {
    name: "REMOVAL",
    family: "Device",
    summary: "What is known about taking a tube out, by how it is held, where it ends and how old the opening is.",
    params: {
      retention: held(),
      access: access(),
      stomamade: doubtfulOptionalDate("When the opening was made"),
      asof: doubtfulOptionalDate("Today, or the day that the answer is for"),
      firsttube: yesNoOrDoubt("Is this still the first tube? yes, no or not known", { fallback: "not known" }),
      mature: matureFrom(),
      slow: slowHealingOrDoubt(),
    },
    subject: [],
    result: { shape: "cell", kind: "text", help: "One of six answers; only one of them tells how", blank: "" },
    compute: ({ retention, access, stomamade, asof, firsttube, mature, slow }) => {
      if (access === "GJ" || access === "J") return removalTexts.bowel;
      if (retention === "bumper") return removalTexts.bumper;
      if (retention !== "balloon") return removalTexts.notKnown;
      if (access === "not known") return removalTexts.balloonAccessNotKnown;
      const tract = tractOrDoubt(stomamade, asof, mature, mature);
      return tract === "mature by weeks" && mature >= LEAST_MATURE_FROM && firsttube === "no" && slow === "no"
        ? removalTexts.balloonMature
        : removalTexts.balloonOtherwise;
    },
  },
  documented && {
    details:
      "Steps are given only for a balloon that ends in the stomach (G), an opening old enough by weeks whose healing is " +
      "known not to be slow, and a tube that is not the first. Whatever is blank, in the future or not understood counts " +
      `as not known, and the answer is then not to remove it; so it is where mature is below ${LEAST_MATURE_FROM} weeks.`,
    cautions: [
      WHO_DECIDES,
      "Never pull a tube with the balloon still full: it injures the opening.",
      "A tube through which another runs into the bowel, and a stitched tube: never turn, never change at home.",
      "Weeks are no proof of a firm opening.",
    ],
    evidence: "hospital",
    sources: [sources.soscia, sources.lee2013, sources.npsa2012, sources.aciMaturity, sources.cautionTexts],
    examples: [
      {
        shows: "defined",
        args: {
          retention: "balloon",
          access: "G",
          stomamade: "2024-01-08",
          asof: "2026-05-14",
          firsttube: "no",
          slow: "no",
        },
        gives: removalTexts.balloonMature,
        source: sources.cautionTexts,
      },
      { shows: "use", args: { retention: "bumper", access: "G" }, gives: removalTexts.bumper, source: sources.lee2013 },
      { shows: "use", args: { retention: "balloon", access: "GJ" }, gives: removalTexts.bowel, source: sources.soscia },
      {
        shows: "range",
        args: { retention: [["balloon"], ["loop"], [""]], access: [["G"], ["G"], ["G"]] },
        gives: [[removalTexts.balloonOtherwise], [removalTexts.notKnown], [removalTexts.notKnown]],
        source: sources.cautionTexts,
      },
      {
        shows: "blank",
        args: { retention: "balloon", access: "G", stomamade: "2024-01-08", asof: "2026-05-14", firsttube: "no" },
        gives: removalTexts.balloonOtherwise,
        source: "defined by this function's rule: slow healing that is left out is not known",
      },
      { shows: "blank", args: { retention: "" }, gives: removalTexts.notKnown, source: sources.cautionTexts },
      {
        shows: "bad input",
        args: { retention: "balloon", access: "G", stomamade: "3/4/24", asof: "2026-05-14", firsttube: "no" },
        gives: removalTexts.balloonOtherwise,
        source: "defined by this function's rule: a date that cannot be read is not known",
      },
      {
        shows: "bad input",
        args: { retention: "balloon", access: "G", mature: 0 },
        gives: { error: "#VALUE!", says: "mature must be at least 2" },
        source: sources.catalogue,
      },
      {
        shows: "boundary",
        args: {
          retention: "balloon",
          access: "G",
          stomamade: "2024-01-08",
          asof: "2026-05-14",
          firsttube: "no",
          mature: 7,
          slow: "no",
        },
        gives: removalTexts.balloonOtherwise,
        source: `${sources.otherMaturity}; below 8 weeks by this function's rule`,
      },
      {
        shows: "boundary",
        args: {
          retention: "balloon",
          access: "G",
          stomamade: "2026-01-05",
          asof: "2026-03-30",
          firsttube: "no",
          slow: "no",
        },
        gives: removalTexts.balloonMature,
        source: `${sources.aciMaturity}: 30 March is day 84, 12 whole weeks`,
      },
      {
        shows: "boundary",
        args: {
          retention: "balloon",
          access: "G",
          stomamade: "2026-01-05",
          asof: "2026-03-29",
          firsttube: "no",
          slow: "no",
        },
        gives: removalTexts.balloonOtherwise,
        source: `${sources.aciMaturity}: 29 March is day 83`,
      },
    ],
  },
);
