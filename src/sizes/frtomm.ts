import { sources } from "../sources";
import { define } from "../worksheet/define";
import { documented } from "../worksheet/documented";
import { reading } from "../worksheet/parameters";
import { LARGEST_FRENCH, readFrench } from "./french";

export const FRTOMM = define(
  {
    name: "FRTOMM",
    family: "Sizes",
    summary: "Outside diameter in millimetres of a tube whose size is given in French (Charrière).",
    params: {
      size: reading(
        "Size as a number of French, or as written: 14 Fr, CH14, FG 14, 14,0",
        { unit: "Fr", limits: `above 0, at most ${LARGEST_FRENCH}`, plain: { above: 0, max: LARGEST_FRENCH } },
        readFrench,
      ),
    },
    subject: ["size"],
    result: { shape: "cell", kind: "number", unit: "mm", help: "Outside diameter", blank: "" },
    compute: ({ size }) => size / 3,
  },
  documented && {
    details:
      "One French is a third of a millimetre of outside diameter. A text must hold one French size; other words round " +
      "it are passed over (14 Fr x 2.3 cm), and so is a number below 5 behind it (14 Fr 2.3). A number alone is a size beside " +
      "a word for a tube (PEG 15). Two sizes, a question mark, gauge (14G), millimetres, a letter or a fraction against the " +
      "number (l4 Fr, 14½) are not guessed.",
    cautions: [
      "Read the size on the tube or its label; this only turns the number into millimetres.",
      "A leak is not cured by a larger tube.",
    ],
    evidence: "standard",
    sources: [sources.french],
    examples: [
      { shows: "published", args: { size: 12 }, gives: 4, source: sources.french },
      { shows: "published", args: { size: "14 Fr" }, gives: 4.67, within: 0.005, source: sources.french },
      { shows: "use", args: { size: "CH 15" }, gives: 5, source: sources.french },
      { shows: "use", args: { size: "PEG 15" }, gives: 5, source: sources.french },
      { shows: "use", args: { size: "14 Fr x 2.3 cm" }, gives: 4.67, within: 0.005, source: sources.french },
      {
        shows: "range",
        args: { size: [[18], ["24FR"], ["12/14"], [""]] },
        gives: [[6], [8], [{ error: "#VALUE!" }], [""]],
        source: sources.french,
      },
      { shows: "blank", args: { size: "" }, gives: "", source: sources.input },
      { shows: "blank", args: { size: 0 }, gives: "", source: sources.input },
      {
        shows: "bad input",
        args: { size: "14G" },
        gives: { error: "#VALUE!", says: "G means gauge; write Fr" },
        source: sources.catalogue,
      },
      {
        shows: "bad input",
        args: { size: "l4Fr" },
        gives: { error: "#VALUE!", says: "a letter or a sign against its number" },
        source: sources.catalogue,
      },
      { shows: "bad input", args: { size: "14 mm" }, gives: { error: "#VALUE!" }, source: sources.catalogue },
      { shows: "boundary", args: { size: 60 }, gives: 20, source: sources.french },
      {
        shows: "boundary",
        args: { size: 60.5 },
        gives: { error: "#VALUE!", says: "at most 60" },
        source: sources.catalogue,
      },
    ],
  },
);
