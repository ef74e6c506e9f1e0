import { sources } from "../sources";
import { define } from "../worksheet/define";
import { documented } from "../worksheet/documented";
import { rounded } from "../worksheet/numbers";
import { number } from "../worksheet/parameters";

/** cm: clinic setting, no published source. */
const TOLERANCE = 1;

const rule = { unit: "cm", min: 0, max: 60 } as const;

export const MARKSHIFT = define(
  {
    name: "MARKSHIFT",
    family: "Fit",
    summary: "Whether the centimetre mark at the skin has moved: same mark, further out or further in.",
    params: {
      then: number("Mark at the skin when the tube was put in, counted from the inner end", {
        ...rule,
        zeroIsBlank: true,
      }),
      now: number("Mark at the skin now, counted from the inner end; 0: none of it is inside", rule),
      tolerance: number("A difference up to this counts as the same mark", {
        unit: "cm",
        min: 0,
        max: 5,
        fallback: TOLERANCE,
      }),
    },
    subject: ["then", "now"],
    result: {
      shape: "cell",
      kind: "text",
      help: "same mark, further out, further in or not measured",
      blank: "not measured",
    },
    compute: ({ then, now, tolerance }) => {
      // Counted from the inner end nothing is inside at 0; or nothing was entered, and the cell arrived as 0.
      if (now === 0) return "further out";
      const moved = rounded(now - then);
      if (Math.abs(moved) <= tolerance) return "same mark";
      return moved < 0 ? "further out" : "further in";
    },
  },
  documented && {
    details:
      "Counted from the inner end: a larger number at the skin means that more of the tube is inside. Some tubes are " +
      "marked from the other end; for them exchange then and now. Exactly the tolerance is the same mark. 0 " +
      "now reads further out: none of the tube is inside, or nothing was entered and the cell arrived as 0.",
    cautions: [
      "Further out: treat as coming out; stop the feed until the position is confirmed. Do not push it back.",
      "Further in: with vomiting or a full belly the tube may block the way out of the stomach; call the team.",
      "The same mark does not show that the inner end lies in the right place.",
    ],
    evidence: "clinic setting",
    sources: [sources.cautionTexts, sources.noSource],
    examples: [
      { shows: "defined", args: { then: 4, now: 2 }, gives: "further out", source: sources.catalogue },
      { shows: "use", args: { then: 4, now: 6 }, gives: "further in", source: sources.catalogue },
      {
        shows: "range",
        args: { then: [[4], [4], [4]], now: [[3.5], [0], [""]] },
        gives: [["same mark"], ["further out"], ["not measured"]],
        source: sources.catalogue,
      },
      {
        shows: "blank",
        args: { then: [[0], [1]], now: 0 },
        gives: [["not measured"], ["further out"]],
        source: "defined by this function's rule: 0 then is a blank; 0 now is none of the tube inside, or a blank",
      },
      { shows: "blank", args: { then: "", now: 4 }, gives: "not measured", source: sources.catalogue },
      {
        shows: "bad input",
        args: { then: 4, now: "3-4" },
        gives: { error: "#VALUE!", says: "now must be one number of cm" },
        source: sources.input,
      },
      { shows: "boundary", args: { then: 4, now: 3 }, gives: "same mark", source: sources.catalogue },
      {
        shows: "boundary",
        args: { then: 1.1, now: 0.6, tolerance: 0.5 },
        gives: "same mark",
        source: sources.floats,
      },
    ],
  },
);
