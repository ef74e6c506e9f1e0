import { access as accessParam, type Access } from "../device/access";
import { held, type Held } from "../device/retention-words";
import { unitTexts } from "../balloon/volumes";
import { optionalLengthCm } from "../fit/lengths";
import { LARGEST_FRENCH, readFrench } from "../sizes/french";
import { sources } from "../sources";
import type { Cell } from "../worksheet/cell";
import { day } from "../worksheet/dates";
import { define } from "../worksheet/define";
import { documented } from "../worksheet/documented";
import { argument, fault, SheetError } from "../worksheet/error";
import { date, NOT_KNOWN, number, orNotKnown, reading } from "../worksheet/parameters";
import { rememberEach } from "../worksheet/remember";
import { dateInWords } from "./date-in-words";

type Shape = "long" | "low-profile" | "not known";

const shapeOf = (cell: Exclude<Cell, null>): Shape | null | SheetError => {
  if (cell === 0) return null;
  const word = String(cell).trim().toLowerCase();
  return word === "long" || word === "low-profile" || word === "not known"
    ? word
    : new SheetError("must be long or low-profile");
};

/** Nobody plans a change for a day before this: then a year was typed, and 1905 would be printed. */
const EARLIEST_DUE = day("2000-01-01");
const longPast = fault`${argument("due")} is before 2000: write the whole date, not the year`;
/** As in DUESTATE: beyond every interval in use, so that one of both dates is wrong. Clinic setting, no published source. */
const FAR_DAYS = 3653;
const past = fault`${argument("due")} is before ${argument("asof")}: write the day of the next change, or leave it out`;
const tooFar = fault`${argument("due")} is more than 10 years after ${argument("asof")}: check both dates`;
const noBalloon = fault`${argument("volume")} is given, but this kind of tube has no balloon: check how it is held`;

const START = "This is a feeding tube through the skin of the belly";
const ENDS: Readonly<Record<Access, string>> = {
  G: `${START} into the stomach (a gastrostomy).`,
  GJ: `${START} into the stomach, with a part that goes on into the bowel; it must not be turned.`,
  J: `${START} straight into the bowel (a jejunostomy); it must not be turned.`,
  "not known": `${START}.`,
};

const SHAPES: Readonly<Record<Shape, string>> = {
  "low-profile": "It lies flat on the skin (low-profile, often called a button).",
  long: "A length of tube hangs outside the body (a long tube).",
  "not known": "",
};

const other = (kind: string): string =>
  `It is held inside in its own way (${kind}); it must not be turned and must never be pulled out at home.`;
const HOLDS: Readonly<Record<Held, string>> = {
  balloon: "A small balloon filled with water holds it inside.",
  bumper: "A soft bumper that cannot be let down holds it inside; it must never be pulled out at home.",
  loop: other("a loop"),
  winged: other("wings"),
  stitched: other("stitched"),
  catheter: "A catheter stands in for a tube for the time being; it must never be pulled out at home.",
  "not known": "Until it is known what holds it inside, nobody should pull it.",
};

/** One decimal, as rulers show it. */
const across = (french: number): number => Math.round((10 * french) / 3) / 10;

/** Every sentence is put together once for each thing that it says: its rows share it, which is most of the memory. */
const seen = rememberEach((access: Access) =>
  rememberEach((shape: Shape) =>
    rememberEach((retention: Held) =>
      [ENDS[access], SHAPES[shape], HOLDS[retention]].filter((sentence) => sentence !== "").join(" "),
    ),
  ),
);
const sized = rememberEach((french: number) => ` Size ${french} Fr: about ${across(french)} mm across.`);
const measured = rememberEach((cm: number) => ` Length ${cm} cm.`);
const filled = rememberEach(
  (mL: number) =>
    ` The balloon holds ${mL} mL of water; only people who have been shown touch its valve, and never for feed or medicine.`,
);
const planned = rememberEach(
  (due: number) =>
    ` The next change is planned for ${dateInWords(due)}; call us sooner if it leaks, hurts, moves or comes out.`,
);
const NOT_PLANNED = " Call us if it leaks, hurts, moves or comes out.";

