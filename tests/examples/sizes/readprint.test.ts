/** What stands on tubes, boxes and in notes. Expected values are what a person reads there; doubt is refused. */
import { describe, expect, test } from "vitest";
import { READPRINT } from "../../../src/sizes/readprint";
import { call } from "../../../src/worksheet/call";
import { SheetError } from "../../../src/worksheet/error";

const parts = (text: unknown): unknown[] =>
  ["Fr", "mm", "cm", "mL"].map((part) => {
    const value = call(READPRINT, [text, part]);
    return value instanceof SheetError ? value.message : value;
  });

test.each([
  ["14 Fr x 2.3 cm, 5 mL", [14, "", 2.3, 5]],
  ["14FR", [14, "", "", ""]],
  ["CH14 5cc", [14, "", "", 5]],
  ["Ch. 14 / 20 ml", [14, "", "", 20]],
  ["FG 12, balloon 5ML", [12, "", "", 5]],
  ["Charrière 15 (5 mm)", [15, 5, "", ""]],
  ["12Fr 1,7cm", [12, "", 1.7, ""]],
  ["REF 12345, 14 Fr, LOT 0304", [14, "", "", ""]],
  ["１４\u00a0Fr", [14, "", "", ""]],
  ["14 Fr 14 FR", [14, "", "", ""]],
  ["2.3", ["", "", "", ""]],
  ["see letter", ["", "", "", ""]],
  ["14 x 2.3 cm", ["", "", 2.3, ""]],
  [14, ["", "", "", ""]],
  ["12 Fr x .8 cm", [12, "", 0.8, ""]],
  ["12Frx.8cm", [12, "", 0.8, ""]],
  [".5 mL", ["", "", "", 0.5]],
  ["Ch.14, 5 mL", [14, "", "", 5]],
  ["14Fr2.3cm5mL", [14, "", 2.3, 5]],
  ["14Fr 2.3", [14, "", "", ""]],
  ["14 Fr/2.3", [14, "", "", ""]],
  ["14 Fr/2.3 cm", [14, "", 2.3, ""]],
  ["14 Fr - LOT 12", [14, "", "", ""]],
  ["PEG 15", ["", "", "", ""]],
  ["5..10", ["", "", "", ""]],
  ["constructor 14 __proto__ 5 mL, 14 Fr", [14, "", "", "two volumes: enter them yourself"]],
])("%s", (text, wanted) => expect(parts(text)).toEqual(wanted));

describe("two values of one unit are not chosen between, in that part only", () => {
  const VOLUMES = "two volumes: enter them yourself";
  test.each([
    ["14 Fr, 3-5 mL", [14, "", "", VOLUMES]],
    ["14 Fr, 3 – 5 mL", [14, "", "", VOLUMES]],
    ["3 to 5 mL", ["", "", "", VOLUMES]],
    ["5 mL, max 7 mL", ["", "", "", VOLUMES]],
    ["BALLOON 5 (MAX 7) ML", ["", "", "", VOLUMES]],
    ["balloon 5 mL (max. 7)", ["", "", "", VOLUMES]],
    ["14 Fr, 5 à 10 mL", [14, "", "", VOLUMES]],
    ["5..10 mL", ["", "", "", VOLUMES]],
    ["5|10 mL", ["", "", "", VOLUMES]],
    ["5 10 mL", ["", "", "", VOLUMES]],
    ["3to5ml", ["", "", "", VOLUMES]],
    ["3, 5 or 10 mL", ["", "", "", VOLUMES]],
    ["14/16 Fr 5 mL", ["two sizes: enter them yourself", "", "", 5]],
    ["1.7 cm or 2.3 cm", ["", "", "two lengths: enter them yourself", ""]],
    ["14G 5 mL", ["G means gauge; write Fr", "", "", 5]],
  ])("%s", (text, wanted) => expect(parts(text)).toEqual(wanted));
});

