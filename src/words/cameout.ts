import { accessGiven, type Access } from "../device/access";
import { held, type Held } from "../device/retention-words";
import {
  bandsCross,
  doubtfulDate,
  immatureBelow,
  LEAST_MATURE_FROM,
  matureFrom,
  slowHealingOrDoubt,
  tractOrDoubt,
} from "../schedule/tract";
import { sources } from "../sources";
import { day } from "../worksheet/dates";
import { define } from "../worksheet/define";
import { documented } from "../worksheet/documented";
import { text } from "../worksheet/parameters";
import { rememberEach } from "../worksheet/remember";
import { yesNoOrDoubt, type YesNo } from "../worksheet/yes-no";
import { closing, countedFor, middles, opening, planOnly } from "./cameout-texts";
import { dateInWords } from "./date-in-words";

interface Known {
  readonly access: Access;
  readonly tract: ReturnType<typeof tractOrDoubt>;
  readonly firsttube: YesNo;
  readonly slow: YesNo;
  readonly retention: Held;
  readonly immature: number;
  readonly mature: number;
}

/** The first rule that is met; every doubt comes before the only class that may be put back. */
function middleOf({ access, tract, firsttube, slow, retention, immature, mature }: Known): string {
  if (access === "J") return middles.bowel;
  if (access === "GJ") return middles.stomachAndBowel;
  if (access === "not known") return middles.accessNotKnown;
  if (tract === "not known") return middles.dateNotKnown;
  if (tract === "immature") return middles.immature(immature);
  if (tract === "uncertain") return middles.uncertain(immature, mature);
  if (mature < LEAST_MATURE_FROM) return middles.tooShortASetting(mature);
  if (firsttube === "yes" || slow === "yes") return middles.firstOrSlow;
  if (firsttube === "not known" || slow === "not known") return middles.firstOrSlowNotKnown;
  if (retention === "bumper") return middles.bumper;
  return retention === "balloon" ? middles.balloonMature : middles.other;
}

const beginning = rememberEach((middle: string) => `${opening} ${middle}`);
const counted = rememberEach((asof: number) => ` ${countedFor(dateInWords(asof))}`);
const PLAN = ` ${planOnly} `;

/** Put together by +, not from a list: the pieces are then shared by all rows of a sheet, which is most of the memory. */
const sentences = (middle: string, asof: number | undefined, phone = ""): string =>
  beginning(middle) +
  (asof === undefined ? "" : counted(asof)) +
  (middle === middles.balloonMature ? " " : PLAN) +
  closing(phone);

