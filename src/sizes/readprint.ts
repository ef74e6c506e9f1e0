import { sources } from "../sources";
import { define } from "../worksheet/define";
import { documented } from "../worksheet/documented";
import { SheetError } from "../worksheet/error";
import { openChoice, text } from "../worksheet/parameters";
import { readPrint, valueOf } from "./print";
import { printUnits } from "./printed-numbers";

export const READPRINT = define(
  {
    name: "READPRINT",
    family: "Sizes",
    summary: "Size, length and balloon volume out of what is printed on a tube or its box.",
    params: {
      text: text("What is printed, as it stands there: 14 Fr x 2.3 cm, 5 mL", {}),
      part: openChoice("Which number", printUnits, "three cells: Fr, cm, mL"),
    },
    subject: ["text"],
    result: {
      shape: "row",
      oneCellWith: "part",
      kind: "number",
      columns: ["Fr", "cm", "mL"],
      help: "The number printed with that unit; what is not printed stays blank",
      blank: "",
    },
    compute: ({ text, part }) => {
      const print = readPrint(text);
      if (print instanceof SheetError) return print;
      if (part !== undefined) return valueOf(part, print);
      return [valueOf("Fr", print), valueOf("cm", print), valueOf("mL", print)];
    },
  },
  documented && {
    details:
      "Reads numbers that stand with their unit: Fr (also CH, FG, French), mm, cm, mL (also ml, cc). A number without a " +
      "unit is not guessed. Two values of one unit, such as 3-5 mL or 5 (max 7) mL, are an error in that part only, and so is a " +
      "number with a letter or a fraction against it (l4 Fr, 1½ cm). So are a sum (5+5 mL), a multiple (2 x 5 mL) and a " +
      "bound (<5 mL). Nothing is converted.",
    cautions: [
      "Never tell the volume from the size: one size, 14 Fr, is filled with 3 to 10 mL depending on its design.",
      "A printed range is for the service to decide: enter the volume agreed for this person, never above the label.",
    ],
    evidence: "common practice",
    sources: [sources.hospitalPaediatricChart, sources.commonPractice],
    examples: [
      {
        shows: "defined",
        args: { text: "14 Fr x 2.3 cm, 5 mL" },
        gives: [[14, 2.3, 5]],
        source: sources.catalogue,
      },
      { shows: "use", args: { text: "CH 12 / 5cc", part: "mL" }, gives: 5, source: sources.catalogue },
      { shows: "use", args: { text: "14 Fr (4.7 mm)", part: "mm" }, gives: 4.7, source: sources.catalogue },
      {
        shows: "range",
        args: { text: [["12 FR 1.7 cm 3-5 mL"], [""], ["16 Fr"]] },
        gives: [
          [12, 1.7, { error: "#VALUE!" }],
          ["", "", ""],
          [16, "", ""],
        ],
        source: sources.catalogue,
      },
      { shows: "blank", args: { text: "" }, gives: [["", "", ""]], source: sources.input },
      {
        shows: "bad input",
        args: { text: "5 mL, max 7 mL", part: "mL" },
        gives: { error: "#VALUE!", says: "two volumes: enter them yourself" },
        source: sources.catalogue,
      },
      {
        shows: "bad input",
        args: { text: "BALLOON 5 (MAX 7) ML", part: "mL" },
        gives: { error: "#VALUE!", says: "two volumes: enter them yourself" },
        source: sources.catalogue,
      },
      {
        shows: "bad input",
        args: { text: "1½ cm", part: "cm" },
        gives: { error: "#VALUE!", says: "read the tube again" },
        source: sources.catalogue,
      },
      {
        shows: "bad input",
        args: { text: "14G", part: "Fr" },
        gives: { error: "#VALUE!", says: "G means gauge" },
        source: sources.catalogue,
      },
      { shows: "boundary", args: { text: "12 Fr x .8 cm", part: "cm" }, gives: 0.8, source: sources.catalogue },
      { shows: "boundary", args: { text: "14 x 2.3 cm", part: "Fr" }, gives: "", source: sources.catalogue },
      { shows: "boundary", args: { text: "5 mL (5 cc)", part: "mL" }, gives: 5, source: sources.catalogue },
      {
        shows: "bad input",
        args: { text: "5+5 mL", part: "mL" },
        gives: { error: "#VALUE!", says: "two volumes: enter them yourself" },
        source: "defined by this function's rule: neither number of a sum is the volume",
      },
    ],
  },
);