/** What may be missing, in the order in which it is said. */
const MISSING = {
  access: "where it ends",
  shape: "its shape",
  retention: "how it is held inside",
  size: "its size",
  length: "its length",
  volume: "how much water the balloon holds",
  due: "when the next change is planned",
} as const;

/** What is missing of all these, as a number with one bit for each. */
const bit = Object.fromEntries(Object.keys(MISSING).map((name, i) => [name, 1 << i])) as Record<
  keyof typeof MISSING,
  number
>;
const notWritten = rememberEach((bits: number) => {
  const missing = Object.values(MISSING).filter((_, i) => (bits & (1 << i)) !== 0);
  return ` Not written down: ${[...missing, "when it was put in"].join("; ")}. Please ask us.`;
});

export const PLAINWORDS = define(
  {
    name: "PLAINWORDS",
    family: "Words",
    summary: "The tube explained to the person who lives with it, in a short paragraph.",
    params: {
      retention: held(),
      size: orNotKnown(
        reading<number, object>(
          "Size, as in FRTOMM",
          { unit: "Fr", limits: `above 0, at most ${LARGEST_FRENCH}` },
          readFrench,
        ),
      ),
      length: optionalLengthCm("Length of a low-profile tube", "not written down"),
      volume: number("Water in the balloon, as agreed for this person", {
        unit: "mL",
        unitTexts,
        above: 0,
        max: 60,
        zeroIsBlank: true,
        optional: true,
        fallbackHelp: "not written down",
      }),
      due: date("When the next change is planned", { optional: true, fallbackHelp: "not written down" }),
      access: accessParam(),
      shape: reading<Shape, { fallback: Shape; limits: string }>(
        "What is seen outside",
        { fallback: "not known", limits: "long or low-profile" },
        shapeOf,
      ),
      asof: date("Today, or the day that the page is for: the next change must lie behind it", {
        optional: true,
        fallbackHelp: "not compared",
      }),
    },
    subject: [],
    result: { shape: "cell", kind: "text", help: "A paragraph that ends with what is not written down", blank: "" },
    compute: ({ retention, size, length, volume, due, access, shape, asof }) => {
      if (volume !== undefined && !["balloon", "catheter", "not known"].includes(retention)) return noBalloon;
      if (due !== undefined && due < EARLIEST_DUE) return longPast;
      if (due !== undefined && asof !== undefined && due < asof) return past;
      if (due !== undefined && asof !== undefined && due - asof > FAR_DAYS) return tooFar;
      // Put together by +, not from lists: in a long column that is most of the time and of the memory.
      let missing = 0;
      if (access === "not known") missing |= bit.access;
      if (shape === "not known") missing |= bit.shape;
      if (retention === "not known") missing |= bit.retention;
      let said = seen(access)(shape)(retention);
      if (size === NOT_KNOWN) missing |= bit.size;
      else said += sized(size);
      if (length !== undefined) said += measured(length);
      else if (shape === "low-profile") missing |= bit.length;
      if (retention === "balloon") {
        if (volume === undefined) missing |= bit.volume;
        else said += filled(volume);
      }
      if (due === undefined) missing |= bit.due;
      return said + (due === undefined ? NOT_PLANNED : planned(due)) + notWritten(missing);
    },
  },
  documented && {
    details:
      "One sentence for each thing that is known, and a list of what is not written down at the end. Nothing is guessed: " +
      "a volume beside a tube without a balloon is refused, and with today given a next change that lies in the past or more " +
      "than ten years ahead. The day on which the tube was put in is no argument, so it is " +
      "always in that list.",
    cautions: [
      "For reading together, not for sending: add the number to call and hand over the sheet for a tube that comes out.",
      "The figures are those written down; compare them with the tube before you print.",
      "Only water in a balloon, never more than the label says.",
    ],
    evidence: "common practice",
    sources: [sources.cautionTexts, sources.french, sources.soscia, sources.starship],
    examples: [
      {
        shows: "defined",
        args: {
          retention: "balloon",
          size: 14,
          length: 2.3,
          volume: 5,
          due: "2026-05-14",
          access: "G",
          shape: "low-profile",
        },
        gives:
          "This is a feeding tube through the skin of the belly into the stomach (a gastrostomy). It lies flat on the " +
          "skin (low-profile, often called a button). A small balloon filled with water holds it inside. Size 14 Fr: " +
          "about 4.7 mm across. Length 2.3 cm. The balloon holds 5 mL of water; only people who have been shown touch " +
          "its valve, and never for feed or medicine. The next change is planned for 14 May 2026; call us sooner if it " +
          "leaks, hurts, moves or comes out. Not written down: when it was put in. Please ask us.",
        source: sources.cautionTexts,
      },
      {
        shows: "range",
        args: { retention: [["bumper"], [""]], size: [["15 Fr"], [""]], access: "G" },
        gives: [
          [
            "This is a feeding tube through the skin of the belly into the stomach (a gastrostomy). A soft bumper that " +
              "cannot be let down holds it inside; it must never be pulled out at home. Size 15 Fr: about 5 mm across. " +
              "Call us if it leaks, hurts, moves or comes out. Not written down: its shape; when the next change is " +
              "planned; when it was put in. Please ask us.",
          ],
          [
            "This is a feeding tube through the skin of the belly into the stomach (a gastrostomy). Until it is known " +
              "what holds it inside, nobody should pull it. Call us if it leaks, hurts, moves or comes out. Not written " +
              "down: its shape; how it is held inside; its size; when the next change is planned; when it was put in. " +
              "Please ask us.",
          ],
        ],
        source: sources.cautionTexts,
      },
      {
        shows: "blank",
        args: { retention: "", size: "" },
        gives:
          "This is a feeding tube through the skin of the belly. Until it is known what holds it inside, nobody should " +
          "pull it. Call us if it leaks, hurts, moves or comes out. Not written down: where it ends; its shape; how it is " +
          "held inside; its size; when the next change is planned; when it was put in. Please ask us.",
        source: sources.cautionTexts,
      },
      {
        shows: "bad input",
        args: { retention: "bumper", size: 15, volume: 5 },
        gives: { error: "#VALUE!", says: "this kind of tube has no balloon" },
        source: sources.catalogue,
      },
      {
        shows: "bad input",
        args: { retention: "balloon", size: 14, due: 2019 },
        gives: { error: "#VALUE!", says: "write the whole date" },
        source: "2019 as a day number is a day of 1905 (ECMA-376 part 1, 18.17.4)",
      },
      {
        shows: "bad input",
        args: { retention: "balloon", size: 14, due: "2026-05-13", asof: "2026-05-14" },
        gives: { error: "#VALUE!", says: "due is before asof" },
        source: "defined by this function's rule: nobody plans a change for a day that has gone by",
      },
      {
        shows: "bad input",
        args: { retention: "balloon", size: 14, due: "2036-05-15", asof: "2026-05-14" },
        gives: { error: "#VALUE!", says: "more than 10 years after asof" },
        source: "defined by this function's rule: 14 May 2036 is 3,653 days ahead",
      },
      {
        shows: "bad input",
        args: { retention: "balloon", size: "14G" },
        gives: { error: "#VALUE!", says: "G means gauge" },
        source: sources.catalogue,
      },
      {
        shows: "boundary",
        args: { retention: "loop", size: 8.5, access: "J", shape: "long", due: "2028-02-29" },
        gives:
          "This is a feeding tube through the skin of the belly straight into the bowel (a jejunostomy); it must not be " +
          "turned. A length of tube hangs outside the body (a long tube). It is held inside in its own way (a loop); it " +
          "must not be turned and must never be pulled out at home. Size 8.5 Fr: about 2.8 mm across. The next change is " +
          "planned for 29 February 2028; call us sooner if it leaks, hurts, moves or comes out. Not written down: when it " +
          "was put in. Please ask us.",
        source: sources.cautionTexts,
      },
    ],
  },
);