export const CAMEOUT = define(
  {
    name: "CAMEOUT",
    family: "Words",
    summary: "What to do now if this person's tube comes out, in sentences for a hand-out.",
    params: {
      stomamade: doubtfulDate("When the opening was made; closed and made again: the new date"),
      asof: doubtfulDate("Today, or the day that the page is for"),
      retention: held(),
      access: accessGiven(),
      firsttube: yesNoOrDoubt("Is this still the first tube? yes, no or not known", { fallback: "not known" }),
      slow: slowHealingOrDoubt(),
      immature: immatureBelow(),
      mature: matureFrom(),
      phone: text("Number to call, as text", { fallback: "", fallbackHelp: "the number on the emergency card" }),
    },
    subject: [],
    result: {
      shape: "cell",
      kind: "text",
      help: "A paragraph; a blank or unreadable argument gives the hospital",
      blank: "",
    },
    compute: ({ stomamade, asof, retention, access, firsttube, slow, immature, mature, phone }) => {
      if (immature > mature) return bandsCross;
      const tract = tractOrDoubt(stomamade, asof, immature, mature);
      const isCounted = access === "G" && tract !== "not known" && asof !== "not known";
      const middle = middleOf({ access, tract, firsttube, slow, retention, immature, mature });
      return sentences(middle, isCounted ? asof : undefined, phone);
    },
  },
  documented && {
    details:
      "The first rule that is met decides: bowel (J), stomach and bowel (GJ), end not known, date missing or in the " +
      "future, immature, uncertain, first tube or slow healing, bumper, other or unknown kinds. Only what is left (a " +
      "balloon, into the stomach, mature by weeks, known not to be the first tube, healing known not to be slow) may be " +
      "put back, by somebody trained and with a plan. First tube or slow healing left out or blank: not known. What cannot " +
      `be read counts as not known. Where mature is below ${LEAST_MATURE_FROM} weeks no opening counts as mature.`,
    cautions: [
      "A template for trained staff and for hand-outs: assess it under your service's own rules before use.",
      "Services differ: some teach families to hold even a new opening. This person's own written plan decides.",
      "Half out, longer than usual, or turned: the same as out. Do not push it back.",
      "Print it again after every change: weeks are counted for the day that stands in it.",
    ],
    evidence: "hospital",
    sources: [
      sources.cautionTexts,
      sources.aciMaturity,
      sources.rightDecisions,
      sources.npsa2010,
      sources.npsa2012,
      sources.starship,
    ],
    examples: [
      {
        shows: "defined",
        args: {
          stomamade: "2024-01-08",
          asof: "2026-04-03",
          retention: "balloon",
          access: "G",
          firsttube: "no",
          slow: "no",
          phone: "0000 000000",
        },
        gives: sentences(middles.balloonMature, day("2026-04-03"), "0000 000000"),
        source: sources.cautionTexts,
      },
      {
        shows: "use",
        args: { stomamade: "2024-01-08", asof: "2026-04-03", retention: "balloon", access: "GJ", firsttube: "no" },
        gives: sentences(middles.stomachAndBowel, undefined),
        source: `${sources.cautionTexts}; ${sources.starship}`,
      },
      {
        shows: "range",
        args: {
          stomamade: [["2026-03-20"], ["2024-01-08"]],
          asof: "2026-04-03",
          retention: [["balloon"], ["bumper"]],
          access: "G",
          firsttube: [["no"], ["no"]],
          slow: "no",
        },
        gives: [[sentences(middles.immature(6), day("2026-04-03"))], [sentences(middles.bumper, day("2026-04-03"))]],
        source: sources.aciMaturity,
      },
      {
        shows: "blank",
        args: { stomamade: "2024-01-08", asof: "2026-04-03", retention: "balloon", access: "" },
        gives: sentences(middles.accessNotKnown, undefined),
        source: sources.cautionTexts,
      },
      {
        shows: "blank",
        args: { stomamade: "2024-01-08", asof: "2026-04-03", retention: "balloon", access: "G" },
        gives: sentences(middles.firstOrSlowNotKnown, day("2026-04-03")),
        source: "defined by this function's rule: a blank first tube is not known",
      },
      {
        shows: "blank",
        args: { stomamade: "2024-01-08", asof: "2026-04-03", retention: "balloon", access: "G", firsttube: "no" },
        gives: sentences(middles.firstOrSlowNotKnown, day("2026-04-03")),
        source: "defined by this function's rule: slow healing that is left out is not known",
      },
      {
        shows: "bad input",
        args: { stomamade: "3/4/24", asof: "2026-04-03", retention: "balloon", access: "G", firsttube: "no" },
        gives: sentences(middles.dateNotKnown, undefined),
        source: "defined by this function's rule: a date that cannot be read is not known",
      },
      {
        shows: "bad input",
        args: { stomamade: "2024-01-08", asof: "2026-04-03", retention: "balloon", access: "G", immature: 0 },
        gives: { error: "#VALUE!", says: "immature must be at least 1" },
        source: sources.catalogue,
      },
      {
        shows: "boundary",
        args: {
          stomamade: "2024-01-08",
          asof: "2026-04-03",
          retention: "balloon",
          access: "G",
          firsttube: "no",
          slow: "no",
          mature: 7,
        },
        gives: sentences(middles.tooShortASetting(7), day("2026-04-03")),
        source: `${sources.otherMaturity}; below 8 weeks by this function's rule`,
      },
      {
        shows: "boundary",
        args: { stomamade: "2026-01-09", asof: "2026-04-02", retention: "balloon", access: "G", firsttube: "no" },
        gives: sentences(middles.uncertain(6, 12), day("2026-04-02")),
        source: `${sources.aciMaturity}: day 83`,
      },
      {
        shows: "boundary",
        args: {
          stomamade: "2026-01-09",
          asof: "2026-04-03",
          retention: "balloon",
          access: "G",
          firsttube: "no",
          slow: "no",
        },
        gives: sentences(middles.balloonMature, day("2026-04-03")),
        source: `${sources.aciMaturity}: day 84`,
      },
    ],
  },
);
