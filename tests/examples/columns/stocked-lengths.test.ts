import { describe, expect, it } from "vitest";
import { readLengths } from "../../../src/columns/stocked-lengths";

describe("lengths in stock, as people type them", () => {
  it.each([
    ["0.8, 1.0, 1.2", [0.8, 1, 1.2]],
    ["0.8,1.0,1.2", [0.8, 1, 1.2]],
    ["0,8; 1,0; 1,2", [0.8, 1, 1.2]],
    ["0,8 1,0 1,2", [0.8, 1, 1.2]],
    ["2.3 cm, 1.7 cm, 2 cm, 2.3", [1.7, 2, 2.3]],
    ["1, 2, 3", [1, 2, 3]],
    ["1,2,3", [1, 2, 3]],
    ["2.5\n2", [2, 2.5]],
    ["1.5,", [1.5]],
  ])("%s", (text, lengths) => expect(readLengths(text)).toEqual(lengths));
  it.each([
    ["", "Type the lengths"],
    ["23, 25", '"23" is no length'],
    ["small, large", '"small"'],
    ["0", '"0"'],
    ["-1", '"-1"'],
  ])("refuses %s", (text, sentence) => expect(readLengths(text)).toContain(sentence));
});
