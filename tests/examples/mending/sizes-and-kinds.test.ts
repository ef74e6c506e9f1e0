/** Sizes and kinds as people type them, each wording once. One French is a third of a millimetre (the French scale). */
import { describe, expect, test } from "vitest";
import { guessKind } from "../../../src/columns/kind-guess";
import { mendKinds } from "../../../src/mending/kinds";
import { mendSizes, sizeSaid, sizeWordings } from "../../../src/mending/sizes";
import { kinds } from "../../../src/settings/kinds";
import { CellError } from "../../../src/worksheet/error";

describe("sizes", () => {
  const values = [
    14,
    "14FR",
    "ch 14",
    "CH  14",
    "14G",
    "14g ",
    "12/14",
    "4.7 mm",
    "",
    null,
    4.7,
    "big",
    140,
    new CellError("#N/A"),
    true,
  ];
  const wordings = sizeWordings(values);
  const of = (text: string) => wordings.find((wording) => wording.text === text)!;

  test("each wording stands once, the unread ones first", () => {
    expect(wordings.map(({ text, rows }) => [text, rows])).toEqual([
      ["14G", [4, 5]],
      ["12/14", [6]],
      ["4.7 mm", [7]],
      ["big", [11]],
      ["140", [12]],
      ["#N/A", [13]],
      ["TRUE", [14]],
      ["ch 14", [2, 3]],
      ["14", [0]],
      ["14FR", [1]],
      ["4.7", [10]],
    ]);
  });

  test("what is read becomes its number; what is not says why", () => {
    expect([of("14FR").reads, of("ch 14").reads, of("14").isPlain]).toEqual([14, 14, true]);
    expect(of("14G").reason).toBe("G means gauge; write Fr");
    expect(of("12/14").reason).toBe("it holds more than one number: write one size");
    expect(of("4.7").reason).toBe("looks like mm?");
    expect([of("4.7 mm").reads, of("4.7 mm").asMillimetres]).toEqual([null, expect.closeTo(14.1, 6)]);
  });

  test("numbers shown as dates are no sizes", () => {
    const dates = new Map([[0, { text: "14 Dec 2026", reason: "the cell holds a date" }]]);
    expect(sizeWordings([46370], dates)).toMatchObject([
      { text: "14 Dec 2026", reads: null, reason: "the cell holds a date" },
    ]);
  });

  test("a person says once what a wording is; nothing else is changed", () => {
    const none = mendSizes(values.length, wordings, {});
    expect(none).toEqual([null, 14, 14, 14, ...new Array<null>(11).fill(null)]);
    const said = mendSizes(values.length, wordings, { "14g": "14 Fr", "12/14": "12", big: "?" });
    expect(said).toEqual([null, 14, 14, 14, 14, 14, 12, ...new Array<null>(8).fill(null)]);
  });

  test("a wording that was said to be something unreadable is not changed to what it reads as", () => {
    expect(mendSizes(1, sizeWordings(["14FR"]), { "14fr": "14 mm" })).toEqual([null]);
  });

  test("what a person writes is read by the same reader", () => {
    expect([sizeSaid("14 Fr"), sizeSaid("12,0"), sizeSaid(" "), sizeSaid("12/14")]).toEqual([
      14,
      12,
      null,
      "it holds more than one number: write one size",
    ]);
  });
});

describe("kinds", () => {
  test("each word once, whatever its capitals; a word without a kind stays", () => {
    expect(
      mendKinds(["BGT ", "bgt", "PEG", null, "balloon gastrostomy", 7, new CellError("#N/A")], {
        bgt: "balloon gastrostomy",
        "balloon gastrostomy": "balloon gastrostomy",
        peg: "not known",
      }),
    ).toEqual(["balloon gastrostomy", "balloon gastrostomy", null, null, null, null, null]);
  });

  test("the words that are put in are known again", () => {
    for (const { key } of kinds) expect(guessKind(key)).toBe(key === "not known" ? null : key);
  });
});