describe("a sum, a multiple, or the same number twice without a unit of its own is not the number itself", () => {
  const VOLUMES = "two volumes: enter them yourself";
  const NOT = expect.stringMatching(/two volumes|cannot be meant/);
  test.each([
    ...["5+5 mL", "5 + 5 mL", "5 mL + 5 mL", "5 plus 5 mL", "5&5 mL", "5 mL and 5 mL", "5; 5 mL", "5(5) mL"],
    ...["5:5 mL", "5=5 mL", "5%5 mL", "5#5 mL", "5_5 mL", "5 5 mL", "5-5 mL", "5 mL, max 5"],
  ])("%s", (text) => expect(parts(text)).toEqual(["", "", "", VOLUMES]));
  test.each(["5x5 mL", "2x5 mL", "2 x 5 mL", "5 mL x 2", "5mLx2", "5mL*2", "2×5 mL", "2 * 5 mL", "5 · 5 mL"])(
    "%s",
    (text) => expect(parts(text)).toEqual(["", "", "", NOT]),
  );
  test.each(["<5 mL", "> 5 mL", "≤5 mL", "≥ 5 mL"])("%s is no volume", (text) =>
    expect(parts(text)).toEqual(["", "", "", NOT]),
  );
  test.each([
    ["14 Fr + 5 mL", [14, "", "", 5]],
    ["14 Fr + 2,3 cm + 5 mL", [14, "", 2.3, 5]],
    ["14 Fr, 5+5 mL", [14, "", "", VOLUMES]],
    ["14 Fr + 14 Fr", ["two sizes: enter them yourself", "", "", ""]],
    ["14+14 Fr", ["two sizes: enter them yourself", "", "", ""]],
    ["2.3+2.3 cm", ["", "", "two lengths: enter them yourself", ""]],
    ["2 x 14 Fr", [14, "", "", ""]],
    ["14 Fr x 5 mL", [14, "", "", 5]],
    ["5 mL (5 cc)", ["", "", "", 5]],
    ["5 mL = 5 cc", ["", "", "", 5]],
    ["5 mL, max 5 mL", ["", "", "", 5]],
  ])("%s", (text, wanted) => expect(parts(text)).toEqual(wanted));
});

describe("a number with something against it that no unit explains is refused in its part", () => {
  const not = (number: string) => `"${number}" cannot be meant: read the tube again`;
  test.each([
    ["l4Fr 5 mL", [not("4 Fr"), "", "", 5]],
    ["I4 Fr 5 mL", [not("4 Fr"), "", "", 5]],
    ["1O Fr 5 mL", [not("1 Fr"), "", "", 5]],
    ["1½ cm", ["", "", not("1 cm"), ""]],
    ["1 ½ cm", ["", "", expect.stringMatching(/two lengths|cannot be meant/), ""]],
    ["½ mL", ["", "", "", not("½ mL")]],
    ["2١ Fr", [not("2 Fr"), "", "", ""]],
    ["14Fr.5mL", [14, "", "", not("5 mL")]],
    ["14 Fr ,5 mL", [14, "", "", not("5 mL")]],
    ["balloon5mL", ["", "", "", not("5 mL")]],
    ["14Fr l.5cm", [14, "", not("5 cm"), ""]],
    ["l,5 cm", ["", "", not("5 cm"), ""]],
    ["2·5 cm", ["", "", not("5 cm"), ""]],
    ["O.5 mL", ["", "", "", not("5 mL")]],
    ["O,5 mL", ["", "", "", not("5 mL")]],
    ["·5 mL", ["", "", "", not("5 mL")]],
    ["5·5 mL", ["", "", "", expect.stringMatching(/two volumes|cannot be meant/)]],
    ["5'5 mL", ["", "", "", expect.stringMatching(/two volumes|cannot be meant/)]],
    ["'5 mL'", ["", "", "", 5]],
    ["F.14, vol.5 mL", [14, "", "", 5]],
    ["LOT A304, 14 Fr", [14, "", "", ""]],
  ])("%s", (text, wanted) => expect(parts(text)).toEqual(wanted));
});

test.each(["14? Fr", "5 mL?"])("%s is in doubt as a whole", (text) => {
  expect(call(READPRINT, [text, "cm"])).toBeInstanceOf(SheetError);
  const [row] = call(READPRINT, [text]) as unknown[][];
  expect(row![0]).toBeInstanceOf(SheetError);
});

test("without a part three cells, with one a single cell, also down a column", () => {
  expect(call(READPRINT, ["14 Fr x 2.3 cm, 5 mL"])).toEqual([[14, 2.3, 5]]);
  expect(call(READPRINT, ["14 Fr x 2.3 cm, 5 mL", "mm"])).toBe("");
  expect(call(READPRINT, [[["14 Fr"], ["5 mL"]], "mL"])).toEqual([[""], [5]]);
  expect(call(READPRINT, [[["14 Fr"], ["5 mL"]]])).toEqual([
    [14, "", ""],
    ["", "", 5],
  ]);
});
