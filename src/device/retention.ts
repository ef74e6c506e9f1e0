import { sources } from "../sources";
import { define } from "../worksheet/define";
import { documented } from "../worksheet/documented";
import { plainCharacters } from "../worksheet/numbers";
import { reading, text } from "../worksheet/parameters";
import { answerOf, type YesNo } from "../worksheet/yes-no";

/**
 * Found anywhere in `marks`, in any case, also when negated: each of them is a reason to ask. How it was placed (PEG,
 * RIG) and its shape (button) are not among them, because they say nothing about how it is held.
 */
export const marksToAsk = [
  ...["stitch", "sutur", "thread", "tied", "loop", "pigtail", "pig tail", "pig-tail", "string", "winged", "wings"],
  ...["malecot", "mushroom", "pezzer", "catheter", "temporary"],
  ...["no outer disc", "no disc", "no outer disk", "no disk", "no outer plate", "no bolster", "no outer bolster"],
  ...["jej", "gj", "g-j", "g/j", "peg-j", "pegj", "j-peg", "pej", "j limb", "j-tube", "j tube", "j extension"],
  ...["transgastric", "duoden", "bowel"],
  ...["second head", "two heads", "2 heads", "other head", "second tube"],
  ...["unclear", "not clear", "unsure", "not sure", "unknown", "not known", "doubt"],
  ...["cannot see", "cannot tell", "not visible", "?"],
] as const;

/** G and J written apart, whatever stands between them. */
const G_AND_J = /\b(?:pe)?g ?[-/+&\u2010-\u2015\u2212]? ?j\b/;

/** What marks say that the answer about the port denies, also when negated: somebody has to look again. */
export const marksAgainst = {
  yes: [
    ...["bumper", "dome", "inner disc", "inner disk", "inside disc", "inside disk", "internal disc", "internal disk"],
    ...["disc inside", "disk inside"],
    ...["no balloon", "not a balloon", "without balloon", "without a balloon", "no valve", "without valve", "no port"],
    ...["without a valve", "without port", "without a port", "non-balloon", "non balloon", "balloonless"],
  ],
  no: ["balloon", "ballon", "baloon", "valve", "inflat", "luer", "mls", "millilit"],
} as const;
/** A volume belongs to a balloon. */
const VOLUME = /\d ?(?:ml|cc)\b/;

/** One search for all words of a list: word after word took most of a long column's time. */
const anyOf = (words: readonly string[]): RegExp =>
  new RegExp(words.map((word) => word.replace(/[/?-]/g, "\\$&")).join("|"));
const TO_ASK = {
  yes: anyOf([...marksToAsk, ...marksAgainst.yes]),
  no: anyOf([...marksToAsk, ...marksAgainst.no]),
};

const ASK = "ask placing team";

export const RETENTION = define(
  {
    name: "RETENTION",
    family: "Device",
    summary: "How a tube is held inside, told from what can be seen outside: balloon, bumper or ask placing team.",
    params: {
      balloonport: reading<YesNo, object>(
        "Is there a valve marked for the balloon, that takes a Luer-slip syringe and no feeding syringe? yes or no",
        {},
        (cell) => answerOf(cell) ?? "not known",
      ),
      marks: text("What else is seen or written: stitched, loop, winged, a second head", { fallback: "" }),
    },
    subject: ["balloonport"],
    result: { shape: "cell", kind: "text", help: "balloon, bumper or ask placing team", blank: ASK },
    compute: ({ balloonport, marks }) => {
      const seen = plainCharacters(marks).toLowerCase();
      if (balloonport === "not known" || G_AND_J.test(seen) || TO_ASK[balloonport].test(seen)) return ASK;
      if (balloonport === "yes") return "balloon";
      return VOLUME.test(seen) ? ASK : "bumper";
    },
  },
  documented && {
    details:
      "A valve for the balloon means a balloon; none means a bumper. PEG, RIG, G-tube or button say how it was placed or " +
      "its shape, never how it is held, and are passed over. These words in marks, anywhere, in any case and also when " +
      `negated, give ask placing team: ${marksToAsk.join(", ")}, G - J. So do words that contradict the answer: with a valve ` +
      `${marksAgainst.yes.join(", ")}; without one ${marksAgainst.no.join(", ")}, a number of mL. A number is no answer, because ` +
      "an empty cell can arrive as 0.",
    cautions: [
      "What can be seen may not show how it is held: if in doubt, ask the placing team. Do not pull to find out.",
      "Never feed or medicine into the balloon valve.",
      "Loops, winged and stitched tubes have no balloon valve either: write what is seen into marks.",
    ],
    evidence: "common practice",
    sources: [sources.soscia, sources.medscapeReplacement, sources.commonPractice],
    examples: [
      { shows: "published", args: { balloonport: "yes" }, gives: "balloon", source: sources.soscia },
      { shows: "published", args: { balloonport: "no" }, gives: "bumper", source: sources.soscia },
      {
        shows: "published",
        args: { balloonport: "no", marks: "Pigtail, taped to the skin" },
        gives: ASK,
        source: sources.soscia,
      },
      { shows: "use", args: { balloonport: "y", marks: "button" }, gives: "balloon", source: sources.catalogue },
      {
        shows: "range",
        args: { balloonport: [["yes"], ["no"], [""], ["PEG"]] },
        gives: [["balloon"], ["bumper"], [ASK], [ASK]],
        source: sources.catalogue,
      },
      { shows: "blank", args: { balloonport: "" }, gives: ASK, source: sources.catalogue },
      { shows: "bad input", args: { balloonport: 1 }, gives: ASK, source: sources.catalogue },
      {
        shows: "bad input",
        args: { balloonport: "no", marks: "balloon 5 mL" },
        gives: ASK,
        source: "defined by this function's rule: a balloon without its valve contradicts",
      },
      {
        shows: "boundary",
        args: { balloonport: "yes", marks: "G - J" },
        gives: ASK,
        source: `${sources.soscia}: a part in the bowel`,
      },
      {
        shows: "boundary",
        args: { balloonport: "yes", marks: "not stitched" },
        gives: ASK,
        source: "defined by this function's rule: a word counts also when negated",
      },
    ],
  },
);
