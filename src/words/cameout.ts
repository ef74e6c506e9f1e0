import { accessGiven } from "../device/access";
import { held } from "../device/retention-words";
import {
  bandsCross,
  doubtfulDate,
  immatureBelow,
  LEAST_MATURE_FROM,
  matureFrom,
  slowHealingOrDoubt,
  type DateOrDoubt,
} from "../schedule/tract";
import { sources } from "../sources";
import { day } from "../worksheet/dates";
import { define } from "../worksheet/define";
import { documented } from "../worksheet/documented";
import { text } from "../worksheet/parameters";
import { rememberEach } from "../worksheet/remember";
import { yesNoOrDoubt } from "../worksheet/yes-no";
import { closing, countedFor, middleOf, opening, planOnly, USUAL_HOURS, type Limits } from "./cameout-texts";
import { dateInWords } from "./date-in-words";
import { isAgeCounted, mayGoBack, tubeOutClass, type TubeOutClass } from "./tube-out-class";

const beginning = rememberEach((middle: string) => `${opening} ${middle}`);
const counted = rememberEach((asof: number) => ` ${countedFor(dateInWords(asof))}`);
const PLAN = ` ${planOnly} `;

/** Put together by +, not from a list: the pieces are then shared by all rows of a sheet, which is most of the memory. */
const paragraph = (one: TubeOutClass, limits: Limits, asof: DateOrDoubt, phone: string): string =>
  beginning(middleOf(one, limits)) +
  (isAgeCounted(one) && asof !== "not known" ? counted(asof) : "") +
  (mayGoBack(one) ? " " : PLAN) +
  closing(phone);

/** The paragraph of an example, whose class is written down and not worked out. */
const example = (one: TubeOutClass, asof: string, limits: Partial<Limits> = {}, phone = ""): string =>
  paragraph(one, { immature: 6, mature: 12, hours: USUAL_HOURS, ...limits }, day(asof), phone);

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
      const one = tubeOutClass({ stomamade, asof, retention, access, firsttube, slow, immature, mature });
      return paragraph(one, { immature, mature, hours: USUAL_HOURS }, asof, phone);
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
        gives: example("balloon, mature", "2026-04-03", {}, "0000 000000"),
        source: sources.cautionTexts,
      },
      {
        shows: "use",
        args: { stomamade: "2024-01-08", asof: "2026-04-03", retention: "balloon", access: "GJ", firsttube: "no" },
        gives: example("stomach and bowel", "2026-04-03"),
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
        gives: [[example("immature", "2026-04-03")], [example("bumper", "2026-04-03")]],
        source: sources.aciMaturity,
      },
      {
        shows: "blank",
        args: { stomamade: "2024-01-08", asof: "2026-04-03", retention: "balloon", access: "" },
        gives: example("access not known", "2026-04-03"),
        source: sources.cautionTexts,
      },
      {
        shows: "blank",
        args: { stomamade: "2024-01-08", asof: "2026-04-03", retention: "balloon", access: "G" },
        gives: example("first or slow not known", "2026-04-03"),
        source: "defined by this function's rule: a blank first tube is not known",
      },
      {
        shows: "blank",
        args: { stomamade: "2024-01-08", asof: "2026-04-03", retention: "balloon", access: "G", firsttube: "no" },
        gives: example("first or slow not known", "2026-04-03"),
        source: "defined by this function's rule: slow healing that is left out is not known",
      },
      {
        shows: "bad input",
        args: { stomamade: "3/4/24", asof: "2026-04-03", retention: "balloon", access: "G", firsttube: "no" },
        gives: example("date not known", "2026-04-03"),
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
        gives: example("setting too short", "2026-04-03", { mature: 7 }),
        source: `${sources.otherMaturity}; below 8 weeks by this function's rule`,
      },
      {
        shows: "boundary",
        args: { stomamade: "2026-01-09", asof: "2026-04-02", retention: "balloon", access: "G", firsttube: "no" },
        gives: example("uncertain", "2026-04-02"),
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
        gives: example("balloon, mature", "2026-04-03"),
        source: `${sources.aciMaturity}: day 84`,
      },
    ],
  },
);
